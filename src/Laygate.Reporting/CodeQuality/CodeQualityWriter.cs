using Laygate.Reporting.Runs;

namespace Laygate.Reporting.CodeQuality;

/// <summary>The code-quality JSON that a code host shows beside a change: an array, without a byte-order mark, of description, check, fingerprint, severity and place. The form has room for entries only, so each carries the short caution.</summary>
public static class CodeQualityWriter
{
    /// <summary>Writes a run as UTF-8 with a line feed at the end.</summary>
    public static void Write(ReportedRun run, Stream output)
    {
        using var form = new CodeQualityForm(run, output, WholeRun.Aside());
        form.Write(run);
    }
}
