using System.Globalization;
using Laygate.Engineering.Records;
using Laygate.Reporting.Text;

namespace Laygate.Reporting.Records;

/// <summary>A row of a ledger: what it is, and its values.</summary>
internal sealed record LedgerRow(string Name, string Shift, string Plan, string Last);

/// <summary>The tables of one course, the same on the terminal and on the page.</summary>
internal static class LedgerTables
{
    /// <summary>The shift so far, the plan, and the last loads.</summary>
    public static IReadOnlyList<LedgerRow> Laid(CourseLedger course)
    {
        var (shift, last) = (course.Shift, course.LastLoads);
        return
        [
            new("length", LedgerNumbers.Text(course.Laid), LedgerNumbers.Text(course.Laid, course.Laid.PlanSi), Of(last?.Length)),
            new("mass laid", Of(shift?.Mass), "–", Of(last?.Mass)),
            new("mass per length", Of(shift?.PerLength), Plan(shift?.PerLength ?? last?.PerLength), Of(last?.PerLength)),
            new("mass per area", Of(shift?.PerArea), Plan(shift?.PerArea ?? last?.PerArea), Of(last?.PerArea)),
            new("mean thickness", shift is null ? "–" : LedgerNumbers.WithUncertainty(shift.Thickness), Plan(shift?.Thickness ?? last?.Thickness), last is null ? "–" : LedgerNumbers.WithUncertainty(last.Thickness)),
        ];
    }

    /// <summary>Head of the last column.</summary>
    public static string LastLoads(CourseLedger course) =>
        course.LastLoads is { Loads: var loads } ? loads == 1 ? "last load" : $"last {loads.ToString(CultureInfo.InvariantCulture)} loads" : "last loads";

    /// <summary>What is left, in pairs of name and value.</summary>
    public static IReadOnlyList<(string Name, string Value)> Left(CourseLedger course)
    {
        var lines = new List<(string, string)>
        {
            ("left", $"{LedgerNumbers.Text(course.LengthLeft)}: {LedgerNumbers.Text(course.LeftByPlan)} by the plan, {LedgerNumbers.Text(course.LeftByYield)} by the yield so far"),
            ("on hand", $"{LedgerNumbers.Text(course.OnHand)} on machines and under way; {LedgerWords.UnderWay(course)}"),
            ("to order", LedgerWords.Order(course, withVerb: false)),
        };
        if (course.LastLeaves is { } leaves)
        {
            lines.Add(("last load", $"leaves the plant by {LedgerNumbers.Time(leaves)}"));
        }

        lines.Add(("end", course.End is { } end ? LedgerWords.End(end) : "not at the rates so far"));
        lines.AddRange(course.Ends.Select(one => ("", $"{LedgerWords.Basis(one.Basis)}: {LedgerNumbers.Text(one.Rate)}, {(one.End is { } at ? $"end {LedgerNumbers.Time(at)}" : "not finishing")}")));
        return lines;
    }

    /// <summary>The working of a course, step by step.</summary>
    public static IReadOnlyList<(string Name, string Value)> Working(CourseLedger course) =>
    [
        .. Steps("shift", course.Shift?.Working), .. Steps(LastLoads(course), course.LastLoads?.Working), .. Steps("left", course.Working),
    ];

    private static IEnumerable<(string Name, string Value)> Steps(string part, IReadOnlyList<LedgerStep>? steps) =>
        (steps ?? []).Select(step => ($"{part}: {step.Expression}", Figures.WithUnit(LedgerNumbers.Bare(step.Result, step.Result.Si, more: 2), step.Result.Unit.Spelling)));

    private static string Of(LedgerFigure? figure) => figure is null ? "–" : LedgerNumbers.Text(figure);

    private static string Plan(LedgerFigure? figure) => figure is null ? "–" : LedgerNumbers.Text(figure, figure.PlanSi);
}
