using System.Text;
using Laygate.Checking;
using Laygate.Reading;
using Laygate.Reporting.Language;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Plans;

/// <summary>A slip of a unit is warned of once, at its line, with the one unit in which the number would be usual.</summary>
public sealed class UsualValueTests
{
    private static readonly PlanTools Tools = new();

    [Theory]
    [InlineData("quay-road-hot-on-hot", "exchange: 1.0 min", "exchange: 1.0 h", "1 min")]
    [InlineData("county-route-us", "drum_width: 84 in", "drum_width: 84 ft", "84 in")]
    [InlineData("county-route-us", "reversal: 10 s", "reversal: 10 min", "10 s")]
    [InlineData("moor-road-thin-overlay", "haul_out: 80 min", "haul_out: 80 s", "80 min")]
    [InlineData("moor-road-thin-overlay", "cessation: { value: 195 °F", "cessation: { value: 195 °C", "195 °F")]
    [InlineData("moor-road-thin-overlay", "tonnage: 517 short ton", "tonnage: 517000 short ton", "517000 lb")]
    public void A_slip_of_the_unit_is_warned_of_once_at_its_line(string plan, string right, string slip, string meant)
    {
        var text = Encoding.UTF8.GetString(Repository.Bytes(Repository.Whole(plan)));
        var at = text.IndexOf(right, StringComparison.Ordinal);
        Assert.True(at >= 0, $"{plan} does not say {right}.");
        var finding = Assert.Single(Unusual(text.Remove(at, right.Length).Insert(at, slip)));
        Assert.Equal((Outcome.Missed, Status.Warn, text[..at].Count(letter => letter == '\n') + 1), (finding.Outcome, finding.Status, finding.Position!.Line));
        Assert.Contains(finding.Notes.Select(NoteWords.Of), note => note.StartsWith($"Did you mean {meant}?", StringComparison.Ordinal));
    }

    [Fact]
    public void No_unit_is_named_in_which_the_number_is_not_usual_either()
    {
        var text = Encoding.UTF8.GetString(Repository.Bytes("examples/moor-road-thin-overlay.yaml"));
        var finding = Assert.Single(Unusual(text.Replace("count: 6\n", "count: 600\n", StringComparison.Ordinal)));
        Assert.DoesNotContain(finding.Notes, note => note.Id == FindingNotes.UnitSlip);
    }

    public static TheoryData<string> Shipped => ["concept-fifteen-lines", "county-route-us", "moor-road-thin-overlay", "quay-road-hot-on-hot"];

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Nothing_is_unusual_in_a_shipped_example(string plan) => Assert.Empty(Unusual(Encoding.UTF8.GetString(Repository.Bytes(Repository.Whole(plan)))));

    private static IEnumerable<Finding> Unusual(string text)
    {
        var result = new PlanCheck(Repository.Bound("us-wa"), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true }, tools: Tools).Run("plan.yaml", Encoding.UTF8.GetBytes(text));
        Assert.Empty(result.Problems);
        return result.Reports.SelectMany(report => report.Findings).Where(finding => finding.Quantity.StartsWith("value.", StringComparison.Ordinal));
    }
}
