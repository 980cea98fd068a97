using System.Globalization;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Checking.Plots;

/// <summary>Every value of a plan as it was read, in the order of the file.</summary>
internal static class InputList
{
    /// <summary>The list.</summary>
    public static IReadOnlyList<StatedInput> Of(YamlToken root)
    {
        var list = new List<StatedInput>();
        Add(list, string.Empty, root);
        return list;
    }

    private static void Add(List<StatedInput> list, string key, YamlToken token)
    {
        switch (token)
        {
            case MapToken map:
                foreach (var entry in map.Entries)
                {
                    Add(list, key.Length == 0 ? entry.Key.Text : $"{key}.{entry.Key.Text}", entry.Value);
                }

                break;
            case ListToken items:
                for (var index = 0; index < items.Items.Count; index++)
                {
                    Add(list, $"{key}[{Name(items.Items[index], index)}]", items.Items[index]);
                }

                break;
            case ScalarToken scalar:
                list.Add(new StatedInput(key, scalar.Text, scalar.Span.Line) { File = scalar.Span.File });
                break;
            default:
                break;
        }
    }

    private static string Name(YamlToken item, int index) => item is MapToken map && map.Find("id")?.Value is ScalarToken { Text.Length: > 0 } id
        ? id.Text
        : (index + 1).ToString(CultureInfo.InvariantCulture);
}
