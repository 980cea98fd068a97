using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Planned stops of a paver against its own stop limit, against each other and against the shift; the screeds that it has.</summary>
internal static class PlannedStops
{
    private static readonly Define Paver = new(ElementKind.Paver);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Paver.Flag("has_stops", "Whether the plan states stops of the paver.", (_, e) => Answers.Follows(
            ((Paver)e.Subject!).Stops.Count > 0, new InputReference(e.Address, "stops"))),
        Paver.Number("stop_longest", Shape.Minutes, "Longest of its planned stops.", Longest, new Method("t = largest length", Sources.Definition, "needs the length of each stop")),
        Paver.Number("stop_beyond_shift", Shape.Minutes, "Time by which the last planned stop ends after the shift; below zero where it ends before.", BeyondShift, new Method(
            "Δt = latest (after + length) − shift", Sources.Definition, "needs start and end of the shift, and when and how long the paver stops")),
        Paver.Flag("has_several_stops", "Whether the plan states more than one stop of the paver.", (_, e) => Answers.Follows(
            ((Paver)e.Subject!).Stops.Count > 1, new InputReference(e.Address, "stops"))),
        Paver.Number("stops_apart", Shape.Minutes, "Shortest time between the end of one planned stop and the start of the next; below zero where they overlap.", Apart, new Method(
            "Δt = least (next start − end before)", Sources.Definition, "needs when and how long the paver stops")),
        Paver.Flag("has_screeds", "Whether the plan states a screed of the paver.", (_, e) => Answers.Follows(
            ((Paver)e.Subject!).Screeds.Count > 0, new InputReference(e.Address, "screeds"))),
        Paver.Presence("screed_for_each_course", "A screed for each course that the paver lays.", ScreedForEach),
    ];

    private static Answer Longest(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var stops = Stops(calculation, element, needsStart: false);
        return calculation.Result("paver.stop_longest", "t", "t = largest length", stops.Max(stop => stop.To - stop.From));
    }

    private static Answer BeyondShift(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var last = Stops(calculation, element, needsStart: true).Max(stop => stop.To);
        var shift = calculation.Quantity("T", "shift.duration", PlanView.Of(context).Elements.Find("shift"));
        return calculation.Result("paver.stop_beyond_shift", "Δt", "Δt = latest (after + length) − shift", last - shift);
    }

    private static Answer Apart(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var stops = Stops(calculation, element, needsStart: true).OrderBy(stop => stop.From).ToList();
        return calculation.Result("paver.stops_apart", "Δt", "Δt = least (next start − end before)", stops.Zip(stops.Skip(1), (one, next) => next.From - one.To).DefaultIfEmpty(double.NaN).Min());
    }

    // Times after the start of laying, s.
    private static List<(double From, double To)> Stops(Calculation calculation, Element element, bool needsStart)
    {
        var stops = new List<(double, double)>();
        foreach (var stop in ((Paver)element.Subject!).Stops)
        {
            var from = needsStart ? calculation.Stated("t0", stop.After, element.Address, $"stops.{stop.Id}.after") : 0;
            stops.Add((from, from + calculation.Stated("t", stop.Length, element.Address, $"stops.{stop.Id}.length")));
        }

        return stops.Count > 0 ? stops : [(double.NaN, double.NaN)];
    }

    private static Answer ScreedForEach(QuantityContext context, Element element)
    {
        var paver = (Paver)element.Subject!;
        var lacking = PlanView.Of(context).CoursesOf(paver).Where(course => !paver.Screeds.Any(screed => PlanView.Same(screed.Course, course.Id))).ToList();
        var input = new InputReference(element.Address, "screeds");
        return new()
        {
            Value = new PresenceValue(lacking.Count == 0 ? PresenceLevel.Stated : PresenceLevel.Absent, []) { MissingAt = [.. lacking.Select(course => new InputReference(element.Address, $"screeds.{course.Id}"))] },
            Input = input,
        };
    }
}
