using Laygate.Engineering.Assumptions;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Rates of a bond coat in the terms that specifications use: sprayed or residual, mass or volume per area.</summary>
internal static class BondCoatRates
{
    /// <summary>What is sprayed, as a mass per area.</summary>
    public static Answer SprayedMass(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var rate = Rate(calculation, element, asVolume: false, RateBasis.Sprayed);
        return calculation.Result("bond-coat.sprayed_rate", "r0", "r0 = r / a", rate);
    }

    /// <summary>What is sprayed, as a volume per area.</summary>
    public static Answer SprayedVolume(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var rate = Rate(calculation, element, asVolume: true, RateBasis.Sprayed);
        return calculation.Result("bond-coat.sprayed_volume", "rV0", "rV0 = rV / a", rate);
    }

    /// <summary>Binder that stays, as a volume per area.</summary>
    public static Answer ResidualVolume(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var rate = Rate(calculation, element, asVolume: true, RateBasis.Residual);
        return calculation.Result("bond-coat.residual_volume", "rV", "rV = rV0 · a", rate);
    }

    private static double Rate(Calculation calculation, Element element, bool asVolume, RateBasis asked)
    {
        var coat = (BondCoat)element.Subject!;
        var stated = Stated(calculation, element.Address, coat, asVolume);
        if (coat.Basis is not { } basis)
        {
            calculation.Miss(element.Address, "basis");
            return double.NaN;
        }

        return basis == asked ? stated
            : basis == RateBasis.Sprayed ? stated * Residue(calculation, element.Address, coat)
            : stated / Residue(calculation, element.Address, coat);
    }

    private static double Stated(Calculation calculation, string address, BondCoat coat, bool asVolume)
    {
        var isVolume = coat.VolumeRate is not null && coat.MassRate is null;
        var rate = isVolume
            ? calculation.Stated("rV0", coat.VolumeRate, address, "rate")
            : calculation.Stated("r0", coat.MassRate, address, "rate");
        if (isVolume == asVolume)
        {
            return rate;
        }

        var density = calculation.Assumed(AssumptionIds.BondBinderDensity, "ρb", address, null);
        return asVolume ? rate / density : rate * density;
    }

    private static double Residue(Calculation calculation, string address, BondCoat coat) =>
        coat is { Residue: null, Binder: BondBinder.HotBinder }
            ? calculation.Assumed(AssumptionIds.HotBinderResidue, "a", address, null)
            : calculation.Stated("a", coat.Residue, address, "residue");
}
