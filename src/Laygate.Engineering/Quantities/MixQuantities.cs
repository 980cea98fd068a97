using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Mixes.</summary>
internal static class MixQuantities
{
    private static readonly Define Mix = new(ElementKind.Mix);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Mix.StatedWord<Mix, MixKind>("kind", "kind", "Kind of mixture.", mix => mix.Kind),
        Mix.StatedWord<Mix, Gradation>("gradation", "gradation", "Grading of a dense mix: fine or coarse.", mix => mix.Gradation),
        Mix.StatedWord<Mix, SizeBasis>("size_basis", "aggregate_size.basis", "Basis on which the aggregate size is stated.", mix => mix.AggregateSize?.Basis),
        Mix.Category("name", [], "Designation of the mix, as its specification writes it.", (_, e) =>
            Answers.Word((e.Subject as Mix)?.Name, new InputReference(e.Address, "name"))),
        Mix.Category("sieve", [.. Sieve.Names.Order(StringComparer.Ordinal)], "Sieve by which the aggregate size is stated: its name.", (_, e) =>
            Answers.Word((e.Subject as Mix)?.AggregateSize?.Sieve.Name, new InputReference(e.Address, "aggregate_size.sieve"))),
        Mix.Category("binder_grade", [], "Grade of the binder as the specification names it.", (_, e) =>
            Answers.Word((e.Subject as Mix)?.Binder?.Grade, new InputReference(e.Address, "binder.grade"))),
        Mix.StatedFlag<Mix>("binder_modified", "binder.modified", "Whether the binder is modified with polymer or rubber.", mix => mix.Binder?.Modified),
        Mix.Number("density", Shape.Density, "Density of the mix in the finished course.", Density, new Method(
            "stated, else by kind of mix", Sources.Navedtra14080, "an assumption where it is not stated")),
        Mix.StatedWord<Mix, DensityReference>("density_reference", "density.reference", "The density to which the degree of compaction refers.", mix => mix.Density?.Reference),
        Mix.Stated<Mix>("degree", Shape.Share, "density.degree", "Degree of compaction of the finished course.", mix => mix.Density?.Degree),
        Mix.StatedFields<Mix>("degree_stated", "density", "The degree of compaction and the density to which it refers.", mix =>
            [("density.degree", mix?.Density?.Degree is not null), ("density.reference", mix?.Density?.Reference is not null)]),
        Mix.StatedTemperature<Mix>("loading_expected", "loading.expected", "Expected or target temperature at loading.", mix => (mix.Loading?.Expected, mix.Loading?.Place)),
        Mix.StatedTemperature<Mix>("loading_highest", "loading.highest", "Highest temperature at loading.", mix => (mix.Loading?.Highest, mix.Loading?.Place)),
        Mix.Number("delivery_lowest", Shape.Temperature, "Lowest temperature on delivery; the expected one where no lowest is stated.", DeliveryLowest),
        Mix.StatedTemperature<Mix>("delivery_expected", "delivery.expected", "Expected temperature on delivery.", mix => (mix.Delivery?.Expected, mix.Delivery?.Place)),
        Mix.StatedFields<Mix>("refusal_stated", "refuse_below", "The temperature below which a load is refused, and where it is measured.", mix =>
            [("refuse_below.value", mix?.RefuseBelow?.Value is not null), ("refuse_below.place", mix?.RefuseBelow?.Place is not null)]),
        Mix.StatedTemperature<Mix>("refuse_below", "refuse_below.value", "Temperature below which a load is refused.", mix => (mix.RefuseBelow?.Value, mix.RefuseBelow?.Place)),
        Mix.Number("cessation", Shape.Temperature, "Temperature below which rolling no longer densifies; the course mean unless the plan says otherwise.", Cessation, new Method(
            "stated, else by binder", "catalogue of assumptions", "an assumption where it is not stated"), Place.CourseMean),
        Mix.Flag("grade_of_modified", "Whether the grade of the binder is written as that of a modified one: two penetrations and a softening point.", (_, e) => Answers.Follows(
            e.Subject is Mix { Binder.Grade: { } grade } && IsGradeOfModified(grade), new InputReference(e.Address, "binder"))),
        Mix.Flag("degree_given", "Whether the plan states a degree of compaction.", (_, e) => Answers.Follows(
            e.Subject is Mix { Density.Degree: not null }, new InputReference(e.Address, "density"))),
        Mix.Flag("reclaimed_stated", "Whether the plan states a share of reclaimed asphalt.", (_, e) => Answers.Follows(
            e.Subject is Mix { Reclaimed: not null }, new InputReference(e.Address, "reclaimed"))),
        Mix.Stated<Mix>("reclaimed", Shape.Share, "reclaimed", "Share of reclaimed asphalt.", mix => mix.Reclaimed),
        Mix.Flag("age_limit_stated", "Whether the plan states how old the mix may be at laying.", (_, e) => Answers.Follows(
            e.Subject is Mix { AgeLimit: not null }, new InputReference(e.Address, "age_limit"))),
        Mix.Stated<Mix>("age_limit", Shape.Minutes, "age_limit", "Longest time from loading to the mat.", mix => mix.AgeLimit),
    ];

    /// <summary>The assumption that stands in for the cessation temperature of a binder.</summary>
    internal static string CessationAssumption(AssumptionSet assumptions, Binder? binder) =>
        PerformanceGrade.Read(binder?.Grade) is { } grade && assumptions.Find(AssumptionIds.CessationOfGrade(grade.High, grade.Low)) is { } known
            ? known.Id
            : binder?.Modified == true ? AssumptionIds.CessationModified : AssumptionIds.CessationUnknown;

    // Such as 25/55-55; what follows, a letter of the country, does not matter.
    private static bool IsGradeOfModified(string grade)
    {
        var (slash, dash) = (grade.IndexOf('/', StringComparison.Ordinal), grade.IndexOf('-', StringComparison.Ordinal));
        return slash > 0 && dash > slash + 1 && grade.Length > dash + 2
            && grade[..slash].Concat(grade[(slash + 1)..dash]).Concat(grade[(dash + 1)..(dash + 3)]).All(char.IsAsciiDigit);
    }

    private static Answer Density(QuantityContext context, Element element)
    {
        var mix = element.Subject as Mix;
        var input = new InputReference(element.Address, "density.compacted");
        return mix?.Density?.Compacted is { } stated
            ? Answers.Measure(stated, input)
            : Assumed(context, element, "mix.density", "ρ", AssumptionIds.DensityOf(mix?.Kind), input);
    }

    private static Answer DeliveryLowest(QuantityContext context, Element element)
    {
        var delivery = (element.Subject as Mix)?.Delivery;
        return delivery is { Lowest: null, Expected: { } expected }
            ? Answers.Measure(expected, new InputReference(element.Address, "delivery.expected"), delivery.Place)
            : Answers.Measure(delivery?.Lowest, new InputReference(element.Address, "delivery.lowest"), delivery?.Place);
    }

    private static Answer Cessation(QuantityContext context, Element element)
    {
        var mix = element.Subject as Mix;
        var input = new InputReference(element.Address, "cessation");
        return mix?.Cessation is { Value: { } value } stated
            ? Answers.Measure(value, input, stated.Place ?? Place.CourseMean)
            : Assumed(context, element, "mix.cessation", "Tc", CessationAssumption(context.Assumptions, mix?.Binder), input);
    }

    private static Answer Assumed(QuantityContext context, Element element, string quantity, string symbol, string assumption, InputReference input)
    {
        var calculation = new Calculation(context);
        var value = calculation.Assumed(assumption, symbol, element.Address, input);
        return calculation.Result(quantity, symbol, "assumed", value) with { Input = input };
    }
}
