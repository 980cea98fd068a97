using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;

namespace Laygate.Checking.Starting;

/// <summary>Takes a plan that somebody wrote as a draft; what is still a blank in it stays one.</summary>
internal static class DraftReader
{
    /// <summary>The draft of a group.</summary>
    public static DraftMap Of(MapToken token)
    {
        var map = new DraftMap();
        foreach (var entry in token.Entries)
        {
            map.Set(entry.Key.Text, Of(entry.Value));
        }

        return map;
    }

    private static DraftNode Of(YamlToken token)
    {
        switch (token)
        {
            case MapToken map:
                return Of(map);
            case ListToken list:
                var items = new DraftList();
                items.Items.AddRange(list.Items.Select(Of));
                return items;
            default:
                var text = ((ScalarToken)token).Text;
                return new DraftText(Blanks.IsBlank(text) ? null : text);
        }
    }
}
