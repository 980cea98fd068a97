using System.Text;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Comparing;

/// <summary>Comparisons in Markdown, for a review comment.</summary>
public static class ComparisonMarkdown
{
    /// <summary>The text for all comparisons of one run, with the caution below.</summary>
    public static string Of(IReadOnlyList<ComparisonResult> results)
    {
        var text = new StringBuilder("# What changed\n");
        foreach (var (result, plan) in results.SelectMany(result => result.Plans.Select(plan => (result, plan))))
        {
            Write(text, result, plan);
        }

        text.Append("\n---\n\n");
        foreach (var sentence in Caution.Sentences)
        {
            text.Append(MarkdownText.Of(sentence)).Append('\n');
        }

        return text.ToString();
    }

    private static void Write(StringBuilder text, ComparisonResult result, PlanComparison plan)
    {
        text.Append("\n## ").Append(MarkdownText.Of(ComparisonWords.Head(plan))).Append("\n\n");
        Write(text, result, plan, "### ");
    }

    /// <summary>What changed in one plan, without its title.</summary>
    /// <param name="text">Where to write.</param>
    /// <param name="result">The comparison of the file.</param>
    /// <param name="plan">The comparison of the plan.</param>
    /// <param name="heading">What stands before the heading of a part.</param>
    internal static void Write(StringBuilder text, ComparisonResult result, PlanComparison plan, string heading)
    {
        foreach (var (label, state) in ComparisonWords.States(result, plan))
        {
            text.Append("- ").Append(label).Append(": ").Append(MarkdownText.Of(state)).Append('\n');
        }

        text.Append('\n').Append(ComparisonWords.Counts(plan)).Append('\n');
        var parts = ComparisonWords.Parts(plan);
        if (parts.Count == 0 || plan.Old is null || plan.New is null)
        {
            text.Append('\n').Append(ComparisonWords.Nothing(plan)).Append('\n');
        }

        foreach (var part in parts)
        {
            Write(text, part, heading);
        }
    }

    private static void Write(StringBuilder text, ComparisonPart part, string heading)
    {
        text.Append('\n').Append(heading).Append(part.Heading).Append("\n\n");
        foreach (var entry in part.Entries)
        {
            text.Append("- ").Append(MarkdownText.Of(entry.Title)).Append('\n');
            foreach (var (label, row) in entry.Rows)
            {
                text.Append("  - ").Append(label).Append(": ").Append(MarkdownText.Of(row)).Append('\n');
            }
        }
    }
}
