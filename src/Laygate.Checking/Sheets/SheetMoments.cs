using Laygate.Engineering.SheetData;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Rules.Results;

namespace Laygate.Checking.Sheets;

/// <summary>The times of a shift.</summary>
internal sealed class SheetMoments(Plan plan, SheetQuantities quantities, SheetFigures figures, IReadOnlyList<PlannedLoad> loads)
{
    /// <summary>All moments that can be given, by time.</summary>
    public IReadOnlyList<SheetMoment> All() => [.. Some().OrderBy(moment => moment.At).ThenBy(moment => moment.Kind)];

    private IEnumerable<SheetMoment> Some()
    {
        if (loads.Min(load => load.LeavesAt) is { } first)
        {
            yield return new SheetMoment(SheetMomentKind.FirstLoad, first, FigureKind.Computed);
        }

        if (quantities.Start is { } start)
        {
            yield return new SheetMoment(SheetMomentKind.Start, start, FigureKind.Stated);
            if (plan.Shift?.SetUp is { } setUp)
            {
                yield return new SheetMoment(SheetMomentKind.SetUp, start.AddSeconds(-setUp.Si), FigureKind.Computed);
            }
        }

        if (quantities.End is { } end)
        {
            yield return new SheetMoment(SheetMomentKind.ShiftEnd, end, FigureKind.Stated);
        }

        if (plan.Opening?.At is { } opening)
        {
            yield return new SheetMoment(SheetMomentKind.Opening, quantities.At(opening), FigureKind.Stated);
        }

        foreach (var moment in OfTheWay())
        {
            yield return moment;
        }
    }

    private IEnumerable<SheetMoment> OfTheWay()
    {
        if (quantities.LastMetre is not { } last)
        {
            yield break;
        }

        if (quantities.HalfWay is { } half)
        {
            yield return new SheetMoment(SheetMomentKind.HalfWay, half, FigureKind.Computed);
        }

        yield return new SheetMoment(SheetMomentKind.LastMetre, last, FigureKind.Computed);
        if (quantities.End is { } end && quantities.Start is { } start)
        {
            yield return new SheetMoment(SheetMomentKind.LatestStart, end - (last - start), FigureKind.Computed);
        }

        if (Seconds("course.last_densifying_pass", $"course:{plan.Courses[^1].Id}") is { } rolled)
        {
            yield return new SheetMoment(SheetMomentKind.RolledOut, last.AddSeconds(rolled), FigureKind.Computed);
        }

        if (Seconds("opening.soft_until", "opening") is { } soft)
        {
            yield return new SheetMoment(SheetMomentKind.Firm, last.AddSeconds(soft), FigureKind.Computed);
        }
    }

    private double? Seconds(string quantity, string address) =>
        figures.Of(quantity, address).Value is { Number: { } number } value ? UnitTable.Find(value.Unit)?.ToSi(number) : null;
}
