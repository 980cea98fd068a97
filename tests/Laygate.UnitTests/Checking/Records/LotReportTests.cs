using System.Text;
using Laygate.Checking;
using Laygate.Checking.Records;
using Laygate.Reading.Acceptance;
using Laygate.Reading.Parts;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Acceptance;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Checking.Records;

/// <summary>Which characteristics of a scheme a lot is judged by, and against what. Plan, record and schemes are invented.</summary>
public sealed class LotReportTests
{
    private const string Plan = """
        format: 1
        plan: { id: small, stage: release }
        shift: { date: 2027-05-14, start: "21:15", end: "05:00", zone: +02:00 }
        mixes: [{ id: m }]
        courses: [{ id: lower, mix: m, thickness: 80 mm, laid: separately }, { id: upper, mix: m, thickness: 40 mm, laid: separately }]
        runs: [{ id: r, courses: [lower, upper], from: 0 m, to: 400 m, width: 4 m }]
        """;

    private const string Head = """
        name: own
        title: Own
        issuer: A port that does not exist
        edition: invented
        coverage: Everything.
        sources: [{ id: own, title: The contract itself }]
        sublots: { count: 1 }
        characteristics:

        """;

    private const string Cores = """
        format: 1
        record: { plan: small }
        files:
          - file: cores.csv
            holds: cores
            encoding: utf-8
            delimiter: comma
            decimal_mark: point
            columns:
              - { column: core, quantity: core }
              - { column: course, quantity: course }
              - { column: station, quantity: station, unit: m }
              - { column: bulk, quantity: bulk, unit: kg/m3 }
              - { column: maximum, quantity: maximum, unit: kg/m3 }
              - { column: thickness, quantity: thickness_1, unit: mm }
        """;

    private const string Tables = """
          - { id: many, measures: density-of-maximum, statistic: mean, unit: "%", lower: 92, least: 3, source: { id: own, evidence: read } }
          - { id: few, measures: density-of-maximum, statistic: least, unit: "%", lower: 91, most: 2, source: { id: own, evidence: read } }
        """;

    // As a table for small lots says it: up to two results are judged by it, three or more by the other; where there is none yet, the usual one stands.
    [Theory]
    [InlineData(0, "many")]
    [InlineData(1, "few")]
    [InlineData(2, "few")]
    [InlineData(3, "many")]
    [InlineData(4, "many")]
    public void A_table_for_small_lots_stands_in_for_the_one_that_needs_more_results(int cores, string characteristic) =>
        Assert.Equal(characteristic, Assert.Single(Lot(Tables, cores, "upper").Characteristics).Id);

    [Fact]
    public void Without_a_table_for_small_lots_too_few_results_are_shown_and_not_decided()
    {
        var one = Assert.Single(Lot(Tables[..Tables.IndexOf('\n', StringComparison.Ordinal)], 2, "upper").Characteristics);
        Assert.Equal(("many", 2, LotVerdict.NotDecided), (one.Id, one.Values.Count, one.Verdict));
    }

    // A camera sees the course that is laid last.
    [Theory]
    [InlineData("lower", "compaction")]
    [InlineData("upper", "compaction profile")]
    public void A_thermal_profile_belongs_to_the_uppermost_course_alone(string course, string characteristics)
    {
        const string both = """
              - { id: compaction, measures: density-of-maximum, statistic: mean, unit: "%", lower: 92, source: { id: own, evidence: read } }
              - { id: profile, measures: thermal-range, statistic: greatest, unit: K, upper: 14, profile: { length: 50 m, low: 1 %, high: 98.5 % }, source: { id: own, evidence: read } }
            """;
        Assert.Equal(characteristics, string.Join(' ', Lot(both, 1, course).Characteristics.Select(one => one.Id)));
    }

    [Fact]
    public void The_design_thickness_is_said_to_be_the_plans()
    {
        const string thickness = """
              - { id: thickness, measures: thickness, statistic: shortfall, unit: mm, rows: [{ at_most: 6, verdict: accept }, { verdict: reject }], source: { id: own, evidence: read } }
            """;
        var limit = Assert.Single(Assert.Single(Lot(thickness, 1, "upper").Characteristics).Limits);
        Assert.Equal(("design", true), (limit.Name, limit.FromPlan));
        Assert.Equal(40, limit.Value!.Value, 1e-9);
    }

    private static AcceptanceLot Lot(string characteristics, int cores, string course)
    {
        var (scheme, problems) = SchemeReader.Read("own.yaml", Encoding.UTF8.GetBytes(Head + characteristics));
        Assert.True(problems.Count == 0, string.Join('\n', problems.Select(problem => $"{problem.Position?.Line} {problem.Message} {problem.Hint}")));
        var rows = string.Concat(Enumerable.Range(1, cores).Select(number => FormattableString.Invariant($"{number},{course},{50 * number},2350,2500,41\n")));
        var files = new Dictionary<string, byte[]>(StringComparer.Ordinal) { ["record.yaml"] = Encoding.UTF8.GetBytes(Cores), ["cores.csv"] = Encoding.UTF8.GetBytes("core,course,station,bulk,maximum,thickness\n" + rows) };
        var (shift, wrong) = RecordedShift.Open(new PlanTools(), "small.yaml", Encoding.UTF8.GetBytes(Plan), new NoPartFiles(), new RuleFolderInMemory("rec", files));
        Assert.True(wrong.Count == 0, string.Join('\n', wrong.Select(problem => $"{problem.Position?.Line} {problem.Message} {problem.Hint}")));
        return shift!.Lots(scheme!, 4711, "1").Lots.Single(lot => string.Equals(lot.Course, course, StringComparison.Ordinal));
    }
}
