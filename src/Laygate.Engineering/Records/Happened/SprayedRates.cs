using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Records.Happened;

/// <summary>Rates of a bond coat from the mass that was sprayed, or from volumes of the tank brought to 15 °C.</summary>
internal static class SprayedRates
{
    /// <summary>A rate of each stretch.</summary>
    /// <param name="shift">The shift.</param>
    /// <param name="element">The coat in the plan.</param>
    /// <param name="quantity">The rate in the catalogue; all four of the plan go with what is sprayed, so that what was sprayed scales them.</param>
    /// <param name="readings">Stretches of the coat.</param>
    public static HappenedSet Of(HappenedShift shift, Element element, string quantity, IEnumerable<BondCoatReading> readings)
    {
        if (shift.Context.Get(quantity, element).Value is not NumberValue planned || element.Subject is not BondCoat coat)
        {
            return HappenedSet.Nothing;
        }

        var (values, lacking) = (new List<HappenedValue>(), new List<LackingRow>());
        foreach (var reading in readings)
        {
            // Of two readings the one that needs no density counts.
            var isVolume = reading.Taken is not null && (reading.Mass is null || quantity.EndsWith("volume", StringComparison.Ordinal));
            var planSprayed = (shift.Context.Get(isVolume ? "bond-coat.sprayed_volume" : "bond-coat.sprayed_rate", element).Value as NumberValue)?.Si;
            var (sprayed, missing) = isVolume ? OfTank(reading, coat) : reading.Rate is { } rate ? (rate, null) : (null, "what was sprayed");
            if (sprayed is { } known && planSprayed is > 0 and var per)
            {
                var value = planned.Si * known / per;
                values.Add(new HappenedValue(value, value * Relative(shift, isVolume, quantity), [reading.Place]) { At = reading.At, Station = reading.From });
            }
            else if (missing is not null)
            {
                lacking.Add(new LackingRow(missing, reading.Place));
            }
        }

        return values.Count + lacking.Count > 0 ? new HappenedSet(values, lacking) : HappenedSet.Nothing;
    }

    private static (double? Rate, string? Missing) OfTank(BondCoatReading reading, BondCoat coat)
    {
        if (coat.Binder is not { } binder)
        {
            return (null, "binder of the coat in the plan, by which its volume is brought to 15 °C");
        }

        var tank = reading.Taken!;
        return At15(binder, tank.Before, tank.BeforeTemperature) - At15(binder, tank.After, tank.AfterTemperature) is >= 0 and var volume && BinderFormulas.Rate(volume, reading.Area) is { } rate
            ? (rate, null)
            : (null, "a volume and a temperature that the binder can have");
    }

    private static double? At15(BondBinder binder, double volume, double temperature) => binder is BondBinder.Emulsion or BondBinder.ModifiedEmulsion
        ? BinderFormulas.Emulsion(volume, temperature, BinderFormulas.Base)
        : BinderFormulas.Binder(volume, temperature, BinderFormulas.Base);

    // From a volume to a mass, or back, the density of the binder counts besides, evenly over its range.
    private static double? Relative(HappenedShift shift, bool isVolume, string quantity)
    {
        if (shift.Known is not { Width: { } width, Length: { } length } || (isVolume ? shift.Known.Volume : shift.Known.Mass) is not { } amount)
        {
            return null;
        }

        var density = shift.Context.Assumptions[AssumptionIds.BondBinderDensity];
        var ofDensity = isVolume == quantity.EndsWith("volume", StringComparison.Ordinal) ? 0 : (density.High - density.Low) / (2 * Math.Sqrt(3) * density.Number);
        return LedgerFormulas.Uncertainty(amount, ofDensity, width, length);
    }
}
