using System.Text;
using System.Text.RegularExpressions;
using Laygate.Rules.Results;
using Laygate.Validation;

namespace Laygate.ConformanceTests.Remedies;

/// <summary>Laying hour by hour, and workable weather.</summary>
public sealed partial class OutlookTests
{
    private const string Quay = "examples/quay-road-hot-on-hot.yaml";

    [Fact]
    public void Each_hour_of_the_forecast_is_judged_and_has_a_time_to_call_the_plant()
    {
        var outlook = Outlook(Text(Quay), "examples/particular/port-of-tamarel.yaml");
        Assert.Equal(10, outlook.Hours.Count);

        // Five loads of 5 min each, ticket 4 min, 36 min on a bad day: 65 min; surface mix: two of 4 min, 4 min, 50 min: 62 min.
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
        Assert.NotEqual(LayingVerdict.NoGo, mild.Hours[0].Verdict);
        Assert.Equal(LayingVerdict.NoGo, cold.Hours[0].Verdict);
        Assert.Equal(Status.Fail, cold.Hours[0].Broken[0].Status);
    }

    [Fact]
    public void A_good_hour_names_the_limit_that_lies_nearest()
    {
        // Opened late enough for every hour, inside a longer closure.
        var text = Text("examples/county-route-us.yaml").Replace("after: 2.5 h", "after: 6 h", StringComparison.Ordinal).Replace("T20:30", "T23:59", StringComparison.Ordinal);
        var outlook = Outlook(text, "us-wa");
        var good = outlook.Hours.Where(hour => hour.Verdict == LayingVerdict.Go).ToList();
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

    [Fact]
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
        Assert.True((below.Go ?? below.NoFailure)!.Number >= -20);
        Assert.NotNull(below.BreaksFirst);
        var worst = weather.Alone.Single(limit => limit.Axis == WeatherAxis.Wind);
        var at = (worst.Go ?? worst.NoFailure)!.Number!.Value;
        Assert.Equal(worst.Go is null ? LayingVerdict.Caution : LayingVerdict.Go, Verdict(text, at, worst.Go is null));
        Assert.NotEqual(worst.Go is null ? LayingVerdict.Caution : LayingVerdict.Go, Verdict(text, at + 0.5, worst.Go is null));

        // The wind at the mat is 80 % of the stated one in this plan; rules that do not depend on the weather do not count.
        LayingVerdict Verdict(string plan, double atMat, bool onlyFailures)
        {
            var other = plan.Replace("wind_highest: 3 m/s", FormattableString.Invariant($"wind_highest: {atMat / 0.8:0.#####} m/s"), StringComparison.Ordinal);
            var findings = Check(other, outlook: false).Findings.Where(finding => outlook.Rules.Contains(finding.Rule, StringComparer.Ordinal)).ToList();
            return findings.Exists(finding => finding.Status == Status.Fail) ? LayingVerdict.NoGo
                : findings.Exists(finding => finding.Status == Status.Warn) ? LayingVerdict.Caution : LayingVerdict.Go;
        }
    }

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

    [GeneratedRegex(@"base: [0-9.]+ °?F", RegexOptions.None, Patience.Milliseconds)]
    private static partial Regex FirstBase();
}
