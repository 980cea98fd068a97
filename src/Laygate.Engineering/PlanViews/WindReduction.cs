using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.Formulas;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.PlanViews;

/// <summary>Wind at the mat as a share of the stated wind.</summary>
public static class WindReduction
{
    private const double StationHeight = 10;
    private const double OpenExponent = 0.14;

    /// <summary>Wind at a height in some terrain as a share of the wind at a station in open country.</summary>
    /// <param name="station">h, m: height at which the wind is stated.</param>
    /// <param name="mat">z, m: height at which the wind cools the mat.</param>
    /// <param name="exposure">Terrain at the mat.</param>
    /// <returns>f, 1; null outside the range.</returns>
    [Formula("f", "f = (270/h)^0.14 · (z/δ)^α", Sources.WindProfile, "h and z above zero and at most 270 m; δ and α by terrain; otherwise no result")]
    public static double? InTerrain(double station, double mat, Exposure exposure)
    {
        var terrain = exposure switch
        {
            Exposure.Open => WindExposure.Open,
            Exposure.Wooded => WindExposure.Wooded,
            _ => WindExposure.Town,
        };
        return station is > 0 and <= 270 && mat is > 0 and <= 270
            ? WindHeight.At(Math.Pow(StationHeight / station, OpenExponent), mat, terrain)
            : null;
    }

    /// <summary>A wind that was measured at the mat as the forecast would have stated it, m/s; as it is where the plan tells no factor.</summary>
    /// <param name="context">The plan.</param>
    /// <param name="atMat">Wind at the mat, m/s.</param>
    internal static double? AsForecast(QuantityContext context, double? atMat) =>
        Factor(new Calculation(context)) is > 0 and var factor ? atMat / factor : atMat;

    /// <summary>The factor of a plan, with its assumptions: the stated share, else by height and terrain.</summary>
    internal static double Factor(Calculation calculation)
    {
        const string Address = "weather";
        var weather = calculation.Context.Plan.Weather;
        if (weather?.WindAtMat is { } share)
        {
            return calculation.Stated("f", share, Address, "wind_at_mat");
        }

        var station = calculation.StatedOr(AssumptionIds.WindHeight, "h", weather?.WindHeight, Address, "wind_height");
        var mat = calculation.Assumed(AssumptionIds.MatHeight, "z", Address, null);
        var factor = weather?.Exposure is { } exposure
            ? InTerrain(station, mat, exposure) ?? double.NaN
            : Math.Pow(mat / station, calculation.Assumed(AssumptionIds.OpenCountry, "α", Address, new InputReference(Address, "exposure")));
        if (double.IsFinite(factor))
        {
            calculation.Step("f", "f = (270/h)^0.14 · (z/δ)^α", factor, string.Empty, string.Empty);
        }

        return factor;
    }
}
