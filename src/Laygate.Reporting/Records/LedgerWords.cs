using System.Globalization;
using Laygate.Engineering.Records;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>What a ledger comes to, in sentences.</summary>
internal static class LedgerWords
{
    /// <summary>What the foreman needs first, one sentence for each course.</summary>
    public static IReadOnlyList<string> Says(ShiftLedger ledger) => [.. ledger.Courses.Select(course => $"{PlainText.Show(course.Course)}: {Says(course)}")];

    /// <summary>Title and numbers of a plan.</summary>
    public static string Plan(LedgerReport report) =>
        $"{PlainText.Show(report.PlanTitle ?? report.PlanId)} ({PlainText.Show(report.PlanId)}{(report.Revision is { } revision ? $", revision {PlainText.Show(revision)}" : string.Empty)})";

    /// <summary>Of which moment the ledger is.</summary>
    public static string Moment(ShiftLedger ledger) =>
        $"Ledger at {LedgerNumbers.Moment(ledger.At)}; last row {(ledger.LastRow is { } last ? LedgerNumbers.Moment(last) : "none")}";

    /// <summary>Thickness of an interval against the plan.</summary>
    public static string Thickness(LedgerInterval interval)
    {
        var figure = interval.Thickness;
        var difference = figure.Si - figure.PlanSi!.Value;
        var over = interval.Loads == 1 ? "over the last load" : $"over the last {interval.Loads.ToString(CultureInfo.InvariantCulture)} loads";
        var shown = Whole(figure, Math.Abs(difference));
        return shown is null || interval.IsProven == false
            ? $"thickness as planned {over}{(interval.IsProven == false && shown is not null ? $" within {LedgerNumbers.Text(figure, figure.UncertaintySi)}" : string.Empty)}"
            : $"{shown} {(difference < 0 ? "thin" : "thick")} {over}";
    }

    /// <summary>The way in which an end was reckoned.</summary>
    public static string Basis(EndBasis basis) => basis switch
    {
        EndBasis.LastHalfHour => "last 30 min",
        EndBasis.Shift => "shift so far, stops counted",
        _ => "plan",
    };

    /// <summary>A moment with its range.</summary>
    public static string End(LedgerMoment end) => Equal(end.Earliest, end.Latest)
        ? LedgerNumbers.Time(end.Expected)
        : $"{LedgerNumbers.Time(end.Expected)} ({LedgerNumbers.Time(end.Earliest)} to {LedgerNumbers.Time(end.Latest)})";

    /// <summary>What is to be ordered, with the last load.</summary>
    public static string Order(CourseLedger course, bool withVerb = true)
    {
        if (course.ToOrder.Si <= 0)
        {
            var over = course.OnHand.Si - course.LeftByYield.Si;
            var nothing = withVerb ? "order nothing more" : "nothing more";
            return over > 0.5 * course.OnHand.Unit.Factor ? $"{nothing}, {LedgerNumbers.Text(course.OnHand, over)} too much on hand" : nothing;
        }

        var loads = course.LoadsToOrder is { } count ? $": {LedgerNumbers.Count(count, "load", "loads")}{(course.LastLoad is { } last && count > 1 ? $", the last of {LedgerNumbers.Load(last)}" : string.Empty)}" : string.Empty;
        return withVerb ? $"order {LedgerNumbers.WithRange(course.ToOrder)} more{loads}" : $"{LedgerNumbers.WithRange(course.ToOrder)}{loads}";
    }

    /// <summary>Stops so far.</summary>
    public static string Stops(StopLedger stops) => stops.Count == 0 ? "No stop is recorded."
        : $"{LedgerNumbers.Count(stops.Count, "stop", "stops")}, {LedgerNumbers.Text(stops.Total)} in all, longest {LedgerNumbers.Text(stops.Longest!)}{(stops.Limit is { } limit ? $" (limit of the plan {LedgerNumbers.Text(limit)})" : string.Empty)}.";

    /// <summary>Loads on their way.</summary>
    public static string UnderWay(CourseLedger course)
    {
        if (course.UnderWay.Count == 0)
        {
            return "none on the way";
        }

        var mass = LedgerNumbers.Text(course.OnHand, course.UnderWay.Sum(load => load.Mass.Si));
        var there = course.UnderWay.Count(load => load.OnSite);
        return $"{LedgerNumbers.Count(course.UnderWay.Count, "truck", "trucks")} with {mass}{(there > 0 ? $", {there.ToString(CultureInfo.InvariantCulture)} of them on site" : ", none on site yet")}";
    }

    /// <summary>What a reader must know.</summary>
    public static string Note(LedgerNote note)
    {
        var course = note.Course is { } id ? $"{PlainText.Show(id)}: " : string.Empty;
        var row = note.Place is { } place ? string.Create(CultureInfo.InvariantCulture, $" First: {PlainText.Show(place.File)}, line {place.Line}.") : string.Empty;
        return course + Capital(note.Course is null, note.Kind switch
        {
            LedgerNoteKind.NoStation => "no station of the screed is recorded, so that nothing can be said of yield, thickness and end.",
            LedgerNoteKind.NoDischarge => $"no times of discharge are recorded; loads count after the journey of the plan, so that yield lags or leads by up to one truck.",
            LedgerNoteKind.NoLevel => "what feeder and hopper hold at the end of the last load is not recorded; it counts as laid.",
            LedgerNoteKind.DensityOfPlan => "thickness with the density of the plan; no core gives one yet. 1 % of density is 1 % of thickness.",
            LedgerNoteKind.DensityOfCores => $"thickness with the mean density of {LedgerNumbers.Count(note.Count, "core", "cores")}.",
            LedgerNoteKind.NoCourse => $"{LedgerNumbers.Count(note.Count, "load belongs", "loads belong")} to no course of the plan and {(note.Count == 1 ? "does" : "do")} not count: map `mix` or `course`.{row}",
            LedgerNoteKind.NoRun => $"{LedgerNumbers.Count(note.Count, "station lies", "stations lie")} in no run, or in several, and {(note.Count == 1 ? "is" : "are")} left out: state `run`.{row}",
            LedgerNoteKind.Backwards => $"{LedgerNumbers.Count(note.Count, "station lies", "stations lie")} behind one that was read earlier and {(note.Count == 1 ? "is" : "are")} left out.{row}",
            LedgerNoteKind.NoUncertainty => "the record does not state the uncertainty of mass, density, width and length, so that no difference is proven.",
            LedgerNoteKind.Old => $"the last row is {LedgerNumbers.Count(note.Count, "minute", "minutes")} old: what was laid since is not in these figures.",
            LedgerNoteKind.OtherPlan => "the record names another plan than this one.",
            LedgerNoteKind.Standing => $"a paver has been standing for {LedgerNumbers.Count(note.Count, "minute", "minutes")}; the end is reckoned as if it started now.{row}",
            _ => $"{LedgerNumbers.Count(note.Count, "ticket is", "tickets are")} void, refused or returned and {(note.Count == 1 ? "does" : "do")} not count.{row}",
        });
    }

    /// <summary>A problem of a row on one line.</summary>
    public static string Row(Problem problem) => PlainText.Show($"{Places.Full(problem.File, problem.Position)}: {problem.Message}");

    private static string Says(CourseLedger course)
    {
        if (course.LengthLeft.Si <= 0 && course.Shift is not null)
        {
            return "laid to the end.";
        }

        var thickness = course.LastLoads is { } last ? Thickness(last) : "no yield yet";
        return $"{thickness}; {Order(course)}; {(course.End is { } end ? $"end {LedgerNumbers.Time(end.Expected)}" : "no end at the rates so far")}.";
    }

    // Whole millimetres, or sixteenths of an inch by their decimals; nothing where it rounds to nothing.
    private static string? Whole(LedgerFigure figure, double si)
    {
        var decimals = figure.Unit.Spelling is "mm" ? 0 : figure.Unit.Spelling is "in" ? 2 : 1;
        var rounded = Math.Round(figure.Unit.FromSi(si), decimals, MidpointRounding.AwayFromZero);
        return rounded > 0 ? Figures.WithUnit(rounded.ToString(CultureInfo.InvariantCulture), figure.Unit.Spelling) : null;
    }

    private static bool Equal(DateTimeOffset a, DateTimeOffset b) => string.Equals(LedgerNumbers.Time(a), LedgerNumbers.Time(b), StringComparison.Ordinal);

    private static string Capital(bool begins, string text) => begins && char.IsAsciiLetterLower(text[0]) ? char.ToUpperInvariant(text[0]) + text[1..] : text;
}
