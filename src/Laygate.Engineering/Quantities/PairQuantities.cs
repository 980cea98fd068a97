using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Two courses laid hot-on-hot, as one hot body.</summary>
internal static class PairQuantities
{
    private static readonly Define Pair = new(ElementKind.Pair);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        OfCourse("upper_thickness", Shape.Thickness, "Nominal thickness of the upper course.", "course.thickness", pair => pair.Upper),
        OfCourse("upper_thickness_lowest", Shape.Thickness, "Smallest thickness of the upper course.", "course.thickness_lowest", pair => pair.Upper),
        OfCourse("upper_thickness_to_size", Shape.None, "Nominal thickness of the upper course as a multiple of its aggregate size.", "course.thickness_to_size", pair => pair.Upper),
        OfCourse("upper_thickness_lowest_to_size", Shape.None, "Smallest thickness of the upper course as a multiple of its aggregate size.", "course.thickness_lowest_to_size", pair => pair.Upper),
        OfCourse("lower_thickness", Shape.Thickness, "Nominal thickness of the lower course.", "course.thickness", pair => pair.Lower),
        Pair.Flag("bond_coat_between", "Whether a bond coat is applied between the two courses; no unless the plan states one.", BondCoatBetween),
        Pair.Flag("cored", "Whether a test of the pair is made on cores.", (c, e) => Answers.Follows(CoredTests(c, e).Any(), new InputReference("plan", "tests"))),
        Pair.Flag("cores_cut_at_interface", "Whether the cores of the pair are cut apart at the interface; no when one test leaves them whole.", CoresCut),
        Pair.Number("strips", Shape.None, "Number of runs that lay the pair side by side.", StripsOf, new Method(
            "most runs of the pair that share a station", Sources.Definition, "one run needs no stations; several do")),
        Pair.Flag("has_longitudinal_joint", "Whether the pair has a longitudinal joint: one is listed, it is laid in strips side by side, or a side lies against asphalt.", HasLongitudinalJoint),
        Pair.Category("joint_height", Words.Of<JointHeight>(), "Height over which the longitudinal joints of the pair are treated; the lowest of them.", Height),
        Pair.Category("goes_on_with", ["neither", "upper"], "Course that is laid on alone when a plant stops: neither, unless an action of the plan names one. Whether the lower course may go on alone needs a person.", GoesOnWith),
        Pair.Category("first_mode", PhaseQuantities.Modes, "How the rollers of the first phase compact.", FirstMode),
        Pair.Number("core_skin_difference", Shape.Difference, "Largest difference between core and skin during the rolling.", PairCooling.CoreSkin, CoolingMethods.CoreSkin),
        Pair.Number("roll_down", Shape.Thickness, "Roll-down of both courses together.", RollDown, new Method(
            "Δt = Δt1 + Δt2", Sources.Balance, "as the roll-down of a course")),
        Pair.Number("delay", Shape.Minutes, "Time between the two screeds at one point.", Delay, new Method(
            "stated, else Δt = a / v", Sources.Balance, "a above or equal to zero, v above zero")),
    ];

    /// <summary>Tests on cores of the pair; one that names no course examines the pair too.</summary>
    internal static IEnumerable<Test> CoredTests(QuantityContext context, Element element)
    {
        var pair = (Pair)element.Subject!;
        return context.Plan.Tests.Where(test => test.Cores is not null
            && (test.Course is null || PlanView.Same(test.Course, pair.Upper.Id) || PlanView.Same(test.Course, pair.Lower.Id)));
    }

    private static Answer CoresCut(QuantityContext context, Element element)
    {
        Test[] tests = [.. CoredTests(context, element)];
        if (Array.Find(tests, test => test.Cores!.CutAtInterface == false) is { } whole)
        {
            return Answers.Follows(flag: false, new InputReference($"test:{whole.Id}", "cores.cut_at_interface"));
        }

        InputReference[] silent = [.. tests.Where(test => test.Cores!.CutAtInterface is null).Select(test => new InputReference($"test:{test.Id}", "cores.cut_at_interface"))];
        return tests.Length == 0 ? Answer.Missing(new InputReference("plan", "tests"))
            : silent.Length > 0 ? Answer.Missing(silent)
            : Answers.Follows(flag: true, new InputReference($"test:{tests[0].Id}", "cores.cut_at_interface"));
    }

    /// <summary>Time between the screed of a course and the one below it, s: for a warm course what follows from the runs comes first.</summary>
    internal static double DelayOf(Calculation calculation, Course upper) => CourseTimes.Delay(calculation.Context, upper) is null
        ? StatedDelayOf(calculation, upper)
        : calculation.Quantity("Δt", "course.delay_longest", calculation.Context.Elements.Find($"course:{upper.Id}"));

    /// <summary>The same as the plan states it, in time or distance, s.</summary>
    internal static double StatedDelayOf(Calculation calculation, Course upper)
    {
        var address = $"course:{upper.Id}";
        if (upper.Delay is { } stated)
        {
            return calculation.Stated("Δt", stated, address, "delay");
        }

        if (upper.Distance is null)
        {
            calculation.Miss(address, "delay");
            return double.NaN;
        }

        var distance = calculation.Stated("a", upper.Distance, address, "distance");
        var view = PlanView.Of(calculation.Context);
        var speed = PaverQuantities.SpeedOf(calculation, view.AnyPaverOf(upper));
        return Rolling.RollerOutput.ZoneTime(distance, speed) ?? double.NaN;
    }

    private static QuantityDefinition OfCourse(string name, Shape shape, string meaning, string quantity, Func<Pair, Course> pick) =>
        Pair.Number(name, shape, meaning, (c, e) => c.Get(quantity, PlanView.Of(c).Of(ElementKind.Course, pick((Pair)e.Subject!).Id)!));

    private static Answer GoesOnWith(QuantityContext context, Element element)
    {
        var pair = (Pair)element.Subject!;
        foreach (var action in context.Plan.Contingencies)
        {
            var input = new InputReference($"contingency:{action.Id}", "goes_on_with");
            if (PlanView.Same(action.GoesOnWith, pair.Upper.Id))
            {
                return Answers.Follows("upper", input);
            }

            if (PlanView.Same(action.GoesOnWith, pair.Lower.Id))
            {
                return Answer.None(AbsenceReason.NeedsPerson, Note.Of(NoteIds.OneCourseGoesOn, ("course", pair.Lower.Id))) with { Input = input };
            }
        }

        return context.Plan.Contingencies.Any(action => action.Event == ContingencyEvent.PlantStops)
            ? Answers.Follows("neither")
            : Answer.Missing(new InputReference("plan", "contingencies"));
    }

    private static Answer BondCoatBetween(QuantityContext context, Element element)
    {
        var upper = ((Pair)element.Subject!).Upper;
        var coat = context.Plan.BondCoats.FirstOrDefault(coat => PlanView.Same(coat.Below, upper.Id));
        return coat?.Applied is { } applied
            ? Answers.Flag(applied, new InputReference($"bond-coat:{coat.Id}", "applied"))
            : Answers.Follows(flag: false);
    }

    private static Answer StripsOf(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var pair = (Pair)element.Subject!;
        var view = PlanView.Of(context);
        var runs = view.RunsOf(pair.Lower).Intersect(view.RunsOf(pair.Upper)).ToList();
        if (runs.Count == 0)
        {
            calculation.Miss("plan", "runs");
        }
        else if (runs.Count > 1)
        {
            foreach (var run in runs)
            {
                calculation.Stated("from", run.From, $"run:{run.Id}", "from");
                calculation.Stated("to", run.To, $"run:{run.Id}", "to");
            }
        }

        var strips = runs.Count < 2 ? runs.Count : MostAtOneStation([.. runs.Select(RunProfile.Stretch).OfType<(double Low, double High)>()]);
        return calculation.Result("pair.strips", "k", "k = most runs at one station", strips);
    }

    // What is listed decides at once; runs side by side and sides against asphalt are joints whether or not they are listed.
    private static Answer HasLongitudinalJoint(QuantityContext context, Element element)
    {
        var pair = (Pair)element.Subject!;
        if (Longitudinal(context, pair).FirstOrDefault() is { } listed)
        {
            return Answers.Follows(flag: true, new InputReference($"joint:{listed.Id}", "kind"));
        }

        var strips = context.Get("pair.strips", element);
        if (strips.Value is NumberValue { Si: >= 2 })
        {
            return Answers.Follows(flag: true, strips.Input);
        }

        var view = PlanView.Of(context);
        var runs = view.RunsOf(pair.Lower).Intersect(view.RunsOf(pair.Upper)).ToList();
        if (runs.Find(run => IsAgainstAsphalt(run.LeftEdge) || IsAgainstAsphalt(run.RightEdge)) is { } beside)
        {
            return Answers.Follows(flag: true, new InputReference($"run:{beside.Id}", IsAgainstAsphalt(beside.LeftEdge) ? "left_edge" : "right_edge"));
        }

        return strips.Value is null ? strips with { Value = null } : Answers.Follows(flag: false, new InputReference("plan", "runs"));
    }

    private static bool IsAgainstAsphalt(EdgeKind? edge) => edge is EdgeKind.ExistingCold or EdgeKind.Hot or EdgeKind.Cut;

    private static IEnumerable<Joint> Longitudinal(QuantityContext context, Pair pair) => context.Plan.Joints
        .Where(joint => joint.Kind == JointKind.Longitudinal && PlanView.Same(joint.Course, pair.Upper.Id));

    private static int MostAtOneStation(IReadOnlyList<(double Low, double High)> stretches) => stretches
        .Select(one => stretches.Count(other => other.Low <= one.Low && (other.High > one.Low || other.Low.Equals(one.Low))))
        .DefaultIfEmpty(0)
        .Max();

    private static Answer Height(QuantityContext context, Element element)
    {
        var joints = Longitudinal(context, (Pair)element.Subject!).ToList();
        if (joints.Find(joint => joint.Height == JointHeight.TopCourse) is { } low)
        {
            return Answers.Word(Words.Of(JointHeight.TopCourse), new InputReference($"joint:{low.Id}", "height"));
        }

        var silent = joints.Where(joint => joint.Height is null).Select(joint => new InputReference($"joint:{joint.Id}", "height")).ToArray();
        if (silent.Length > 0)
        {
            return Answer.Missing(silent);
        }

        return joints.Count > 0
            ? Answers.Word(Words.Of(JointHeight.Full), new InputReference($"joint:{joints[0].Id}", "height"))
            : context.Get("pair.has_longitudinal_joint", element).Value is FlagValue { Yes: false }
                ? Answer.None(AbsenceReason.NotComputable, Note.Of(NoteIds.OneStrip), new InputReference("plan", "joints"))
                : Answer.Missing(new InputReference("plan", "joints"));
    }

    private static Answer FirstMode(QuantityContext context, Element element) =>
        context.Plan.Rolling?.Phases is [var first, ..] && context.Elements.Find($"phase:{first.Id}") is { } phase
            ? context.Get("phase.mode", phase)
            : Answer.Missing(new InputReference("plan", "rolling.phases"));

    private static Answer RollDown(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var (view, pair) = (PlanView.Of(context), (Pair)element.Subject!);
        return calculation.Result(
            "pair.roll_down", "Δt", "Δt = Δt1 + Δt2",
            calculation.Quantity("Δt1", "course.roll_down", view.Of(ElementKind.Course, pair.Lower.Id)) + calculation.Quantity("Δt2", "course.roll_down", view.Of(ElementKind.Course, pair.Upper.Id)));
    }

    private static Answer Delay(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var upper = ((Pair)element.Subject!).Upper;
        if (upper.Delay is { } stated)
        {
            return Answers.Measure(stated, new InputReference($"course:{upper.Id}", "delay"));
        }

        return calculation.Result("pair.delay", "Δt", "Δt = a / v", DelayOf(calculation, upper));
    }
}
