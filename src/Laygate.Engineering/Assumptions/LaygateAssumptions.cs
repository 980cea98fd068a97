using Laygate.Engineering.Formulas;
using Laygate.Engineering.Quantities;

namespace Laygate.Engineering.Assumptions;

/// <summary>The catalogue of assumptions. A specification may replace any of them, with its own source.</summary>
public static class LaygateAssumptions
{
    /// <summary>All assumptions.</summary>
    public static IReadOnlyList<Assumption> All { get; } =
    [
        .. MixAssumptions.All,
        .. CessationAssumptions.All,
        .. MatAssumptions.All,
        .. WorkAssumptions.All,
        .. RollingAssumptions.All,
        .. WeatherAssumptions.All,
        .. SimulationAssumptions.All,
        .. SizingAssumptions.All,
    ];

    /// <summary>The catalogue as a set.</summary>
    public static AssumptionSet Set() => new(All);

    /// <summary>An assumption that is this project's judgement.</summary>
    internal static Assumption Judged(string id, string meaning, double number, string unit, double low, double high) =>
        new(id, meaning, number, unit, low, high, Sources.Judgement, Evidence.Judgement);
}
