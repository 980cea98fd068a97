using Laygate.Reading.Yaml;

namespace Laygate.Reading.Jobs;

/// <summary>The joints of a shift.</summary>
internal static class ShiftJoints
{
    /// <summary>
    /// Joints at runs that a shift lays. One between lanes of two shifts is made when the later one is laid against the earlier; in the earlier shift the
    /// edge lies against nothing. What names no run stays.
    /// </summary>
    /// <param name="joints">Joints of the job; null where it has none.</param>
    /// <param name="own">Ids of the runs of the shift.</param>
    /// <param name="earlier">Ids of the runs that earlier shifts lay.</param>
    /// <param name="all">Ids of all runs of the job; any other name is left for the reader of plans to refuse.</param>
    /// <returns>The joints; null where there are none.</returns>
    public static YamlToken? Of(YamlToken? joints, HashSet<string> own, HashSet<string> earlier, HashSet<string> all)
    {
        if (joints is not ListToken list)
        {
            return joints;
        }

        List<YamlToken> kept = [.. list.Items.Select(item => item is MapToken joint ? Of(joint, own, earlier, all) : item).OfType<YamlToken>()];
        return kept.Count == 0 ? null : new ListToken(kept, list.Span);
    }

    private static MapToken? Of(MapToken joint, HashSet<string> own, HashSet<string> earlier, HashSet<string> all)
    {
        var (run, beside) = (joint["run"] as ScalarToken, joint["beside"] as ScalarToken);
        bool Away(ScalarToken? name) => name is not null && !own.Contains(name.Text) && all.Contains(name.Text);
        bool IsLaid(ScalarToken? name) => earlier.Contains(name!.Text);
        return (Away(run), Away(beside)) switch
        {
            (false, false) => joint,
            (false, true) when IsLaid(beside) => Overlay.With(joint, "beside", null),
            (true, false) when beside is not null && IsLaid(run) => Overlay.With(Overlay.With(joint, "run", beside), "beside", null),
            _ => null,
        };
    }
}
