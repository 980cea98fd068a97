using System.Globalization;
using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>What came of the findings of plans, for those who set limits.</summary>
public static class FeedbackLines
{
    /// <summary>What the counts mean.</summary>
    internal const string Meaning = "Warned: the quick check of the plan warned or failed by this rule. Missed counts what a departure permitted. A few shifts prove no limit right or wrong.";

    /// <summary>Heads of the table.</summary>
    internal static readonly string[] Head = ["rule", "warned, missed", "warned, held", "passed, missed", "passed, held", "not decided", "not recorded", "what was read"];

    /// <summary>All lines.</summary>
    /// <param name="report">The counts.</param>
    /// <param name="width">Width of the terminal.</param>
    public static IReadOnlyList<TerminalLine> Of(FeedbackReport report, int width)
    {
        var page = new Page(width, cuts: false);
        page.Flow(0, 2, [new TextSpan(TextStyle.Heading, Says(report))]);
        page.Flow(0, 2, [new TextSpan(TextStyle.Quiet, Meaning)]);
        foreach (var about in report.Records.Select(record => record.About).OfType<string>().Distinct(StringComparer.Ordinal))
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Quiet, PlainText.Show(about))]);
        }

        page.Blank();
        var rows = report.Rules.Select(Row).Prepend(Head).ToList();
        var widths = Enumerable.Range(0, Head.Length).Select(column => rows.Max(row => TextWidth.Of(row[column]))).ToList();
        List<TerminalLine> lines = [.. page.Take(), .. rows.Select(row => new TerminalLine([new TextSpan(TextStyle.Plain, string.Join("  ", row.Select((cell, column) => cell.PadRight(widths[column]))).TrimEnd())]))];
        page.Blank();
        foreach (var record in report.Records)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Quiet, $"{PlainText.Show(record.Folder)}: plan {PlainText.Show(record.PlanId)}")]);
        }

        List<TerminalLine> left = [.. page.Take(), .. NotCounted(report.Problems, width)];
        foreach (var sentence in Caution.Brief)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Quiet, sentence)]);
        }

        return [.. lines, .. left, .. page.Take()];
    }

    /// <summary>Records below a folder that were not used.</summary>
    /// <param name="problems">What is wrong with them.</param>
    /// <param name="width">Width of the terminal.</param>
    public static IReadOnlyList<TerminalLine> NotCounted(IReadOnlyList<Problem> problems, int width)
    {
        var page = new Page(width, cuts: false);
        foreach (var problem in problems)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Plain, "Not counted: " + LedgerWords.Row(problem))]);
        }

        return [.. page.Take()];
    }

    /// <summary>What it comes to, in a sentence.</summary>
    internal static string Says(FeedbackReport report) => string.Create(CultureInfo.InvariantCulture,
        $"{LedgerNumbers.Count(report.Records.Count, "record", "records")}: {report.Rules.Sum(rule => rule.WarnedMissed)} warnings came true, {report.Rules.Sum(rule => rule.WarnedHeld)} did not, {report.Rules.Sum(rule => rule.PassedMissed)} limits were missed without a warning.");

    /// <summary>A row of the table.</summary>
    internal static string[] Row(RuleFeedback rule) =>
    [
        PlainText.Show(rule.Rule), .. new[] { rule.WarnedMissed, rule.WarnedHeld, rule.PassedMissed, rule.PassedHeld, rule.NotDecided, rule.NotRecorded }.Select(count => count == 0 ? "–" : count.ToString(CultureInfo.InvariantCulture)), rule.What,
    ];
}
