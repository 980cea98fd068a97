using Laygate.Reporting.Runs;

namespace Laygate.Reporting.JUnit;

/// <summary>
/// JUnit XML: a suite for each plan with the caution, a case for each finding; one that passes is named after what holds. What counts as failed at the
/// gate is a failure; a warning that does not is a pass with its text as output; what was not decided is skipped; a file that cannot be read is an
/// error. Names of cases are unique in the whole file.
/// </summary>
public static class JUnitWriter
{
    /// <summary>Writes a run as UTF-8.</summary>
    public static void Write(ReportedRun run, Stream output)
    {
        using var form = new JUnitForm(run, output, WholeRun.Aside());
        form.Write(run);
    }
}
