using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Strips laid end to end.</summary>
internal static class RunQuantities
{
    private static readonly Define Run = new(ElementKind.Run);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Run.Number("length", Shape.Length, "Length of the run.", Length, new Method("L = |to − from|", Sources.Definition, "needs both stations")),
        Run.Number("width_highest", Shape.Length, "Largest width along the run.", (_, e) => Width(e, highest: true)),
        Run.Number("width_lowest", Shape.Length, "Smallest width along the run.", (_, e) => Width(e, highest: false)),
        Run.Stated<Run>("edge_slope", Shape.Share, "edge_slope", "Slope of a free edge, height over width.", run => run.EdgeSlope),
        Run.Stated<Run>("above_gutter", Shape.Thickness, "above_gutter", "Height of the finished surface above the gutter.", run => run.AboveGutter),
        Run.Flag("has_free_edge", "Whether an edge is unsupported.", (_, e) => HasEdge(e, EdgeKind.Free)),
        Run.Flag("has_gutter", "Whether an edge lies against a gutter.", (_, e) => HasEdge(e, EdgeKind.Gutter)),
        Run.Flag("has_fixed_points", "Whether the surface must fit to a kerb, a gutter, an obstacle or a tie-in.", HasFixedPoints),
        Run.Number("begun_after", Shape.Minutes, "Time from the start of laying to the first metre of the run, as planned.", (c, e) =>
            Laid(c, e, "run.begun_after", "tb", strips => strips.Min(strip => strip.Begins)), LaidMethod),
        Run.Number("ended_after", Shape.Minutes, "Time from the start of laying to the last metre of the run, of its last course, as planned.", (c, e) =>
            Laid(c, e, "run.ended_after", "te", strips => strips.Max(strip => strip.Ends)), LaidMethod),
        Run.Flag("lies_beside_another", "Whether the run shares stations and a course with one that is laid before it, so that it lies beside it.", LiesBeside),
        Run.Category("joint_to_neighbour", JointWords, "Longitudinal joint between the run and the one beside it that is laid before: stated, or none where no edge of the run lies against asphalt (apart).", JointToNeighbour),
        Run.Flag("has_obstacles", "Whether the screed meets ironwork, gullies, rails or the like.", (_, e) =>
            Answers.Follows(((Run)e.Subject!).Obstacles.Count > 0, new InputReference(e.Address, "obstacles"))),
        Run.Presence("obstacle_kinds", "What kind each obstacle is: stated when every one says it.", ObstacleKinds),
        Run.Presence("joints", "A transverse joint of the run, and a longitudinal one where a side lies against asphalt; a joint that names no run counts where the plan has one run.", Joints),
        Run.Presence("levels", "A fixed point with its station, the height of the surface above it and the roll-down: stated when every one has them.", Levels),
    ];

    private static Answer Length(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var run = (Run)element.Subject!;
        calculation.Stated("from", run.From, element.Address, "from");
        calculation.Stated("to", run.To, element.Address, "to");
        return calculation.Result("run.length", "L", "L = |to − from|", RunProfile.Length(run));
    }

    // An edge that is not stated may be of any kind: only a yes is certain then.
    private static Answer HasEdge(Element element, params EdgeKind[] kinds)
    {
        var run = (Run)element.Subject!;
        (EdgeKind? Kind, string Key)[] edges = [(run.LeftEdge, "left_edge"), (run.RightEdge, "right_edge")];
        foreach (var (kind, key) in edges)
        {
            if (kind is { } stated && kinds.Contains(stated))
            {
                return Answers.Follows(flag: true, new InputReference(element.Address, key));
            }
        }

        InputReference[] silent = [.. edges.Where(edge => edge.Kind is null).Select(edge => new InputReference(element.Address, edge.Key))];
        return silent.Length > 0 ? Answer.Missing(silent) : Answers.Follows(flag: false, new InputReference(element.Address, "left_edge"));
    }

    private static Answer Joints(QuantityContext context, Element element)
    {
        var run = (Run)element.Subject!;
        var joints = context.Plan.Joints.Where(joint => joint.Run is null ? context.Plan.Runs.Count == 1 : PlanView.Same(joint.Run, run.Id)).ToList();
        var sides = Neighbours.OlderSides(context, run) > 0; // The joint to a run of this shift is asked for where the two lie side by side.
        var across = joints.Exists(joint => joint.Kind == JointKind.Transverse);
        var along = !sides || joints.Exists(joint => joint is { Kind: JointKind.Longitudinal, Beside: null });
        var level = across && along ? PresenceLevel.Stated : joints.Count > 0 ? PresenceLevel.Thin : PresenceLevel.Absent;
        var list = new InputReference("plan", "joints");
        JointKind[] lacking = [.. across ? Array.Empty<JointKind>() : [JointKind.Transverse], .. along ? Array.Empty<JointKind>() : [JointKind.Longitudinal]];
        return new()
        {
            Value = new PresenceValue(level, [])
            {
                MissingAt = lacking.Length > 0 ? [list] : [],
                Remarks = [.. lacking.Select(kind => Note.Of(NoteIds.EntryMissing, ("list", list.Key), ("kind", Words.Of(kind)), ("fields", "run, where, form, offset_below, coated")))],
            },
            Input = list,
        };
    }

    private static Answer HasFixedPoints(QuantityContext context, Element element)
    {
        var run = (Run)element.Subject!;
        return run.Obstacles.Count > 0 ? Answers.Follows(flag: true, new InputReference(element.Address, "obstacles"))
            : run.TieIns.Count > 0 ? Answers.Follows(flag: true, new InputReference(element.Address, "tie_ins"))
            : HasEdge(element, EdgeKind.Kerb, EdgeKind.Gutter);
    }

    private static Answer ObstacleKinds(QuantityContext context, Element element)
    {
        Answer[] obstacles = [.. ((Run)element.Subject!).Obstacles.Select(obstacle =>
            Answers.Fields(new InputReference(element.Address, $"obstacles.{obstacle.Id}"), ("kind", obstacle.Kind is not null)))];
        return obstacles.Length == 0 ? Answers.Fields(new InputReference(element.Address, "obstacles"), ("kind", false)) : Answers.Weakest(obstacles);
    }

    private static Answer Levels(QuantityContext context, Element element)
    {
        var input = new InputReference(element.Address, "levels");
        Answer[] points = [.. ((Run)element.Subject!).Levels.Select(level => Answers.Fields(
            level.Id is { } id ? new InputReference(element.Address, $"levels.{id}") : input, ("at", level.At is not null), ("above", level.Above is not null), ("roll_down", level.RollDown is not null)))];
        return points.Length == 0
            ? new() { Value = new PresenceValue(PresenceLevel.Absent, []) { MissingAt = [input] }, Input = input }
            : Answers.Weakest(points);
    }

    private static Method LaidMethod { get; } = new(
        "t = Σ (L / (v · a) + moves + stops) of what the paver lays before", Sources.Definition, "order of the runs as stated, else as listed; mix is always there");

    /// <summary>Runs whose stations are shown in the working of each other; of more, each shows its own, for all of all would be the square of the list.</summary>
    internal const int MostShown = 12;

    private static Answer Laid(QuantityContext context, Element element, string quantity, string symbol, Func<IReadOnlyList<LaidStrip>, double> read)
    {
        var calculation = new Calculation(context);
        var timeline = context.Plan.Runs.Count > MostShown ? ShiftTimeline.Of(context) : null;
        if (timeline is not null)
        {
            var run = (Run)element.Subject!;
            calculation.Stated("from", run.From, element.Address, "from");
            calculation.Stated("to", run.To, element.Address, "to");
            calculation.Show("N", "runs in order, each with its stations", "plan", context.Plan.Runs.Count, null);
        }

        if (timeline is null && context.Plan.Runs.Count > MostShown)
        {
            return context.Service(Unplaced.Of).Answer;
        }

        var strips = (timeline ?? new TimelineReader(calculation).Read())?.Strips.Where(strip => ReferenceEquals(strip.Run, element.Subject)).ToList();
        return calculation.Result(quantity, symbol, $"{symbol} = Σ (L / (v · a) + moves + stops)", strips is { Count: > 0 } ? read(strips) : null);
    }

    /// <summary>Why there is no timeline, found once for all runs.</summary>
    private sealed record Unplaced(Answer Answer)
    {
        public static Unplaced Of(QuantityContext context)
        {
            var calculation = new Calculation(context);
            _ = new TimelineReader(calculation).Read();
            return new Unplaced(calculation.Stopped ?? calculation.Outside("shift.time_needed"));
        }
    }

    private static Answer LiesBeside(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        if (context.Plan.Runs.Count < 2)
        {
            return Answers.Follows(flag: false, new InputReference(element.Address, "from"));
        }

        foreach (var run in context.Plan.Runs.Where(run => run.From is null || run.To is null))
        {
            calculation.Stated("from", run.From, $"run:{run.Id}", "from");
            calculation.Stated("to", run.To, $"run:{run.Id}", "to");
        }

        return calculation.Stopped ?? Answers.Follows(Neighbours.Before(context, (Run)element.Subject!).Any(), new InputReference(element.Address, "from"));
    }

    private static readonly string[] JointWords = ["stated", "apart"];

    private static Answer JointToNeighbour(QuantityContext context, Element element)
    {
        var run = (Run)element.Subject!;
        var input = new InputReference("plan", "joints");
        if (LiesBeside(context, element) is { Value: null } unplaced)
        {
            return unplaced;
        }

        if (Neighbours.Without(context, run) is not { } other)
        {
            return new() { Value = new CategoryValue("stated"), Input = input };
        }

        var beside = Note.Of(NoteIds.SideBySide, ("run", run.Id), ("other", other.Id));
        return run is { LeftEdge: { } left, RightEdge: { } right } && !Neighbours.IsAgainstAsphalt(left) && !Neighbours.IsAgainstAsphalt(right)
            ? new() { Value = new CategoryValue("apart"), Input = input, Note = beside }
            : new()
            {
                Absence = new Absence(AbsenceReason.MissingInput, [input], beside),
                Input = input,
                Note = Note.Of(NoteIds.EntryMissing, ("list", input.Key), ("kind", Words.Of(JointKind.Longitudinal)), ("fields", "run, beside, where, form, offset_below, line, coated")),
            };
    }

    private static Answer Width(Element element, bool highest)
    {
        var widths = ((Run)element.Subject!).WidthAlong;
        var width = highest ? widths.MaxBy(at => at.Value.Si) : widths.MinBy(at => at.Value.Si);
        return Answers.Measure(width?.Value, new InputReference(element.Address, "width"));
    }
}
