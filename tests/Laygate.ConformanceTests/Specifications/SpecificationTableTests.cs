using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Specifications;

/// <summary>
/// The tables of published limits, typed once more by hand in the units of the publications that the last column of each row names, held against what the loaded rule book
/// answers just inside and just outside each limit, and against the evidence that the mark of the row allows.
/// </summary>
public sealed class SpecificationTableTests
{
    public static TheoryData<int> Numbers => [.. Enumerable.Range(0, TableCells.All.Count)];

    [Fact]
    public void There_are_at_least_150_cells() => Assert.True(TableCells.All.Count >= 150, $"{TableCells.All.Count} cells");

    [Fact]
    public void No_cell_stands_twice() => Assert.Empty(TableCells.All
        .GroupBy(cell => (cell.Jurisdiction, cell.Quantity, cell.Base, string.Join(';', cell.Conditions), cell.IsLow, cell.Strength))
        .Where(group => group.Count() > 1)
        .Select(group => group.First().ToString()));

    [Theory]
    [MemberData(nameof(Numbers))]
    public void The_rule_book_answers_as_the_table_says(int number)
    {
        var cell = TableCells.All[number];
        var wrong = CellCheck.Findings(cell, cell.Inside).Select(finding => Allowed(cell, finding)).ToList() is { Count: > 0 } inside
            ? inside.OfType<string>().ToList()
            : ["No rule speaks."];
        if (wrong.Count == 0)
        {
            var refused = CellCheck.Findings(cell, cell.Outside).Select(finding => Refused(cell, finding)).ToList();
            wrong.AddRange(refused.Contains(null) ? [] : refused.OfType<string>());
        }

        Assert.True(wrong.Count == 0, $"{cell}\n{string.Join('\n', wrong)}");
    }

    // Inside a required limit an advised one may still be missed; a second rule on the quantity may have no row.
    private static string? Allowed(TableCell cell, Finding finding) => finding.Outcome switch
    {
        Outcome.Met => null,
        Outcome.NotAssessed when finding.Missing.Count == 0 => null,
        Outcome.Missed when finding.Limit!.Strength == Strength.Advised && cell.Strength == Strength.Required => null,
        _ => $"{finding.Rule}: {cell.Inside} is {finding.Outcome}; it should be allowed.",
    };

    // Of two rules on one quantity one must refuse the value with this limit.
    private static string? Refused(TableCell cell, Finding finding)
    {
        if (finding.Outcome != Outcome.Missed || finding.Limit!.Strength != cell.Strength)
        {
            return $"{finding.Rule}: {cell.Outside} is {finding.Outcome}; it should miss the {cell.Strength} bound.";
        }

        var end = cell.IsLow ? finding.Limit.Low : finding.Limit.High;
        if (end?.Number is not { } number || Math.Abs(In(number, end.Unit, cell.Unit) - (double)cell.Number) > 1e-6)
        {
            return $"{finding.Rule}: the limit is {end?.Number} {end?.Unit}, not {cell.Limit} {cell.Unit}.";
        }

        if (finding.Limit.Source.Evidence != cell.Evidence)
        {
            return $"{finding.Rule}: the limit is {finding.Limit.Source.Evidence}, not {cell.Evidence}.";
        }

        var status = cell.Strength == Strength.Required && cell.Evidence != Evidence.Recalled ? Status.Fail : Status.Warn;
        return finding.Status == status ? null : $"{finding.Rule}: the status is {finding.Status}, not {status}.";
    }

    private static double In(double number, string from, string to) => string.Equals(from, to, StringComparison.Ordinal)
        ? number
        : UnitTable.Find(to)!.FromSi(UnitTable.Find(from)!.ToSi(number));
}
