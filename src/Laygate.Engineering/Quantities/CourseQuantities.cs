using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Formulas;
using Laygate.Engineering.Layers;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Courses: thickness, temperatures, weather and bond coat.</summary>
internal static class CourseQuantities
{
    private static readonly Define Course = new(ElementKind.Course);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Course.StatedWord<Course, CourseKind>("kind", "kind", "Part of the course in the pavement.", course => course.Kind),
        Course.StatedWord<Course, Laying>("laid", "laid", "How the course is laid on what lies below.", course => course.Laid),
        Course.Flag("is_upper_of_pair", "Whether the course is the upper one of two laid hot-on-hot.", (c, e) =>
            Answers.Follows(Pairs(c).Any(pair => ReferenceEquals(pair.Upper, e.Subject)))),
        Course.Flag("is_lower_of_pair", "Whether the course is the lower one of two laid hot-on-hot.", (c, e) =>
            Answers.Follows(Pairs(c).Any(pair => ReferenceEquals(pair.Lower, e.Subject)))),
        Course.Stated<Course>("thickness", Shape.Thickness, "thickness", "Nominal compacted thickness.", course => course.Thickness),
        Course.Number("thickness_lowest", Shape.Thickness, "Smallest compacted thickness at any point, stations counted.", ThicknessExtremes.Lowest, new Method(
            "t − Δ where no smallest thickness is stated", Sources.Definition, "needs the smallest thickness or the tolerance")),
        Course.Number("thickness_highest", Shape.Thickness, "Largest compacted thickness at any point, stations counted.", ThicknessExtremes.Highest, new Method(
            "t + Δ where no largest thickness is stated", Sources.Definition, "needs the largest thickness or the tolerance")),
        Course.Number("thickness_to_size", Shape.None, "Nominal thickness as a multiple of the aggregate size.", (c, e) =>
            ToSize(c, e, "course.thickness", "course.thickness_to_size"), SizeMethod),
        Course.Number("thickness_lowest_to_size", Shape.None, "Smallest thickness as a multiple of the aggregate size.", (c, e) =>
            ToSize(c, e, "course.thickness_lowest", "course.thickness_lowest_to_size"), SizeMethod),
        Course.Number("tolerance_margin", Shape.Thickness, "What is left above the stated smallest thickness when the tolerance is used up.", ThicknessExtremes.Margin, new Method(
            "m = t − Δ − tmin", Sources.Definition, "below zero where the tolerance contradicts the smallest thickness")),
        Course.StatedTemperature<Course>("laying_temperature", "laying_temperature.expected", "Expected temperature behind the screed.",
            course => (course.LayingTemperature?.Expected, course.LayingTemperature?.Place)),
        Course.Number("spread", Shape.Spread, "Mass of mix per area at the nominal thickness.", Spread, new Method(
            "q = t · ρ", Sources.Definition, "t and ρ above zero")),
        Course.Number("thickness_behind_screed", Shape.Thickness, "Thickness behind the screed that gives the nominal thickness when rolled.", BehindScreed, new Method(
            "t0 = t · D1 / D0", Sources.Balance, "both degrees of one reference density, 0.6 ≤ D0 ≤ D1 ≤ 1.1; otherwise no value")),
        Course.Number("roll_down", Shape.Thickness, "Thickness behind the screed less the nominal thickness.", RollDown, new Method(
            "Δt = t0 − t", Sources.Balance, "as thickness_behind_screed: mass per area does not change")),
        Course.Number("roll_down_share", Shape.Share, "Roll-down as a share of the nominal thickness.", RollDownShare, new Method(
            "r = t0 / t − 1", Sources.Balance, "as thickness_behind_screed")),
        Course.Flag("density_behind_screed_stated", "Whether the plan states the density behind the screed.", (_, e) => Answers.Follows(
            ((Course)e.Subject!).DensityBehindScreed?.Value is not null, new InputReference(e.Address, "density_behind_screed.value"))),
        Course.StatedTemperature<Course>("lower_temperature_lowest", "lower_temperature_lowest.value", "Lowest temperature of the course below when this one is laid on it, as planned.",
            course => (course.LowerTemperatureLowest?.Value, course.LowerTemperatureLowest?.Place)),
        Course.Stated<Course>("density_behind_screed", Shape.Share, "density_behind_screed.value", "Density behind the screed as a share of the reference density.",
            course => course.DensityBehindScreed?.Value),
        Course.StatedWord<Course, DensityEvidence>("density_behind_screed_evidence", "density_behind_screed.evidence", "Where the density behind the screed is known from.",
            course => course.DensityBehindScreed?.Evidence),
        Course.Number("paver_speed", Shape.PaverSpeed, "Highest speed of the pavers that lay the course.", CourseMachines.PaverSpeed),
        Course.Number("stop_limit", Shape.Minutes, "Longest stop, before a joint is made, of the pavers that lay the course.", CourseMachines.StopLimit),
        Course.Number("haul_longest", Shape.Minutes, "Longest loaded journey, on a usual day, of the trucks that carry the mix of the course.", CourseMachines.HaulLongest),
        Course.Stated<Course>("tonnage_stated", Shape.Mass, "tonnage", "Tonnage ordered for the course.", course => course.Tonnage),
        Course.Number("air_lowest", Shape.Temperature, "Lowest air temperature while the course is laid.", (c, _) => WeatherQuantities.Air(c)),
        Course.Number("base_lowest", Shape.Temperature, "Lowest temperature, while the course is laid, of the surface below the hot body that it belongs to.", (c, _) => WeatherQuantities.Base(c)),
        Course.Presence("bond_coat_stated", "Whether the plan says if a bond coat is applied below the course.", BondCoatStated),
        Course.Flag("bond_coat_left_out", "Whether the plan states that no bond coat is applied below the course.", (c, e) =>
            CoatBelow(c, e) is { Applied: false } coat ? Answers.Follows(flag: true, new InputReference($"bond-coat:{coat.Id}", "applied")) : Answers.Follows(flag: false)),
        Course.Flag("bond_coat_applied", "Whether a bond coat is applied below the course.", BondCoatApplied),
    ];

    /// <summary>Pairs of the plan.</summary>
    internal static IEnumerable<Pair> Pairs(QuantityContext context) =>
        context.Elements.Of(ElementKind.Pair).Select(element => (Pair)element.Subject!);

    private static Method SizeMethod { get; } = new(
        "n = t / D", Sources.Definition, "upper sieve size and nominal maximum count as equal; a maximum size needs a person");

    private static Answer ToSize(QuantityContext context, Element element, string thickness, string quantity)
    {
        var calculation = new Calculation(context);
        var t = calculation.Quantity("t", thickness, element);
        var course = (Course)element.Subject!;
        var mix = $"mix:{course.Mix}";
        var size = PlanView.Of(context).MixOf(course)?.AggregateSize;
        if (size?.Basis is not { } basis)
        {
            calculation.Miss(mix, size is null ? "aggregate_size" : "aggregate_size.basis");
            return calculation.Stopped!;
        }

        if (basis == SizeBasis.Maximum)
        {
            calculation.Block(AbsenceReason.NeedsPerson, Note.Of(NoteIds.SizeBasisMaximum, ("sieve", size.Sieve.Name)));
        }
        else if (basis == SizeBasis.UpperSieve)
        {
            calculation.Assumed(AssumptionIds.SizeBases, "D/Dn", mix, null);
        }

        var system = course.Thickness.Unit.System;
        calculation.Show("D", "aggregate_size.sieve", mix, size.Sieve.MetresIn(system), course.Thickness.Unit);
        return calculation.Result(quantity, "n", "n = t / D", CourseThickness.ToAggregateSize(t, size.Sieve, system));
    }

    private static Answer Spread(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var t = calculation.Quantity("t", "course.thickness", element);
        var density = MixDensity(calculation, (Course)element.Subject!);
        return calculation.Result("course.spread", "q", "q = t · ρ", Layers.Spread.Rate(t, density));
    }

    private static Answer BehindScreed(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var course = (Course)element.Subject!;
        var t = calculation.Quantity("t", "course.thickness", element);
        var degree = PlanView.Of(context).MixOf(course)?.Density?.Degree;
        var final = calculation.StatedOr(AssumptionIds.MixDegree, "D1", degree, $"mix:{course.Mix}", "density.degree");
        var behind = calculation.StatedOr(AssumptionIds.DegreeBehindScreed, "D0", course.DensityBehindScreed?.Value, element.Address, "density_behind_screed.value");
        return calculation.Result(
            "course.thickness_behind_screed", "t0", "t0 = t · D1 / D0", CourseThickness.BehindScreed(t, final, behind));
    }

    private static Answer RollDown(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var behind = calculation.Quantity("t0", "course.thickness_behind_screed", element);
        return calculation.Result("course.roll_down", "Δt", "Δt = t0 − t", behind - calculation.Quantity("t", "course.thickness", element));
    }

    private static Answer RollDownShare(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var behind = calculation.Quantity("t0", "course.thickness_behind_screed", element);
        var thickness = calculation.Quantity("t", "course.thickness", element);
        return calculation.Result("course.roll_down_share", "r", "r = t0 / t − 1", thickness > 0 ? (behind / thickness) - 1 : null);
    }

    /// <summary>Density of a course's mix; by assumption where the plan does not even list the mix.</summary>
    internal static double MixDensity(Calculation calculation, Course course)
    {
        var mix = PlanView.Of(calculation.Context).Of(ElementKind.Mix, course.Mix);
        var address = $"mix:{course.Mix}";
        return mix is null
            ? calculation.Assumed(AssumptionIds.DensityOf(null), "ρ", address, new InputReference(address, "density.compacted"))
            : calculation.Quantity("ρ", "mix.density", mix);
    }

    private static BondCoat? CoatBelow(QuantityContext context, Element element) =>
        context.Plan.BondCoats.FirstOrDefault(coat => PlanView.Same(coat.Below, element.Id));

    private static Answer BondCoatStated(QuantityContext context, Element element)
    {
        var coat = CoatBelow(context, element);
        return coat is null
            ? Answers.Fields(new InputReference("plan", "bond_coats"), ("applied", false))
            : new() { Value = Level(coat), Input = new InputReference($"bond-coat:{coat.Id}", "applied") };
    }

    // That there is none counts with a reason: without one nobody can tell a decision from an oversight.
    private static PresenceValue Level(BondCoat coat) => coat switch
    {
        { Applied: null } => new(PresenceLevel.Thin, ["applied"]),
        { Applied: false, Reason: null or "" } => new(PresenceLevel.Thin, ["reason"]),
        _ => new(PresenceLevel.Stated, []),
    };

    private static Answer BondCoatApplied(QuantityContext context, Element element) => CoatBelow(context, element) is { } coat
        ? Answers.Flag(coat.Applied, new InputReference($"bond-coat:{coat.Id}", "applied"))
        : Answer.Missing(new InputReference("plan", "bond_coats"));
}
