using Laygate.Reading.RuleFiles;
using Laygate.Rules.Definitions;

namespace Laygate.Checking.Cases;

/// <summary>What cases say about a specification: the limits that it sets, and the assumptions that it replaces.</summary>
public sealed partial class CaseRunner
{
    private const string CaseFolder = "/cases/";

    /// <summary>Runs the cases that a specification holds, in <c>cases/ID.yaml</c>, for the limits that it sets.</summary>
    /// <param name="specification">The specification.</param>
    /// <returns>Results by rule; a rule without such a file is not among them.</returns>
    public IReadOnlyList<(string Rule, IReadOnlyList<CaseResult> Results)> RunSet(Specification specification) =>
        [.. SetCaseFiles(specification).Select(file => (Stem(file), RunSet(specification, file)))];

    /// <summary>The limits that a specification sets and that no case shows, there or with its rule.</summary>
    /// <param name="specification">The specification.</param>
    public IReadOnlyList<CaseResult> Unshown(Specification specification) =>
    [
        .. specification.Set.Select(set => set.Rule).Distinct(StringComparer.Ordinal)
            .Where(id => SetCasesOf(specification, id) is null && !IsShown(specification, id))
            .Select(id => About(id, $"specifications/{specification.Name}/specification.yaml", $"No case shows the limit that is set for `{id}`: write one that meets it and one that misses it into `cases/{id}.yaml`.")),
    ];

    // A shipped rule may show in its own cases what a specification makes of it.
    private bool IsShown(Specification specification, string id) =>
        Rules.FirstOrDefault(rule => string.Equals(rule.Id, id, StringComparison.Ordinal)) is { } rule
        && Read(rule).Cases.Any(one => one.With.Contains(specification.Name, StringComparer.Ordinal));

    private IReadOnlyList<CaseResult> RunSet(Specification specification, string file)
    {
        var rule = Rules.FirstOrDefault(known => string.Equals(known.Id, Stem(file), StringComparison.Ordinal));
        if (rule is null || !specification.Set.Any(set => string.Equals(set.Rule, rule.Id, StringComparison.Ordinal)))
        {
            return [About(Stem(file), file, $"The specification sets no limit of `{Stem(file)}`.")];
        }

        var (cases, problems) = Read(rule, file, specification);
        var lacking = new[] { "met", "missed" }.Where(kind => !cases.Any(one => string.Equals(one.Finding.Text("outcome"), kind, StringComparison.Ordinal)));
        return
        [
            .. problems,
            .. cases.Select(one => Result(rule, one, Differences(rule, one), file)),
            .. lacking.Select(kind => About(rule.Id, file, $"No case shows the outcome {kind}.")),
        ];
    }

    private CaseResult About(string rule, string file, string message) => new(rule, new DocumentReader(folder).NameOf(file), string.Empty, null, [message]);

    private IEnumerable<string> SetCaseFiles(Specification specification) => folder.Files
        .Where(file => file.StartsWith($"specifications/{specification.Name}{CaseFolder}", StringComparison.Ordinal) && file.EndsWith(".yaml", StringComparison.Ordinal))
        .Order(StringComparer.Ordinal);

    /// <summary>The cases that a specification holds for the limit of a rule that it sets.</summary>
    internal IReadOnlyList<RuleCase> SetCases(Specification specification, string id) =>
        Rules.FirstOrDefault(known => string.Equals(known.Id, id, StringComparison.Ordinal)) is { } rule ? Read(rule, SetCasesOf(specification, id), specification).Cases : [];

    private string? SetCasesOf(Specification specification, string id) =>
        $"specifications/{specification.Name}{CaseFolder}{id}.yaml" is var file && folder.Files.Contains(file, StringComparer.Ordinal) ? file : null;

    private static string Stem(string file) => file[(file.LastIndexOf('/') + 1)..^".yaml".Length];
}
