using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Records;

/// <summary>The ledger of a shift: what the record says was laid, against the plan, and what is left.</summary>
public static class ShiftLedgers
{
    /// <summary>Makes the ledger.</summary>
    /// <param name="context">The plan.</param>
    /// <param name="record">The record.</param>
    /// <param name="at">The moment; null: that of the last row.</param>
    /// <returns>The ledger; null where the record has no row with a time before the moment.</returns>
    public static ShiftLedger? Of(QuantityContext context, ShiftRecord record, DateTimeOffset? at)
    {
        var known = RecordUpTo.Of(record, at ?? DateTimeOffset.MaxValue);
        return known.Last is { } last ? new Making(context, known, at ?? last).Make() : null;
    }

    private sealed class Making(QuantityContext context, ShiftRecord record, DateTimeOffset at)
    {
        private readonly LedgerUnits units = new(context.Plan, context.System);
        private readonly List<LedgerNote> notes = [];

        public ShiftLedger Make()
        {
            var plan = context.Plan;
            var loads = plan.Courses.ToDictionary(course => course.Id, _ => new List<Load>(), StringComparer.Ordinal);
            var open = new List<Load>();
            foreach (var load in record.Loads.Where(load => load.State == LoadState.Valid))
            {
                (CourseOf(load) is { } course ? loads[course.Id] : open).Add(load);
            }

            NoteWhole(open);
            var standing = record.Stops.FirstOrDefault(stop => stop.To is null);
            var courses = plan.Courses.Where(course => loads[course.Id].Count > 0 || PlanView.Of(context).RunsOf(course).Any())
                .Select(course => new CourseLedgers(context, record, units, notes, course, loads[course.Id]).Make(at, standing is not null)).ToList();
            var ends = courses.ConvertAll(course => course.End);
            return new ShiftLedger(at, record.Last, courses, Stops(), ends.Count == 0 || ends.Contains(null) ? null : Latest(ends), notes);
        }

        private static LedgerMoment Latest(List<LedgerMoment?> ends) =>
            new(ends.Max(end => end!.Expected), ends.Max(end => end!.Earliest), ends.Max(end => end!.Latest));

        private void NoteWhole(List<Load> open)
        {
            if (record.Plan is { } named && !PlanView.Same(named, context.Plan.Identity.Id))
            {
                notes.Add(new LedgerNote(LedgerNoteKind.OtherPlan, null, 0));
            }

            if (open.Count > 0)
            {
                notes.Add(new LedgerNote(LedgerNoteKind.NoCourse, null, open.Count, open[0].Place));
            }

            if (record.Loads.Where(load => load.State != LoadState.Valid).ToList() is { Count: > 0 } gone)
            {
                notes.Add(new LedgerNote(LedgerNoteKind.NotCounted, null, gone.Count, gone[0].Place));
            }

            if (record.Uncertainty is not { Mass: not null, Density: not null, Width: not null, Length: not null })
            {
                notes.Add(new LedgerNote(LedgerNoteKind.NoUncertainty, null, 0));
            }

            // Older than the rate that is judged by the last half hour: judgement.
            if (record.Last is { } last && at - last > CourseLedgers.Window)
            {
                notes.Add(new LedgerNote(LedgerNoteKind.Old, null, (int)(at - last).TotalMinutes));
            }

            if (record.Stops.FirstOrDefault(stop => stop.To is null) is { } standing)
            {
                notes.Add(new LedgerNote(LedgerNoteKind.Standing, null, (int)(at - standing.From).TotalMinutes, standing.Place));
            }
        }

        private Course? CourseOf(Load load)
        {
            var courses = context.Plan.Courses;
            if (load.Course is not null)
            {
                return courses.FirstOrDefault(course => PlanView.Same(course.Id, load.Course));
            }

            var own = load.Mix is null ? courses : [.. courses.Where(course => PlanView.Same(course.Mix, load.Mix))];
            return own.Count == 1 ? own[0] : null;
        }

        private StopLedger Stops()
        {
            var lengths = PaverStops.Union(record.Stops).Select(stop => stop.Length(at)).ToList();
            var limits = context.Plan.Pavers.Select(paver => paver.StopLimit?.Si).OfType<double>().ToList();
            return new StopLedger(
                lengths.Count, new LedgerFigure(lengths.Sum(), LedgerUnits.Minutes), lengths.Count > 0 ? new LedgerFigure(lengths.Max(), LedgerUnits.Minutes) : null,
                limits.Count > 0 ? new LedgerFigure(limits.Min(), LedgerUnits.Minutes) : null);
        }
    }
}
