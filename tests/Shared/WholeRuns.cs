using Laygate.Reporting.Annotations;
using Laygate.Reporting.CodeQuality;
using Laygate.Reporting.JUnit;
using Laygate.Reporting.Runs;

namespace Laygate.Tests;

/// <summary>Forms of a run that is at hand as a whole; the program adds file by file.</summary>
internal static class WholeRuns
{
    public static void JUnit(ReportedRun run, Stream output)
    {
        using var aside = new MemoryStream();
        using var form = new JUnitForm(run, output, aside);
        Write(form, run);
    }

    public static void CodeQuality(ReportedRun run, Stream output)
    {
        using var aside = new MemoryStream();
        using var form = new CodeQualityForm(run, output, aside);
        Write(form, run);
    }

    public static void Annotations(ReportedRun run, Stream output)
    {
        using var form = new AnnotationForm(run, output, () => new MemoryStream());
        Write(form, run);
    }

    private static void Write(IRunForm form, ReportedRun run)
    {
        foreach (var result in run.Results)
        {
            form.Add(result, run.Earlier?.GetValueOrDefault(result.File));
        }

        form.End();
    }
}
