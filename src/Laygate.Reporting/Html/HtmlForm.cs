using System.Globalization;
using Laygate.Reporting.Comparing;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Html;

/// <summary>The page plan by plan. Its contents, and what could not be read, stand before the plans, which are put aside as text.</summary>
public sealed class HtmlForm : IRunForm
{
    private readonly RunHead head;
    private readonly Stream output;
    private readonly Stream aside;
    private readonly List<PageEntry> plans = [];
    private readonly List<Problem> problems;
    private int unread;
    private string? job;

    /// <summary>Begins.</summary>
    /// <param name="head">The run.</param>
    /// <param name="output">Where to write; stays open.</param>
    /// <param name="aside">An empty place to write to and read from; closed with the form.</param>
    public HtmlForm(RunHead head, Stream output, Stream aside)
    {
        (this.head, this.output, this.aside) = (head, output, aside);
        problems = [.. head.Problems];
    }

    /// <inheritdoc/>
    public void Add(FileResult result, ComparisonResult? changes)
    {
        problems.AddRange(result.Problems);
        unread += result.Problems.Count > 0 ? 1 : 0;
        using var writer = HtmlWriter.Writer(aside);
        if (result.Job is { } several)
        {
            job = plans.Count == 0 ? several.Id : null;
            HtmlWriter.RenderPart<JobStrip>(writer, new Dictionary<string, object?>(StringComparer.Ordinal)
            {
                [nameof(JobStrip.Result)] = result,
                [nameof(JobStrip.Job)] = several,
                [nameof(JobStrip.First)] = plans.Count + 1,
            });
        }
        else
        {
            job = null;
        }

        foreach (var report in result.Reports)
        {
            var id = string.Create(CultureInfo.InvariantCulture, $"p{plans.Count + 1}");
            plans.Add(new PageEntry(id, report.PlanId, report.PlanTitle, report.Inputs.Count > 0));
            HtmlWriter.RenderPart<PlanReport>(writer, new Dictionary<string, object?>(StringComparer.Ordinal)
            {
                [nameof(PlanReport.Id)] = id,
                [nameof(PlanReport.Report)] = report,
                [nameof(PlanReport.Earlier)] = EarlierState.Of(changes, report),
            });
        }
    }

    /// <inheritdoc/>
    public void End()
    {
        using var page = new StringWriter(CultureInfo.InvariantCulture);
        HtmlWriter.RenderPart<ReportPage>(page, new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(ReportPage.Head)] = head,
            [nameof(ReportPage.Plans)] = plans,
            [nameof(ReportPage.Problems)] = problems,
            [nameof(ReportPage.Unread)] = unread,
            [nameof(ReportPage.Job)] = job,
        });

        // Text of a plan cannot hold the mark: the template engine would have encoded it.
        var (before, behind) = page.ToString().Split(ReportPage.PlansStandHere) is [var first, var second]
            ? (first, second)
            : throw new InvalidOperationException("The page has not exactly one place for its plans.");
        using var writer = HtmlWriter.Writer(output);
        writer.Write("<!DOCTYPE html>\n");
        writer.Write(before);
        writer.Flush();
        aside.CopyFrom(0, output);
        writer.Write(behind);
        writer.Write('\n');
    }

    /// <inheritdoc/>
    public void Dispose() => aside.Dispose();
}

/// <summary>What the contents of a page say about one plan.</summary>
/// <param name="Id">Id of its part of the page.</param>
/// <param name="Plan">Id of the plan.</param>
/// <param name="Title">Title of the plan; null where it has none.</param>
/// <param name="HasInputs">Whether its inputs are listed.</param>
public sealed record PageEntry(string Id, string Plan, string? Title, bool HasInputs);
