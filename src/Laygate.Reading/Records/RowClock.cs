using System.Globalization;
using Laygate.Reading.Yaml;
using NodaTime;

namespace Laygate.Reading.Records;

/// <summary>
/// Places the local times of one file. A time without a date belongs to the day of the row before; where the clock falls by more than
/// 12 h a day has ended. A time that a change of clock makes happen twice is placed by the order of the rows, or asked for.
/// </summary>
internal sealed class RowClock(FileMapping file, List<ReadingProblem> notes)
{
    private static readonly TimeSpan HalfDay = TimeSpan.FromHours(12);

    private DateTime? before;
    private bool told;
    private int backwards;
    private int firstBackwards;

    /// <summary>Puts a time into a row: at once, or later where it happens twice.</summary>
    /// <returns>Why it cannot be placed; null when it can.</returns>
    public string? Put(RecordRow row, int index, CellTime time, DateOnly? day)
    {
        if (Local(row, time, day) is not { } local)
        {
            return "The time has no date: map a column to `date`, or add `day` (the first day) to the mapping of the file.";
        }

        if (row.Leading < 0)
        {
            row.Leading = index;
            Follow(row, local);
        }

        if (time.Offset is { } offset)
        {
            row[index] = new DateTimeOffset(local, offset);
            return null;
        }

        var mapped = file.Zone!.MapLocal(LocalDateTime.FromDateTime(local));
        switch (mapped.Count)
        {
            case 0:
                return string.Create(CultureInfo.InvariantCulture, $"In the zone {file.Zone.Id} the clock never showed {local:yyyy-MM-dd HH:mm}: it was put forward over this time.");
            case 1:
                row[index] = mapped.Single().ToDateTimeOffset();
                return null;
            default:
                row.Open.Add((index, local));
                return null;
        }
    }

    /// <summary>Says what was seen of the order of the rows.</summary>
    public void End()
    {
        if (backwards > 0)
        {
            notes.Add(new ReadingProblem(
                string.Create(CultureInfo.InvariantCulture, $"Times run back on {backwards} {(backwards == 1 ? "row" : "rows")}, first here. Rows are taken in the order of their times."), At(firstBackwards)));
        }
    }

    /// <summary>Places the times that happen twice.</summary>
    /// <returns>Rows that stay open.</returns>
    public IReadOnlyList<RecordRow> Settle(IReadOnlyList<RecordRow> rows)
    {
        var open = new List<RecordRow>();
        for (var i = 0; i < rows.Count; i++)
        {
            var last = i;
            while (last < rows.Count && IsOpen(rows[last]))
            {
                last++;
            }

            if (last > i)
            {
                open.AddRange(Settle(rows, i, last));
                i = last - 1;
            }
        }

        return open;
    }

    // Rows from first to last (exclusive) all lie in the hour that happens twice.
    private IEnumerable<RecordRow> Settle(IReadOnlyList<RecordRow> rows, int first, int last)
    {
        var fall = first + 1;
        while (fall < last && (Leading(rows[fall]) > Leading(rows[fall - 1]) || (!file.Kind.TimesRise && Leading(rows[fall]) == Leading(rows[fall - 1]))))
        {
            fall++;
        }

        var (earlier, later) = (Placed(Leading(rows[first])).Earlier, Placed(Leading(rows[last - 1])).Later);
        var (isAfter, isBefore) = (first > 0 && Moment(rows[first - 1]) > earlier, last < rows.Count && Moment(rows[last]) < later);
        if (fall == last && isAfter == isBefore)
        {
            return rows.Skip(first).Take(last - first);
        }

        for (var i = first; i < last; i++)
        {
            Place(rows[i], isLater: fall < last ? i >= fall : isAfter);
        }

        return [];
    }

    private void Place(RecordRow row, bool isLater)
    {
        foreach (var (index, local) in row.Open)
        {
            var (earlier, later) = Placed(local);
            row[index] = isLater ? later : earlier;
        }

        row.Open.Clear();
    }

    private static bool IsOpen(RecordRow row) => row.Open.Exists(open => open.Index == row.Leading);

    private static DateTime Leading(RecordRow row) => row.Open.Find(open => open.Index == row.Leading).Local;

    private static DateTimeOffset? Moment(RecordRow row) => row.Leading < 0 ? null : row[row.Leading] as DateTimeOffset?;

    private (DateTimeOffset Earlier, DateTimeOffset Later) Placed(DateTime local)
    {
        var mapped = file.Zone!.MapLocal(LocalDateTime.FromDateTime(local));
        return (mapped.First().ToDateTimeOffset(), mapped.Last().ToDateTimeOffset());
    }

    private DateTime? Local(RecordRow row, CellTime time, DateOnly? day)
    {
        if ((time.Date ?? (row.Leading < 0 ? day : null)) is { } date)
        {
            return date.ToDateTime(TimeOnly.FromTimeSpan(time.Clock));
        }

        // Later times of a row follow its first, the first follows the row before.
        var since = row.Leading >= 0 ? InRow(row) : before;
        if ((since is { } known ? DateOnly.FromDateTime(known) : day ?? file.Day) is not { } start)
        {
            return null;
        }

        var local = start.ToDateTime(TimeOnly.FromTimeSpan(time.Clock));
        if (since is { } from && from - local > HalfDay)
        {
            local = local.AddDays(1);
            Tell(row, local);
        }

        return local;
    }

    private DateTime? InRow(RecordRow row) => row.Open.Find(open => open.Index == row.Leading) is { Local: var local } && local != default
        ? local
        : row[row.Leading] is DateTimeOffset moment ? moment.DateTime : before;

    private void Tell(RecordRow row, DateTime local)
    {
        if (!told)
        {
            told = true;
            notes.Add(new ReadingProblem(string.Create(CultureInfo.InvariantCulture, $"The clock falls by more than 12 h here, so that this row and those after it are of {local:yyyy-MM-dd}."), At(row.Place.Line)));
        }
    }

    private void Follow(RecordRow row, DateTime local)
    {
        // In the hour that happens twice a clock runs back without a fault.
        if (before > local && file.Zone?.MapLocal(LocalDateTime.FromDateTime(local)).Count != 2)
        {
            backwards++;
            firstBackwards = backwards == 1 ? row.Place.Line : firstBackwards;
        }

        before = local;
    }

    private static TextSpan At(int line) => new(line, 1, line, 1);
}
