using Laygate.Model.Plans;
using Laygate.Reading.Parts;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Reading.RuleFiles;

/// <summary>What a repository asks of every check of its plans. Paths are as written, from the folder of the file.</summary>
/// <param name="Plans">Plans that are checked when the command names none.</param>
/// <param name="Rules">Specifications: shipped names, or paths.</param>
/// <param name="Departures">Files of departures.</param>
/// <param name="FailOnWarn">Whether warnings count as failed, too.</param>
/// <param name="Stage">Stage at which at least plans are judged; null: their own.</param>
public sealed record RepositorySettings(
    IReadOnlyList<string> Plans, IReadOnlyList<string> Rules, IReadOnlyList<string> Departures, bool FailOnWarn, Stage? Stage)
{
    /// <summary>File of known findings; null when there is none.</summary>
    public string? Baseline { get; init; }

    /// <summary>Files of parts that every plan may use without naming them.</summary>
    public IReadOnlyList<NamedFile> Uses { get; init; } = [];

    /// <summary>Whether what is not assessed counts as failed.</summary>
    public bool NotAssessedFails { get; init; }
}

/// <summary>Reads <c>laygate.yaml</c>.</summary>
public static class SettingsFile
{
    /// <summary>Name of the file.</summary>
    public const string Name = "laygate.yaml";

    /// <summary>Reads the file.</summary>
    /// <param name="file">Name as it is to be shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <returns>The settings, or the problems that keep them from being used.</returns>
    public static (RepositorySettings? Settings, IReadOnlyList<Problem> Problems) Read(string file, byte[] bytes)
    {
        var read = YamlReader.Read(bytes, "set of settings");
        var problems = read.Problems.ToList();
        if (read.IsSound)
        {
            problems.AddRange(SchemaChecker.Check(read.Documents[0], SchemaLoader.Load(EmbeddedSchemas.Text("settings.schema.json"))));
            problems.AddRange(read.Documents.Skip(1).Take(1).Select(document =>
                new ReadingProblem("A file holds one set of settings.", document.Root.Span, "Remove what follows the `---` line.")));
        }

        return problems.Count > 0
            ? (null, ShownProblems.Of(file, problems))
            : (Of((MapToken)read.Documents[0].Root, file), []);
    }

    private static RepositorySettings Of(MapToken map, string file) =>
        new(map.Texts("plans"), map.Texts("rules"), map.Texts("departures"), map.Text("fail_on") is "warn", map.Word<Stage>("stage"))
        {
            Uses = [.. PartStore.Names(map).Select(name => new NamedFile(name.Text, new Position(name.Span.Line, name.Span.Column, name.Span.EndLine, name.Span.EndColumn) { File = file }))],
            Baseline = map.Text("baseline"),
            NotAssessedFails = map.Text("not_assessed") is "fail",
        };
}
