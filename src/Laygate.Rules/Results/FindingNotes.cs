namespace Laygate.Rules.Results;

/// <summary>Ids of the remarks that evaluation adds to findings and reports; Reporting words them. The arguments are named behind each.</summary>
public static class FindingNotes
{
    /// <summary>The limit is only recalled: source.</summary>
    public const string LimitRecalled = "limit-recalled";

    /// <summary>The miss only warns, because the limit is not known well enough to fail a plan: evidence (word).</summary>
    public const string LimitTooWeakToFail = "limit-too-weak-to-fail";

    /// <summary>The miss only warns, because the value rests on a weak assumption and no end of it is known to miss.</summary>
    public const string WeakAssumption = "weak-assumption";

    /// <summary>An assumption decides the outcome: assumption (id), meaning, value, at (the value from which on it turns), side (word), keys (what to state), outcome (word, then).</summary>
    public const string AssumptionDecides = "assumption-decides";

    /// <summary>An assumption decides the outcome, because it moves a count: as before, and quantity, from, to.</summary>
    public const string AssumptionDecidesByCount = "assumption-decides-by-count";

    /// <summary>An assumption moves a count in the working, and the outcome stays: as before without outcome.</summary>
    public const string AssumptionMovesCount = "assumption-moves-count";

    /// <summary>Several assumptions decide together, none of them alone: assumptions, outcome (word, then), keys.</summary>
    public const string AssumptionsDecideTogether = "assumptions-decide-together";

    /// <summary>The limit had not begun on the date: date, from, strength.</summary>
    public const string LimitNotYetValid = "limit-not-yet-valid";

    /// <summary>The limit has ended without a successor: date, to, strength.</summary>
    public const string LimitEnded = "limit-ended";

    /// <summary>The limit has ended and names a successor that must be looked at; it is still applied: date, to, successor.</summary>
    public const string LimitSucceeded = "limit-succeeded";

    /// <summary>The limit's end is announced without a date: successor.</summary>
    public const string LimitEndAnnounced = "limit-end-announced";

    /// <summary>The table does not list what the plan has: strength, and each key with its value.</summary>
    public const string RowNotListed = "row-not-listed";

    /// <summary>A number lies below or above all bands of the table: strength, key, number, range (words).</summary>
    public const string OutsideTable = "outside-table";

    /// <summary>Why a range is taken as usual: text.</summary>
    public const string UsualBecause = "usual-because";

    /// <summary>The same number would be usual in another unit: meant, number in that unit; same, what that is in the unit of the plan.</summary>
    public const string UnitSlip = "unit-slip";

    /// <summary>At release a required limit fails that could not be judged because a stated number is out of range. No arguments.</summary>
    public const string OutOfRangeFails = "out-of-range-fails";

    /// <summary>The plan is too large to try every change that might mend the finding. No arguments.</summary>
    public const string RemediesNotAllTried = "remedies-not-all-tried";

    /// <summary>The value is a temperature at another place than the limit's: place, limit.</summary>
    public const string PlacesDiffer = "places-differ";

    /// <summary>The source does not say where its temperature is measured: place (of the value).</summary>
    public const string LimitPlaceNotStated = "limit-place-not-stated";

    /// <summary>Value and limit both have a band; their ends were combined on the safe side, not sample by sample.</summary>
    public const string EndsCombined = "ends-combined";

    /// <summary>Whether the rule applies is not known; its limit is held either way. No arguments.</summary>
    public const string HeldEitherWay = "held-either-way";

    /// <summary>Which row of the table is meant is not known; the value holds by each that may be. No arguments.</summary>
    public const string HeldByEachRow = "held-by-each-row";

    /// <summary>The advised bound could not be assessed; the required one is met.</summary>
    public const string AdvisedNotAssessed = "advised-not-assessed";

    /// <summary>The plan does not say whether a condition holds: meaning.</summary>
    public const string SayWhether = "say-whether";

    /// <summary>The plan does not state a number or word on which it depends whether a safety rule applies. Argument: <c>meaning</c>, a noun.</summary>
    public const string SayWhat = "say-what";

    /// <summary>At release the silence fails, although the limit is not known well enough for a miss to fail: evidence (word).</summary>
    public const string SilenceFails = "silence-fails";

    /// <summary>What another publication says on the same: source, evidence, text.</summary>
    public const string OtherReading = "other-reading";

    /// <summary>The rule will be removed: successor (may be empty).</summary>
    public const string RuleLeaving = "rule-leaving";

    /// <summary>The rule is new and may change.</summary>
    public const string RuleOnTrial = "rule-on-trial";

    /// <summary>A worst-case relation is missed, but the simulated shift passes and has the last word: rule (of the simulated shift).</summary>
    public const string SimulationPasses = "simulation-passes";

    /// <summary>A worst-case relation is met, but the simulated shift misses and has the last word: rule (of the simulated shift).</summary>
    public const string SimulationMisses = "simulation-misses";

    /// <summary>The row was read with a remark: text.</summary>
    public const string RowRemark = "row-remark";

    /// <summary>Report: it was a quick check. No arguments.</summary>
    public const string QuickReport = "quick-report";

    /// <summary>Report: the plan lies in another jurisdiction than the rule book speaks for: plan, book, specification.</summary>
    public const string JurisdictionDiffers = "jurisdiction-differs";

    /// <summary>Report: the plan does not state its jurisdiction: book, specification.</summary>
    public const string JurisdictionNotStated = "jurisdiction-not-stated";

    /// <summary>Nothing of a specification that the check names was read: specification (title). It stands first in a report.</summary>
    public const string SpecificationUnread = "specification-unread";

    /// <summary>A file uses a word of the last version: where (file and line), old, new.</summary>
    public const string OldWord = "old-word";
}
