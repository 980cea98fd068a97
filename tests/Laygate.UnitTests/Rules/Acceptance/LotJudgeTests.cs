using System.Text;
using Laygate.Reading;
using Laygate.Reading.Acceptance;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Acceptance;

namespace Laygate.UnitTests.Rules.Acceptance;

/// <summary>Shipped schemes against the tables and sums of their publications, and a scheme of one's own without a line of C#.</summary>
public sealed class LotJudgeTests
{
    private static readonly CourseLimits None = new(null, null, null, null);

    // Source: UFGS 02749, air voids (read): 3.5, 3.0, 4.0, 3.7 against 4.0 deviate by 1.8/4 = 0.45 on average: full pay.
    [Theory]
    [InlineData(0.45, 100, 3.5, 3.0, 4.0, 3.7)]
    [InlineData(0.80, 98, 3.2, 4.8, 3.2, 4.8)]
    [InlineData(1.00, 95, 3.0, 5.0, 3.0, 5.0)]
    [InlineData(1.20, 90, 2.8, 5.2, 2.8, 5.2)]
    public void Voids_by_their_mean_deviation(double deviation, double pay, params double[] voids)
    {
        var outcome = Judge("ufgs-02749", "air-voids", None with { Target = 4.0 }, voids);
        Assert.Equal((deviation, pay), (outcome.Statistic!.Value, outcome.Pay!.Value));
        Assert.Equal(pay >= 100 ? LotVerdict.Accept : LotVerdict.Adjust, outcome.Verdict);
    }

    [Fact]
    public void Voids_that_deviate_more_are_rejected() => Assert.Equal(LotVerdict.Reject, Judge("ufgs-02749", "air-voids", None with { Target = 4.0 }, [2, 6, 2, 6]).Verdict);

    // Derived from Florida 334-8, (55 + 0.5 PWL)/100 (read): 100, 90, 81.5 and 60 give 1.05, 1.00, 0.9575 and 0.85.
    [Theory]
    [InlineData(100, 105)]
    [InlineData(90, 100)]
    [InlineData(81.5, 95.75)]
    [InlineData(60, 85)]
    public void Florida_pays_half_a_percent_for_each(double percent, double pay) => Assert.Equal(pay, Pay("florida-334", "density", percent), 1e-9);

    // Derived from FHWA-HRT-12-027, appendix B (read): +0.04, 0 and -0.08 for density; +0.03, 0 and -0.06 for voids.
    [Theory]
    [InlineData("density", 100, 104)]
    [InlineData("density", 90, 100)]
    [InlineData("density", 70, 92)]
    [InlineData("air-voids", 100, 103)]
    [InlineData("air-voids", 90, 100)]
    [InlineData("air-voids", 70, 94)]
    public void A_straight_line_of_pay(string characteristic, double percent, double pay) => Assert.Equal(pay, Pay("hrt-12-027", characteristic, percent), 1e-9);

    // Pay table of FAA P-401, from memory (recalled); note the steps at 95/96 and between 74 and 75.
    [Theory]
    [InlineData(100, 106)]
    [InlineData(96, 106)]
    [InlineData(95, 105)]
    [InlineData(90, 100)]
    [InlineData(89, 99.5)]
    [InlineData(75, 92.5)]
    [InlineData(74, 91.6)]
    [InlineData(55, 65.0)]
    public void Airport_pay(double percent, double pay) => Assert.Equal(pay, Pay("faa-p-401", "mat-density", percent), 1e-9);

    [Fact]
    public void A_table_that_is_only_remembered_rejects_nobody()
    {
        var outcome = Judge("faa-p-401", "mat-density", None with { Lower = 92.8 }, [88, 89, 88.5, 89.5]);
        Assert.Equal((LotVerdict.NotDecided, true), (outcome.Verdict, outcome.IsWeak));
    }

    // Source: a town's code of ordinances (read): design 2 in, short by 0.25, 0.30 and 0.40 in: paid; left, binder only; removed or overlaid.
    [Theory]
    [InlineData(2.0, 1.75, LotVerdict.Accept)]
    [InlineData(2.0, 1.70, LotVerdict.Adjust)]
    [InlineData(2.0, 1.60, LotVerdict.Reject)]
    [InlineData(3.0, 2.50, LotVerdict.Accept)]
    [InlineData(3.0, 2.25, LotVerdict.Adjust)]
    [InlineData(3.0, 2.20, LotVerdict.Reject)]
    public void Thickness_falls_short_of_its_design(double design, double thinnest, LotVerdict verdict) =>
        Assert.Equal(verdict, Judge("palm-shores", "thickness", None with { Design = design }, [design, thinnest, design + 0.1]).Verdict);

    // Source: Tex-244-F (read): up to 25 °F none, above to 50 °F moderate, above severe. The borders are those of the rule, not of a rounded kelvin.
    [Theory]
    [InlineData(25.0, "no thermal segregation")]
    [InlineData(25.02, "moderate thermal segregation")]
    [InlineData(50.0, "moderate thermal segregation")]
    [InlineData(61.8, "severe thermal segregation")]
    public void Thermal_classes(double range, string says) => Assert.Equal(says, Judge("tex-244-f", "thermal-profile", None, [range]).Says);

    // Source: Florida 334, small quantities, coarse mixes (read).
    [Theory]
    [InlineData(105, 93.5)]
    [InlineData(100, 94.0)]
    [InlineData(95, 94.5)]
    [InlineData(90, 94.6)]
    [InlineData(105, 93.0, 93.7)]
    [InlineData(100, 93.4, 94.0)]
    [InlineData(90, 94.5, 94.2)]
    public void Lots_of_one_or_two_results(double pay, params double[] results) => Assert.Equal(pay, Judge("florida-334", "density-of-a-small-lot", None with { Target = 93.0 }, results).Pay);

    [Fact]
    public void Without_spread_all_lies_on_the_side_of_the_mean()
    {
        Assert.Equal(100, Judge("florida-334", "density", None with { Lower = 92 }, [93, 93, 93]).Statistic);
        Assert.Equal(0, Judge("florida-334", "density", None with { Lower = 92 }, [91, 91, 91]).Statistic);
        Assert.All(Judge("florida-334", "density", None with { Lower = 92 }, [91, 91, 91]).Steps, step => Assert.True(step.Value >= 0, step.Expression));
    }

    [Fact]
    public void A_limit_that_nobody_states_decides_nothing() => Assert.Equal(LotVerdict.NotDecided, Judge("florida-334", "density", None, [93, 94, 95]).Verdict);

    [Fact]
    public void A_range_that_the_table_does_not_list_is_not_decided()
    {
        Assert.Equal((LotVerdict.Accept, 100), (Judge("sc-m-400", "density", None, [93.2, 93.8]).Verdict, Judge("sc-m-400", "density", None, [93.2, 93.8]).Pay));
        var outcome = Judge("sc-m-400", "density", None, [91.2, 91.8]);
        Assert.Equal((LotVerdict.NotDecided, true), (outcome.Verdict, outcome.IsUnlisted));
    }

    // Derived: to reach a mean deviation of 0.60 over five results when four have 0.8 on average, the fifth may deviate by no more than 5 · 0.60 − 3.2 < 0: none does.
    [Fact]
    public void What_the_next_result_must_reach_is_said_where_one_can()
    {
        var scheme = Characteristic("ufgs-02749", "air-voids");
        Assert.Null(LotJudge.Next(scheme, None with { Target = 4.0 }, [3.2, 4.8, 3.2, 4.8]));
        var next = LotJudge.Next(scheme, None with { Target = 4.0 }, [3.3, 4.7, 3.3, 4.6])!.Value;
        // By hand: 0.7 + 0.7 + 0.7 + 0.6 = 2.7; 5 · 0.60 − 2.7 = 0.3 on either side of 4.0, and 0.005 more by rounding.
        Assert.InRange(next.Low, 3.67, 3.72);
        Assert.InRange(next.High, 4.28, 4.33);
    }

    // By hand: the mean of three is at most 10 where the third is at most 30 − (10 + 14) = 6, and at least 12 where it is at least 36 − (6 + 10) = 20: both lie far beyond the two.
    [Theory]
    [InlineData("upper: 10", 10, 14, double.NegativeInfinity, 6)]
    [InlineData("lower: 12", 6, 10, 20, double.PositiveInfinity)]
    public void What_the_next_result_must_reach_is_found_far_from_those_so_far(string limit, double first, double second, double low, double high)
    {
        var text = Own.Replace("statistic: least", "statistic: mean", StringComparison.Ordinal).Replace("lower: 97", limit, StringComparison.Ordinal);
        var limits = limit.StartsWith("upper", StringComparison.Ordinal) ? None with { Upper = 10 } : None with { Lower = 12 };
        var next = LotJudge.Next(SchemeReader.Read("own.yaml", Encoding.UTF8.GetBytes(text)).Scheme!.Characteristics[0], limits, [first, second])!.Value;
        Assert.Equal((low, high), (Whole(next.Low), Whole(next.High)));

        static double Whole(double number) => double.IsInfinity(number) ? number : Math.Round(number);
    }

    [Fact]
    public void Every_shipped_scheme_is_bound_and_names_its_publication()
    {
        Assert.True(SchemeReader.Shipped.Count >= 4);
        Assert.All(SchemeReader.Shipped, name =>
        {
            var (scheme, problems) = SchemeReader.Open(name, new NoFiles());
            Assert.True(problems.Count == 0, string.Join('\n', problems.Select(problem => $"{name}:{problem.Position?.Line} {problem.Message} {problem.Hint}")));
            Assert.Equal(name, scheme!.Name);
        });
    }

    [Fact]
    public void A_scheme_of_ones_own_needs_no_program()
    {
        var (scheme, problems) = SchemeReader.Read("own.yaml", Encoding.UTF8.GetBytes(Own));
        Assert.Empty(problems);
        Assert.Equal(LotVerdict.Reject, LotJudge.Judge(scheme!.Characteristics[0], None with { Lower = 97 }, [98, 96.5, 99]).Verdict);
    }

    [Theory]
    [InlineData("unit: \"%\"", "unit: mm", "no unit of density-of-reference")]
    [InlineData("id: own, evidence", "id: other, evidence", "no source `other`")]
    [InlineData("lower: 97", "lower: ninety", "lower")]
    [InlineData("statistic: least", "statistic: percent-within\n    percent: formul", "percent")]
    [InlineData("statistic: least", "statistic: shortfall", "fall short")]
    [InlineData("sublots: { count: 4 }", "sublots: { count: 4, length: 100 m }", "one way")]
    public void What_does_not_fit_is_refused_when_it_is_read(string from, string to, string says)
    {
        var (scheme, problems) = SchemeReader.Read("own.yaml", Encoding.UTF8.GetBytes(Own.Replace(from, to, StringComparison.Ordinal)));
        Assert.Null(scheme);
        Assert.Contains(problems, problem => problem.Message.Contains(says, StringComparison.Ordinal));
    }

    private const string Own = """
        name: own
        title: Least degree of compaction
        issuer: A port that does not exist
        edition: invented
        coverage: The least of all cores.
        sources: [{ id: own, title: The contract itself }]
        sublots: { count: 4 }
        characteristics:
          - id: compaction
            measures: density-of-reference
            statistic: least
            unit: "%"
            lower: 97
            source: { id: own, evidence: read }
        """;

    private static SchemeCharacteristic Characteristic(string scheme, string id) => SchemeReader.Open(scheme, new NoFiles()).Scheme!.Characteristics.Single(one => one.Id == id);

    private static Laygate.Rules.Results.LotOutcome Judge(string scheme, string id, CourseLimits limits, double[] results) => LotJudge.Judge(Characteristic(scheme, id), limits, results);

    // The rows of a table alone: the statistic is given.
    private static double Pay(string scheme, string id, double percent)
    {
        var rows = Characteristic(scheme, id) with { Statistic = LotStatistic.Mean };
        return LotJudge.Judge(rows with { Rounding = new SchemeRounding(null, null, null, null, Laygate.Engineering.Acceptance.HalfRule.HalfUp) }, None, [percent]).Pay!.Value;
    }

    private sealed class NoFiles : IRuleFiles
    {
        public IRuleFolder? Folder(string path) => null;

        public byte[]? File(string path) => null;
    }
}
