using System.Text;
using System.Text.RegularExpressions;
using Laygate.Checking;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Outlook;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Remedies;

/// <summary>Laying hour by hour, and workable weather.</summary>
public sealed partial class OutlookTests
{
    private const string Quay = Repository.WholeQuay;

    [Fact]
    public void Each_hour_of_the_forecast_is_judged_and_has_a_time_to_call_the_plant()
    {
        var outlook = Outlook(Text(Quay), "examples/particular/port-of-tamarel.yaml");
        Assert.Equal(10, outlook.Hours.Count);

        // By hand: five loads of 5 min each, ticket 4 min, 36 min on a bad day: 65 min; surface mix: two of 4 min, 4 min, 50 min: 62 min.
        Assert.Equal([65.0, 62.0], outlook.Leads.Select(lead => Math.Round(lead.Lead.Number!.Value, 6)));
        Assert.All(outlook.Hours, hour => Assert.Equal(TimeSpan.FromMinutes(65), hour.At - hour.CallBy));
        Assert.Contains("WEA-001", outlook.Rules, StringComparer.Ordinal);
        Assert.DoesNotContain("SUP-002", outlook.Rules, StringComparer.Ordinal);
    }

    [Fact]
    public void An_hour_that_is_far_too_cold_is_no_go_and_says_what_breaks()
    {
        // The base of one hour falls below what the surface rule of the plan's own table asks for; nothing else changes.
        var plan = Text("examples/county-route-us.yaml");
        var mild = Outlook(plan, "us-wa");
        var cold = Outlook(FirstBase().Replace(plan, "base: 20 F", 1), "us-wa");
        Assert.NotEqual(LayingVerdict.Fail, mild.Hours[0].Verdict);
        Assert.Equal(LayingVerdict.Fail, cold.Hours[0].Verdict);
        Assert.Equal(Status.Fail, cold.Hours[0].Broken[0].Status);
    }

    [Fact]
    public void A_good_hour_names_the_limit_that_lies_nearest()
    {
        // Opened late enough for every hour, inside a longer closure.
        var text = Text("examples/county-route-us.yaml").Replace("after: 2.5 h", "after: 6 h", StringComparison.Ordinal).Replace("T20:30", "T23:59", StringComparison.Ordinal);
        var outlook = Outlook(text, "us-wa");
        var good = outlook.Hours.Where(hour => hour.Verdict == LayingVerdict.Pass).ToList();
        Assert.NotEmpty(good);
        Assert.All(outlook.Hours, hour => Assert.True(hour.Nearest is null || hour.Broken.Count == 0));
        foreach (var hour in good)
        {
            var nearest = hour.Nearest!;
            Assert.Equal(Status.Pass, nearest.Status);
            Assert.Contains(nearest.Finding.Rule, outlook.Rules, StringComparer.Ordinal);
            Assert.True(nearest.Value!.Number >= (nearest.Limit!.Low?.Number ?? double.NegativeInfinity) && nearest.Value.Number <= (nearest.Limit.High?.Number ?? double.PositiveInfinity));
        }
    }

    [FactOfFullRun]
    public void Without_hours_the_worst_workable_weather_passes_and_one_step_beyond_does_not()
    {
        var text = Hours().Replace(Text(Quay), "  envelope: { air_lowest: 12 °C, base_lowest: 14 °C, wind_highest: 3 m/s, dew_point_highest: 5 °C, rain_chance_highest: 10 % }\n");
        var outlook = Outlook(text);
        Assert.Empty(outlook.Hours);
        var weather = outlook.Weather!;
        Assert.Equal([WeatherAxis.Air, WeatherAxis.Base, WeatherAxis.Wind], weather.Alone.Select(limit => limit.Axis));
        Assert.NotEmpty(weather.Pairs);

        // The dew margin asks for a base of at least dew point + 3 K: 8 °C is the lowest base that passes it (rule WEA-004), whatever else allows.
        var below = weather.Alone[1];
        Assert.True((below.AllPass ?? below.NoFailure)!.Number >= -20);
        Assert.NotNull(below.BreaksFirst);
        var worst = weather.Alone.Single(limit => limit.Axis == WeatherAxis.Wind);
        var at = (worst.AllPass ?? worst.NoFailure)!.Number!.Value;
        Assert.Equal(worst.AllPass is null ? LayingVerdict.Warn : LayingVerdict.Pass, Verdict(text, at, worst.AllPass is null));
        Assert.NotEqual(worst.AllPass is null ? LayingVerdict.Warn : LayingVerdict.Pass, Verdict(text, at + 0.5, worst.AllPass is null));

        // The wind at the mat is 80 % of the stated one in this plan; rules that do not depend on the weather do not count.
        LayingVerdict Verdict(string plan, double atMat, bool onlyFailures)
        {
            var other = plan.Replace("wind_highest: 3 m/s", FormattableString.Invariant($"wind_highest: {atMat / 0.8:0.#####} m/s"), StringComparison.Ordinal);
            var findings = Check(other, outlook: false).Findings.Where(finding => outlook.Rules.Contains(finding.Rule, StringComparer.Ordinal)).ToList();
            return findings.Exists(finding => finding.Status == Status.Fail) ? LayingVerdict.Fail
                : findings.Exists(finding => finding.Status == Status.Warn) ? LayingVerdict.Warn : LayingVerdict.Pass;
        }
    }

    [Fact]
    public void Each_hour_shows_the_margin_of_every_limit_that_was_judged_and_what_is_the_same_in_all_only_once()
    {
        var outlook = Outlook(Text(Quay), "examples/particular/port-of-tamarel.yaml");
        foreach (var limit in outlook.Hours.SelectMany(hour => hour.Limits))
        {
            // The margin by hand, from value and limit of the same record.
            var (value, bound) = (limit.Limit.Value!, limit.Limit.Limit!);
            if (value.Number is { } number)
            {
                var inside = Math.Min(number - bound.Low?.Number ?? double.PositiveInfinity, bound.High?.Number - number ?? double.PositiveInfinity);
                Assert.Equal(inside, limit.Margin!.Number!.Value, 9);
                Assert.Equal(value.Unit is "°C" ? "K" : value.Unit, limit.Margin.Unit);
            }

            Assert.True(limit.Limit.Status != Status.Pass || limit.Margin?.Number is not < 0);
        }

        Assert.All(outlook.Hours, hour => Assert.Contains(hour.Limits, limit => limit.Limit.Finding.Rule == "WEA-001" && limit.Margin?.Unit == "K"));
        Assert.NotEmpty(outlook.InEveryHour);
        Assert.All(outlook.InEveryHour, same => Assert.DoesNotContain(outlook.Hours, hour => hour.Limits.Contains(same)));
    }

    [Fact]
    public void Where_nothing_says_what_lies_below_no_weather_is_called_good()
    {
        // The mat cannot be solved on an unknown base: how far air and wind may go is not known, wherever a single judged limit lies.
        var text = Existing().Replace(Hours().Replace(Text(Quay), "  envelope: { air_lowest: 12 °C, base_lowest: 14 °C, wind_highest: 3 m/s, dew_point_highest: 5 °C, rain_chance_highest: 10 % }\n"), string.Empty);
        Assert.DoesNotContain("\nexisting:", text, StringComparison.Ordinal);
        var outlook = Outlook(text);
        Assert.Contains(outlook.NotJudged, rule => rule.Finding.Rule == "ROL-001" && rule.Missing.Any(input => input.Address == "existing"));
        Assert.True(outlook.Weather!.IsUnknown);
        Assert.All(outlook.Weather.Alone, axis => Assert.True(axis.AllPass is null && axis.NoFailure is null));
        Assert.Empty(outlook.Weather.Pairs);

        var shown = Shown(text);
        Assert.DoesNotContain("nothing fails to", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("everything passes to", shown, StringComparison.Ordinal);
        Assert.True(shown.IndexOf("Could not be judged", StringComparison.Ordinal) is >= 0 and var first && first < shown.IndexOf("how far it may go is not known", StringComparison.Ordinal));
    }

    [Fact]
    public void An_hour_is_not_good_while_a_rule_of_the_weather_could_not_be_judged()
    {
        var outlook = Outlook(Existing().Replace(Text(Quay), string.Empty), "examples/particular/port-of-tamarel.yaml");
        Assert.NotEmpty(outlook.NotJudged);
        Assert.DoesNotContain(outlook.Hours, hour => hour.Verdict == LayingVerdict.Pass);
    }

    [Theory]
    [InlineData(Repository.WholeQuay)]
    [InlineData("examples/county-route-us.yaml")]
    [InlineData("examples/moor-road-thin-overlay.yaml")]
    [InlineData("rules/bases/single.yaml")]
    [InlineData("rules/bases/pair.yaml")]
    public void Every_quantity_that_moves_with_the_weather_is_known_to(string path)
    {
        var reading = YamlReader.Read(Repository.Bytes(path));
        var plan = PlanMapper.Map(reading.Documents[0]).Plan!;
        QuantityContext Context(Plan other) => new(other, LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), 1) { IsQuick = true };
        var context = Context(plan);
        var known = LaygateQuantities.Catalogue().All.Where(WeatherDependence.IsOf).Select(quantity => quantity.Name).ToHashSet(StringComparer.Ordinal);
        var moving = new WeatherPlans(context).Extremes().Select(Context).SelectMany(other => context.Elements.All
            .SelectMany(element => context.Catalogue.All
                .Where(quantity => quantity.Element == element.Kind)
                .Where(quantity => !Equals(context.Get(quantity.Name, element).Value, other.Get(quantity.Name, other.Elements.Find(element.Address)!).Value) && context.Get(quantity.Name, element).Value is not PresenceValue)
                .Select(quantity => quantity.Name)));
        Assert.Empty(moving.Where(name => !known.Contains(name)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
    }

    private static string Shown(string plan) => string.Join('\n', TerminalReport.Lines(
        [new FileResult("plan.yaml", [Check(plan, outlook: true)], [])], new TerminalSettings(500) { Full = true }).Select(line => line.Text));

    private static LayingOutlook Outlook(string plan, params string[] rules) => Check(plan, outlook: true, rules).Outlook!;

    private static Report Check(string plan, bool outlook, params string[] rules)
    {
        var check = new PlanCheck(Repository.Bound(rules), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Outlook = outlook });
        var result = check.Run("plan.yaml", Encoding.UTF8.GetBytes(plan));
        Assert.Empty(result.Problems);
        return Assert.Single(result.Reports);
    }

    private static string Text(string path) => Encoding.UTF8.GetString(Repository.Bytes(path));

    [GeneratedRegex(@"  hours:\n(    - .*\n)+", RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex Hours();

    [GeneratedRegex(@"^existing:\n(  .*\n)+", RegexOptions.ExplicitCapture | RegexOptions.Multiline, Patience.Milliseconds)]
    private static partial Regex Existing();

    [GeneratedRegex(@"base: [0-9.]+ °?F", RegexOptions.None, Patience.Milliseconds)]
    private static partial Regex FirstBase();
}
