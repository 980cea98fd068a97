using System.Globalization;
using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sizing;

/// <summary>The first sizing of a plan for a person at a terminal: one table, and below it what was taken for granted.</summary>
public static class SizingLines
{
    /// <summary>Lines of the table, at most; the rest stands in the full form.</summary>
    private const int MostLines = 25;

    /// <summary>Columns of the widest table.</summary>
    private const int Widest = 100;

    private const int NumberWidth = 9;
    private const int RuleWidth = 8;

    /// <summary>The lines of a plan.</summary>
    /// <param name="file">Name of the file.</param>
    /// <param name="plan">The sizing.</param>
    /// <param name="width">Columns of the terminal.</param>
    /// <param name="full">Whether the working and the sources of usual values are shown, too.</param>
    public static IReadOnlyList<TerminalLine> Lines(string file, PlanSizing plan, int width, bool full)
    {
        var page = new Page(width);
        page.Flow(0, 2, [new(TextStyle.Heading, $"First sizing of {PlainText.Show(plan.Title ?? plan.PlanId)}")]);
        page.Flow(0, 2, [new(TextStyle.Plain, $"{PlainText.Show(file)}: plan {PlainText.Show(plan.PlanId)}. Usual values stand in for what it leaves open; a check takes none of them.")]);
        page.Blank();
        var units = plan.Lines.Select(line => line.Value.Unit.Length).Append("unit".Length).Max() + 1;
        var labels = Math.Max(20, Math.Min(width, Widest) - (3 * NumberWidth) - units - 1 - RuleWidth - plan.Lines.Select(line => Last(line.State).Length).Append("state first".Length).Max());
        page.Put([Row(TextStyle.Quiet, labels, units, string.Empty, "low", "expected", "high", "unit", "rule", "state first")]);
        foreach (var line in full ? plan.Lines : plan.Lines.Take(MostLines))
        {
            page.Put([Row(
                TextStyle.Plain,
                labels,
                units,
                PlainText.Show(SizingWords.Label(line)),
                SizingWords.Number(line.Value.Low ?? line.Value.Number ?? 0, line),
                SizingWords.Number(line.Value.Number ?? 0, line),
                SizingWords.Number(line.Value.High ?? line.Value.Number ?? 0, line),
                line.Value.Unit,
                line.Rule ?? string.Empty,
                PlainText.Show(Last(line.State)))]);
            foreach (var step in full ? line.Working.Steps : [])
            {
                page.Flow(4, 4, [new(TextStyle.Quiet, PlainText.Show($"{step.Symbol}: {step.Expression}"))]);
            }
        }

        if (!full && plan.Lines.Count > MostLines)
        {
            page.Flow(0, 2, [new(TextStyle.Plain, string.Create(CultureInfo.InvariantCulture, $"{plan.Lines.Count - MostLines} more lines: --full"))]);
        }

        Below(page, plan, full);
        return page.Take();
    }

    private static void Below(Page page, PlanSizing plan, bool full)
    {
        if (plan.Months is { } months)
        {
            page.Blank();
            page.Flow(0, 2, [new(TextStyle.Plain, SizingWords.Of(months))]);
        }

        if (plan.Missing.Count > 0)
        {
            page.Blank();
            page.Flow(0, 2, [new(TextStyle.Undecided, $"State for more lines: {PlainText.Show(string.Join(", ", plan.Missing.Select(missing => Names.Of(missing)).Distinct(StringComparer.Ordinal)))}")]);
        }

        if (plan.Usual.Count > 0)
        {
            page.Blank();
            page.Flow(0, 2, [new(TextStyle.Plain, $"Taken as usual: {PlainText.Show(string.Join(", ", plan.Usual.Select(usual => $"{SizingWords.Short(usual)} {Shown(usual.Value)}").Distinct(StringComparer.Ordinal)))}.")]);
            foreach (var usual in full ? plan.Usual : [])
            {
                page.Flow(2, 4, [new(TextStyle.Quiet, PlainText.Show($"{usual.Key}: {Shown(usual.Value)}. {usual.Meaning} Source: {usual.Source}; {SourceWords.Of(usual.Evidence)}."))]);
            }
        }

        page.Blank();
        page.Flow(0, 2, [new(TextStyle.Plain, "Low and high are the 5 % and 95 % points over the ranges of what goes in; \"state first\" is what moves the line most. Trucks are for a haul in which nothing varies. This is no check.")]);
    }

    private static string Shown(ShownValue value) => value.Number is not { } number ? value.Text ?? string.Empty
        : $"{Rounding.Plain(number)}{(value.Unit.Length > 0 ? $" {value.Unit}" : string.Empty)}{(value.Low is { } low && value.High is { } high ? $" ({Rounding.Plain(low)} to {Rounding.Plain(high)})" : string.Empty)}";

    private static string Last(string? key) => key is null ? string.Empty : key.StartsWith("shift.", StringComparison.Ordinal) ? key : key[(key.LastIndexOfAny(['.', '/']) + 1)..];

    private static TerminalLine Row(TextStyle style, int labels, int units, string label, string low, string expected, string high, string unit, string rule, string state)
    {
        var cut = label.Length < labels ? label : $"{label[..(labels - 2)]}…";
        return new TerminalLine([new(style, $"{cut.PadRight(labels)}{low.PadLeft(NumberWidth)}{expected.PadLeft(NumberWidth)}{high.PadLeft(NumberWidth)} {unit.PadRight(units)}{rule.PadRight(RuleWidth)}{state}".TrimEnd())]);
    }
}
