using System.Globalization;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>A job of several shifts in words.</summary>
internal static class JobWords
{
    /// <summary>The reports of the shifts; the first report of the file is about what lies between them.</summary>
    public static IReadOnlyList<Report> Shifts(FileResult result) => [.. result.Reports.Skip(1)];

    /// <summary>When a shift lays: its date and hours, in local time.</summary>
    public static string When(ShiftOfJob shift) => (shift.Starts, shift.Ends) switch
    {
        ({ } from, { } to) => $"{from.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)} to {to.ToString("HH:mm", CultureInfo.InvariantCulture)}",
        ({ } from, null) => from.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture),
        _ => "time not known",
    };

    /// <summary>How long a shift is, and how much of it its runs need.</summary>
    public static string Hours(ShiftOfJob shift) => (shift.Hours, shift.Needed) switch
    {
        ({ } whole, { } needed) => $"{Amount(needed)} of {Amount(whole)} needed",
        ({ } whole, null) => Amount(whole),
        _ => "hours not known",
    };

    /// <summary>Mix that a shift takes.</summary>
    public static string Mass(ShiftOfJob shift) => shift.Mass is { } mass ? Amount(mass) : "tonnes not known";

    /// <summary>A number with its unit.</summary>
    public static string Amount(ShownValue value) =>
        Figures.WithUnit(Rounding.Text(value.Number ?? double.NaN, RoundingKind.General, 0), value.Unit);

    /// <summary>How a lot goes over the shifts, such as <c>upper-1 (upper): open after night-1 with 560 t of 1500 t, 3 of 5 tests left; ends in night-2 with 1120 t</c>.</summary>
    public static string Lot(LotOfJob lot)
    {
        List<string> steps = [.. lot.After.Select(after => after.IsOpen ? $"open after {PlainText.Show(after.Shift)}{Held(lot, after)}" : $"ends in {PlainText.Show(after.Shift)}{Held(lot, after)}")];
        if (lot.EndsIn is null)
        {
            steps.Add(lot.After.Any(after => after.SoFar is null) ? "where it ends is not known" : "no shift ends it");
        }

        return $"{PlainText.Show(lot.Id)} ({PlainText.Show(lot.Course)}): {string.Join("; ", steps)}";
    }

    /// <summary>How much a lot holds after a shift, of its size.</summary>
    public static string Holds(LotOfJob lot, LotAfterShift after) =>
        after.SoFar is { } amount ? lot.Size is { } size ? $"{Amount(amount)} of {Amount(size)}" : Amount(amount) : "not known";

    /// <summary>A count in a table; a dash where nothing is known.</summary>
    public static string Count(int? count) => count?.ToString(CultureInfo.InvariantCulture) ?? "–";

    /// <summary>What becomes of a lot after a shift.</summary>
    public static string Then(LotOfJob lot, LotAfterShift after) =>
        !after.IsOpen ? "ends" : ReferenceEquals(after, lot.After[^1]) && lot.EndsIn is null ? "no shift ends it" : "goes on";

    private static string Held(LotOfJob lot, LotAfterShift after)
    {
        var held = after.SoFar is { } amount ? $" with {Amount(amount)}{(after.IsOpen && lot.Size is { } size ? $" of {Amount(size)}" : string.Empty)}" : ", how much is not known";
        return after.TestsLeft is { } left ? $"{held}, {Left(left, lot.Tests!.Value)}" : held;
    }

    /// <summary>How many of the tests of a lot are left.</summary>
    public static string Left(int left, int tests) => left == 0
        ? $"no test of {tests.ToString(CultureInfo.InvariantCulture)} left"
        : $"{left.ToString(CultureInfo.InvariantCulture)} of {tests.ToString(CultureInfo.InvariantCulture)} tests left";

    /// <summary>What the job comes to: how many of its shifts fail and warn, and what lies between them; never one mark for all.</summary>
    public static (string Text, FindingGroup Tone) Verdict(FileResult result)
    {
        var shifts = Shifts(result);
        var tones = shifts.Select(report => VerdictWords.Of(report.Counts).Tone).ToList();
        var between = VerdictWords.Of(result.Reports[0].Counts);
        var counted = new[] { (FindingGroup.Failed, "does not pass", "do not pass"), (FindingGroup.Warned, "warns", "warn") }
            .Select(part => (Count: tones.Count(tone => tone == part.Item1), part.Item2, part.Item3)).Where(part => part.Count > 0)
            .Select(part => $"{part.Count.ToString(CultureInfo.InvariantCulture)} {(part.Count == 1 ? part.Item2 : part.Item3)}").ToList();
        var of = counted.Count > 0 ? string.Join(", ", counted) : "none fails or warns";
        var worst = tones.Append(between.Tone).Contains(FindingGroup.Failed) ? FindingGroup.Failed : tones.Append(between.Tone).Contains(FindingGroup.Warned) ? FindingGroup.Warned : FindingGroup.Passed;
        return ($"Of {shifts.Count.ToString(CultureInfo.InvariantCulture)} {(shifts.Count == 1 ? "shift" : "shifts")}: {of}. Between them: {between.Text.ToLowerInvariant()}.", worst);
    }

    /// <summary>Mix by day, such as <c>2031-06-09: 1060 t ac16</c>.</summary>
    public static IReadOnlyList<string> Days(JobSummary job) => [.. job.Days.GroupBy(day => day.Day).Select(day =>
        $"{day.Key.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}:{PlainText.Glue}{string.Join($"{PlainText.Glue}+{PlainText.Glue}", day.Select(mix => $"{Amount(mix.Mass)}{PlainText.Glue}{PlainText.Show(mix.Mix)}"))}")];
}
