using Laygate.Exchange;
using Laygate.Exchange.Reports;
using Laygate.Exchange.Sizing;
using Laygate.Reporting.Json;
using Laygate.Reporting.Language;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sizing;

/// <summary>First sizings for programs, as <c>schemas/sizing.schema.json</c> describes them.</summary>
public static class SizingJson
{
    /// <summary>Writes all sizings of one run as UTF-8 with a line feed at the end.</summary>
    /// <param name="output">Where to write.</param>
    /// <param name="programVersion">Version of the program.</param>
    /// <param name="results">Files in the given order.</param>
    public static void Write(Stream output, string programVersion, IReadOnlyList<SizingResult> results) => JsonOutput.Write(
        output,
        new SizingShape(SizingShape.Version, RunShape.Name, programVersion, results.Select(result => new SizedFileShape(result.File, result.Plans.Select(Of), PartShapes.Of(result.Problems))), Caution.Sentences),
        Shapes.Default.SizingShape,
        JsonOutput.Options);

    private static SizedPlanShape Of(PlanSizing plan) => new(
        plan.PlanId,
        plan.Title,
        plan.Lines.Select(line => new SizedLineShape(line.Kind, SizingWords.Label(line), line.Quantity, line.Address, line.Value, line.Air, line.Rule, line.Driver, line.State)),
        plan.Usual.Select(usual => new UsualValueShape(usual.Key, usual.Id, usual.Meaning, usual.Value, usual.Source, usual.Evidence)),
        plan.Missing,
        plan.Months);
}
