using Laygate.Engineering.Quantities;

namespace Laygate.Rules.Results;

/// <summary>Whether to lay.</summary>
public enum LayingVerdict
{
    /// <summary>Every weather-dependent rule passes.</summary>
    Pass,

    /// <summary>None fails, at least one warns.</summary>
    Warn,

    /// <summary>At least one fails.</summary>
    Fail,
}

/// <summary>A limit that does not pass.</summary>
/// <param name="Finding">Rule and address.</param>
/// <param name="Status">Status.</param>
/// <param name="Value">Value.</param>
/// <param name="Limit">Limit.</param>
/// <param name="OnExpectedValuesOnly">Whether the expected value meets it and only the unfavourable end misses.</param>
public sealed record BrokenLimit(FindingReference Finding, Status Status, ShownValue? Value, ShownLimit? Limit, bool OnExpectedValuesOnly);

/// <summary>Laying in one hour of the forecast.</summary>
/// <param name="At">Start of the hour.</param>
/// <param name="Verdict">Whether to lay.</param>
/// <param name="Broken">Limits that do not pass, worst first: the first one decides.</param>
/// <param name="CallBy">Latest moment to call the plant for it; null where no journey is stated.</param>
/// <param name="Nearest">Where nothing is broken: the limit with the least margin; null where no limit is a number.</param>
public sealed record HourOutlook(
    DateTimeOffset At, LayingVerdict Verdict, IReadOnlyList<BrokenLimit> Broken, DateTimeOffset? CallBy, BrokenLimit? Nearest = null)
{
    /// <summary>Every limit that depends on the weather and was judged in this hour, with its margin; without those that are the same in every hour.</summary>
    public IReadOnlyList<LimitMargin> Limits { get; init; } = [];
}

/// <summary>A limit that was judged, and how far the value lies inside it.</summary>
/// <param name="Limit">The limit with value and status.</param>
/// <param name="Margin">Distance of the expected value inside the limit, below zero outside; temperatures in K or °F, moments in min. Null for words.</param>
public sealed record LimitMargin(BrokenLimit Limit, ShownValue? Margin)
{
    /// <summary>The margin as a share of the limit, 1; infinite where there is no number.</summary>
    public double Share => Margin?.Number is { } margin
        ? margin / Math.Max(1, Math.Abs(Limit.Limit?.Low?.Number ?? Limit.Limit?.High?.Number ?? 1))
        : double.PositiveInfinity;
}

/// <summary>A rule that belongs to the question and could not be judged.</summary>
/// <param name="Finding">Rule and address.</param>
/// <param name="Outcome">Not assessed, needs a person, or open.</param>
/// <param name="Status">Its status.</param>
/// <param name="Missing">What to state.</param>
/// <param name="Notes">What else stands in the way.</param>
public sealed record UnjudgedRule(
    FindingReference Finding, Outcome Outcome, Status Status, IReadOnlyList<InputReference> Missing, IReadOnlyList<Note> Notes);

/// <summary>Time from the call to the first load on the mat.</summary>
/// <param name="Trucks">Group of trucks.</param>
/// <param name="Plant">Plant.</param>
/// <param name="Lead">Loading of the loads that wait before the start, ticket and journey on a bad day.</param>
public sealed record PlantLead(string Trucks, string? Plant, ShownValue Lead);

/// <summary>One side of the weather.</summary>
public enum WeatherAxis
{
    /// <summary>Lowest air temperature.</summary>
    Air,

    /// <summary>Lowest temperature of the surface that is laid upon.</summary>
    Base,

    /// <summary>Highest wind at the mat.</summary>
    Wind,
}

/// <summary>How far one side of the weather may go while the others stay as stated.</summary>
/// <param name="Axis">Which side.</param>
/// <param name="Stated">Value in the plan's envelope.</param>
/// <param name="AllPass">Worst value with which every weather-dependent rule passes; null when none in the searched range does.</param>
/// <param name="NoFailure">Worst value with which none fails; null when none does.</param>
/// <param name="BreaksFirst">What breaks just beyond; null at the end of the searched range.</param>
public sealed record AxisLimit(WeatherAxis Axis, ShownValue Stated, ShownValue? AllPass, ShownValue? NoFailure, BrokenLimit? BreaksFirst)
{
    /// <summary>
    /// Where rules could not be judged, <see cref="AllPass"/> and <see cref="NoFailure"/> are null, because they would rest on those rules. This is the
    /// value beyond which a rule that was judged fails: further it cannot go, and whether it may go so far is not known. Null when none fails in the searched range.
    /// </summary>
    public ShownValue? NotBeyond { get; init; }
}

/// <summary>How far one side may go when another has already gone part of its way.</summary>
/// <param name="First">Side that is set.</param>
/// <param name="FirstValue">Its value.</param>
/// <param name="Second">Side that is looked for.</param>
/// <param name="SecondValue">Its worst value at that level; null when none.</param>
/// <param name="Level">Pass where a value passes everything, else warn: nothing fails.</param>
public sealed record PairLimit(WeatherAxis First, ShownValue FirstValue, WeatherAxis Second, ShownValue? SecondValue, LayingVerdict Level);

/// <summary>The weather in which the plan still works.</summary>
/// <param name="Alone">One side at a time.</param>
/// <param name="Pairs">Two sides together.</param>
public sealed record WorkableWeather(IReadOnlyList<AxisLimit> Alone, IReadOnlyList<PairLimit> Pairs)
{
    /// <summary>Whether how far the weather may go is not known, because it would rest on a rule that could not be judged, or on none at all.</summary>
    public bool IsUnknown { get; init; }
}

/// <summary>Laying hour by hour where the plan has hours, else the weather in which it still works.</summary>
/// <param name="Hours">Hours; empty without a forecast.</param>
/// <param name="Leads">Time from the call of a plant to the mat.</param>
/// <param name="Weather">Workable weather; null with a forecast, or where the plan states no envelope with air, base and wind.</param>
/// <param name="Rules">Rules that depend on the weather in this plan, by id.</param>
public sealed record LayingOutlook(
    IReadOnlyList<HourOutlook> Hours, IReadOnlyList<PlantLead> Leads, WorkableWeather? Weather, IReadOnlyList<string> Rules)
{
    /// <summary>Rules that depend on the weather and could not be judged: nothing here speaks for them.</summary>
    public IReadOnlyList<UnjudgedRule> NotJudged { get; init; } = [];

    /// <summary>Limits that say the same in every hour of the forecast, once.</summary>
    public IReadOnlyList<LimitMargin> InEveryHour { get; init; } = [];
}
