using Laygate.Reporting.Runs;

namespace Laygate.Reporting.Markdown;

/// <summary>Markdown for a review comment. Text of a plan is shown as it was written, never as markup, link or HTML.</summary>
public static class MarkdownWriter
{
    /// <summary>Most letters: code hosts refuse a comment of more than 65,536.</summary>
    public const int Longest = 60_000;

    /// <summary>Writes a run as UTF-8 without a byte-order mark.</summary>
    public static void Write(ReportedRun run, Stream output)
    {
        using var form = new MarkdownForm(run, output);
        form.Write(run);
    }
}
