using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Whether machines, courses and room fit one another.</summary>
internal static class FitQuantities
{
    private static readonly Define Run = new(ElementKind.Run);
    private static readonly Define Roller = new(ElementKind.Roller);
    private static readonly Define Paver = new(ElementKind.Paver);
    private static readonly Define Trucks = new(ElementKind.Trucks);
    private static readonly Define Mix = new(ElementKind.Mix);
    private static readonly Define Phase = new(ElementKind.Phase);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Run.Number("screed_widest", Shape.Length, "Widest width of the screeds that lay the run: the least over its courses.", ScreedWidest, new Method(
            "B = least of the widest widths", Sources.Definition, "needs a screed with its widest width for each course of the run")),
        Run.Number("screed_narrowest", Shape.Length, "Narrowest width of the screeds that lay the run: the largest over its courses.", ScreedNarrowest, new Method(
            "b = largest of the narrowest widths", Sources.Definition, "needs a screed with its narrowest width for each course of the run")),
        Run.Flag("room_known", "Whether the plan states the width that is closed.", (c, _) => RoomKnown(c)),
        Run.Number("room", Shape.Length, "Width that is closed.", (c, _) => Room(c)),
        Run.Flag("surface_beside_lane", "Whether the surface course is laid in it, on a milled depth that is stated, beside a course that stays.", (c, e) => Replaces(c, e, EdgeKind.ExistingCold)),
        Run.Flag("surface_at_kerb", "Whether the surface course is laid in it, on a milled depth that is stated, along a kerb or gutter.", (c, e) => Replaces(c, e, EdgeKind.Kerb, EdgeKind.Gutter)),
        Run.Number("rise", Shape.Thickness, "Height of the new surface above the one that was milled off; below zero where it lies lower.", Rise, new Method(
            "h = Σ t − m", Sources.Definition, "nominal thickness of the courses of the run, and the milled depth")),
        Roller.Stated<Roller>("overlap", Shape.Thickness, "overlap", "Overlap of two strips side by side.", roller => roller.Overlap),
        Roller.Number("widest_mat", Shape.Length, "Widest mat that it rolls.", WidestMat, new Method("W = largest width of the runs", Sources.Definition, "needs the width of each run")),
        Roller.Flag("room_known", "Whether the plan states the width that is closed.", (c, _) => RoomKnown(c)),
        Roller.Number("room", Shape.Length, "Width that is closed.", (c, _) => Room(c)),
        Roller.Number("amplitude_to_thickness", Shape.Share, "Amplitude as a share of the smallest thickness of a course under its drum.", AmplitudeToThickness, new Method(
            "a = A / t", Sources.Definition, "as the smallest thickness of a course")),
        Phase.Presence("roller", "A roller that works in the phase.", (c, e) => Answers.Fields(
            new InputReference("plan", "rolling.rollers"), ("rolling.rollers.phase", c.Plan.Rolling!.Rollers.Any(roller => PlanView.Same(roller.Phase, e.Id) && roller.Spare != true)))),
        Paver.StatedWord<Paver, CarriedBy>("carried_by", "carried_by", "What bears it.", paver => paver.CarriedBy),
        Paver.Flag("lays_upper_of_pair", "Whether it lays the upper course of a pair.", LaysUpper),
        Trucks.StatedWord<TruckGroup, TruckKind>("kind", "kind", "Kind of truck.", trucks => trucks.Kind),
        Trucks.Stated<TruckGroup>("payload", Shape.Mass, "payload", "Load of one truck.", trucks => trucks.Payload),
        Mix.Stated<Mix>("density_stated", Shape.Density, "density.compacted", "Density of the mix in the finished course, as the plan states it.", mix => mix.Density?.Compacted),
    ];

    private static Answer ScreedWidest(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var widths = Widths(calculation, (Run)element.Subject!, "B", "width_highest", screed => screed?.WidthHighest);
        return calculation.Result("run.screed_widest", "B", "B = least of the widest widths", widths.DefaultIfEmpty(double.NaN).Min());
    }

    private static Answer ScreedNarrowest(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var widths = Widths(calculation, (Run)element.Subject!, "b", "width_lowest", screed => screed?.WidthLowest);
        return calculation.Result("run.screed_narrowest", "b", "b = largest of the narrowest widths", widths.DefaultIfEmpty(double.NaN).Max());
    }

    private static List<double> Widths(Calculation calculation, Run run, string symbol, string key, Func<Screed?, IMeasure?> read)
    {
        var view = PlanView.Of(calculation.Context);
        var widths = new List<double>();
        foreach (var course in CoursesOf(calculation.Context, run))
        {
            if (view.PaverOf(course, run) is not { } paver)
            {
                calculation.Miss("plan", "pavers");
                continue;
            }

            var screed = paver.Screeds.FirstOrDefault(screed => PlanView.Same(screed.Course, course.Id));
            widths.Add(calculation.Stated(symbol, read(screed), $"paver:{paver.Id}", $"screeds.{course.Id}.{key}"));
        }

        return widths;
    }

    private static IEnumerable<Course> CoursesOf(QuantityContext context, Run run) =>
        context.Plan.Courses.Where(course => PlanView.Lays(run, course));

    private static Answer RoomKnown(QuantityContext context) => Answers.Follows(context.Plan.Site?.Closure?.Width is not null, new InputReference("site", "closure.width"));

    private static Answer Room(QuantityContext context) => Answers.Measure(context.Plan.Site?.Closure?.Width, new InputReference("site", "closure.width"));

    private static Answer Replaces(QuantityContext context, Element element, params EdgeKind[] kinds)
    {
        var run = (Run)element.Subject!;
        var edge = new[] { run.LeftEdge, run.RightEdge }.Any(edge => edge is { } kind && kinds.Contains(kind));
        return Answers.Follows(
            edge && context.Scope.Ground?.Milling?.Depth is not null && CoursesOf(context, run).Any(course => course.Kind == CourseKind.Surface),
            new InputReference(element.Address, "left_edge"));
    }

    private static Answer Rise(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var laid = context.Scope.Below.Concat(CoursesOf(context, (Run)element.Subject!)).Sum(course => calculation.Stated("t", course.Thickness, $"course:{course.Id}", "thickness"));
        var milled = calculation.Stated("m", context.Scope.Ground?.Milling?.Depth, "existing", "milling.depth");
        return calculation.Result("run.rise", "h", "h = Σ t − m", laid - milled);
    }

    private static Answer WidestMat(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        if (context.Plan.Runs.Count == 0)
        {
            calculation.Miss("plan", "runs");
        }

        var widths = context.Plan.Runs.Select(run =>
            calculation.Stated("W", run.WidthAlong.MaxBy(width => width.Value.Si)?.Value, $"run:{run.Id}", "width"));
        return calculation.Result("roller.widest_mat", "W", "W = largest width of the runs", widths.DefaultIfEmpty(double.NaN).Max());
    }

    private static Answer AmplitudeToThickness(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var amplitude = calculation.Stated("A", ((Roller)element.Subject!).Amplitude, element.Address, "amplitude");
        var thickness = calculation.Quantity("t", "roller.thinnest_course", element);
        return calculation.Result("roller.amplitude_to_thickness", "a", "a = A / t", thickness > 0 ? amplitude / thickness : null);
    }

    private static Answer LaysUpper(QuantityContext context, Element element)
    {
        var laid = PlanView.Of(context).CoursesOf((Paver)element.Subject!).ToList();
        return Answers.Follows(CourseQuantities.Pairs(context).Any(pair => laid.Contains(pair.Upper)), new InputReference(element.Address, "courses"));
    }
}
