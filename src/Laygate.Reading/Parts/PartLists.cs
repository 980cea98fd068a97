using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Parts;

/// <summary>Lists the parts that files hold, for whoever offers them.</summary>
public static class PartLists
{
    /// <summary>Every part with what it is made of written out, in the order of the files; none of a file that cannot be read.</summary>
    /// <param name="plan">Path of the plan from whose folder files are named.</param>
    /// <param name="uses">Names of the files.</param>
    /// <param name="files">What the host can reach of them, and those that its settings name.</param>
    public static IReadOnlyList<(string List, string Id, MapToken Entry)> All(string plan, IReadOnlyList<string> uses, IPartFiles files)
    {
        var store = Read(plan, uses, files, []);
        return [.. PartKinds.All.SelectMany(kind => store.IdsOf(kind).Select(id => (kind.List, id, Whole(store, kind, id, []))))];
    }

    /// <summary>The files that a plan names under <c>uses</c>; none where it cannot be read.</summary>
    /// <param name="bytes">The plan.</param>
    public static IReadOnlyList<string> Named(byte[] bytes) => YamlReader.Read(bytes) is { IsSound: true, Documents: [{ Root: MapToken map }, ..] } ? [.. PartStore.Names(map).Select(name => name.Text)] : [];

    /// <summary>Why files cannot be used, as a sentence; null when they can.</summary>
    /// <param name="plan">Path of the plan from whose folder files are named.</param>
    /// <param name="uses">Names of the files.</param>
    /// <param name="files">What the host can reach of them.</param>
    public static string? Problem(string plan, IReadOnlyList<string> uses, IPartFiles files)
    {
        var problems = new List<ReadingProblem>();
        Read(plan, uses, files, problems);
        return problems.Count == 0 ? null : problems[0].Position.File is { } file ? FormattableString.Invariant($"{file}:{problems[0].Position.Line}: {problems[0].Message}") : problems[0].Message;
    }

    private static PartStore Read(string plan, IReadOnlyList<string> uses, IPartFiles files, List<ReadingProblem> problems)
    {
        var store = new PartStore(files, new Lazy<LoadedSchema>(PartSchemas.Load), problems);
        foreach (var name in uses)
        {
            store.Add(plan, new ScalarToken(name, ScalarStyle.Quoted, TextSpan.FileStart));
        }

        foreach (var common in files.Common(plan))
        {
            store.Add(common.At.File ?? plan, common);
        }

        return store;
    }

    private static MapToken Whole(PartStore store, PartKind kind, string id, HashSet<string> open) =>
        store.Find(kind, id) is not { } part ? new MapToken([], TextSpan.FileStart)
        : part.Entry[PartKinds.Reference] is ScalarToken further && open.Add(id) ? PlanComposer.Over(Whole(store, kind, further.Text, open), part.Entry)
        : part.Entry;
}
