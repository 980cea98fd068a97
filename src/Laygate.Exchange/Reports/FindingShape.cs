using System.Text.Json.Serialization;
using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Exchange.Reports;

/// <summary>What one rule says about one element of the plan.</summary>
/// <param name="Rule">Id of the rule; never reused.</param>
/// <param name="Name">Family and name of the rule.</param>
/// <param name="Status">What the gate makes of it; null when it is open or not applicable.</param>
/// <param name="Outcome">What the rule found.</param>
/// <param name="Address">Element of the plan: kind and id.</param>
/// <param name="Departure">Departure that covers it; its outcome stays.</param>
/// <param name="Known">Whether a baseline knows it of old: shown, but not counted at the gate.</param>
/// <param name="Title">Title of the rule.</param>
/// <param name="Message">The finding as a sentence, with rounded figures.</param>
/// <param name="Value">The value that was checked, unrounded.</param>
/// <param name="Limit">The bound that decides.</param>
/// <param name="Source">Where the deciding bound comes from.</param>
/// <param name="Position">Place in the file.</param>
/// <param name="Check">Kind of check.</param>
/// <param name="Quantity">Name of the quantity that was checked.</param>
/// <param name="QuantityMeaning">What it means.</param>
/// <param name="Origin">Where the value comes from.</param>
/// <param name="OnExpectedValuesOnly">Whether only the expected value meets the bound.</param>
/// <param name="FavourableEndMeets">Whether the favourable end would meet although the expected value misses.</param>
/// <param name="Severity">How grave the harm is that a safety rule guards against.</param>
/// <param name="OtherLimit">The other bound, where the rule has two, with its source.</param>
/// <param name="Why">What goes wrong on site.</param>
/// <param name="Remedy">What to change.</param>
/// <param name="Local">What the local code governs here.</param>
/// <param name="Asks">What the rule asks, as the rest of "Not known whether …"; not there for a rule that says none, nor where it does not apply.</param>
/// <param name="Holds">What holds where the rule is met, where that is another sentence than what it asks.</param>
/// <param name="Remedies">Changes of the plan that mend the finding and make none worse; empty when none was found, null when it was not looked for or no number can mend it.</param>
/// <param name="CannotBeMendedBy">Changes that help but do not mend it within their range, or not without harm.</param>
/// <param name="Missing">Inputs that would be needed.</param>
/// <param name="Notes">Remarks.</param>
/// <param name="Working">How the value was found.</param>
public sealed record FindingShape(
    string Rule,
    string Name,
    [property: Schema(Words = "pass warn fail departed")] Status? Status,
    Outcome Outcome,
    string Address,
    string? Departure,
    bool Known,
    string Title,
    [property: JsonConverter(typeof(SentenceToken))] string Message,
    ShownValue? Value,
    LimitShape? Limit,
    SourceShape? Source,
    PositionShape? Position,
    CheckKind Check,
    string Quantity,
    string QuantityMeaning,
    Origin? Origin,
    bool OnExpectedValuesOnly,
    bool FavourableEndMeets,
    Severity? Severity,
    [property: Schema(Inside = "source")] LimitShape? OtherLimit,
    string Why,
    string Remedy,
    string Local,
    [property: Schema(Later = true), JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Asks,
    [property: Schema(Later = true), JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Holds,
    IReadOnlyList<RemedyShape>? Remedies,
    IReadOnlyList<FailedRemedyShape>? CannotBeMendedBy,
    IReadOnlyList<MissingShape> Missing,
    IReadOnlyList<NoteShape> Notes,
    WorkingShape? Working);

/// <summary>A change that mends the finding, confirmed by the whole rule set.</summary>
/// <param name="Text">The remedy as a sentence.</param>
/// <param name="Changes">One change, or two that belong together.</param>
/// <param name="Value">The value that was checked, unrounded.</param>
/// <param name="Limit">The bound that decides.</param>
/// <param name="Status">Status afterwards.</param>
/// <param name="OnExpectedValuesOnly">Whether afterwards only the expected value meets the limit.</param>
public sealed record RemedyShape(
    [property: JsonConverter(typeof(SentenceToken))] string Text,
    [property: Schema(MostEntries = 2)] IReadOnlyList<LeverSetting> Changes,
    ShownValue? Value,
    LimitShape? Limit,
    Status Status,
    bool OnExpectedValuesOnly);

/// <summary>A change that helps without being a remedy.</summary>
/// <param name="Text">Why it is none, as a sentence.</param>
/// <param name="Change">How far it was tried.</param>
/// <param name="Obstacle">What stands in the way.</param>
/// <param name="Value">The value that was checked, unrounded.</param>
/// <param name="Limit">The bound that decides.</param>
/// <param name="Worsened">Findings that would become worse.</param>
public sealed record FailedRemedyShape(
    [property: JsonConverter(typeof(SentenceToken))] string Text,
    LeverSetting Change,
    RemedyObstacle Obstacle,
    ShownValue? Value,
    LimitShape? Limit,
    IReadOnlyList<WorsenedShape> Worsened);

/// <summary>A finding that would become worse.</summary>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Title">Title of the rule.</param>
/// <param name="Address">Address of the element.</param>
public sealed record WorsenedShape(string Rule, [property: JsonConverter(typeof(TextOrEmptyToken)), Schema(Later = true)] string Title, string Address);
