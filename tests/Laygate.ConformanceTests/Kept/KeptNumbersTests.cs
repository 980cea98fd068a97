using System.Globalization;
using Laygate.Engineering.Quantities;
using Laygate.FuzzTests.Metamorphic;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Kept;

/// <summary>
/// A plan keeps its numbers from one version to the next unless somebody means to change them. What random plans come to is summed up by quantity and by rule;
/// a line that differs says which of them has moved. That the numbers are right is tested elsewhere.
/// </summary>
public sealed class KeptNumbersTests
{
    private const int PlansOfFindings = 4, PlansOfQuantities = 2;
    private static readonly QuantityCatalogue Catalogue = LaygateQuantities.Catalogue();

    public static TheoryData<int> Findings => [.. Enumerable.Range(0, 6).Select(part => part * PlansOfFindings)];

    public static TheoryData<int> Quantities => [.. Enumerable.Range(0, 8).Select(part => 100 + (part * PlansOfQuantities))];

    [Theory]
    [MemberData(nameof(Findings))]
    public void Findings_of_random_plans_are_the_approved_ones(int first) => Approved.Match(
        Lines(Plans(first, PlansOfFindings).SelectMany(plan => plan.Result.Reports[0].Findings).GroupBy(finding => finding.Rule, StringComparer.Ordinal), OfFindings),
        $"Kept_findings_{first}");

    [Theory]
    [MemberData(nameof(Quantities))]
    public void Quantities_of_random_plans_are_the_approved_ones(int first) => Approved.Match(
        Lines(Plans(first, PlansOfQuantities).Select(plan => Judgement.Context(plan.Plan, isQuick: false)).SelectMany(Answers).GroupBy(one => one.Quantity, one => one.Answer, StringComparer.Ordinal), OfAnswers),
        $"Kept_quantities_{first}");

    private static IEnumerable<(System.Text.Json.Nodes.JsonNode Plan, FileResult Result)> Plans(int first, int count) => Enumerable.Range(first, count).Select(RandomPlan.Next);

    private static IEnumerable<(string Quantity, Answer Answer)> Answers(QuantityContext context) =>
        from quantity in Catalogue.All
        from element in context.Elements.Of(quantity.Element)
        select (quantity.Name, context.Get(quantity.Name, element));

    private static string Lines<T>(IEnumerable<IGrouping<string, T>> groups, Func<IReadOnlyList<T>, string> line) =>
        string.Concat(groups.OrderBy(group => group.Key, StringComparer.Ordinal).Select(group => $"{group.Key}: {line([.. group])}\n"));

    private static string OfFindings(IReadOnlyList<Finding> findings) => string.Join(
        "; ",
        Counted(findings.Select(finding => $"{finding.Outcome} {finding.Status}")),
        Mean(findings.Select(finding => finding.Value?.Number)) + Mean(findings.Select(finding => finding.Limit?.Low?.Number)) + Mean(findings.Select(finding => finding.Limit?.High?.Number)),
        Counted(findings.SelectMany(finding => finding.Notes.Select(note => note.Id))));

    private static string OfAnswers(IReadOnlyList<Answer> answers) => string.Join(
        "; ",
        Counted(answers.Select(Kind)),
        Counted(answers.SelectMany(Missing)),
        Mean(answers.Select(answer => (answer.Value as NumberValue)?.Si)) + Mean(answers.Select(answer => (answer.Value as NumberValue)?.Low)) + Mean(answers.Select(answer => (answer.Value as NumberValue)?.High)));

    private static string Kind(Answer answer) => answer switch
    {
        { Absence: { } absence } => absence.Reason.ToString(),
        { Value: CategoryValue word } => word.Word,
        { Value: FlagValue flag } => flag.Yes ? "yes" : "no",
        { Value: PresenceValue presence } => presence.Level.ToString(),
        _ => answer.Origin.ToString(),
    };

    private static IEnumerable<string> Missing(Answer answer) =>
        answer.Absence?.Missing.Select(input => input.Key) ?? (answer.Value as PresenceValue)?.MissingFields ?? [];

    private static string Counted(IEnumerable<string> words) =>
        string.Join(", ", words.GroupBy(word => word, StringComparer.Ordinal).OrderBy(word => word.Key, StringComparer.Ordinal).Select(word => $"{word.Count()} {word.Key}"));

    // Five digits: the last ones of a double may differ from processor to processor.
    private static string Mean(IEnumerable<double?> numbers) => numbers.OfType<double>().Where(double.IsFinite).ToList() is { Count: > 0 } known
        ? known.Average().ToString("G5", CultureInfo.InvariantCulture) + " " : "- ";
}
