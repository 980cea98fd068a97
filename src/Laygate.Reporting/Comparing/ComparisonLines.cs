using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Comparing;

/// <summary>Comparisons for a person at a terminal.</summary>
public static class ComparisonLines
{
    /// <summary>Lines for all comparisons of one run. Files that could not be read are left to <see cref="ProblemLines"/>.</summary>
    public static IReadOnlyList<TerminalLine> Lines(IReadOnlyList<ComparisonResult> results, TerminalSettings settings)
    {
        var page = new Page(settings.Width);
        foreach (var (result, plan) in results.SelectMany(result => result.Plans.Select(plan => (result, plan))))
        {
            page.Blank();
            Write(page, result, plan);
        }

        return page.Take();
    }

    private static void Write(Page page, ComparisonResult result, PlanComparison plan)
    {
        page.Flow(0, 2, [new TextSpan(TextStyle.Heading, ComparisonWords.Head(plan))]);
        foreach (var (label, text) in ComparisonWords.States(result, plan))
        {
            page.Labelled(0, 5, label, [new TextSpan(TextStyle.Plain, text)]);
        }

        page.Blank();
        page.Flow(0, 2, [new TextSpan(TextStyle.Plain, ComparisonWords.Counts(plan))]);
        foreach (var sentence in Caution.Brief)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Heading, sentence)]);
        }

        var parts = ComparisonWords.Parts(plan);
        if (parts.Count == 0 || plan.Old is null || plan.New is null)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Plain, ComparisonWords.Nothing(plan))]);
        }

        foreach (var part in parts)
        {
            Write(page, part);
        }
    }

    private static void Write(Page page, ComparisonPart part)
    {
        page.Blank();
        page.Flow(0, 2, [new TextSpan(StyleOf(part.Direction), part.Heading)]);
        foreach (var entry in part.Entries)
        {
            page.Flow(2, 4, [new TextSpan(TextStyle.Plain, entry.Title)]);
            foreach (var (label, text) in entry.Rows)
            {
                page.Labelled(4, 12, label, [new TextSpan(TextStyle.Plain, text)]);
            }
        }
    }

    private static TextStyle StyleOf(ChangeDirection direction) => direction switch
    {
        ChangeDirection.Worse => TextStyle.Fail,
        ChangeDirection.Better => TextStyle.Pass,
        _ => TextStyle.Heading,
    };
}
