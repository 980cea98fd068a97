namespace Laygate.Rules.Binding;

/// <summary>What can be wrong with a rule book. The arguments of each are named behind it.</summary>
public enum BookMistake
{
    /// <summary>A confirmation of a limit that stands in no publication: id, evidence.</summary>
    NothingToLookUp,

    /// <summary>The catalogue has no such quantity: name.</summary>
    UnknownQuantity,

    /// <summary>The element never belongs to one of the quantity's kind: element, quantity, kind.</summary>
    UnrelatedQuantity,

    /// <summary>The check does not fit the kind of value: check, quantity, kind.</summary>
    CheckDoesNotFit,

    /// <summary>The kind of limit does not fit the check: check, limit.</summary>
    LimitDoesNotFit,

    /// <summary>The table of units has no such unit: unit.</summary>
    UnknownUnit,

    /// <summary>The unit measures something else: unit, quantity, units.</summary>
    WrongUnit,

    /// <summary>A unit is missing: value, quantity, units.</summary>
    MissingUnit,

    /// <summary>The quantity is a ratio or count and has no unit: unit, quantity.</summary>
    NeedlessUnit,

    /// <summary>The lower end is missing: check.</summary>
    MissingLowEnd,

    /// <summary>The upper end is missing: check.</summary>
    MissingHighEnd,

    /// <summary>The check has no lower end: check.</summary>
    NeedlessLowEnd,

    /// <summary>The check has no upper end: check.</summary>
    NeedlessHighEnd,

    /// <summary>The ends leave nothing between them: low, high.</summary>
    EmptyRange,

    /// <summary>The category has no such word: word, quantity, words.</summary>
    UnknownWord,

    /// <summary>No word is given: quantity.</summary>
    NoWords,

    /// <summary>Words are asked of a number: quantity.</summary>
    WordsForNumber,

    /// <summary>A number is asked of words: quantity, kind.</summary>
    NumberForWords,

    /// <summary>A quantity of this kind can be no condition and no table key: quantity, kind.</summary>
    KindCannotMatch,

    /// <summary>A place is given for something that is no temperature: quantity.</summary>
    PlaceWithoutTemperature,

    /// <summary>The quantity is predicted at another place: quantity, place, limit.</summary>
    OtherPlace,

    /// <summary>Only a requirement or a physical necessity may be required: basis.</summary>
    RequiredWithoutRight,

    /// <summary>The quantity is a list, and the bound does not say which entries it must have: quantity.</summary>
    EntriesMissing,

    /// <summary>Entries are asked of a quantity that is no list: quantity.</summary>
    EntriesOfNoList,

    /// <summary>Two bounds have the same strength: strength.</summary>
    TwoBoundsOfOneStrength,

    /// <summary>The advised bound is not stricter than the required one and never decides.</summary>
    AdvisedNeverDecides,

    /// <summary>The rule has no bound and is not on demand.</summary>
    NoBounds,

    /// <summary>The limit is the quantity that is checked: quantity.</summary>
    LimitIsItself,

    /// <summary>The two quantities differ in what they measure: quantity, limit.</summary>
    QuantitiesDiffer,

    /// <summary>The factor is not positive, or makes no sense for temperatures and moments: factor.</summary>
    WrongFactor,

    /// <summary>The table has no rows or no keys.</summary>
    EmptyTable,

    /// <summary>A row has another number of matches than the table has keys: matches, keys.</summary>
    WrongNumberOfMatches,

    /// <summary>Two rows match the same values and set different limits: rows (from 1).</summary>
    RowsOverlap,

    /// <summary>The bibliography has no such publication: source.</summary>
    UnknownSource,

    /// <summary>The last day lies before the first: from, to.</summary>
    EndsBeforeItStarts,

    /// <summary>Confirmed without who, when, edition and page, or the other way round.</summary>
    ConfirmationIncomplete,

    /// <summary>Only safety rules have a severity.</summary>
    SeverityOutsideSafety,

    /// <summary>A safety rule about presence has no severity.</summary>
    SeverityMissing,

    /// <summary>Two rules have the same id: id.</summary>
    DuplicateRule,

    /// <summary>Two rules have the same family and name: name.</summary>
    DuplicateName,

    /// <summary>Two publications have the same id: id.</summary>
    DuplicateSource,

    /// <summary>Two specifications have the same name: name.</summary>
    DuplicateSpecification,

    /// <summary>No rule has this id: id.</summary>
    UnknownRule,

    /// <summary>The rule has been removed: id.</summary>
    RemovedRule,

    /// <summary>The entry changes nothing: id, why (in-force, out-of-force, same-bounds, no-such-bound, same-value, contradiction).</summary>
    DeadOverride,

    /// <summary>A rule of severity A would be taken out of force or weakened: id, how (taken-out, advised, dropped, laxer, weaker-evidence, shorter, not-comparable).</summary>
    LifeCriticalWeakened,

    /// <summary>Two specifications of one layer change the same: id, first, second.</summary>
    TwoSpecificationsDiffer,

    /// <summary>A specification cannot stand in the general layer.</summary>
    GeneralSpecification,

    /// <summary>The table has no such row: row, rows.</summary>
    UnknownRow,

    /// <summary>The limit has changed since it was confirmed: id, seen, now.</summary>
    ConfirmedLimitChanged,

    /// <summary>No assumption has this id: id.</summary>
    UnknownAssumption,

    /// <summary>The assumption is stated in another unit: id, unit, expected.</summary>
    AssumptionUnit,

    /// <summary>The value of an assumption lies outside its own range: id.</summary>
    AssumptionRange,
}
