using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>How the temperatures that a plan states follow each other: load, mat, rolling, opening. Differences compare places on their safe side.</summary>
internal static class TemperatureChain
{
    private static readonly Define Mix = new(ElementKind.Mix);
    private static readonly Define Course = new(ElementKind.Course);
    private static readonly Define Opening = new(ElementKind.Opening);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Course.Flag("laying_temperature_stated", "Whether the plan states an expected temperature behind the screed.", (_, e) => Answers.Follows(
            e.Subject is Course { LayingTemperature.Expected: not null }, new InputReference(e.Address, "laying_temperature.expected"))),
        Course.Number("laying_over_delivery", Shape.Difference, "How far the expected temperature behind the screed lies above the expected one on delivery.", LayingOverDelivery, new Method(
            "ΔT = Tl − Td", Sources.Definition, "below zero where the mix cools on its way; a load measured at its skin may be hotter inside, so it is not compared with the mat")),
        Course.Flag("delivery_at_skin", "Whether the temperature on delivery is stated for the skin of the load and that of the mat is not.", (c, e) =>
            e.Subject is Course course && PlanView.Of(c).MixOf(course)?.Delivery?.Place == Place.Skin && course.LayingTemperature?.Place != Place.Skin
                ? Answers.Follows(flag: true, new InputReference($"mix:{course.Mix}", "delivery.place"))
                : Answers.Follows(flag: false)),
        Mix.Flag("refuse_below_stated", "Whether the plan states the temperature below which a load is refused.", (_, e) => Answers.Follows(
            e.Subject is Mix { RefuseBelow.Value: not null }, new InputReference(e.Address, "refuse_below.value"))),
        Mix.Number("refusal_over_cessation", Shape.Difference, "What a load at the refusal limit has left, once it is laid, above the end of densification.", RefusalOverCessation, new Method(
            "ΔT = Tr − ΔTl − Tc", Sources.Definition, "ΔTl: the assumed loss between load and mat")),
        Mix.Flag("cessation_stated", "Whether the plan states a cessation temperature of its own.", (_, e) => Answers.Follows(
            e.Subject is Mix { Cessation.Value: not null }, new InputReference(e.Address, "cessation"))),
        Mix.Number("cessation_lowest", Shape.Temperature, "Lowest cessation temperature that is usual for the binder: low end of the assumption that stands in where none is stated.", (c, e) =>
            LowestUsual(c, e), new Method("low end of the range", "catalogue of assumptions", "by grade, else by modified or not"), Place.CourseMean),
        Opening.Flag("temperature_stated", "Whether the plan states a temperature below which the surface is opened; not known where it says nothing of the opening.", TemperatureStated),
        Opening.Number("over_cessation", Shape.Difference, "How far the stated opening temperature lies above the lowest cessation temperature of the courses.", OpeningOverCessation, new Method(
            "ΔT = To − Tc", Sources.Definition, "the mean of a mat is not colder than its skin, so a skin above Tc is a mat above Tc")),
    ];

    private static Answer LayingOverDelivery(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var course = (Course)element.Subject!;
        var delivery = PlanView.Of(context).MixOf(course)?.Delivery;
        var laid = calculation.Stated("Tl", course.LayingTemperature?.Expected, element.Address, "laying_temperature.expected");
        var brought = calculation.Stated("Td", delivery?.Expected, $"mix:{course.Mix}", "delivery.expected");
        return calculation.Result("course.laying_over_delivery", "ΔT", "ΔT = Tl − Td", laid - brought);
    }

    private static Answer RefusalOverCessation(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var limit = calculation.Stated("Tr", ((Mix)element.Subject!).RefuseBelow?.Value, element.Address, "refuse_below.value");
        var loss = calculation.Assumed(AssumptionIds.LayingLoss, "ΔTl", element.Address, standsFor: null);
        var end = calculation.Quantity("Tc", "mix.cessation", element);
        return calculation.Result("mix.refusal_over_cessation", "ΔT", "ΔT = Tr − ΔTl − Tc", limit - loss - end);
    }

    private static Answer LowestUsual(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var id = MixQuantities.CessationAssumption(context.Assumptions, (element.Subject as Mix)?.Binder);
        calculation.Assumed(id, "Tc", element.Address, standsFor: null);
        var range = context.Assumptions[id];
        return calculation.Result("mix.cessation_lowest", "Tc,min", "low end of the range", UnitTable.Find(range.Unit)!.ToSi(range.Low));
    }

    private static Answer TemperatureStated(QuantityContext context, Element element)
    {
        var opening = context.Plan.Opening;
        var input = new InputReference(element.Address, "below.value");
        return opening is null or { At: null, After: null, Below: null } ? Answer.Missing(input) : Answers.Follows(opening.Below?.Value is not null, input);
    }

    private static Answer OpeningOverCessation(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var opened = calculation.Stated("To", context.Plan.Opening?.Below?.Value, element.Address, "below.value");
        var lowest = context.Plan.Courses.Select(course => PlanView.Of(context).Of(ElementKind.Mix, course.Mix)).OfType<Element>()
            .OrderBy(mix => (context.Get("mix.cessation", mix).Value as NumberValue)?.Si ?? double.PositiveInfinity).FirstOrDefault();
        if (lowest is null)
        {
            calculation.Miss("plan", "mixes");
            return calculation.Stopped!;
        }

        return calculation.Result("opening.over_cessation", "ΔT", "ΔT = To − Tc", opened - calculation.Quantity("Tc", "mix.cessation", lowest));
    }
}
