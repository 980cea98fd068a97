using System.Text.Json.Serialization;
using Laygate.Rules.Results;

namespace Laygate.Exchange.Reports;

/// <summary>When to lay.</summary>
/// <param name="Rules">Ids of the rules that depend on the weather in this plan.</param>
/// <param name="NotJudged">Rules that depend on the weather and could not be judged: nothing in the outlook speaks for them.</param>
/// <param name="InEveryHour">Limits that say the same in every hour of the forecast.</param>
/// <param name="Hours">Hours of the forecast; empty without one.</param>
/// <param name="Leads">Time from the call of a plant to the mat.</param>
/// <param name="Weather">Workable weather; null with a forecast or without an envelope.</param>
public sealed record OutlookShape(
    IReadOnlyList<string> Rules,
    [property: Schema(Later = true)] IReadOnlyList<UnjudgedRuleShape> NotJudged,
    [property: Schema(Later = true)] IReadOnlyList<LimitMarginShape> InEveryHour,
    IReadOnlyList<HourShape> Hours,
    IReadOnlyList<PlantLead> Leads,
    WorkableWeatherShape? Weather);

/// <summary>A rule that belongs to the question and could not be judged.</summary>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Address">Address of the element.</param>
/// <param name="Title">Title of the rule.</param>
/// <param name="Outcome">Why it was not judged.</param>
/// <param name="Status">Its status; null for what is open.</param>
/// <param name="Missing">Inputs that would be needed.</param>
/// <param name="Notes">Remarks.</param>
public sealed record UnjudgedRuleShape(
    string Rule,
    string Address,
    string Title,
    [property: Schema(Words = "not-assessed needs-person open")] Outcome Outcome,
    [property: Schema(Words = "warn fail")] Status? Status,
    IReadOnlyList<MissingShape> Missing,
    IReadOnlyList<NoteShape> Notes);

/// <summary>Laying in one hour.</summary>
/// <param name="At">Start of the hour.</param>
/// <param name="Verdict">Whether to lay.</param>
/// <param name="CallBy">Latest moment to call the plant.</param>
/// <param name="Broken">Limits that do not pass, worst first.</param>
/// <param name="Limits">Every limit that depends on the weather and was judged in this hour, with its margin; without those that are the same in every hour.</param>
/// <param name="Nearest">Where nothing is broken, the limit with the least margin.</param>
public sealed record HourShape(
    DateTimeOffset At,
    LayingVerdict Verdict,
    DateTimeOffset? CallBy,
    IReadOnlyList<BrokenLimitShape> Broken,
    [property: Schema(Later = true)] IReadOnlyList<LimitMarginShape> Limits,
    BrokenLimitShape? Nearest);

/// <summary>A limit of the weather that is broken, or the nearest one that is not.</summary>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Address">Address of the element.</param>
/// <param name="Title">Title of the rule.</param>
/// <param name="Status">Status; <c>pass</c> only for the nearest limit.</param>
/// <param name="Value">Value.</param>
/// <param name="Limit">The bound that decides.</param>
/// <param name="OnExpectedValuesOnly">Whether the expected value meets it and only the unfavourable end misses.</param>
public sealed record BrokenLimitShape(
    string Rule,
    string Address,
    string Title,
    [property: Schema(Words = "pass warn fail")] Status Status,
    ShownValue? Value,
    LimitShape? Limit,
    bool OnExpectedValuesOnly);

/// <summary>A limit that was judged, and how far the value lies inside it.</summary>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Address">Address of the element.</param>
/// <param name="Title">Title of the rule.</param>
/// <param name="Status">Status.</param>
/// <param name="Value">Value.</param>
/// <param name="Limit">The bound that decides.</param>
/// <param name="OnExpectedValuesOnly">Whether the expected value meets it and only the unfavourable end misses.</param>
/// <param name="Margin">Distance of the expected value inside the limit, below zero outside; temperatures in K or °F, moments in min. Null for words.</param>
public sealed record LimitMarginShape(
    string Rule,
    string Address,
    string Title,
    [property: Schema(Words = "pass warn fail")] Status Status,
    ShownValue? Value,
    LimitShape? Limit,
    bool OnExpectedValuesOnly,
    ShownValue? Margin);

/// <summary>The weather in which the plan still works.</summary>
/// <param name="Unknown">Whether how far the weather may go is not known, because it would rest on a rule that could not be judged, or on none at all.</param>
/// <param name="Alone">One side at a time, the others as stated.</param>
/// <param name="Pairs">Two sides together.</param>
public sealed record WorkableWeatherShape([property: Schema(Later = true)] bool Unknown, IReadOnlyList<AxisLimitShape> Alone, IReadOnlyList<PairLimit> Pairs);

/// <summary>How far one side may go.</summary>
/// <param name="Axis">Side.</param>
/// <param name="Stated">Value in the plan.</param>
/// <param name="AllPass">Worst value with which everything passes.</param>
/// <param name="Go">The same under the name of version 1.</param>
/// <param name="NoFailure">Worst value with which nothing fails.</param>
/// <param name="NotBeyond">Where rules could not be judged, <c>all_pass</c> and <c>no_failure</c> are null; a rule that was judged fails beyond this value.</param>
/// <param name="BreaksFirst">What breaks just beyond.</param>
public sealed record AxisLimitShape(
    WeatherAxis Axis,
    ShownValue Stated,
    ShownValue? AllPass,
    [property: Schema(OnlyRead = true), JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ShownValue? Go,
    ShownValue? NoFailure,
    [property: Schema(Later = true)] ShownValue? NotBeyond,
    BrokenLimitShape? BreaksFirst);
