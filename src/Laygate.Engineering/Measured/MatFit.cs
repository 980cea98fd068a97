namespace Laygate.Engineering.Measured;

/// <summary>What became of a parameter.</summary>
public enum FitState
{
    /// <summary>It was learnt.</summary>
    Learnt,

    /// <summary>The measurements hardly narrow the range that was assumed before.</summary>
    NotIdentifiable,

    /// <summary>The measurements ask for a value at or beyond an end of the range.</summary>
    AtItsEnd,
}

/// <summary>A fitted parameter.</summary>
/// <param name="State">What became of it.</param>
/// <param name="Value">Mean, as a share of the assumed conductivity, or in K.</param>
/// <param name="Low">5 % point, within the range before.</param>
/// <param name="High">95 % point, within the range before.</param>
/// <param name="Before">The range before the fit.</param>
public sealed record FittedValue(FitState State, double Value, double Low, double High, (double Low, double High) Before);

/// <summary>A shift that was left out of the fit and predicted by the others.</summary>
/// <param name="Before">Measured against computed with what is assumed.</param>
/// <param name="After">The same with what the other shifts taught; equal to before where they taught nothing.</param>
public sealed record HeldOutShift(MatComparison Before, MatComparison After);

/// <summary>Why nothing is fitted.</summary>
public enum FitRefusal
{
    /// <summary>Fewer shifts than needed have temperatures that can be compared.</summary>
    FewShifts,

    /// <summary>A record does not state the uncertainty of its temperatures.</summary>
    NoUncertainty,

    /// <summary>A place could not be solved.</summary>
    NotSolved,
}

/// <summary>What several shifts taught about the mat.</summary>
/// <param name="Refusal">Why nothing was fitted; null where something was.</param>
/// <param name="Shift">The first shift that the refusal speaks of, from 0.</param>
public sealed record MatFit(FitRefusal? Refusal, int Shift)
{
    /// <summary>Conductivity of the mixes as a share of the assumed one; null where nothing was fitted.</summary>
    public FittedValue? Conductivity { get; init; }

    /// <summary>How much hotter the mat lies behind the screed than the plan expects, K; null where nothing was fitted.</summary>
    public FittedValue? Laying { get; init; }

    /// <summary>Each shift, predicted by the others.</summary>
    public IReadOnlyList<HeldOutShift> HeldOut { get; init; } = [];

    /// <summary>Mixes of the courses that were measured.</summary>
    public IReadOnlyList<string> Mixes { get; init; } = [];

    /// <summary>Share of the readings in the band, before and after, over all shifts left out in turn.</summary>
    public (double Before, double After) Inside => (Share(one => one.Before), Share(one => one.After));

    /// <summary>Root mean square of measured less expected, K, before and after, over all shifts left out in turn.</summary>
    public (double Before, double After) Off => (Root(one => one.Before), Root(one => one.After));

    /// <summary>Whether the shifts left out are met better, by their differences.</summary>
    public bool IsBetter => HeldOut.Count > 0 && Off.After < Off.Before;

    /// <summary>Whether it may be stored: something was learnt, nothing lies at its end, and what was left out is met better.</summary>
    public bool MayBeStored => Refusal is null && IsBetter && Values.Any(value => value.State == FitState.Learnt) && Values.All(value => value.State != FitState.AtItsEnd);

    private IEnumerable<FittedValue> Values => new[] { Conductivity, Laying }.OfType<FittedValue>();

    private double Share(Func<HeldOutShift, MatComparison> of) => HeldOut.SelectMany(one => of(one).Compared).Select(one => one.IsInside ? 1.0 : 0).DefaultIfEmpty(double.NaN).Average();

    private double Root(Func<HeldOutShift, MatComparison> of) => Math.Sqrt(HeldOut.SelectMany(one => of(one).Compared).Select(one => one.Difference * one.Difference).DefaultIfEmpty(double.NaN).Average());
}
