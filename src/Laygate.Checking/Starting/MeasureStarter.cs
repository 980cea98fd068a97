using System.Text;
using Laygate.Checking.Scaffolding;
using Laygate.Model.Measures;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Checking.Starting;

/// <summary>Measures that the conditions of a plan ask for and that it lacks.</summary>
/// <param name="Entries">The entries as YAML, to stand below <c>measures:</c>; empty where none is missing.</param>
/// <param name="Count">How many there are.</param>
/// <param name="Parts">How many of them are parts of the firm's.</param>
/// <param name="Lacking">Measures of the plan that lack something, each as a sentence.</param>
/// <param name="Text">The whole plan with the entries in it; null where its form leaves no place that is safe.</param>
/// <param name="Problems">Why the plan cannot be read; then the rest is empty.</param>
public sealed record MissingMeasures(string Entries, int Count, int Parts, IReadOnlyList<string> Lacking, string? Text, IReadOnlyList<Problem> Problems);

/// <summary>Finds the measures that a plan lacks.</summary>
public static class MeasureStarter
{
    private const string List = "measures";
    private const int Indent = 2;

    /// <summary>Finds them.</summary>
    /// <param name="tools">The tools of checks.</param>
    /// <param name="book">The rules by which the plan is judged.</param>
    /// <param name="file">Name of the plan as it is shown.</param>
    /// <param name="bytes">The plan; blanks in it are left out of account.</param>
    /// <param name="parts">The firm's parts, from the files that the plan uses.</param>
    public static MissingMeasures Find(PlanTools tools, RuleBook book, string file, byte[] bytes, FirmParts parts)
    {
        var read = YamlReader.Read(bytes);
        IReadOnlyList<Problem> problems = !read.IsSound ? ShownProblems.Of(file, read.Problems)
            : read.Documents.Count > 1 ? [new Problem(file, "The file holds several plans.", "Give each a file of its own.", null)]
            : read.Documents[0].AsMap("plan", "format", out var problem) is null ? ShownProblems.Of(file, [problem!])
            : Shape(tools, file, read.Documents[0], parts);
        if (problems.Count > 0)
        {
            return new MissingMeasures(string.Empty, 0, 0, [], null, problems);
        }

        var root = (MapToken)read.Documents[0].Root;
        var draft = DraftReader.Of(root);
        var before = (draft[List] as DraftList)?.Items.Count ?? 0;
        var completion = new Completion(tools, book, parts);
        completion.Complete(draft, Blanks.In(root).Count > 0 ? PlanStarter.Turns : 1, List);
        var added = (draft[List] as DraftList)?.Items.Skip(before).ToList() ?? [];
        var units = draft["courses"] is DraftList { Items: [DraftMap first, ..] } && first["thickness"] is DraftText { Text: { } thickness } && thickness.EndsWith("in", StringComparison.Ordinal) ? UnitSystem.UnitedStates : UnitSystem.Metric;
        string Lines(int indent) => new DraftWriter(tools.Reader.Schema, units).Entries(added, List, indent, draft);
        var text = added.Count == 0 ? null : ListInsertion.Add(Encoding.UTF8.GetString(bytes).TrimStart('\uFEFF'), root, List, indent => Lines(indent).TrimEnd('\n').Split('\n'));
        return new MissingMeasures(Lines(Indent), added.Count, added.Count(entry => entry is DraftText), Lacking(completion, draft, root), text, []);
    }

    // What is wrong apart from blanks would be judged as something that it is not.
    private static IReadOnlyList<Problem> Shape(PlanTools tools, string file, YamlDocument document, FirmParts parts)
    {
        var (whole, _, problems) = PlanComposer.Compose((MapToken)document.Root, file, parts.Files, new PartTools());
        return ShownProblems.Of(file, problems.Count > 0 ? problems : tools.Reader.ShapeWithoutBlanks(document with { Root = whole }));
    }

    private static IReadOnlyList<string> Lacking(Completion completion, DraftMap draft, MapToken root) =>
    [
        .. completion.Judge(draft, turn: 0).Missing.SelectMany(finding => finding.Missing)
            .Where(at => at.Address.StartsWith("measure:", StringComparison.Ordinal) && PlanAddresses.Find(root, at.Address) is not null)
            .Distinct()
            .GroupBy(at => at.Address, at => at.Key, StringComparer.Ordinal)
            .Select(keys => $"line {PlanAddresses.Find(root, keys.Key)!.Value.Span.Line}: the measure `{keys.Key["measure:".Length..]}` does not say {string.Join(", ", keys.Select(key => $"`{key}`"))}."),
    ];
}
