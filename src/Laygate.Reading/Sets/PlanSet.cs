using System.Globalization;
using System.Text;
using Laygate.Reading.Jobs;
using Laygate.Reading.Parts;
using Laygate.Reading.RuleFiles;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Reading.Sets;

/// <summary>
/// A plan with the files that came with it. What the plan uses is found in the set alone: no disk, no link, no way out. A file that names another one
/// names it by the way from its own folder; in a set without folders, as a browser sends chosen files, the last part of the name counts.
/// </summary>
public sealed class PlanSet : IPartFiles
{
    private readonly Dictionary<string, SetFile> byName = new(StringComparer.Ordinal);
    private readonly bool isFlat;

    private PlanSet(SetFile plan, IReadOnlyList<SetFile> others)
    {
        (Plan, Others) = (plan, others);
        foreach (var file in others.Prepend(plan))
        {
            byName.TryAdd(SetNames.Key(file.Name), file);
        }

        isFlat = byName.Keys.All(name => !name.Contains('/', StringComparison.Ordinal));
    }

    /// <summary>The plan.</summary>
    public SetFile Plan { get; }

    /// <summary>All other files, in the order in which they came.</summary>
    public IReadOnlyList<SetFile> Others { get; }

    /// <summary>Makes a set of files that were sent.</summary>
    /// <param name="set">The set, as it is shown.</param>
    /// <param name="files">The files.</param>
    /// <param name="plan">Name of the file that is the plan; null: the only one that is a plan.</param>
    /// <returns>The set, or all reasons why it is none.</returns>
    public static (PlanSet? Set, IReadOnlyList<Problem> Problems) Of(string set, IReadOnlyList<SetFile> files, string? plan)
    {
        var problems = Sizes(set, files).Concat(SetNames.Check(set, [.. files.Select(file => file.Name)])).ToList();
        if (problems.Count > 0)
        {
            return (null, problems);
        }

        return Chosen(set, files, plan) switch
        {
            (null, var problem) => (null, [problem!]),
            var (chosen, _) => (new PlanSet(chosen, [.. files.Where(file => !ReferenceEquals(file, chosen))]), []),
        };
    }

    /// <summary>A set that was checked when it came in.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="others">All other files.</param>
    public static PlanSet Kept(SetFile plan, IReadOnlyList<SetFile> others) => new(plan, others);

    /// <inheritdoc/>
    public PartText Read(string from, string name)
    {
        if (SetNames.IsAbsolute(name))
        {
            return new PartText(name, null, "A path that begins at the root of a disk belongs to one machine only.");
        }

        if (name.Contains('\\', StringComparison.Ordinal))
        {
            return new PartText(name, null, "Folders are divided by `/` here.");
        }

        var way = isFlat ? name.Split('/')[^1] : SetNames.Combine(from, name);
        return way is null ? new PartText(name, null, "It lies outside the set of files.")
            : byName.TryGetValue(SetNames.Key(way), out var file) ? new PartText(file.Name, file.Bytes)
            : new PartText(way, null, Missing(way));
    }

    /// <inheritdoc/>
    public IReadOnlyList<NamedFile> Common(string plan)
    {
        for (var folder = Folder(SetNames.Key(plan)); ; folder = Folder(folder))
        {
            if (byName.GetValueOrDefault(folder.Length == 0 ? SettingsFile.Name : $"{folder}/{SettingsFile.Name}") is { } settings)
            {
                return SettingsFile.Read(settings.Name, settings.Bytes).Settings?.Uses ?? [];
            }

            if (folder.Length == 0)
            {
                return [];
            }
        }

        static string Folder(string name) => name.LastIndexOf('/') is var end and >= 0 ? name[..end] : string.Empty;
    }

    /// <summary>What is too many or too large in a set.</summary>
    internal static IEnumerable<Problem> Sizes(string set, IReadOnlyList<SetFile> files)
    {
        if (files.Count is 0 or > SetLimits.Files)
        {
            yield return SetNames.Of(set, string.Create(CultureInfo.InvariantCulture, $"The set has {files.Count} files; it may have 1 to {SetLimits.Files}."), "Send the plan and the files that it uses.");
        }

        foreach (var file in files.Where(file => file.Bytes.Length > SetLimits.FileBytes))
        {
            yield return SetNames.Of(set, $"{TokenNames.Quote(file.Name)} is larger than 1 MiB.", "Split it, or leave it out.");
        }

        if (files.Sum(file => (long)file.Bytes.Length) > SetLimits.Bytes)
        {
            yield return SetNames.Of(set, "The files of the set are larger than 4 MiB together.", "Send the plan and the files that it uses only.");
        }
    }

    private static (SetFile? Plan, Problem? Problem) Chosen(string set, IReadOnlyList<SetFile> files, string? plan)
    {
        if (plan is not null)
        {
            var near = NearestNames.Of(plan, [.. files.Select(file => file.Name)]);
            return files.FirstOrDefault(file => string.Equals(SetNames.Key(file.Name), SetNames.Key(plan), StringComparison.Ordinal)) is { } named
                ? (named, null)
                : (null, SetNames.Of(set, $"There is no file {TokenNames.Quote(plan)} in the set.", near.Count > 0 ? NearestNames.Asked(near) : "Name the plan as its file is named in the set."));
        }

        return files.Where(file => IsPlan(file.Bytes)).ToList() switch
        {
            [var only] => (only, null),
            [] => (null, SetNames.Of(set, "None of the files is a plan: a plan has the key `format`, a job of several shifts the key `job`.", "Add the plan, or name the file that is the plan.")),
            var several => (null, SetNames.Of(
                set,
                string.Create(CultureInfo.InvariantCulture, $"{several.Count} files are plans: {string.Join(", ", several.Take(3).Select(file => TokenNames.Quote(file.Name)))}{(several.Count > 3 ? ", …" : string.Empty)}."),
                "Name the one that is meant, or send each plan by itself.")),
        };
    }

    // A plan with a mistake in its YAML is still a plan: its reader says what is wrong.
    private static bool IsPlan(byte[] bytes)
    {
        var read = YamlReader.Read(bytes);
        return read.IsSound
            ? read.Documents.Any(document => document.Root is MapToken map && (map.Find("format") is not null || map.Find(JobKeys.Job) is not null))
            : Encoding.UTF8.GetString(bytes).Split('\n').Any(line => line.TrimStart('\uFEFF') is var text && (text.StartsWith("format:", StringComparison.Ordinal) || text.StartsWith("job:", StringComparison.Ordinal)));
    }

    private string Missing(string way) => byName.Values.FirstOrDefault(file => string.Equals(file.Name, way, StringComparison.OrdinalIgnoreCase)) is { } other
        ? $"There is no such file in the set; there is {TokenNames.Quote(other.Name)}, and letter case counts."
        : "There is no such file in the set.";
}
