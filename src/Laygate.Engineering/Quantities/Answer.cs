using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Where a value comes from.</summary>
public enum Origin
{
    /// <summary>The plan states it.</summary>
    Stated,

    /// <summary>It is computed from what the plan states.</summary>
    Computed,

    /// <summary>It is, or rests on, a listed assumption in place of something that the plan does not state.</summary>
    Assumed,
}

/// <summary>How far a measure, a block or a statement is present.</summary>
public enum PresenceLevel
{
    /// <summary>Nothing is stated.</summary>
    Absent,

    /// <summary>Something is stated, but not what, where and who, or not the fields that its kind asks for.</summary>
    Thin,

    /// <summary>Stated with all fields; never judged adequate.</summary>
    Stated,
}

/// <summary>The value of a quantity.</summary>
public abstract record QuantityValue;

/// <summary>A number.</summary>
/// <param name="Si">Expected value in the SI unit of the quantity's dimension (°C for temperatures).</param>
/// <param name="Low">5 % point of the samples; null when no spread is carried.</param>
/// <param name="High">95 % point of the samples; null when no spread is carried.</param>
public sealed record NumberValue(double Si, double? Low = null, double? High = null) : QuantityValue
{
    /// <summary>
    /// Share of <see cref="Scale"/> that is rounding. A stated figure in mm, cm or in is exact to 2e-16 of itself in SI (IEEE 754, double);
    /// what is left of the difference of a few such figures is known no better, however small it is.
    /// </summary>
    public const double RoundingOfScale = 1e-12;

    /// <summary>Largest of the figures of its dimension from which it was worked out, in SI (temperatures from absolute zero); 0 for a stated value.</summary>
    public double Scale { get; init; }

    /// <summary>Whether low and high differ from the value; where assumptions of a whole range give one value, there is no band to show.</summary>
    public bool IsSpread => (Low is { } low && low != Si) || (High is { } high && high != Si);
}

/// <summary>A word of a closed list.</summary>
/// <param name="Word">The word.</param>
public sealed record CategoryValue(string Word) : QuantityValue;

/// <summary>Yes or no.</summary>
/// <param name="Yes">Whether yes.</param>
public sealed record FlagValue(bool Yes) : QuantityValue;

/// <summary>How far something is present.</summary>
/// <param name="Level">How far.</param>
/// <param name="MissingFields">Keys that are still missing.</param>
public sealed record PresenceValue(PresenceLevel Level, IReadOnlyList<string> MissingFields) : QuantityValue
{
    /// <summary>Entries of a list, for a rule to say which of them must be there; null where the quantity itself says how far it is present.</summary>
    public IReadOnlyList<ListEntry>? Entries { get; init; }

    /// <summary>Places in the plan that would complete it; empty where <see cref="MissingFields"/> says it.</summary>
    public IReadOnlyList<InputReference> MissingAt { get; init; } = [];

    /// <summary>Remarks on what is missing.</summary>
    public IReadOnlyList<Note> Remarks { get; init; } = [];
}

/// <summary>An entry of a list that has a kind: which of its fields say something, never what they say.</summary>
/// <param name="Address">Address of the entry.</param>
/// <param name="Kind">Word of its kind.</param>
/// <param name="Given">Keys that say something.</param>
/// <param name="Who">Who answers for it, as stated.</param>
public sealed record ListEntry(string Address, string Kind, IReadOnlyList<string> Given, string? Who = null);

/// <summary>A moment.</summary>
/// <param name="At">The moment.</param>
public sealed record MomentValue(DateTimeOffset At) : QuantityValue;

/// <summary>Why a value is not to be had.</summary>
public enum AbsenceReason
{
    /// <summary>The plan does not state an input.</summary>
    MissingInput,

    /// <summary>The value lies outside the range in which the formula or table holds.</summary>
    OutsideRange,

    /// <summary>It cannot be computed from what is stated.</summary>
    NotComputable,

    /// <summary>It cannot be decided by computation; a person must look.</summary>
    NeedsPerson,
}

/// <summary>A place in the plan where a value would be stated.</summary>
/// <param name="Address">Address of the element.</param>
/// <param name="Key">Key inside the element, with dots for nested keys, for example <c>density.compacted</c>; empty for the element itself.</param>
public sealed record InputReference(string Address, string Key);

/// <summary>A remark that Reporting words: an id and its arguments, never a sentence.</summary>
/// <param name="Id">Id of the remark.</param>
/// <param name="Arguments">Arguments by name: words, or numbers with unit.</param>
public sealed record Note(string Id, IReadOnlyList<NoteArgument> Arguments)
{
    /// <summary>A remark with word arguments.</summary>
    public static Note Of(string id, params (string Name, string Text)[] arguments) =>
        new(id, [.. arguments.Select(argument => new NoteArgument(argument.Name, argument.Text))]);
}

/// <summary>An argument of a remark.</summary>
/// <param name="Name">Name.</param>
/// <param name="Text">Word or id; null for a number.</param>
/// <param name="Number">Number in the given unit; null for a word.</param>
/// <param name="Unit">Unit spelling of the number.</param>
public sealed record NoteArgument(string Name, string? Text, double? Number = null, string? Unit = null)
{
    /// <summary>Name of the argument that names another place of the plan: address, <c>/</c> and key. Whoever knows the text adds the line.</summary>
    public const string At = "at";
}

/// <summary>Why a value is not to be had.</summary>
/// <param name="Reason">Reason.</param>
/// <param name="Missing">Inputs that would help, by address and key.</param>
/// <param name="Note">What stands in the way, where it is not a missing input.</param>
public sealed record Absence(AbsenceReason Reason, IReadOnlyList<InputReference> Missing, Note? Note = null);

/// <summary>A value that went into a computation.</summary>
/// <param name="Symbol">Symbol in the formula.</param>
/// <param name="Quantity">Name of the quantity or of the assumption.</param>
/// <param name="Address">Address of the element it belongs to.</param>
/// <param name="Number">Number in the unit.</param>
/// <param name="Unit">Unit spelling; empty for counts, ratios and words.</param>
/// <param name="Text">A word in place of the number.</param>
public sealed record WorkingInput(string Symbol, string Quantity, string Address, double? Number, string Unit, string? Text = null);

/// <summary>A step of a computation.</summary>
/// <param name="Symbol">Symbol of the result.</param>
/// <param name="Expression">The formula in symbols, for example <c>q = v · W · t · ρ</c>.</param>
/// <param name="Number">Result in the unit.</param>
/// <param name="Unit">Unit spelling.</param>
public sealed record WorkingStep(string Symbol, string Expression, double Number, string Unit);

/// <summary>An assumption that was used.</summary>
/// <param name="Id">Id in the catalogue of assumptions.</param>
/// <param name="Address">Element for which it stood in.</param>
/// <param name="Number">Value in the unit.</param>
/// <param name="Unit">Unit spelling.</param>
/// <param name="Evidence">How the value is known.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="StandsFor">The plan input in whose place it stands; null for a property that no plan states.</param>
public sealed record AssumptionUse(
    string Id, string Address, double Number, string Unit, Evidence Evidence, string Source, InputReference? StandsFor)
{
    /// <summary>
    /// A key that would replace it although nothing is missing, because what it follows from is stated: a reach follows from the kind of the edge.
    /// It weakens no verdict, as one that stands for a missing input does; null for all others.
    /// </summary>
    public InputReference? CouldBe { get; init; }

    /// <summary>The key under which a plan would state it; null for a property that no plan states.</summary>
    public InputReference? Key => StandsFor ?? CouldBe;
}

/// <summary>How a value was found.</summary>
/// <param name="Inputs">What went in.</param>
/// <param name="Steps">Steps in order.</param>
/// <param name="Assumptions">Assumptions used.</param>
public sealed record Working(
    IReadOnlyList<WorkingInput> Inputs, IReadOnlyList<WorkingStep> Steps, IReadOnlyList<AssumptionUse> Assumptions)
{
    /// <summary>Name of the input that says at which moment of laying a figure of the cooling mat is worst; its text is the moment with its offset.</summary>
    public const string WorstMoment = "worst moment of laying";

    /// <summary>No working: the plan states the value.</summary>
    public static Working None { get; } = new([], [], []);
}

/// <summary>The answer of a quantity for one element: a value, or why there is none.</summary>
public sealed record Answer
{
    /// <summary>The value; null when there is none.</summary>
    public QuantityValue? Value { get; init; }

    /// <summary>Why there is no value; null when there is one.</summary>
    public Absence? Absence { get; init; }

    /// <summary>Where the value comes from.</summary>
    public Origin Origin { get; init; }

    /// <summary>The unit in which the plan states it; null for computed values, which are shown in the quantity's unit unless another is easier to read.</summary>
    public Unit? Unit { get; init; }

    /// <summary>Where a temperature is measured or predicted; null when it is not known or not a temperature.</summary>
    public Place? Place { get; init; }

    /// <summary>The key under which the plan states the value, or would; for the position of a finding.</summary>
    public InputReference? Input { get; init; }

    /// <summary>How it was found.</summary>
    public Working Working { get; init; } = Working.None;

    /// <summary>A remark that goes with the value.</summary>
    public Note? Note { get; init; }

    /// <summary>
    /// What the value leaves out, where it speaks for a part only, such as the hours of weather that are stated: a limit that it misses is missed, one
    /// that it meets is not shown to be met. Null where it speaks for the whole.
    /// </summary>
    public Note? Partial { get; init; }

    /// <summary>
    /// The samples behind low and high, in SI, in the order in which they were drawn; null for values that are not sampled. All sampled values
    /// of one context share their samples of properties and weather, so that differences may be taken sample by sample.
    /// </summary>
    internal IReadOnlyList<double>? Samples { get; init; }

    /// <summary>Whether the value rests on a weak assumption (recalled or judged) in place of a plan input.</summary>
    public bool RestsOnWeakAssumption => Working.Assumptions.Any(use =>
        use.StandsFor is not null && use.Evidence is (Evidence.Recalled or Evidence.Judgement or Evidence.CommonPractice));

    /// <summary>No value because inputs are missing.</summary>
    public static Answer Missing(params InputReference[] inputs) =>
        new() { Absence = new Absence(AbsenceReason.MissingInput, inputs), Input = inputs.Length > 0 ? inputs[0] : null };

    /// <summary>No value for another reason.</summary>
    public static Answer None(AbsenceReason reason, Note note, InputReference? input = null) =>
        new() { Absence = new Absence(reason, [], note), Input = input };
}
