using Laygate.Rules.Results;

namespace Laygate.Reporting.Runs;

/// <summary>
/// One form of a run, written file by file in their order. A form keeps no report: what it must say before the first one, or sort, it puts
/// aside as finished text.
/// </summary>
public interface IRunForm : IDisposable
{
    /// <summary>Adds the next file.</summary>
    /// <param name="result">What was found in it.</param>
    /// <param name="changes">What has changed in it since an earlier revision; null where nothing was compared.</param>
    void Add(FileResult result, ComparisonResult? changes);

    /// <summary>Writes what is left when the last file has been added.</summary>
    void End();
}

/// <summary>Writes a run that is at hand as a whole.</summary>
internal static class WholeRun
{
    /// <summary>Adds every file and ends the form.</summary>
    public static void Write(this IRunForm form, ReportedRun run)
    {
        foreach (var result in run.Results)
        {
            form.Add(result, run.Earlier?.GetValueOrDefault(result.File));
        }

        form.End();
    }

    /// <summary>A place in memory for text that is put aside.</summary>
    public static Stream Aside() => new MemoryStream();

    /// <summary>Copies what stands in a place from a position on.</summary>
    public static void CopyFrom(this Stream aside, long start, Stream output)
    {
        aside.Position = start;
        aside.CopyTo(output);
    }
}
