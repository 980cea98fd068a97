using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Results;

/// <summary>What a rule found, judged on expected values.</summary>
public enum Outcome
{
    /// <summary>The limit is met.</summary>
    Met,

    /// <summary>A bound is missed.</summary>
    Missed,

    /// <summary>The rule's conditions do not hold.</summary>
    NotApplicable,

    /// <summary>It could not be assessed.</summary>
    NotAssessed,

    /// <summary>A person must decide.</summary>
    NeedsPerson,

    /// <summary>An input is not yet due at the plan's stage.</summary>
    Open,
}

/// <summary>What the gate makes of an outcome.</summary>
public enum Status
{
    /// <summary>No status: not applicable or open.</summary>
    None,

    /// <summary>Pass.</summary>
    Pass,

    /// <summary>Warn.</summary>
    Warn,

    /// <summary>Fail.</summary>
    Fail,

    /// <summary>Covered by a valid departure.</summary>
    Departed,
}

/// <summary>A place in a file, lines and columns from 1, columns in UTF-16 units, the end exclusive.</summary>
/// <param name="Line">First line.</param>
/// <param name="Column">First column.</param>
/// <param name="EndLine">Last line.</param>
/// <param name="EndColumn">Column behind the last character.</param>
public sealed record Position(int Line, int Column, int EndLine, int EndColumn);

/// <summary>Why something could not be read.</summary>
/// <param name="File">Name of the file as given.</param>
/// <param name="Message">What is wrong, in one sentence.</param>
/// <param name="Hint">What to do; null when the message says it.</param>
/// <param name="Position">Where; null when the file as a whole is meant.</param>
public sealed record Problem(string File, string Message, string? Hint, Position? Position);

/// <summary>A value or limit as shown: a number with unit and band, or words.</summary>
/// <param name="Number">Expected value or limit in the unit; null for words.</param>
/// <param name="Unit">Unit spelling; empty for ratios and counts.</param>
/// <param name="Low">Low end of the band in the unit.</param>
/// <param name="High">High end of the band in the unit.</param>
/// <param name="Text">Words in place of a number.</param>
/// <param name="Place">Where a temperature is measured or predicted.</param>
public sealed record ShownValue(
    double? Number, string Unit, double? Low = null, double? High = null, string? Text = null, Place? Place = null);

/// <summary>The limit that decides.</summary>
/// <param name="Strength">Required or advised.</param>
/// <param name="Basis">What it stands on.</param>
/// <param name="Low">Lower end in the unit of the value; for words, the words.</param>
/// <param name="High">Upper end in the unit of the value.</param>
/// <param name="LowExclusive">Whether the lower end itself is outside.</param>
/// <param name="HighExclusive">Whether the upper end itself is outside.</param>
/// <param name="Stated">The limit in the unit of its source, where that differs.</param>
/// <param name="Quantity">Quantity that serves as limit; null for constants.</param>
/// <param name="Factor">Factor on that quantity.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Publication">The publication, resolved from the bibliography.</param>
/// <param name="Layer">Layer that set it.</param>
/// <param name="SetBy">Name of the specification that set it; null for the general book.</param>
public sealed record ShownLimit(
    Strength Strength,
    Basis Basis,
    ShownValue? Low,
    ShownValue? High,
    bool LowExclusive,
    bool HighExclusive,
    string? Stated,
    string? Quantity,
    double? Factor,
    SourceReference Source,
    Source? Publication,
    Layer Layer,
    string? SetBy)
{
    /// <summary>Whether silence fails at release however the source is known: a required measure of severity A.</summary>
    public bool SilenceFails { get; init; }
}

/// <summary>What one rule says about one plan element.</summary>
public sealed record Finding
{
    /// <summary>Id of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>Name of the rule: family and name.</summary>
    public required string RuleName { get; init; }

    /// <summary>Title of the rule.</summary>
    public required string Title { get; init; }

    /// <summary>What goes wrong on site.</summary>
    public required string Why { get; init; }

    /// <summary>What to change.</summary>
    public required string Remedy { get; init; }

    /// <summary>What the local code governs.</summary>
    public required string Local { get; init; }

    /// <summary>Severity, for safety.</summary>
    public Severity? Severity { get; init; }

    /// <summary>The check.</summary>
    public required CheckKind Check { get; init; }

    /// <summary>Address of the element.</summary>
    public required string Address { get; init; }

    /// <summary>Place in the plan that states the value, or would.</summary>
    public InputReference? Input { get; init; }

    /// <summary>Outcome.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>Gate status.</summary>
    public required Status Status { get; init; }

    /// <summary>Name of the quantity that was checked.</summary>
    public required string Quantity { get; init; }

    /// <summary>What the quantity means.</summary>
    public required string QuantityMeaning { get; init; }

    /// <summary>The value; null when there is none.</summary>
    public ShownValue? Value { get; init; }

    /// <summary>Where the value comes from.</summary>
    public Origin? Origin { get; init; }

    /// <summary>The bound that decides; null when none was reached.</summary>
    public ShownLimit? Limit { get; init; }

    /// <summary>The other bound, where the rule has two.</summary>
    public ShownLimit? OtherLimit { get; init; }

    /// <summary>Whether only the expected value meets the bound, not the unfavourable end.</summary>
    public bool OnExpectedValuesOnly { get; init; }

    /// <summary>Whether the favourable end would meet although the expected value misses.</summary>
    public bool FavourableEndMeets { get; init; }

    /// <summary>How the value was found.</summary>
    public Working? Working { get; init; }

    /// <summary>Inputs that are missing, by address and key.</summary>
    public IReadOnlyList<InputReference> Missing { get; init; } = [];

    /// <summary>Remarks, to be worded by Reporting.</summary>
    public IReadOnlyList<Note> Notes { get; init; } = [];

    /// <summary>What would mend it; null when it was not asked for, or when no number can mend it.</summary>
    public RemedySet? Remedies { get; init; }

    /// <summary>The departure that covers it; null when none does.</summary>
    public Departure? Departure { get; init; }

    /// <summary>Whether a baseline knows it of old: it is shown, but does not count at the gate.</summary>
    public bool Known { get; init; }

    /// <summary>Position in the plan; set when it is checked.</summary>
    public Position? Position { get; init; }
}

/// <summary>A layer of the rule book that was used.</summary>
/// <param name="Name">Name.</param>
/// <param name="Title">Title.</param>
/// <param name="Edition">Edition or version.</param>
/// <param name="Status">Status in words.</param>
/// <param name="Layer">Layer.</param>
/// <param name="Jurisdiction">Place for which it speaks.</param>
public sealed record BookLayer(string Name, string Title, string Edition, string? Status, Layer Layer, string Jurisdiction)
{
    /// <summary>What it covers and what not, in words.</summary>
    public string? Coverage { get; init; }

    /// <summary>Its clauses in their order, and how far rules cover each; none where the specification lists none.</summary>
    public IReadOnlyList<ClauseCoverage> Clauses { get; init; } = [];

    /// <summary>Whether nothing of it was read, so that its limits only warn; reports say it in a note.</summary>
    public bool IsUnread { get; init; }

    /// <summary>Words of the last version that its files still use.</summary>
    public IReadOnlyList<OldWord> OldWords { get; init; } = [];
}

/// <summary>Counts by outcome; each finding is in exactly one.</summary>
/// <param name="Failed">Status fail, silence that fails included.</param>
/// <param name="Warned">Status warn on a missed or barely met bound.</param>
/// <param name="Passed">Status pass.</param>
/// <param name="NotAssessed">Not assessed, with status warn.</param>
/// <param name="NeedsPerson">Needs a person.</param>
/// <param name="Open">Open.</param>
/// <param name="NotApplicable">Not applicable.</param>
/// <param name="Departed">Departed.</param>
public sealed record Counts(
    int Failed, int Warned, int Passed, int NotAssessed, int NeedsPerson, int Open, int NotApplicable, int Departed)
{
    /// <summary>Departures that do not hold: each is a warning beside the findings, not a finding.</summary>
    public int DepartureWarnings { get; init; }

    /// <summary>Of the failed findings, those that a baseline knows.</summary>
    public int KnownFailed { get; init; }

    /// <summary>Of the warned findings, those that a baseline knows.</summary>
    public int KnownWarned { get; init; }

    /// <summary>Of the findings that are not assessed, those that a baseline knows.</summary>
    public int KnownNotAssessed { get; init; }
}

/// <summary>The report on one plan.</summary>
public sealed record Report
{
    /// <summary>Name of the file as given.</summary>
    public required string File { get; init; }

    /// <summary>Number of the plan in its file, from 1.</summary>
    public int Document { get; init; } = 1;

    /// <summary>Id of the plan.</summary>
    public required string PlanId { get; init; }

    /// <summary>Title of the plan.</summary>
    public string? PlanTitle { get; init; }

    /// <summary>Revision of the plan.</summary>
    public string? Revision { get; init; }

    /// <summary>SHA-256 of the plan's bytes, lower-case hex.</summary>
    public string PlanHash { get; init; } = string.Empty;

    /// <summary>Jurisdiction that the plan names.</summary>
    public string? Jurisdiction { get; init; }

    /// <summary>Stage at which it was judged.</summary>
    public required Stage Stage { get; init; }

    /// <summary>Date by which limits and departures were judged.</summary>
    public required DateOnly JudgedFor { get; init; }

    /// <summary>Whether that date is the shift's own.</summary>
    public required bool JudgedForShift { get; init; }

    /// <summary>Version of the program.</summary>
    public string ProgramVersion { get; init; } = string.Empty;

    /// <summary>Layers of the rule book in order.</summary>
    public required IReadOnlyList<BookLayer> Layers { get; init; }

    /// <summary>Hash of the merged rule book.</summary>
    public required string BookHash { get; init; }

    /// <summary>Findings in plan order, then by rule id.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>Counts.</summary>
    public required Counts Counts { get; init; }

    /// <summary>Assumptions used, each once.</summary>
    public IReadOnlyList<AssumptionUse> Assumptions { get; init; } = [];

    /// <summary>Laying hour by hour, or the weather in which the plan still works; null when it was not asked for.</summary>
    public LayingOutlook? Outlook { get; init; }

    /// <summary>Departures for this plan and what became of each, in the order of their files.</summary>
    public IReadOnlyList<DepartureUse> Departures { get; init; } = [];

    /// <summary>What the baseline did; null when there is none.</summary>
    public BaselineUse? Baseline { get; init; }

    /// <summary>What the plots are drawn from; null when no plot was asked for.</summary>
    public PlanPlots? Plots { get; init; }

    /// <summary>Every value of the plan as it was read; none when they were not asked for.</summary>
    public IReadOnlyList<StatedInput> Inputs { get; init; } = [];

    /// <summary>The file of settings that was laid over the command; null when there is none.</summary>
    public string? Settings { get; init; }

    /// <summary>Whether it was a quick check, which leaves out spread, simulated shifts, remedies and outlook; a remark says so too.</summary>
    public bool IsQuick { get; init; }

    /// <summary>Remarks on the run as a whole, such as a jurisdiction that differs from the rule book's.</summary>
    public IReadOnlyList<Note> Notes { get; init; } = [];
}

/// <summary>What became of one file: reports, or problems that stopped it.</summary>
/// <param name="File">Name as given.</param>
/// <param name="Reports">One report per plan in the file.</param>
/// <param name="Problems">Why it could not be read; when there are any, there are no reports.</param>
public sealed record FileResult(string File, IReadOnlyList<Report> Reports, IReadOnlyList<Problem> Problems);

/// <summary>What one run found, as its JSON report holds it.</summary>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Files">Files in the given order.</param>
/// <param name="Problems">What stopped the run as a whole, such as a rule file that cannot be read.</param>
public sealed record StoredRun(string ProgramVersion, IReadOnlyList<FileResult> Files, IReadOnlyList<Problem> Problems);
