using System.Globalization;
using CsCheck;
using Laygate.Engineering.Quantities;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Reporting;

/// <summary>Rounding to the digits that the spread deserves (judgement): minutes to 1 below 20 and to 5 above, temperatures to 1 K, chances to 5 %.</summary>
public class RoundingTests
{
    private static readonly string[] Units = ["min", "°C", "t/h", "", "%"];

    [Theory]
    [InlineData(47.83, 40, 61, "min", "50 min (40 to 60)")]
    [InlineData(11.83, 9.1, 15.6, "min", "12 min (9 to 16)")]
    [InlineData(19.4, 17.2, 23.4, "min", "19 min (17 to 25)")]
    [InlineData(131.37, 128.2, 133.9, "°C", "131 °C (128 to 134)")]
    [InlineData(182.4, 171.2, 188.3, "t/h", "182 t/h (171 to 188)")]
    [InlineData(2.5432, 2.1, 2.9, "h", "2.5 h (2.1 to 2.9)")]
    public void A_band_decides_how_many_digits_a_prediction_deserves(double value, double low, double high, string unit, string shown) =>
        Assert.Equal(shown, Shown(new ShownValue(value, unit, low, high), Origin.Computed));

    /// <summary>Minutes without a spread come from speeds and lengths that nobody holds to a second.</summary>
    [Theory]
    [InlineData(47.83, "48 min")]
    [InlineData(4.083, "4.1 min")]
    [InlineData(131.4, "131 min")]
    public void Computed_minutes_without_a_spread_have_no_seconds(double value, string shown) =>
        Assert.Equal(shown, Shown(new ShownValue(value, "min"), Origin.Computed));

    [Theory]
    [InlineData(2.2727272727, "", "2.27")]
    [InlineData(1234.5, "t", "1230 t")]
    [InlineData(0.00123456, "m", "0.00123 m")]
    [InlineData(1250, "", "1250")]
    [InlineData(47.83, "h", "47.8 h")]
    [InlineData(99.96, "t", "100 t")]
    public void A_computed_value_has_three_significant_digits(double value, string unit, string shown) =>
        Assert.Equal(shown, Shown(new ShownValue(value, unit), Origin.Computed));

    [Theory]
    [InlineData(2.345, "t/m3", "2.345 t/m3")]
    [InlineData(48.5, "F", "48.5 F")]
    [InlineData(0.1 + 0.2, "m", "0.3 m")]
    public void A_stated_value_keeps_its_digits(double value, string unit, string shown) =>
        Assert.Equal(shown, Shown(new ShownValue(value, unit), Origin.Stated));

    /// <summary>An end that is the shown value already is not said again, and no end reads "at least under".</summary>
    [Theory]
    [InlineData(1.2, 0.4, 3.9, "1 % (under 1 to 4)")]
    [InlineData(0.4, 0.1, 1.1, "under 1 % (at most 1)")]
    [InlineData(0, 0, 0.4, "0 % (under 1)")]
    [InlineData(3.7, 1.1, 5.2, "4 % (1 to 5)")]
    [InlineData(99.6, 91, 99.8, "over 99 % (at least 91)")]
    [InlineData(62, 58, 71, "60 % (60 to 70)")]
    public void The_ends_of_a_chance_are_said_once(double value, double low, double high, string shown) =>
        Assert.Equal(shown, Shown(new ShownValue(value, "%", low, high), Origin.Computed, "supply.chance_of_stop"));

    [Theory]
    [InlineData(3.7, "4 %")]
    [InlineData(0.4, "under 1 %")]
    [InlineData(0, "0 %")]
    [InlineData(99.7, "over 99 %")]
    [InlineData(62, "60 %")]
    public void A_chance_is_rounded_to_five_per_cent_and_near_its_ends_to_one(double value, string shown) =>
        Assert.Equal(shown, Shown(new ShownValue(value, "%"), Origin.Computed, "supply.chance_of_stop"));

    [Theory]
    [InlineData(2.999, 3, "Thickness to size: 2.999, but at least 3 is required.")]
    [InlineData(2.99999, 3, "Thickness to size: 2.99999, but at least 3 is required.")]
    [InlineData(3.001, 3, "Thickness to size: 3; at least 3 is required.")]
    [InlineData(2.9999999, 3, "Thickness to size: 2.9999999, but at least 3 is required.")]
    public void A_value_that_misses_never_looks_like_its_limit(double value, double limit, string sentence) =>
        Assert.Equal(sentence, Wording.Sentence(Compared(value, null, null, string.Empty, limit)));

    [Theory]
    [InlineData(47.4, 49, "Thickness to size: 45 min (40 to 60), but at least 49 min is required.")]
    [InlineData(47.6, 49, "Thickness to size: 48 min (41 to 58), but at least 49 min is required.")]
    [InlineData(47.6, 48, "Thickness to size: 47.6 min (41.2 to 58.3), but at least 48 min is required.")]
    [InlineData(47.4, 46, "Thickness to size: 47 min (41 to 58); at least 46 min is required.")]
    public void Rounding_to_five_minutes_never_carries_a_value_over_its_limit(double value, double limit, string sentence) =>
        Assert.Equal(sentence, Wording.Sentence(Compared(value, 41.2, 58.3, "min", limit)));

    [Fact]
    public void What_the_rules_call_met_within_their_tolerance_looks_met() => Assert.Equal(
        "Thickness to size: 3; at least 3 is required.",
        Wording.Sentence(Compared(3 - 1e-10, null, null, string.Empty, 3) with { Outcome = Outcome.Met, Status = Status.Pass }));

    [Fact]
    public void An_exclusive_limit_that_is_met_looks_met()
    {
        var finding = Compared(3.0004, null, null, string.Empty, 3);
        Assert.Equal(
            "Thickness to size: 3.0004; more than 3 is required.",
            Wording.Sentence(finding with { Limit = finding.Limit! with { LowExclusive = true } }));
    }

    [Fact]
    public void Shown_figures_stand_to_their_limit_as_the_real_ones_do()
    {
        var unit = Gen.Int[0, 4].Select(i => Units[i]);
        var numbers = Gen.Select(unit, Gen.Double[0.5, 500].Select(limit => Math.Round(limit, 2)), Gen.Double[-0.05, 0.05].Select(off => Math.Round(off, 9)), Gen.Double[0.001, 0.3], Gen.Bool);
        numbers.Hold((u, limit, off, spread, banded) =>
        {
            var value = limit * (1 + off);
            var finding = Compared(value, banded ? value * (1 - spread) : null, banded ? value * (1 + spread) : null, u, limit);
            var figures = Figures.Of(finding);
            var shown = First(figures.Value()!);
            var bound = First(figures.End(finding.Limit!.Low!, finding.Limit));
            Assert.True(
                value < limit ? shown < bound : shown >= bound,
                string.Create(CultureInfo.InvariantCulture, $"{value} against {limit} is shown as {shown} against {bound}"));
        });
    }

    [Theory]
    [InlineData(1e20, "1E+20")]
    [InlineData(double.NaN, "not a number")]
    [InlineData(-0.5, "-0.5")]
    [InlineData(123456789.125, "123456789.125")]
    public void Plain_numbers_are_never_lost(double number, string text) => Assert.Equal(text, Rounding.Plain(number));

    private static double First(string text) => double.Parse(text.Split(' ', '\u00A0')[0], CultureInfo.InvariantCulture);

    private static string Shown(ShownValue value, Origin origin, string quantity = "course.demand") =>
        Figures.Of(Samples.Finding() with { Value = value, Origin = origin, Limit = null, Quantity = quantity }).Value()!.Replace('\u00A0', ' ');

    private static Finding Compared(double value, double? low, double? high, string unit, double limit) => Samples.Finding() with
    {
        Value = new ShownValue(value, unit, low, high),
        Limit = Samples.AtLeast(limit, unit),
        Check = CheckKind.AtLeast,
        Outcome = value < limit ? Outcome.Missed : Outcome.Met,
        Status = value < limit ? Status.Fail : Status.Pass,
    };
}
