using Laygate.Reporting.Runs;

namespace Laygate.Reporting.Sarif;

/// <summary>
/// SARIF 2.1.0 (OASIS, Errata 01): one run; failures and warnings, and what else the run asks to include. Every result has one location
/// with a full region and a fingerprint that no line goes into. No time of day stands in it: the same input gives the same bytes.
/// </summary>
public static class SarifWriter
{
    /// <summary>Writes a run as UTF-8 with a line feed at the end.</summary>
    public static void Write(ReportedRun run, Stream output)
    {
        using var form = new SarifForm(run with { RulesInForce = [.. run.RulesInForce, .. SarifRules.Applied(run)] }, output, WholeRun.Aside());
        form.Write(run);
    }
}
