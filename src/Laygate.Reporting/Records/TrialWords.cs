using System.Globalization;
using Laygate.Engineering.Records.Happened;
using Laygate.Model.Measures;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>What a trial length proves, in words; the same for terminal, page and JSON.</summary>
internal static class TrialWords
{
    public static IEnumerable<string> Says(TrialReport report)
    {
        var growth = report.Growth;
        if (growth.Curve is not { } curve)
        {
            yield return "No density is recorded after a pass: fill `density` in roller-passes.";
            yield break;
        }

        var limit = Density(report, report.GrowthLimit);
        yield return curve.Pattern is { } pattern
            ? $"{Number(pattern)} passes are proven: {(growth.Target is null ? "no target is known, and " : "the target is reached, and ")}the next pass gains less than {limit}."
            : growth.Target is { } target && growth.Passes.All(pass => pass.Density < target) ? $"No pattern is proven: the target of {Density(report, target)} is not reached after {Number(growth.Passes.Count)} passes."
            : $"No pattern is proven: no pass after the target gains less than {limit}. Roll and read one pass more.";
        if (curve.Losses.Count > 0)
        {
            yield return $"Density falls after {string.Join(", ", curve.Losses.Select(pass => $"pass {Number(pass)}"))}: the mat breaks down, or was rolled too long.";
        }
    }

    /// <summary>A row of heads, then one for each pass.</summary>
    public static IEnumerable<string[]> Rows(TrialReport report)
    {
        yield return ["pass", "roller", "phase", "places", $"density, {report.Density.Spelling}", "of reference", "gain", "skin"];
        var passes = report.Growth.Passes;
        for (var i = 0; i < passes.Count; i++)
        {
            var pass = passes[i];
            yield return
            [
                Number(pass.Number), string.Join(" ", pass.Rollers.Select(PlainText.Show)), PlainText.Show(pass.Phase ?? "–"), Number(pass.Places), Bare(report, pass.Density),
                pass.Share is { } share ? string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.0} %") : "–", i == 0 ? "–" : Bare(report, report.Growth.Curve!.Gains[i - 1]),
                pass.Skin is { } skin ? Degrees(report, skin) : "–",
            ];
        }
    }

    /// <summary>What the densities rest on.</summary>
    public static string Gauge(TrialReport report) => report.Growth.Offset is { } offset
        ? $"Densities with the offset of the gauge, {Density(report, offset.Offset)} from {LedgerNumbers.Count(offset.Pairs, "pair", "pairs")} with cores."
        : "Densities as the gauge shows them, without cores beside them: indicative, and not taken over below. Pair gauge-readings with cores.";

    /// <summary>One respect in which trial and plan are alike or not.</summary>
    public static string Cover(TrialReport report, TrialCover cover) =>
        $"{Name(cover.Kind)}: trial {Said(report, cover.Kind, cover.Trial)}, plan {Said(report, cover.Kind, cover.Plan)}: {cover.Covers switch { true => "yes", false => "no", _ => "not known" }}.";

    private static string Name(TrialLikeness kind) => kind switch
    {
        TrialLikeness.Mix => "Mix",
        TrialLikeness.Thickness => "Mean thickness",
        TrialLikeness.Rollers => "Rollers that densify",
        TrialLikeness.Passes => "Passes that densify, proven and planned",
        TrialLikeness.Air => "Lowest air",
        TrialLikeness.Base => "Lowest surface of the base",
        _ => "Highest wind",
    };

    private static string Said(TrialReport report, TrialLikeness kind, TrialSaid said) => said switch
    {
        { Text: { } text } => PlainText.Show(text),
        { Si: { } si } => kind switch
        {
            TrialLikeness.Thickness => In(report, si, "mm", "in", report.System == UnitSystem.UnitedStates ? "0.00" : "0.0"),
            TrialLikeness.Passes => si.ToString("0", CultureInfo.InvariantCulture),
            TrialLikeness.Wind => In(report, si, "m/s", "mph", "0.0"),
            _ => Degrees(report, si),
        },
        _ => "not recorded",
    };

    /// <summary>The block that a plan may take over under <c>reached</c>: measured, not believed.</summary>
    public static string Reached(TrialReport report)
    {
        var growth = report.Growth;
        var mix = growth.Covers.First(cover => cover.Kind == TrialLikeness.Mix).Trial.Text;
        var thickness = growth.Covers.First(cover => cover.Kind == TrialLikeness.Thickness).Trial.Si;
        var pattern = growth.Curve?.Pattern;
        var parts = new[]
        {
            mix is null || mix.Contains(',', StringComparison.Ordinal) ? null : $"mix: {PlainText.Show(mix)}",
            thickness is { } t ? $"thickness: {In(report, t, "mm", "in", report.System == UnitSystem.UnitedStates ? "0.00" : "0").Replace(PlainText.Glue, ' ')}" : null,
            growth is { Offset: not null, Behind: { } behind } ? string.Create(CultureInfo.InvariantCulture, $"density_behind_screed: {100 * behind:0.0} %") : null,
            report.Phases.Count > 0 ? $"passes: [{string.Join(", ", report.Phases.Select(phase => $"{{ phase: {PlainText.Show(phase.Phase)}, passes: {Number(phase.Passes)} }}"))}]" : null,
            pattern is { } n ? $"rollers: [{string.Join(", ", growth.Passes.Take(n).SelectMany(pass => pass.Rollers).Distinct(StringComparer.Ordinal).Select(PlainText.Show))}]" : null,
            growth.Offset is not null && pattern is { } last && growth.Passes[last - 1].Share is { } share ? string.Create(CultureInfo.InvariantCulture, $"density: {100 * share:0.0} %") : null,
        };
        return $"reached: {{ {string.Join(", ", parts.OfType<string>())} }}";
    }

    /// <summary>What the plan states otherwise.</summary>
    public static IEnumerable<string> Differences(TrialReport report)
    {
        if (report.Stated is not { } stated)
        {
            yield break;
        }

        if (report.Growth.Offset is not null && stated.Density is { } density && report.Growth.Curve?.Pattern is { } pattern && report.Growth.Passes[pattern - 1].Share is { } share)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"The plan states a density of {100 * density.Si:0.0} % for its trial length; the record gives {100 * share:0.0} %.");
        }

        if (stated.Passes.Count > 0 && report.Growth.Curve?.Pattern is { } proven)
        {
            yield return $"The plan states {Number(stated.Passes.Sum(phase => phase.Passes))} passes for its trial length; the record proves {Number(proven)}.";
        }
    }

    private static string Density(TrialReport report, double si) => Figures.WithUnit(Bare(report, si), report.Density.Spelling);

    private static string Bare(TrialReport report, double si) => report.Density.FromSi(si).ToString(report.Density.Factor > 100 ? "0.000" : report.Density.Factor > 1 ? "0.0" : "0", CultureInfo.InvariantCulture);

    private static string Degrees(TrialReport report, double celsius) => In(report, celsius, "°C", "°F", "0");

    private static string In(TrialReport report, double si, string metric, string us, string format)
    {
        var unit = UnitTable.Find(report.System == UnitSystem.UnitedStates ? us : metric)!;
        return Figures.WithUnit(unit.FromSi(si).ToString(format, CultureInfo.InvariantCulture), unit.Spelling);
    }

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);
}
