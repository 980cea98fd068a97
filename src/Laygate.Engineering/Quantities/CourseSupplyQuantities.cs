using Laygate.Engineering.Formulas;
using Laygate.Engineering.Layers;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Supply;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Mix that a course takes and gets.</summary>
internal static class CourseSupplyQuantities
{
    private static readonly Define Course = new(ElementKind.Course);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Course.Number("demand", Shape.Flow, "Mix that the course takes while the paver moves, at the station where it takes most.", DemandOf, new Method(
            "R = Σ v · max(W · t) · ρ over the pavers that lay the course", Sources.WorkTip31, "width changes evenly between stations; runs of one paver follow each other")),
        Course.Number("demand_average", Shape.Flow, "Mix that the course takes on average from its first metre to its last, at the planned speed, standstill and planned stops counted.", AverageDemand, new Method(
            "Rm = Σ M / (L / (v · a) + Σ stops) over the pavers that lay the course", Sources.Balance, "what must come at the least so that the paver need not wait for mix; hand-laid areas are left out")),
        Course.Number("tonnage_at_thinnest", Shape.Mass, "Mix for all runs of the course if it were nowhere thicker than its smallest thickness.", TonnageAtThinnest, new Method(
            "M = Σ W · L · tmin · ρ", Sources.Balance, "hand-laid areas and losses are not counted: less than this cannot cover the runs")),
        Course.Flag("tonnage_is_stated", "Whether the plan states the tonnage ordered for the course.", (_, e) => Answers.Follows(
            ((Course)e.Subject!).Tonnage is not null, new InputReference(e.Address, "tonnage"))),
        Course.Number("density_ordered", Shape.Density, "Density that the ordered mix would have if all of it went into the runs and areas of the course at their largest thickness.", DensityOrdered, new Method(
            "ρ = M / (Σ W · L · tmax + hand-laid)", Sources.Balance, "at the largest thickness of the course, or what is stated by stations where that is more")),
        Course.Number("tonnage_computed", Shape.Mass, "Mix for all runs of the course, and for areas laid by hand with its mix.", Tonnage, new Method(
            "M = Σ W · L · t · ρ", Sources.Navedtra14080, "no allowance for waste; hand-laid areas count to the uppermost course of their mix")),
        Course.Number("supply", Shape.Flow, "Mix of this course that the plants can send on average over the shift.", SupplyOf, new Method(
            "S = Σ (planned output + stock / shift) · R / ΣR", Sources.Napa62, "a plant with several mixes is shared by demand among the courses laid together; a stock counts only where it is stated")),
        Course.Number("load_smallest", Shape.Mass, "Smallest whole load among the trucks that carry the mix of the course.", LoadSmallest, new Method(
            "P = least of the payloads", Sources.Definition, "trucks that name the mix")),
    ];

    private static Answer LoadSmallest(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var trucks = (context.Plan.Supply?.Trucks ?? []).Where(trucks => PlanView.Same(trucks.Mix, ((Course)element.Subject!).Mix)).ToList();
        if (trucks.Count == 0)
        {
            calculation.Miss("supply", "trucks");
        }

        double? least = trucks.Count == 0 ? null : trucks.Min(group => calculation.Stated("P", group.Payload, $"trucks:{group.Id}", "payload"));
        return calculation.Result("course.load_smallest", "P", "P = least of the payloads", least);
    }

    private static Answer DemandOf(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var course = (Course)element.Subject!;
        var view = PlanView.Of(context);
        var sections = Sections(calculation, view, course);
        var density = CourseQuantities.MixDensity(calculation, course);
        double? sum = sections.Count > 0 ? 0 : null;
        foreach (var (paver, section) in sections)
        {
            var speed = calculation.Quantity("v", "paver.speed", view.Of(ElementKind.Paver, paver));
            var spread = Spread.Rate(section.Thickness, density) ?? 0;
            var width = Math.Max(section.WidthAtStart, section.WidthAtEnd);
            sum += Demand.Of(speed, width, spread) ?? double.NaN;
        }

        return calculation.Result("course.demand", "R", "R = v · max(W · t) · ρ", sum);
    }

    /// <summary>
    /// Wide places, availability and planned stops are in it on the side that helps: what is sent while the paver stands or lays
    /// a narrow part waits in silo, trucks and buffers. Less than this on average stops the paver for certain.
    /// </summary>
    private static Answer AverageDemand(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var course = (Course)element.Subject!;
        var view = PlanView.Of(context);
        var runs = view.RunsOf(course).ToList();
        if (runs.Count == 0)
        {
            calculation.Miss("plan", "runs");
        }

        calculation.Stated("t", course.Thickness, element.Address, "thickness");
        var density = CourseQuantities.MixDensity(calculation, course);
        double? sum = null;
        foreach (var own in runs.GroupBy(run => view.PaverOf(course, run)))
        {
            var mass = own.Sum(run => Volume(calculation, run, course)) * density;
            sum = (sum ?? 0) + (mass / TimeOf(calculation, own.Key, own.Sum(run => Math.Abs((run.To?.Si ?? double.NaN) - (run.From?.Si ?? double.NaN)))));
        }

        return calculation.Result("course.demand_average", "Rm", "Rm = M / (L / (v · a) + Σ stops)", sum);
    }

    /// <summary>Time in which a paver lays a length at its planned speed, with availability and planned stops, s.</summary>
    private static double TimeOf(Calculation calculation, Paver? paver, double length)
    {
        var speed = PaverQuantities.SpeedOf(calculation, paver);
        var share = paver?.Availability is { Si: > 0 } stated ? calculation.Stated("a", stated, $"paver:{paver.Id}", "availability") : 1;
        var stops = paver?.Stops.Sum(stop => stop.Length?.Si ?? 0) ?? 0;
        return (length / (speed * share)) + stops;
    }

    /// <summary>The part with the largest product of width and thickness of each paver.</summary>
    private static Dictionary<string, RunPart> Sections(Calculation calculation, PlanView view, Course course)
    {
        var sections = new Dictionary<string, RunPart>(StringComparer.Ordinal);
        var runs = view.RunsOf(course).ToList();
        if (runs.Count == 0)
        {
            calculation.Miss("plan", "runs");
        }

        foreach (var run in runs)
        {
            if (LargestPart(calculation, view, course, run) is var (paver, largest) && (!sections.TryGetValue(paver, out var known) || known.LargestSection < largest.LargestSection))
            {
                sections[paver] = largest;
            }
        }

        if (runs.Count == 0 && view.AnyPaverOf(course) is null)
        {
            calculation.Miss("plan", "pavers");
        }

        return sections;
    }

    private static (string Paver, RunPart Part)? LargestPart(Calculation calculation, PlanView view, Course course, Run run)
    {
        var parts = RunProfile.Parts(run, course);
        var paver = view.PaverOf(course, run);
        if (parts.Count == 0)
        {
            calculation.Miss($"run:{run.Id}", "width");
        }

        if (paver is null)
        {
            calculation.Miss(run.Paver is { } named ? $"paver:{named}" : "plan", run.Paver is null ? "pavers" : string.Empty);
        }

        if (parts.Count == 0 || paver is null)
        {
            return null;
        }

        var largest = parts.MaxBy(part => part.LargestSection)!;
        calculation.Show("W", "run.width", $"run:{run.Id}", Math.Max(largest.WidthAtStart, largest.WidthAtEnd), run.WidthAlong[0].Value.Unit);
        calculation.Show("t", "course.thickness", $"course:{course.Id}", largest.Thickness, course.Thickness.Unit);
        return (paver.Id, largest);
    }

    private static Answer Tonnage(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var course = (Course)element.Subject!;
        var runs = PlanView.Of(context).RunsOf(course).ToList();
        if (runs.Count == 0)
        {
            calculation.Miss("plan", "runs");
        }

        calculation.Stated("t", course.Thickness, element.Address, "thickness");
        var volume = runs.Sum(run => Volume(calculation, run, course)) + HandLaid(calculation, context, course);
        var density = CourseQuantities.MixDensity(calculation, course);
        return calculation.Result("course.tonnage_computed", "M", "M = Σ W · L · t · ρ", volume > 0 ? volume * density : null);
    }

    private static Answer DensityOrdered(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var course = (Course)element.Subject!;
        var runs = PlanView.Of(context).RunsOf(course).ToList();
        if (runs.Count == 0)
        {
            calculation.Miss("plan", "runs");
        }

        var ordered = calculation.Stated("M", course.Tonnage, element.Address, "tonnage");
        var nominal = runs.Sum(run => Volume(calculation, run, course));
        var thickest = Math.Max(calculation.Stated("t", course.Thickness, element.Address, "thickness"), course.ThicknessHighest?.Si ?? (course.Thickness.Si + (course.Tolerance?.Si ?? 0)));
        var area = runs.Sum(run => RunProfile.Parts(run, course).Sum(part => 0.5 * (part.WidthAtStart + part.WidthAtEnd) * part.Length));
        var volume = Math.Max(nominal, area * thickest) + HandLaid(calculation, context, course);
        return calculation.Result("course.density_ordered", "ρ", "ρ = M / (Σ W · L · tmax + hand-laid)", volume > 0 ? ordered / volume : null);
    }

    private static Answer TonnageAtThinnest(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var course = (Course)element.Subject!;
        var runs = PlanView.Of(context).RunsOf(course).ToList();
        if (runs.Count == 0)
        {
            calculation.Miss("plan", "runs");
        }

        foreach (var run in runs)
        {
            Volume(calculation, run, course); // Takes the inputs, and what is missing of them.
        }

        var area = runs.Sum(run => RunProfile.Parts(run, course).Sum(part => 0.5 * (part.WidthAtStart + part.WidthAtEnd) * part.Length));
        var thinnest = calculation.Quantity("tmin", "course.thickness_lowest", element);
        var density = CourseQuantities.MixDensity(calculation, course);
        return calculation.Result("course.tonnage_at_thinnest", "M", "M = Σ W · L · tmin · ρ", area > 0 ? area * thinnest * density : null);
    }

    private static double Volume(Calculation calculation, Run run, Course course)
    {
        var address = $"run:{run.Id}";
        calculation.Stated("from", run.From, address, "from");
        calculation.Stated("to", run.To, address, "to");
        var parts = RunProfile.Parts(run, course);
        if (parts.Count == 0)
        {
            calculation.Miss(address, "width");
        }

        foreach (var width in run.WidthAlong)
        {
            calculation.Show("W", "width", address, width.Value.Si, width.Value.Unit);
        }

        return parts.Sum(part => part.Volume);
    }

    // A place whose area is not stated is not taken as nothing, nor one without a mix as none of this course's where it may be.
    private static double HandLaid(Calculation calculation, QuantityContext context, Course course)
    {
        var top = context.Plan.Courses.LastOrDefault(other => PlanView.Same(other.Mix, course.Mix));
        if (!ReferenceEquals(top, course))
        {
            return 0;
        }

        var sum = 0.0;
        var only = context.Plan.Mixes.Count == 1 ? context.Plan.Mixes[0].Id : null;
        foreach (var (run, place) in context.Plan.Runs.SelectMany(run => run.HandLaid.Select(place => (run, place))))
        {
            if ((place.Mix ?? only) is null)
            {
                calculation.Miss($"run:{run.Id}", $"hand_laid.{place.Id}.mix");
            }
            else if (PlanView.Same(place.Mix ?? only, course.Mix))
            {
                sum += calculation.Stated("Ah", place.Area, $"run:{run.Id}", $"hand_laid.{place.Id}.area") * (place.Thickness?.Si ?? course.Thickness.Si);
            }
        }

        return sum;
    }

    private static Answer SupplyOf(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var course = (Course)element.Subject!;
        var view = PlanView.Of(context);
        var plants = (context.Plan.Supply?.Plants ?? []).Where(plant => Makes(plant, course, context.Plan)).ToList();
        if (plants.Count == 0)
        {
            calculation.Miss("supply", "plants");
        }

        var sum = 0.0;
        foreach (var plant in plants)
        {
            sum += Output(calculation, plant) * Share(calculation, view, plant, course);
        }

        return calculation.Result("course.supply", "S", "S = Σ (S0 + B/T) · R/ΣR", sum > 0 || calculation.Stopped is not null ? sum : null);
    }

    /// <summary>Whether a plant makes the mix of a course; a single plant that names no mixes makes all.</summary>
    internal static bool Makes(Plant plant, Course course, Plan plan) =>
        plant.Mixes.Contains(course.Mix, StringComparer.Ordinal) || (plant.Mixes.Count == 0 && plan.Supply!.Plants.Count == 1);

    private static double Output(Calculation calculation, Plant plant)
    {
        var address = $"plant:{plant.Id}";
        var planned = calculation.Stated("S0", plant.Planned, address, "planned");
        if (plant.SiloAtStart is not { Si: > 0 } stock)
        {
            return planned;
        }

        var held = calculation.Stated("B", stock, address, "silo_at_start");
        var shift = calculation.Quantity("T", "shift.duration", calculation.Context.Elements.Find("shift"));
        return Demand.WithStock(planned, held, shift) ?? double.NaN;
    }

    private static double Share(Calculation calculation, PlanView view, Plant plant, Course course)
    {
        var together = view.PassOf(course).Courses.Where(other => Makes(plant, other, calculation.Context.Plan)).ToList();
        if (together.Count == 1)
        {
            return 1;
        }

        var own = 0.0;
        var all = 0.0;
        foreach (var other in together)
        {
            var demand = calculation.Quantity("R", "course.demand", view.Of(ElementKind.Course, other.Id));
            own += ReferenceEquals(other, course) ? demand : 0;
            all += demand;
        }

        return own / all;
    }
}
