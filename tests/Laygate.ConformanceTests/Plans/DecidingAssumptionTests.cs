using System.Text;
using Laygate.Checking;
using Laygate.Reading;
using Laygate.Reporting.Html;
using Laygate.Reporting.Json;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Plans;

/// <summary>
/// An assumption that decides is named. Counts by hand: strips k = ⌈(W + hl + hr − o) / (b − o)⌉ (area per minute, kinematics);
/// two drums of 1.68 m with 0.15 m of overlap cover 3.21 m, a lane of 3.25 m off a kerb and over a cold lane asks for
/// 3.25 − 0.05 + 0.125 = 3.325 m. All figures of the plan are invented.
/// </summary>
public sealed class DecidingAssumptionTests
{
    private const string Lane = """
        format: 1
        plan: { id: lane, stage: submission, title: One lane }
        location: { jurisdiction: none }
        shift: { date: 2027-06-08, start: 07:00, end: 15:00, zone: +02:00 }
        mixes:
          - { id: ac11, kind: asphalt-concrete, aggregate_size: { sieve: 11 mm, basis: upper-sieve } }
        courses:
          - { id: wearing, kind: surface, mix: ac11, thickness: 40 mm, laid: separately, laying_temperature: { expected: 150 °C, place: course-mean } }
        runs:
          - { id: lane, courses: [wearing], from: 0 m, to: 1000 m, width: 3.25 m, left_edge: kerb, right_edge: existing-cold }
        pavers:
          - { id: p1, courses: [wearing], carried_by: base, speed: 5 m/min }
        rolling:
          reversal: 10 s
          phases:
            - { id: main, kind: main, passes: 4, zone_from: 2 m, zone_to: 42 m }
          rollers:
            - { id: r1, phase: main, kind: tandem, mass: 10 t, drum_width: 1.68 m, overlap: 150 mm, mode: vibration, frequency: 50 Hz, speed: 4.5 km/h }

        """;

    // Two strips are enough from 3.21 − W + 0.05 down: 0.01 m and 0.04 m; the value is named to a centimetre, on the side on which it holds.
    [Theory]
    [InlineData("3.25 m", -0.005, 0.010001)]
    [InlineData("3.22 m", 0.025, 0.040001)]
    public void A_reach_that_makes_three_strips_of_two_is_named_with_the_value_that_would_not(string width, double low, double high)
    {
        // No value that is usual for both edges saves a strip (3.25 − 0.10 + 0.10 = 3.25 m), so the plan fails.
        // E = (40/1.25)/(40/1.25 + 10) = 0.762, v = 0.762 · 75 / (3 · 4) = 4.76 m/min with three strips, 7.14 with two.
        var finding = Find(Lane.Replace("width: 3.25 m", $"width: {width}", StringComparison.Ordinal), "PAV-001", "paver:p1");
        Assert.Equal((Outcome.Missed, Status.Fail), (finding.Outcome, finding.Status));
        var note = Assert.Single(finding.Notes, note => note.Id == FindingNotes.AssumptionDecidesByCount);
        Assert.Equal("rolling.reach.existing_cold", note.Arguments.Single(argument => argument.Name == "assumption").Text);
        Assert.Equal((3, 2), (Number("from"), Number("to")));
        Assert.Equal("met", note.Arguments.Single(argument => argument.Name == "outcome").Text);
        Assert.InRange(Number("at"), low, high);

        // As a part of a sentence.
        var meaning = Laygate.Engineering.Assumptions.LaygateAssumptions.Set()["rolling.reach.existing_cold"].Meaning;
        Assert.Equal(char.ToLowerInvariant(meaning[0]) + meaning[1..].TrimEnd('.'), note.Arguments.Single(argument => argument.Name == "meaning").Text);

        double Number(string name) => note.Arguments.Single(argument => argument.Name == name).Number!.Value;
    }

    [Theory]
    [InlineData("0 m", Outcome.Met)]
    [InlineData("10 mm", Outcome.Met)]
    [InlineData("11 mm", Outcome.Missed)]
    [InlineData("125 mm", Outcome.Missed)]
    public void What_is_stated_in_its_place_decides_and_is_no_assumption_any_more(string reach, Outcome outcome)
    {
        var finding = Find(Lane.Replace("left_edge: kerb", $"left_edge: kerb, left_reach: -50 mm, right_reach: {reach}", StringComparison.Ordinal), "PAV-001", "paver:p1");
        Assert.Equal(outcome, finding.Outcome);
        Assert.Equal(outcome == Outcome.Met ? Status.Pass : Status.Fail, finding.Status);
        Assert.DoesNotContain(finding.Notes, note => note.Id.StartsWith("assumption", StringComparison.Ordinal));
    }

    [Fact]
    public void It_is_seen_in_the_usual_console_in_JSON_and_on_the_page()
    {
        var result = Check(Lane);
        var run = new ReportedRun("0.0.0", [result], []);
        string[] forms =
        [
            string.Join('\n', TerminalReport.Lines([result], new TerminalSettings(400) { Full = true }).Select(line => line.Text)),
            string.Join(' ', TerminalReport.Lines([result], new TerminalSettings(80)).Select(line => line.Text.Trim())),
            Written(stream => JsonOutput.Write(stream, "0.0.0", [result], [])),
            Written(stream => HtmlWriter.Write(run, stream)),
        ];
        Assert.All(forms, form => Assert.Contains("run:lane/right_reach", form, StringComparison.Ordinal));
        Assert.All(forms, form => Assert.Contains("2 in place of 3 (strips)", form.Replace('\u00A0', ' '), StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_is_said_where_the_whole_range_says_the_same()
    {
        // Far from a whole number: 2.6 m on drums of 1.68 m are two strips at both ends of every range.
        var finding = Find(Lane.Replace("width: 3.25 m", "width: 2.6 m", StringComparison.Ordinal).Replace("speed: 5 m/min", "speed: 12 m/min", StringComparison.Ordinal), "PAV-001", "paver:p1");
        Assert.Equal((Outcome.Missed, Status.Fail), (finding.Outcome, finding.Status));
        Assert.DoesNotContain(finding.Notes, note => note.Id.StartsWith("assumption", StringComparison.Ordinal));
    }

    private static string Written(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static Finding Find(string plan, string rule, string address) =>
        Assert.Single(Assert.Single(Check(plan).Reports).Findings, finding => finding.Rule == rule && finding.Address == address);

    private static FileResult Check(string plan)
    {
        var result = new PlanCheck(Repository.Bound(), new CheckSettings(null, Repository.CheckDate, Repository.Version)).Run("plan.yaml", Encoding.UTF8.GetBytes(plan));
        Assert.Empty(result.Problems);
        return result;
    }
}
