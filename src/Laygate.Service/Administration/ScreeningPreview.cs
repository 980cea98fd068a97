using Laygate.Register;
using Laygate.Reporting.Comparing;
using Laygate.Rules.Comparing;
using Laygate.Service.Api;
using Laygate.Service.Checking;

namespace Laygate.Service.Administration;

/// <summary>What another screening of a submission would say otherwise.</summary>
/// <param name="Id">Id of the submission.</param>
/// <param name="Name">What the plan calls itself, or its file.</param>
/// <param name="FailedBefore">Findings that fail in the stored report.</param>
/// <param name="FailedNow">Findings that would fail; null where it could not be worked out.</param>
/// <param name="Changes">How many findings would be worse, better, new and gone, in words; or why it could not be worked out.</param>
internal sealed record PreviewedScreening(string Id, string Name, int FailedBefore, int? FailedNow, string Changes);

/// <summary>A part of the open submissions whose reports stand on another rule book.</summary>
/// <param name="Count">Number of them all.</param>
/// <param name="Skipped">How many come before this part.</param>
/// <param name="Items">What would change in those of this part.</param>
internal sealed record ScreeningPreviews(int Count, int Skipped, IReadOnlyList<PreviewedScreening> Items);

/// <summary>Says what another screening would change before it is asked for. Nothing is stored.</summary>
internal sealed class PreviewDesk(SubmissionRegister register, RegisterReader reader, CheckDesk desk, CheckPool pool)
{
    /// <summary>Most submissions that one request checks: each takes a second or two (our judgement).</summary>
    public const int Most = 5;

    /// <summary>Number of open submissions whose reports stand on another rule book.</summary>
    public async Task<int> CountAsync(CancellationToken cancel) => (await register.OutdatedAsync(desk.Book.Hash, cancel)).Count;

    /// <summary>Checks some of them under the rules that hold now, in the order of receipt.</summary>
    /// <param name="skip">How many to pass over.</param>
    /// <param name="caller">Who asks.</param>
    /// <param name="cancel">Ends it.</param>
    /// <exception cref="BusyException">No place for a check is free.</exception>
    public async Task<ScreeningPreviews> ListAsync(int skip, Caller caller, CancellationToken cancel)
    {
        var ids = await register.OutdatedAsync(desk.Book.Hash, cancel);
        var first = Math.Clamp(skip, 0, ids.Count);
        var items = new List<PreviewedScreening>();
        foreach (var id in ids.Skip(first).Take(Most))
        {
            if (await reader.ScreenedAsync(id, null, caller, cancel) is { } screened && await reader.FindAsync(id, caller, cancel) is { } one)
            {
                items.Add(await OfAsync(one, screened, cancel));
            }
        }

        return new ScreeningPreviews(ids.Count, first, items);
    }

    private async Task<PreviewedScreening> OfAsync(Submission one, ScreenedText screened, CancellationToken cancel)
    {
        var shown = new PreviewedScreening(one.Id, one.Plan?.Title ?? one.Plan?.Id ?? one.FileName, one.Report?.Counts.Failed ?? 0, null, string.Empty);
        try
        {
            // What would mend a finding takes the most time and changes no status.
            var wish = Screening.Wish() with { Remedies = false, Parts = screened.Parts };
            var now = await pool.RunAsync(stop => desk.Open(wish).Run(screened.File, screened.Text, stop), cancel);
            var changes = ReportPairs.Compare([.. StoredReports.Read(screened.Report).Files.SelectMany(file => file.Reports)], now.Reports);
            return shown with
            {
                FailedNow = now.Problems.Count > 0 ? null : now.Reports.Sum(report => report.Counts.Failed),
                Changes = now.Problems.Count > 0 ? "It can no longer be read." : string.Join(" ", changes.Select(ComparisonWords.Directions)),
            };
        }
        catch (TooLongException)
        {
            return shown with { Changes = "Checking it takes longer than a request may." };
        }
        catch (UnreadableReportException)
        {
            return shown with { Changes = "Its report is of a version that is not read any more." };
        }
    }
}
