using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Bond coats.</summary>
internal static class BondCoatQuantities
{
    private static readonly Define Coat = new(ElementKind.BondCoat);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Coat.StatedFlag<BondCoat>("applied", "applied", "Whether a coat is applied.", coat => coat.Applied),
        Coat.Number("residual_rate", Shape.Spread, "Binder that stays on the surface per area.", ResidualRate, new Method(
            "r = rate · residue; a volume times the density of the binder", Sources.Definition, "needs rate and basis, and the residue where the rate is as sprayed")),
        Coat.Number("residual_volume", Shape.Film, "Binder that stays on the surface, as a volume per area.", BondCoatRates.ResidualVolume, new Method(
            "rV = rV0 · a; a mass divided by the density of the binder", Sources.Definition, "needs rate and basis, and the residue where the rate is as sprayed")),
        Coat.Number("sprayed_rate", Shape.Spread, "What is sprayed, as a mass per area.", BondCoatRates.SprayedMass, new Method(
            "r0, or r / a where the rate is residual; a volume times the density of the emulsion", Sources.Definition, "needs rate and basis, and the residue where the rate is residual")),
        Coat.Number("sprayed_volume", Shape.Film, "What is sprayed, as a volume per area.", BondCoatRates.SprayedVolume, new Method(
            "rV0, or rV / a where the rate is residual; a mass divided by the density of the emulsion", Sources.Definition, "needs rate and basis, and the residue where the rate is residual")),
        Coat.StatedWord<BondCoat, BondBinder>("binder", "binder", "Binder of the coat.", coat => coat.Binder),
        Coat.Category("surface", Words.Of<ExistingSurface>(), "Surface that is sprayed: the existing one, or the course below.", Surface),
        Coat.StatedFlag<BondCoat>("broken", "broken", "Whether it has broken before laying.", coat => coat.Broken),
        Coat.StatedFlag<BondCoat>("trafficked", "trafficked", "Whether traffic uses it before laying.", coat => coat.Trafficked),
        Coat.Flag("is_between_pair", "Whether it lies between two courses laid hot-on-hot.", (c, e) =>
            Answers.Follows(CourseQuantities.Pairs(c).Any(pair => PlanView.Same(pair.Upper.Id, ((BondCoat)e.Subject!).Below)))),
    ];

    private static Answer ResidualRate(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var coat = (BondCoat)element.Subject!;
        double rate;
        if (coat.VolumeRate is { } volume && coat.MassRate is null)
        {
            rate = calculation.Stated("rV", volume, element.Address, "rate")
                * calculation.Assumed(AssumptionIds.BondBinderDensity, "ρb", element.Address, null);
        }
        else
        {
            rate = calculation.Stated("r0", coat.MassRate, element.Address, "rate");
        }

        var share = 1.0;
        if (coat.Basis is null)
        {
            calculation.Miss(element.Address, "basis");
        }

        if (coat.Basis == RateBasis.Sprayed || (coat.Basis is null && coat.Residue is null))
        {
            share = coat is { Residue: null, Binder: BondBinder.HotBinder }
                ? calculation.Assumed(AssumptionIds.HotBinderResidue, "a", element.Address, null)
                : calculation.Stated("a", coat.Residue, element.Address, "residue");
        }

        return calculation.Result("bond-coat.residual_rate", "r", "r = r0 · a", rate * share);
    }

    private static Answer Surface(QuantityContext context, Element element)
    {
        var below = ((BondCoat)element.Subject!).Below;
        if (context.Plan.Courses is [var lowest, ..] && !PlanView.Same(lowest.Id, below))
        {
            return context.Elements.Find($"course:{below}") is null
                ? Answer.Missing(new InputReference($"course:{below}", string.Empty))
                : Answers.Follows(Words.Of(ExistingSurface.NewAsphalt), new InputReference(element.Address, "below"));
        }

        return context.Get("existing.surface", element);
    }
}
