using System.Globalization;
using Laygate.Engineering.Acceptance;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>Results of two laboratories against each other, with all that the other side needs to work it out again.</summary>
internal static class LaboratorySections
{
    /// <summary>The part of a lot report.</summary>
    public static LotSection Of(LaboratoryReport report)
    {
        var unit = report.Unit.Spelling;
        List<string> lines =
        [
            $"{Set(report.First, unit)}; {Set(report.Second, unit)}.",
            .. report.Sets.Select(one => Sets(one, unit)),
            .. report.Sets.Count == 0 ? ["One of them has no spread, so that they are not compared."] : Array.Empty<string>(),
            .. report.Pairs.Select(one => Pairs(one, unit)),
            "No test proves that two sets agree: it may have had too few results. The contract says which level decides, and whose results count.",
        ];
        return new LotSection($"{PlainText.Show(report.First.Name)} against {PlainText.Show(report.Second.Name)}, {PlainText.Show(report.Course)}, {PlainText.Show(report.Characteristic)}", lines, [], []);
    }

    /// <summary>Whose results count, where the record has several laboratories or the one that counts is not among them.</summary>
    public static IEnumerable<string> Counts(AcceptanceReport report)
    {
        var named = report.Named;
        if (report.Counts is { } counts)
        {
            var others = report.Record.Cores.Count(core => !string.Equals(core.Laboratory, counts, StringComparison.Ordinal));
            if (others > 0)
            {
                yield return named.Contains(counts, StringComparer.Ordinal)
                    ? $"Results of {PlainText.Show(counts)} count; {LedgerNumbers.Count(others, "core", "cores")} of others or of none {(others == 1 ? "does" : "do")} not."
                    : $"Results of {PlainText.Show(counts)} count, and no core names it as its laboratory: nothing is decided by cores. Look at `laboratory` in the mapping of the cores.";
            }
        }
        else if (named.Count > 1)
        {
            yield return $"Results of {string.Join(" and ", named.Select(PlainText.Show))} are pooled, as nothing says whose count. The contract says it: write `laboratory` into the scheme, or under `record` in record.yaml.";
        }
    }

    private static string Set((string Name, SetOfResults Results) side, string unit) => string.Create(
        CultureInfo.InvariantCulture, $"{PlainText.Show(side.Name)}: {LedgerNumbers.Count(side.Results.Count, "result", "results")}, mean {Figures.WithUnit(Number(side.Results.Mean), unit)}, deviation {Number(side.Results.Deviation)}");

    private static string Sets(SetComparison one, string unit) => string.Create(
        CultureInfo.InvariantCulture,
        $"At {100 * one.Level:0} %: variances {(one.VariancesDiffer ? "differ" : "do not differ")} (F {one.Ratio:0.000} against {one.CriticalRatio:0.000}, chance {one.ChanceOfRatio:0.0000}); means {(one.MeansDiffer ? "differ" : "do not differ")}{(one.VariancesDiffer ? ", variances taken apart" : string.Empty)} (t {one.T:0.000} against {one.CriticalT:0.000} with {one.Degrees:0.#} degrees, chance {one.ChanceOfT:0.0000}). A difference below {Figures.WithUnit(Number(one.LeastDifference), unit)} would not have been found.");

    private static string Pairs(PairComparison one, string unit) => string.Create(
        CultureInfo.InvariantCulture,
        $"Samples that both tested, at {100 * one.Level:0} %: {one.Pairs} pairs, mean difference {Figures.WithUnit(Number(one.Difference), unit)}, {(one.Differ ? "the laboratories differ" : "no difference found")} (t {one.T:0.000} against {one.CriticalT:0.000}, chance {one.Chance:0.0000}; below {Figures.WithUnit(Number(one.LeastDifference), unit)} none would have been found).");

    private static string Number(double number) => number.ToString("0.####", CultureInfo.InvariantCulture);
}
