using Laygate.Reading.Parts;
using Laygate.Reading.Sets;
using Laygate.Register;
using Laygate.Reporting.Json;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Service.Checking;

/// <summary>Screens a text under the rule book of the service.</summary>
internal sealed class Screening(CheckDesk desk)
{
    /// <summary>How a submission is checked: in full, with what would mend each finding. The outlook is for whoever writes the plan.</summary>
    /// <param name="day">Day of the screening; null: today.</param>
    public static CheckWish Wish(DateOnly? day = null) => new(Date: day) { Remedies = true };

    /// <summary>Checks it in full.</summary>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public ScreeningResult Run(Claim claim, CancellationToken cancel)
    {
        var wish = Wish() with { Page = true, Parts = Kept(claim.FileName, claim.Text, claim.Files) };
        var result = desk.Open(wish).Run(claim.FileName, claim.Text, cancel);

        // Cards hold no remedies, which take the most time.
        var sheets = result.Problems.Count > 0 ? null : desk.Open(wish with { Page = false, Remedies = false }).Sheet(claim.FileName, claim.Text, Documents.Fails(result), cancel);
        var reports = result.Reports;
        var first = reports.Count > 0 ? reports[0] : null;
        return new ScreeningResult(
            Json(result),
            result.Problems.Count == 0,
            desk.Book.Hash,
            CheckDesk.Version,
            new ReportCounts(
                reports.Sum(report => report.Counts.Failed),
                reports.Sum(report => report.Counts.Warned),
                reports.Sum(report => report.Counts.NotAssessed),
                reports.Sum(report => report.Counts.NeedsPerson),
                reports.Sum(report => report.Counts.Passed),
                reports.Sum(report => report.Counts.Departed)),
            first is null ? null : new PlanName(first.PlanId, first.PlanTitle, first.Revision))
        {
            Failing = Severities([.. reports.SelectMany(report => report.Findings).Where(finding => finding.Status == Status.Fail)]),
            Documents = Documents.Of(result, sheets),
            Queue = QueueWords.Of(result),
            Pictures = Pictures.Of(result),
        };
    }

    private static SeverityCounts Severities(IReadOnlyList<Finding> failing) => new(Of(failing, Severity.A), Of(failing, Severity.B), Of(failing, Severity.C));

    private static int Of(IReadOnlyList<Finding> failing, Severity severity) => failing.Count(finding => finding.Severity == severity);

    /// <summary>What a stored plan can use: the files that came with it, and nothing else.</summary>
    /// <param name="name">Name of the plan in its set.</param>
    /// <param name="text">Its text.</param>
    /// <param name="files">The files that came with it.</param>
    public static IPartFiles Kept(string name, byte[] text, IReadOnlyList<HandedFile> files) =>
        files.Count == 0 ? new NoPartFiles() : PlanSet.Kept(new SetFile(name, text), [.. files.Select(file => new SetFile(file.Name, file.Bytes))]);

    /// <summary>The report for programs.</summary>
    public static byte[] Json(FileResult result)
    {
        using var bytes = new MemoryStream();
        Json(result, bytes);
        return bytes.ToArray();
    }

    /// <summary>The report for programs, written to a stream.</summary>
    public static void Json(FileResult result, Stream output) => JsonOutput.Write(output, CheckDesk.Version, [result], []);
}
