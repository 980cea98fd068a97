using Laygate.Reading.Parts;
using Laygate.Reading.Reports;
using Laygate.Register;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;

namespace Laygate.Service.Checking;

/// <summary>A submission that was screened.</summary>
/// <param name="File">Name of its file.</param>
/// <param name="Text">Its text.</param>
/// <param name="Report">A report on it.</param>
internal sealed record ScreenedText(string File, byte[] Text, StoredReport Report)
{
    /// <summary>What the plan can use.</summary>
    public IPartFiles Parts { get; init; } = new NoPartFiles();
}

/// <summary>A stored report is none that this version of the program can read; its bytes are there all the same.</summary>
internal sealed class UnreadableReportException(string problem) : Exception(
    $"The stored report cannot be read back: {problem} Ask for it as application/json: that is answered exactly as it was stored.");

/// <summary>The site sheet of a stored submission takes too long to be made.</summary>
internal sealed class SlowSheetException() : Exception(
    "A site sheet is made by checking the text again, and that takes longer than a request may. Make it with `laygate sheet`, or have the administrator raise CheckSeconds.");

/// <summary>Site sheets of a stored submission, or why there are none.</summary>
/// <param name="Sheets">Sheets and refusals; null when the outcome is not the stored one.</param>
/// <param name="WhyNot">Why not, as the end of a sentence.</param>
internal sealed record StoredSheets(SheetResult? Sheets, string? WhyNot);

/// <summary>
/// Stored reports in every form. What a report says is read back from its JSON, whatever the rules and the program have become; only plots and site sheets
/// need the text to be checked again, and they are given only where that says, byte for byte, what was stored.
/// </summary>
internal sealed class StoredReports(CheckDesk desk, CheckPool pool)
{
    private const string Otherwise = "the text, checked again, is judged otherwise than the report says: departures may have been added, changed or taken away";

    /// <summary>A stored report as the results that it was written from.</summary>
    /// <exception cref="UnreadableReportException">It cannot be read back.</exception>
    public static StoredRun Read(StoredReport stored)
    {
        var read = ReportReader.Read("report.json", stored.Json);
        return read.Run ?? throw new UnreadableReportException(read.Problem!.Message);
    }

    /// <summary>A run for the page: with plots and inputs where the text still gives the same report, otherwise with a sentence that says why they are missing.</summary>
    /// <exception cref="UnreadableReportException">The report cannot be read back.</exception>
    public async Task<ReportedRun> PageAsync(ScreenedText screened, CancellationToken cancel)
    {
        var run = ReportedRun.Of(Read(screened.Report));
        if (!run.Reports.Any())
        {
            return run;
        }

        var (result, whyNot) = await DrawnAsync(screened, cancel);
        return result is not null ? run with { Results = [result] } : run with { Notice = Notice(screened.Report.Summary, whyNot!) };
    }

    /// <summary>The site sheets of a stored submission, made by checking its text again as on the day of the screening.</summary>
    /// <param name="screened">The submission with its report.</param>
    /// <param name="draft">Whether to make them as drafts, also of a plan that fails.</param>
    /// <param name="cancel">Calls it off.</param>
    /// <exception cref="BusyException">No place is free.</exception>
    /// <exception cref="SlowSheetException">It took too long.</exception>
    public async Task<StoredSheets> SheetsAsync(ScreenedText screened, bool draft, CancellationToken cancel)
    {
        if (Changed(screened.Report.Summary) is { } changed)
        {
            return new StoredSheets(null, changed);
        }

        try
        {
            // The sheets of a job know its shifts, not what lies between them: that is checked again, too.
            var isJob = Read(screened.Report).Files.Any(file => file.Job is not null);
            var (sheets, whole) = await pool.RunAsync(
                stop =>
                {
                    var check = desk.Open(Wish(screened));
                    var made = check.Sheet(screened.File, screened.Text, draft, stop);
                    return (made, isJob ? check.Run(screened.File, screened.Text, stop) : new FileResult(screened.File, made.Reports, made.Problems));
                },
                cancel);
            return IsStored(whole, screened.Report) ? new StoredSheets(sheets, null) : new StoredSheets(null, Otherwise);
        }
        catch (TooLongException)
        {
            throw new SlowSheetException();
        }
    }

    private async Task<(FileResult? Result, string? WhyNot)> DrawnAsync(ScreenedText screened, CancellationToken cancel)
    {
        if (Changed(screened.Report.Summary) is { } changed)
        {
            return (null, changed);
        }

        try
        {
            var result = await pool.RunAsync(stop => desk.Open(Wish(screened) with { Page = true }).Run(screened.File, screened.Text, stop), cancel);
            return IsStored(result, screened.Report) ? (result, null) : (null, Otherwise);
        }
        catch (TooLongException)
        {
            return (null, "checking the text again takes longer than a request may");
        }
        catch (BusyException)
        {
            return (null, "all places for checks are taken now; load the page again in a few seconds");
        }
    }

    // Both stand in the report, so that it cannot be the same.
    private string? Changed(ReportSummary summary) =>
        !string.Equals(summary.BookHash, desk.Book.Hash, StringComparison.Ordinal) ? "the rules have changed since the screening"
        : !string.Equals(summary.ProgramVersion, CheckDesk.Version, StringComparison.Ordinal) ? "the program has changed since the screening"
        : null;

    private static CheckWish Wish(ScreenedText screened) => Screening.Wish(DateOnly.FromDateTime(screened.Report.Summary.At.UtcDateTime)) with { Parts = screened.Parts };

    private static bool IsStored(FileResult result, StoredReport stored) => Screening.Json(result).AsSpan().SequenceEqual(stored.Json);

    private static string Notice(ReportSummary summary, string whyNot) => FormattableString.Invariant(
        $"This is the report as it was stored on {summary.At.UtcDateTime:yyyy-MM-dd} by screening {summary.Screening}. Plots and inputs that it does not hold are left out: they are made by checking the text again, and {whyNot}.");
}
