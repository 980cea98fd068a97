using Laygate.Register;
using Laygate.Reporting.Json;
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
    public ScreeningResult Run(string file, byte[] text, CancellationToken cancel)
    {
        var result = desk.Open(Wish()).Run(file, text, cancel);
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
            first is null ? null : new PlanName(first.PlanId, first.PlanTitle, first.Revision));
    }

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
