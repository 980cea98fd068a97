using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Timeline;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Whether the shape of a run, what is stated along it, and its edges can be as the plan has them.</summary>
internal static class RunShape
{
    private static readonly Define Run = new(ElementKind.Run);
    private static readonly Define Joint = new(ElementKind.Joint);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Run.Flag("crossfall_stated", "Whether the plan states a crossfall.", (_, e) => Answers.Follows(
            ((Run)e.Subject!).CrossfallAlong.Count > 0, new InputReference(e.Address, "crossfall"))),
        Run.Flag("gradient_stated", "Whether the plan states a gradient.", (_, e) => Answers.Follows(
            ((Run)e.Subject!).Gradient is not null, new InputReference(e.Address, "gradient"))),
        Run.Number("gradient_size", Shape.Share, "Gradient, uphill or downhill.", GradientSize, new Method("s = |s|", Sources.Definition, "needs a gradient")),
        Run.Flag("has_stations", "Whether widths or crossfalls of the run are stated by stations.", (_, e) => HasStations((Run)e.Subject!, e.Address)),
        Run.Number("length_not_described", Shape.Length, "Length of the run before the first and beyond the last station of its widths, or of its crossfalls where more is missing there.", NotDescribed, new Method(
            "L = (first − from) + (to − last)", Sources.Definition, "needs both ends of the run")),
        Run.Flag("has_hot_edge", "Whether an edge is said to be hot.", (_, e) => Answers.Follows(
            HotEdges((Run)e.Subject!) > 0, new InputReference(e.Address, "left_edge"))),
        Run.Number("hot_edges", Shape.None, "Edges that are said to be hot.", (c, e) =>
            new Calculation(c).Result("run.hot_edges", "n", "n = hot edges", HotEdges((Run)e.Subject!)), new Method("n = hot edges", Sources.Definition, "edges that are stated")),
        Run.Number("runs_beside", Shape.None, "Other runs of one of its courses that share stations with it.", RunsBeside, new Method(
            "n = runs", Sources.Definition, "needs the ends of all runs")),
        Joint.Flag("sides_known", "Whether it is a longitudinal joint of a run whose edges are both stated, or of one that another run lies beside.", SidesKnown),
        Joint.Flag("has_a_side", "Whether the run of the joint has an edge against asphalt, or another run beside it.", HasSide),
        Joint.Flag("removed_stated", "Whether the plan states how much is cut off.", (_, e) => Answers.Follows(
            ((Joint)e.Subject!).Removed is not null, new InputReference(e.Address, "removed"))),
        Joint.Stated<Joint>("removed_length", Shape.Length, "removed", "Length that is cut off.", joint => joint.Removed),
    ];

    private static bool ByStation<T>(IReadOnlyList<AtStation<T>> values)
        where T : IDimension => values.Any(value => value.At is not null);

    private static Answer HasStations(Run run, string address) =>
        ByStation(run.WidthAlong) ? Answers.Follows(flag: true, new InputReference(address, "widths"))
        : ByStation(run.CrossfallAlong) ? Answers.Follows(flag: true, new InputReference(address, "crossfalls"))
        : Answers.Follows(flag: false);

    private static Answer GradientSize(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var gradient = calculation.Stated("s", ((Run)element.Subject!).Gradient, element.Address, "gradient");
        return calculation.Result("run.gradient_size", "s", "s = |s|", Math.Abs(gradient)) with { Input = new InputReference(element.Address, "gradient") };
    }

    private static Answer NotDescribed(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var run = (Run)element.Subject!;
        var from = calculation.Stated("from", run.From, element.Address, "from");
        var to = calculation.Stated("to", run.To, element.Address, "to");
        var (low, high) = (Math.Min(from, to), Math.Max(from, to));
        var open = Math.Max(Open(run.WidthAlong, low, high), Open(run.CrossfallAlong, low, high));
        return calculation.Result("run.length_not_described", "L", "L = (first − from) + (to − last)", open) with { Input = new InputReference(element.Address, Open(run.WidthAlong, low, high) >= open ? "widths" : "crossfalls") };
    }

    private static double Open<T>(IReadOnlyList<AtStation<T>> values, double low, double high)
        where T : IDimension
    {
        var stations = values.Where(value => value.At is not null).Select(value => value.At!.Si).ToList();
        return stations.Count == 0 ? 0 : Math.Max(0, stations.Min() - low) + Math.Max(0, high - stations.Max());
    }

    private static int HotEdges(Run run) => new[] { run.LeftEdge, run.RightEdge }.Count(edge => edge == EdgeKind.Hot);

    private static Answer RunsBeside(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var (own, runs) = ((Run)element.Subject!, context.Plan.Runs);
        var beside = Beside(context, own).ToHashSet();

        // Stations of runs that lie elsewhere are needed, too, but say no more than that: shown for each run they would be the square of the list.
        foreach (var run in runs.Count > 1 ? runs.Where(run => ReferenceEquals(run, own) || (runs.Count <= RunQuantities.MostShown && beside.Contains(run)) || run.From is null || run.To is null) : [])
        {
            calculation.Stated("from", run.From, $"run:{run.Id}", "from");
            calculation.Stated("to", run.To, $"run:{run.Id}", "to");
        }

        return calculation.Result("run.runs_beside", "n", "n = runs", beside.Count);
    }

    private static IEnumerable<Run> Beside(QuantityContext context, Run run)
    {
        var courses = context.Plan.Courses.Where(course => PlanView.Lays(run, course)).ToList();
        return context.Plan.Runs.Where(other => !ReferenceEquals(other, run) && Neighbours.Shares(other, run) && courses.Exists(course => PlanView.Lays(other, course)));
    }

    private static Run? RunOf(QuantityContext context, Joint joint) => joint is { Kind: JointKind.Longitudinal, Run: { } named }
        ? context.Plan.Runs.FirstOrDefault(run => PlanView.Same(run.Id, named))
        : null;

    private static Answer SidesKnown(QuantityContext context, Element element)
    {
        var run = RunOf(context, (Joint)element.Subject!);
        return Answers.Follows(
            run is not null && (run is { LeftEdge: not null, RightEdge: not null } || Beside(context, run).Any()), new InputReference(element.Address, "run"));
    }

    private static Answer HasSide(QuantityContext context, Element element)
    {
        var run = RunOf(context, (Joint)element.Subject!);
        return Answers.Follows(
            run is not null && (new[] { run.LeftEdge, run.RightEdge }.Any(edge => edge is EdgeKind.ExistingCold or EdgeKind.Hot or EdgeKind.Cut) || Beside(context, run).Any()),
            new InputReference($"run:{run?.Id}", "left_edge"));
    }
}
