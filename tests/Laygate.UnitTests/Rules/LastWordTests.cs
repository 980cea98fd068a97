using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;
using static Laygate.UnitTests.Rules.TestBook;

namespace Laygate.UnitTests.Rules;

/// <summary>Which governs where a worst-case relation and the quantity with the last word differ. All figures are invented.</summary>
public sealed class LastWordTests
{
    private const string WorstCase = "course.thickness";
    private const string Verdict = "course.thickness_to_size";

    private static readonly QuantityCatalogue Decided = new(
        Catalogue.All.Select(one => one.Name == WorstCase ? one with { DecidedBy = Verdict } : one));

    [Theory]
    [InlineData(35, 3, Strength.Advised, FindingNotes.SimulationPasses)]
    [InlineData(45, 2, Strength.Advised, FindingNotes.SimulationMisses)]
    [InlineData(45, 2, Strength.Required, FindingNotes.SimulationMisses)]
    [InlineData(35, 2, Strength.Advised, null)]
    [InlineData(45, 3, Strength.Advised, null)]
    [InlineData(35, 3, Strength.Required, null)]
    public void The_finding_of_the_worst_case_says_so(double millimetres, double ratio, Strength strength, string? expected)
    {
        var report = Report(Decided, strength, millimetres, ratio);
        var worst = report.Findings.Single(finding => finding.Rule == "LAY-001");
        Assert.Equal(expected, worst.Notes.Select(note => note.Id).SingleOrDefault(id => id.StartsWith("simulation-", StringComparison.Ordinal)));
        Assert.Equal(expected is null ? null : "LAY-002", worst.Notes.SelectMany(note => note.Arguments).FirstOrDefault(argument => argument.Name == "rule")?.Text);
        Assert.DoesNotContain(report.Findings.Single(finding => finding.Rule == "LAY-002").Notes, note => note.Id.StartsWith("simulation-", StringComparison.Ordinal));
    }

    [Fact]
    public void It_changes_neither_outcome_nor_status_and_needs_a_worst_case()
    {
        var with = Report(Decided, Strength.Advised, 35, 3);
        var without = Report(Catalogue, Strength.Advised, 35, 3);
        Assert.Equal(without.Findings.Select(finding => (finding.Outcome, finding.Status)), with.Findings.Select(finding => (finding.Outcome, finding.Status)));
        Assert.DoesNotContain(without.Findings.SelectMany(finding => finding.Notes), note => note.Id.StartsWith("simulation-", StringComparison.Ordinal));
    }

    private static Report Report(QuantityCatalogue catalogue, Strength strength, double millimetres, double ratio)
    {
        var general = General(
            Rule(WorstCase, CheckKind.AtLeast, AtLeast(40, "mm", strength)),
            Rule(Verdict, CheckKind.AtLeast, AtLeast(2.5, string.Empty)) with { Id = "LAY-002", Name = "second-rule" });
        var book = RuleBook.Build(general, [], catalogue, Assumptions).Book!;
        var context = new QuantityContext(Plan(), catalogue, Assumptions, 1)
            .Given(WorstCase, new NumberValue(millimetres / 1000), "mm")
            .Given(Verdict, new NumberValue(ratio));
        return Evaluator.Evaluate(book, context, new EvaluationSettings { File = "plan.yaml", CheckedOn = Today });
    }
}
