using Laygate.Reporting.Runs;

namespace Laygate.Reporting.Annotations;

/// <summary>
/// Lines that a code host turns into remarks beside the plan's lines, worst first, because it shows ten of each kind at most; the
/// caution is a remark of its own on top. Text of a plan can neither end a line nor begin a command.
/// </summary>
public static class AnnotationWriter
{
    /// <summary>Writes a run as UTF-8, one line for each remark.</summary>
    public static void Write(ReportedRun run, Stream output)
    {
        using var form = new AnnotationForm(run, output, WholeRun.Aside);
        form.Write(run);
    }
}
