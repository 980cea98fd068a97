using Laygate.Checking.Scaffolding;
using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Cli.Files;
using Laygate.Reading.RuleFiles;

namespace Laygate.Cli.Verbs;

/// <summary>Begins plans, specifications, rules and departures.</summary>
internal static class NewThings
{
    public static int Specification(Host host, string name, string folder) =>
        Make(host, folder, [Scaffolds.Specification(Name(name))], $"Then: laygate new rule FAMILY/NAME --into {name}, or laygate rules --merged --rules {name}");

    public static int Rule(Host host, string name, string quantity, string? id, string into)
    {
        if (name.Split('/') is not [var family, var own] || !RuleFileReader.Families.Contains(family, StringComparer.Ordinal))
        {
            throw new ArgumentProblem($"A rule is named after its family and the bad situation, such as layers/course-too-thin. The families are {string.Join(", ", RuleFileReader.Families)}.");
        }

        Name(own);
        var home = RuleHome.Find(into);
        var folder = new RuleFilesOnDisk().Folder(home.Folder) ?? throw new ArgumentProblem($"There is no folder `{home.Folder}`.");
        var taken = id ?? RuleScaffold.NextId(Prefix(family), folder, home.FirstNumber);
        var (files, problem) = RuleScaffold.Make($"{home.Prefix}{family}/{own}", taken, quantity, home.Source);
        return Make(host, into, files ?? throw new ArgumentProblem(problem!), $"Then: laygate rules --test {home.Folder}");
    }

    public static int Departure(Host host, string rule, string address, IReadOnlyList<string> names, string file)
    {
        var (bound, _) = RuleBookOnDisk.Open(names);
        if (bound.Book is not { } book)
        {
            return host.Streams.Refuse(bound.Problems);
        }

        var edited = DepartureEdit.Add(book, file, File.Exists(file) ? File.ReadAllBytes(file) : null, rule, address);
        if (edited.Text is not { } text)
        {
            return host.Streams.Refuse(edited.Problems);
        }

        NewFiles.Replace(file, text);
        host.Streams.Text($"Added {edited.Summary} to {file}: {NewFiles.Blanks(new NewFile(file, text))}.\nUntil then a check with it stops. Then: laygate check PLAN --departures {file}\n");
        return ExitCodes.Clean;
    }

    /// <summary>Makes files and says what is next.</summary>
    public static int Make(Host host, string folder, IReadOnlyList<NewFile> files, string next)
    {
        foreach (var line in NewFiles.Make(folder, files))
        {
            host.Streams.Text(line + "\n");
        }

        host.Streams.Text(next + "\n");
        return ExitCodes.Clean;
    }

    /// <summary>A name that can be an id.</summary>
    /// <exception cref="ArgumentProblem">It cannot.</exception>
    public static string Name(string name) => Slug(name)
        ? name
        : throw new ArgumentProblem($"`{name}` is no name: use lower-case letters and digits, joined by single hyphens.");

    private static bool Slug(string name) => name.Length > 0 && name[0] != '-' && name[^1] != '-' && !name.Contains("--", StringComparison.Ordinal)
        && name.All(letter => char.IsAsciiLetterLower(letter) || char.IsAsciiDigit(letter) || letter == '-');

    private static string Prefix(string family)
    {
        var (_, pack) = RuleBookOnDisk.Open([]);
        return pack?.General.Rules.FirstOrDefault(rule => string.Equals(rule.Family, family, StringComparison.Ordinal))?.Id[..3] ?? family[..3].ToUpperInvariant();
    }
}

/// <summary>Where a new rule belongs.</summary>
/// <param name="Folder">The rule book or specification.</param>
/// <param name="Prefix">Path from the folder that was named to the families.</param>
/// <param name="Source">Id of the publication to name.</param>
/// <param name="FirstNumber">First number for ids.</param>
internal sealed record RuleHome(string Folder, string Prefix, string Source, int FirstNumber)
{
    /// <summary>Finds it from the folder that was named.</summary>
    /// <exception cref="ArgumentProblem">There is neither a specification nor a rule book.</exception>
    public static RuleHome Find(string into)
    {
        if (File.Exists(Path.Combine(into, "specification.yaml")))
        {
            return new RuleHome(into, "rules/", new DirectoryInfo(into).Name, RuleScaffold.FirstOwnNumber);
        }

        if (File.Exists(Path.Combine(into, "sources.yaml")))
        {
            return new RuleHome(into, string.Empty, "to-fill-in", 1);
        }

        return File.Exists(Path.Combine(into, "rules", "sources.yaml"))
            ? new RuleHome(Path.Combine(into, "rules"), "rules/", "to-fill-in", 1)
            : throw new ArgumentProblem($"There is neither a specification nor a rule book in `{into}`. Begin one with `laygate new specification NAME`, and name its folder with --into.");
    }
}
