using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Reporting;

/// <summary>What is said about departures: the permission where one holds, what to do where it does not. The data are invented.</summary>
public sealed class DepartureWordsTests
{
    private static readonly Departure Permitted = new()
    {
        Id = "dep-001",
        Rule = "LAY-001",
        Address = "course:wearing",
        Reason = "levels",
        CompensatingMeasure = "three more cores",
        AskedBy = "A",
        ApprovedBy = "B",
        ApprovedOn = new DateOnly(2026, 11, 2),
        ExpiresOn = new DateOnly(2027, 6, 30),
        Accepted = new AcceptedValue("32 mm", 0.032, null),
        Reference = "letter 17",
        File = "departures.yaml",
    };

    [Theory]
    [InlineData(DepartureState.Expired, "Departure dep-001 from LAY-001 at course:wearing ended on 2027-06-30: the finding counts again. Have it renewed, or change the plan.")]
    [InlineData(DepartureState.Exceeded, "Departure dep-001 from LAY-001 at course:wearing accepts 32 mm, and the plan now has 31.5 mm: the finding counts again. Change the plan, or have the departure extended.")]
    [InlineData(DepartureState.Unused, "Departure dep-001 from LAY-001 at course:wearing is not used: the finding there is pass. Remove it.")]
    public void Each_state_has_its_sentence(DepartureState state, string sentence) =>
        Assert.Equal(sentence, DepartureWords.Of(new DepartureUse(Permitted, state, Status.Pass, Outcome.Met, new ShownValue(31.5, "mm"))));

    [Fact]
    public void Every_state_says_what_to_do_in_whole_sentences() =>
        Assert.All(Enum.GetValues<DepartureState>(), state =>
            Assert.Matches("^Departure dep-001 .*[^ ]\\.$", DepartureWords.Of(new DepartureUse(Permitted, state, null, null, null))));

    [Fact]
    public void The_permission_names_who_when_until_when_and_up_to_where() =>
        Assert.Equal("dep-001 by B on 2026-11-02 (letter 17), until 2027-06-30, up to 32 mm, asked for by A: levels", DepartureWords.Permission(Permitted));

    [Fact]
    public void One_that_does_not_hold_stands_before_the_findings_of_the_report()
    {
        var report = Samples.Report() with { Departures = [new DepartureUse(Permitted, DepartureState.Expired, Status.Fail, Outcome.Missed, null)] };
        var lines = TerminalReport.Lines([new FileResult("plan.yaml", [report], [])], new TerminalSettings(100) { Full = true }).Select(line => line.Text).ToList();
        var at = lines.FindIndex(line => line.StartsWith("Departures that do not hold: 1", StringComparison.Ordinal));
        Assert.StartsWith("  WARN  Departure dep-001", lines[at + 1], StringComparison.Ordinal);
    }
}
