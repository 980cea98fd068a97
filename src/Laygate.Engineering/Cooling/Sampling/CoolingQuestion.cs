namespace Laygate.Engineering.Cooling.Sampling;

/// <summary>A question that is put to every sampled cooling curve.</summary>
/// <param name="Name">Name for reports.</param>
/// <param name="Answer">Reads the answer from a curve; called from several threads. Gets the sampled parameters too, for limits
/// that are themselves in doubt.</param>
/// <param name="Absent">What counts where the curve has no answer: positive infinity for a time that the solve does not
/// reach (it is later than the end), NaN for a value that does not exist.</param>
public sealed record CoolingQuestion(string Name, Func<CoolingCurve, double[], double?> Answer, double Absent)
{
    /// <summary>Temperature at a place in °C (K for the core-skin difference) at a time in s.</summary>
    public static CoolingQuestion Temperature(string name, CoolingPlace place, double time) =>
        new(name, (curve, _) => curve.Value(place, time), double.NaN);

    /// <summary>Time in s, counted from <paramref name="after"/>, until a place is first below a temperature; infinite where the solve ends before.</summary>
    public static CoolingQuestion Until(string name, CoolingPlace place, double celsius, double after = 0) =>
        new(name, (curve, _) => curve.FirstBelow(place, celsius, after) - after, double.PositiveInfinity);
}
