using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Binding;

/// <summary>Why an entry of a specification changes nothing.</summary>
public enum NoEffect
{
    /// <summary>The rule is in force already.</summary>
    InForce,

    /// <summary>The rule is not in force.</summary>
    OutOfForce,

    /// <summary>The rule has these bounds already.</summary>
    SameBounds,

    /// <summary>There is no bound to work on.</summary>
    NoSuchBound,

    /// <summary>The value holds already.</summary>
    SameValue,

    /// <summary>Another entry of the specification says otherwise.</summary>
    Contradiction,
}

/// <summary>How a rule of severity A would be weakened.</summary>
public enum WeakerBy
{
    /// <summary>Taken out of force.</summary>
    TakenOut,

    /// <summary>A required bound becomes advised.</summary>
    Advised,

    /// <summary>A bound goes.</summary>
    Dropped,

    /// <summary>A laxer limit.</summary>
    Laxer,

    /// <summary>A source that lets the rule no longer fail.</summary>
    WeakerEvidence,

    /// <summary>A shorter time in force.</summary>
    Shorter,

    /// <summary>A limit of another kind, of which nobody can say that it is as strict.</summary>
    NotComparable,
}

/// <summary>What can be wrong with a rule book, each with what its sentence needs; Reading words it.</summary>
public abstract record BookMistake
{
    private BookMistake()
    {
    }

    /// <summary>A confirmation of a limit that stands in no publication.</summary>
    public sealed record NothingToLookUp(string Id, Evidence Evidence) : BookMistake;

    /// <summary>The catalogue has no such quantity.</summary>
    public sealed record UnknownQuantity(string Name) : BookMistake;

    /// <summary>The element never belongs to one of the quantity's kind.</summary>
    public sealed record UnrelatedQuantity(ElementKind Element, string Quantity, ElementKind Kind) : BookMistake;

    /// <summary>The check does not fit the kind of value.</summary>
    public sealed record CheckDoesNotFit(CheckKind Check, string Quantity, ValueKind Kind) : BookMistake;

    /// <summary>The kind of limit does not fit the check.</summary>
    public sealed record LimitDoesNotFit(CheckKind Check, Limit Limit) : BookMistake;

    /// <summary>The table of units has no such unit.</summary>
    public sealed record UnknownUnit(string Unit, IReadOnlyList<string> Units) : BookMistake;

    /// <summary>The unit measures something else.</summary>
    public sealed record WrongUnit(string Unit, string Quantity, IReadOnlyList<string> Units) : BookMistake;

    /// <summary>A unit is missing.</summary>
    public sealed record MissingUnit(string Value, string Quantity, IReadOnlyList<string> Units) : BookMistake;

    /// <summary>The quantity is a ratio or count and has no unit.</summary>
    public sealed record NeedlessUnit(string Unit, string Quantity) : BookMistake;

    /// <summary>The lower end is missing.</summary>
    public sealed record MissingLowEnd(CheckKind Check) : BookMistake;

    /// <summary>The upper end is missing.</summary>
    public sealed record MissingHighEnd(CheckKind Check) : BookMistake;

    /// <summary>The check has no lower end.</summary>
    public sealed record NeedlessLowEnd(CheckKind Check) : BookMistake;

    /// <summary>The check has no upper end.</summary>
    public sealed record NeedlessHighEnd(CheckKind Check) : BookMistake;

    /// <summary>The ends leave nothing between them.</summary>
    public sealed record EmptyRange(string Low, string High) : BookMistake;

    /// <summary>The category has no such word.</summary>
    public sealed record UnknownWord(string Word, string Quantity, IReadOnlyList<string> Words) : BookMistake;

    /// <summary>No word is given.</summary>
    public sealed record NoWords(string Quantity) : BookMistake;

    /// <summary>Words are asked of a number.</summary>
    public sealed record WordsForNumber(string Quantity) : BookMistake;

    /// <summary>A number is asked of words.</summary>
    public sealed record NumberForWords(string Quantity, ValueKind Kind, IReadOnlyList<string> Words) : BookMistake;

    /// <summary>A quantity of this kind can be no condition and no table key.</summary>
    public sealed record KindCannotMatch(string Quantity, ValueKind Kind) : BookMistake;

    /// <summary>A place is given for something that is no temperature.</summary>
    public sealed record PlaceWithoutTemperature(string Quantity) : BookMistake;

    /// <summary>The quantity is predicted at another place.</summary>
    public sealed record OtherPlace(string Quantity, Place Place, Place Limit) : BookMistake;

    /// <summary>Only a requirement or a physical necessity may be required.</summary>
    public sealed record RequiredWithoutRight(Basis Basis) : BookMistake;

    /// <summary>The quantity is a list, and the bound does not say which entries it must have.</summary>
    public sealed record EntriesMissing(string Quantity) : BookMistake;

    /// <summary>Entries are asked of a quantity that is no list.</summary>
    public sealed record EntriesOfNoList(string Quantity) : BookMistake;

    /// <summary>Two bounds have the same strength.</summary>
    public sealed record TwoBoundsOfOneStrength(Strength Strength) : BookMistake;

    /// <summary>The advised bound is not stricter than the required one and never decides.</summary>
    public sealed record AdvisedNeverDecides : BookMistake;

    /// <summary>The rule has no bound and is not on demand.</summary>
    public sealed record NoBounds : BookMistake;

    /// <summary>The limit is the quantity that is checked.</summary>
    public sealed record LimitIsItself(string Quantity) : BookMistake;

    /// <summary>The two quantities differ in what they measure.</summary>
    public sealed record QuantitiesDiffer(string Quantity, string Limit) : BookMistake;

    /// <summary>The factor is not positive, or makes no sense for temperatures and moments.</summary>
    public sealed record WrongFactor(double Factor) : BookMistake;

    /// <summary>The table has no rows or no keys.</summary>
    public sealed record EmptyTable : BookMistake;

    /// <summary>A row has another number of matches than the table has keys.</summary>
    public sealed record WrongNumberOfMatches(int Matches, int Keys) : BookMistake;

    /// <summary>Two rows match the same values and set different limits.</summary>
    public sealed record RowsOverlap(int Earlier, int Later) : BookMistake;

    /// <summary>The bibliography has no such publication.</summary>
    public sealed record UnknownSource(string Source) : BookMistake;

    /// <summary>The last day lies before the first.</summary>
    public sealed record EndsBeforeItStarts(DateOnly From, DateOnly To) : BookMistake;

    /// <summary>Confirmed without who, when, edition and page, or the other way round.</summary>
    public sealed record ConfirmationIncomplete : BookMistake;

    /// <summary>Only safety rules have a severity.</summary>
    public sealed record SeverityOutsideSafety : BookMistake;

    /// <summary>A safety rule about presence has no severity.</summary>
    public sealed record SeverityMissing : BookMistake;

    /// <summary>Two rules have the same id.</summary>
    public sealed record DuplicateRule(string Id) : BookMistake;

    /// <summary>Two rules have the same family and name.</summary>
    public sealed record DuplicateName(string Name) : BookMistake;

    /// <summary>Two publications have the same id.</summary>
    public sealed record DuplicateSource(string Id) : BookMistake;

    /// <summary>Two specifications have the same name.</summary>
    public sealed record DuplicateSpecification(string Name) : BookMistake;

    /// <summary>No rule has this id.</summary>
    public sealed record UnknownRule(string Id, IReadOnlyList<string> Known) : BookMistake;

    /// <summary>The rule has been removed.</summary>
    public sealed record RemovedRule(string Id) : BookMistake;

    /// <summary>The entry changes nothing.</summary>
    public sealed record DeadOverride(string Id, NoEffect Why) : BookMistake;

    /// <summary>A rule of severity A would be taken out of force or weakened.</summary>
    public sealed record LifeCriticalWeakened(string Id, WeakerBy How) : BookMistake;

    /// <summary>Two specifications of one layer change the same.</summary>
    public sealed record TwoSpecificationsDiffer(string Id, string First, string Second) : BookMistake;

    /// <summary>A specification cannot stand in the general layer.</summary>
    public sealed record GeneralSpecification : BookMistake;

    /// <summary>The table has no such row.</summary>
    public sealed record UnknownRow(string Row, int Rows) : BookMistake;

    /// <summary>The limit has changed since it was confirmed.</summary>
    public sealed record ConfirmedLimitChanged(string Id, string Seen, string Now) : BookMistake;

    /// <summary>No assumption has this id.</summary>
    public sealed record UnknownAssumption(string Id) : BookMistake;

    /// <summary>The assumption is stated in another unit.</summary>
    public sealed record AssumptionUnit(string Id, string Unit, string Expected) : BookMistake;

    /// <summary>The value of an assumption lies outside its own range.</summary>
    public sealed record AssumptionRange(string Id) : BookMistake;
}
