using Laygate.Reading.Parts;
using Laygate.Reading.Yaml;

namespace Laygate.Checking.Starting;

/// <summary>The parts in the files that a plan is to use.</summary>
public sealed class FirmParts
{
    private readonly Dictionary<(string List, string Id), MapToken> parts = [];

    private FirmParts(string plan, IReadOnlyList<string> uses, IPartFiles files) => (Plan, Uses, Files) = (plan, uses, files);

    /// <summary>Path of the plan, from which files are named.</summary>
    internal string Plan { get; }

    /// <summary>Names of the files, from the folder of the plan.</summary>
    public IReadOnlyList<string> Uses { get; }

    /// <summary>What can be reached of them.</summary>
    internal IPartFiles Files { get; }

    /// <summary>Reads the parts; what cannot be read has none, and the check of the plan says why.</summary>
    /// <param name="plan">Path of the plan that is begun.</param>
    /// <param name="uses">Names of files from its folder.</param>
    /// <param name="files">What the host can reach of them.</param>
    public static FirmParts Of(string plan, IReadOnlyList<string> uses, IPartFiles files)
    {
        var found = new FirmParts(plan, uses, files);
        foreach (var (list, id, entry) in PartLists.All(plan, uses, files))
        {
            found.parts.TryAdd((list, id), entry);
        }

        return found;
    }

    /// <summary>Why the files cannot be used, as a sentence; null when they can.</summary>
    public string? Problem => PartLists.Problem(Plan, Uses, Files);

    /// <summary>Whether there is such a part.</summary>
    /// <param name="list">Its list, such as <c>rollers</c>.</param>
    /// <param name="id">Its id.</param>
    public bool Has(string list, string id) => parts.ContainsKey((list, id));

    /// <summary>Ids of a list, in the order of the files.</summary>
    /// <param name="list">The list.</param>
    public IReadOnlyList<string> Ids(string list) => [.. parts.Keys.Where(key => string.Equals(key.List, list, StringComparison.Ordinal)).Select(key => key.Id)];

    /// <summary>Ids of the parts of a list that have one of some words behind a key.</summary>
    /// <param name="list">The list.</param>
    /// <param name="key">The key, such as <c>kind</c>.</param>
    /// <param name="words">The words.</param>
    internal IEnumerable<string> With(string list, string key, IReadOnlyCollection<string> words) => parts
        .Where(part => string.Equals(part.Key.List, list, StringComparison.Ordinal) && part.Value[key] is ScalarToken word && words.Contains(word.Text, StringComparer.Ordinal))
        .Select(part => part.Key.Id);

    /// <summary>The only part of a list; null where there is none, or a choice.</summary>
    internal string? Only(string list) => Ids(list) is [var only] ? only : null;

    /// <summary>Courses for which a part states entries of a list, such as the screeds of a paver, in their order.</summary>
    internal IReadOnlyList<string> Courses(string list, string id, string key) =>
        parts.GetValueOrDefault((list, id))?[key] is ListToken entries ? [.. entries.Items.OfType<MapToken>().Select(entry => entry["course"]).OfType<ScalarToken>().Select(course => course.Text)] : [];

    /// <summary>Whether a part states a key itself.</summary>
    internal bool States(string list, string id, string key) => parts.GetValueOrDefault((list, id))?.Find(key) is not null;
}
