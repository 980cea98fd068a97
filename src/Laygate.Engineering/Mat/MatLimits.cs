using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Mat;

/// <summary>A limit with the range of the assumption that it may be.</summary>
/// <param name="Central">Value; NaN where there is none.</param>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
internal sealed record MatRange(double Central, double Low, double High)
{
    /// <summary>The value at a sample between 0 and 1; the central one where the sample is not a number.</summary>
    public double At(double[] sample, int dimension) =>
        double.IsNaN(sample[dimension]) ? Central : Low + (sample[dimension] * (High - Low));
}

/// <summary>Temperatures and times of a plan that are looked for in a cooling curve.</summary>
internal static class MatLimits
{
    /// <summary>Cessation temperature of a course, °C; stops the calculation where it is stated for another place than the course mean.</summary>
    public static double Cessation(Calculation calculation, Course course)
    {
        var mix = PlanView.Of(calculation.Context).Of(ElementKind.Mix, course.Mix);
        if (mix is null)
        {
            var address = $"mix:{course.Mix}";
            return calculation.Assumed(AssumptionIds.CessationUnknown, "Tc", address, new InputReference(address, "cessation"));
        }

        var celsius = calculation.Quantity("Tc", "mix.cessation", mix);
        if (mix.Subject is Mix { Cessation.Value: not null, CessationFrom: { } origin })
        {
            calculation.Show("Tc from", "cessation_from", mix.Address, Words.Of(origin));
        }

        if (((Mix)mix.Subject!).Cessation is { Value: not null, Place: { } place and not Place.CourseMean })
        {
            calculation.Block(AbsenceReason.NeedsPerson, Note.Of(
                NoteIds.OtherPlace, ("stated", Words.Of(place)), ("predicted", Words.Of(Place.CourseMean))));
            return double.NaN;
        }

        return celsius;
    }

    /// <summary>Range of the cessation temperature of a course: its own value where it is stated.</summary>
    public static MatRange CessationRange(QuantityContext context, Course course)
    {
        var calculation = new Calculation(context);
        var central = Cessation(calculation, course);
        return Range(central, calculation.Result("mix.cessation", "Tc", "Tc", central), context);
    }

    /// <summary>Range of the embedment temperature: its own value where it is stated.</summary>
    public static MatRange EmbedmentRange(QuantityContext context, Course top)
    {
        var calculation = new Calculation(context);
        var central = Embedment(calculation, top);
        return Range(central, calculation.Result("mix.cessation", "Tg", "Tg", central), context);
    }

    private static MatRange Range(double central, Answer answer, QuantityContext context)
    {
        var use = answer.Working.Assumptions.FirstOrDefault(use => use.StandsFor is not null);
        return use is not null && context.Assumptions.Find(use.Id) is { } assumption && UnitTable.Find(assumption.Unit) is { } unit
            ? new MatRange(central, unit.ToSi(assumption.Low), unit.ToSi(assumption.High))
            : new MatRange(central, central, central);
    }

    /// <summary>Skin temperature below which grit is not pressed in, °C.</summary>
    public static double Embedment(Calculation calculation, Course top)
    {
        var stated = PlanView.Of(calculation.Context).MixOf(top)?.GritEmbedment;
        if (stated is { Value: not null, Place: { } place and not Place.Skin })
        {
            calculation.Block(AbsenceReason.NeedsPerson, Note.Of(
                NoteIds.OtherPlace, ("stated", Words.Of(place)), ("predicted", Words.Of(Place.Skin))));
            return double.NaN;
        }

        return calculation.StatedOr(AssumptionIds.GritEmbedment, "Tg", stated?.Value, $"mix:{top.Mix}", "grit_embedment");
    }

    /// <summary>Skin temperature below which vibrating steel can shove a mat with a hot core, °C.</summary>
    public static double Tender(Calculation calculation, Course top)
    {
        var stated = PlanView.Of(calculation.Context).MixOf(top)?.Tender;
        if (stated is { Highest: not null, Place: { } place and not Place.Skin })
        {
            calculation.Block(AbsenceReason.NeedsPerson, Note.Of(
                NoteIds.OtherPlace, ("stated", Words.Of(place)), ("predicted", Words.Of(Place.Skin))));
            return double.NaN;
        }

        return calculation.StatedOr(AssumptionIds.TenderLimit, "Tt", stated?.Highest, $"mix:{top.Mix}", "tender.highest");
    }

    /// <summary>Both ends of the range of skin temperature in which the mix of a course is tender, °C; null where the plan does not state both for the skin.</summary>
    public static (double Low, double High)? TenderRange(Calculation calculation, Course top)
    {
        var address = $"mix:{top.Mix}";
        return PlanView.Of(calculation.Context).MixOf(top)?.Tender is { Lowest: { } low, Highest: { } high, Place: null or Place.Skin }
            ? (calculation.Stated("T1", low, address, "tender.lowest"), calculation.Stated("T2", high, address, "tender.highest"))
            : null;
    }

    /// <summary>Start temperature of a course with the place at which it holds; null where the plan states none, or for a place that is not predicted.</summary>
    public static (CoolingPlaceKind Kind, double Celsius)? Start(Calculation calculation, Course course)
    {
        var start = PlanView.Of(calculation.Context).MixOf(course)?.Start;
        if (start?.Value is not { } value)
        {
            return null;
        }

        var address = $"mix:{course.Mix}";
        CoolingPlaceKind? kind = start.Place switch
        {
            Place.Skin => CoolingPlaceKind.Skin,
            Place.CourseMean => CoolingPlaceKind.LayerMean,
            Place.MidDepth => CoolingPlaceKind.MidDepth,
            Place.Core => CoolingPlaceKind.Core,
            _ => null,
        };
        if (start.Place is not { } place)
        {
            calculation.Miss(address, "start.place");
        }
        else if (kind is null)
        {
            calculation.Block(AbsenceReason.NeedsPerson, Note.Of(
                NoteIds.OtherPlace, ("stated", Words.Of(place)), ("predicted", Words.Of(Place.CourseMean))));
        }

        return kind is { } known ? (known, calculation.Stated("Ts", value, address, "start.value")) : null;
    }

    /// <summary>Range of an assumption that no plan states.</summary>
    public static MatRange RangeOf(QuantityContext context, string id)
    {
        var assumption = context.Assumptions[id];
        return new MatRange(assumption.Number, assumption.Low, assumption.High);
    }

    /// <summary>
    /// Place at which the temperature of the course below is taken when a course is laid: the one for which the plan states its lowest value,
    /// else the course mean.
    /// </summary>
    public static Place PlaceOfLower(Course course) => course.LowerTemperatureLowest?.Place is { } place and not Place.InLoad ? place : Place.CourseMean;

    /// <summary>Band of skin temperature in which finish rolling takes out marks, °C: from the hotter to the colder end.</summary>
    public static (double Hot, double Cold) Marking(Calculation calculation) => (
        calculation.Assumed(AssumptionIds.MarkingHot, "Tm1", "plan", null),
        calculation.Assumed(AssumptionIds.MarkingCold, "Tm2", "plan", null));

    /// <summary>From the first to the last pass over a point, s after the last screed.</summary>
    public static (double From, double To) Rolling(Calculation calculation)
    {
        var phases = calculation.Context.Plan.Rolling?.Phases ?? [];
        if (phases.Count == 0)
        {
            calculation.Miss("plan", "rolling.phases");
            return (double.NaN, double.NaN);
        }

        var first = phases[0].ZoneFrom is { } from
            ? PhaseQuantities.ZoneTime(calculation, calculation.Stated("x", from, $"phase:{phases[0].Id}", "zone_from"))
            : 0;
        return (first, phases.Max(phase => PhaseQuantities.DoneBySeconds(calculation, phase)));
    }
}
