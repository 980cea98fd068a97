using System.Text.Json.Serialization;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Exchange.Reports;

/// <summary>The report on one plan.</summary>
/// <param name="Plan">Id of the plan.</param>
/// <param name="Title">Title of the plan.</param>
/// <param name="Revision">Revision of the plan.</param>
/// <param name="Document">Number of the plan in its file.</param>
/// <param name="PlanHash">SHA-256 of the file's bytes in lower-case hex.</param>
/// <param name="Uses">Files of parts that the plan uses, with what was taken from each; left out where it uses none.</param>
/// <param name="Jurisdiction">Jurisdiction that the plan names.</param>
/// <param name="Stage">Stage at which it was judged.</param>
/// <param name="JudgedFor">Day by which limits were judged.</param>
/// <param name="JudgedForShift">Whether that day is the shift's own.</param>
/// <param name="Layers">Layers of the rule book in order; later wins.</param>
/// <param name="BookHash">Hash of the merged rule book.</param>
/// <param name="Settings">File of settings that was laid over the command.</param>
/// <param name="Quick">Whether it was a quick check, which leaves out spread, simulated shifts, remedies and outlook.</param>
/// <param name="Counts">How many findings of each kind.</param>
/// <param name="Baseline">What the baseline did; null when there is none.</param>
/// <param name="Findings">Findings in the order of the plan, then by rule.</param>
/// <param name="Outlook">Laying hour by hour, or the weather in which the plan still works; null when it was not asked for.</param>
/// <param name="Departures">Departures for this plan and what became of each.</param>
/// <param name="Assumptions">Assumptions that were used.</param>
/// <param name="Notes">Remarks on the run as a whole.</param>
public sealed record ReportShape(
    string Plan,
    string? Title,
    string? Revision,
    [property: Schema(Least = 1)] int Document,
    string PlanHash,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull), Schema(Later = true)] IReadOnlyList<UsedFile>? Uses,
    string? Jurisdiction,
    Stage Stage,
    DateOnly JudgedFor,
    bool JudgedForShift,
    IReadOnlyList<LayerShape> Layers,
    string BookHash,
    string? Settings,
    bool Quick,
    CountsShape Counts,
    BaselineUse? Baseline,
    IEnumerable<FindingShape> Findings,
    OutlookShape? Outlook,
    IReadOnlyList<DepartureShape> Departures,
    IReadOnlyList<AssumptionShape> Assumptions,
    IReadOnlyList<NoteShape> Notes);

/// <summary>A layer of the rule book.</summary>
/// <param name="Name">Name.</param>
/// <param name="Title">Title.</param>
/// <param name="Edition">Edition.</param>
/// <param name="Status">Status in words.</param>
/// <param name="Layer">Layer of the rule book that set it.</param>
/// <param name="Jurisdiction">Place for which it speaks.</param>
/// <param name="Coverage">What it covers and what not.</param>
/// <param name="Clauses">Its clauses in their order, and how far rules cover each; empty where it lists none.</param>
public sealed record LayerShape(
    string Name,
    string Title,
    string Edition,
    string? Status,
    Layer Layer,
    string Jurisdiction,
    [property: Schema(Later = true)] string? Coverage,
    [property: Schema(Later = true)] IReadOnlyList<ClauseCoverage> Clauses);

/// <summary>Findings by kind; each finding is in exactly one. There is no sum and no score.</summary>
/// <param name="Failed">Fail.</param>
/// <param name="Warned">Warn on a missed or barely met bound.</param>
/// <param name="NotAssessed">Not assessed, with a warning.</param>
/// <param name="NeedsPerson">A person must decide.</param>
/// <param name="Open">Not due at this stage.</param>
/// <param name="Departed">Covered by a valid departure.</param>
/// <param name="Passed">Pass.</param>
/// <param name="NotApplicable">The rule's conditions do not hold.</param>
/// <param name="DepartureWarnings">Departures that do not hold; they are warnings beside the findings and no findings themselves.</param>
/// <param name="KnownFailed">Of the failed findings, those that a baseline knows; they do not count at the gate.</param>
/// <param name="KnownWarned">Of the warned findings, those that a baseline knows.</param>
/// <param name="KnownNotAssessed">Of the findings that are not assessed, those that a baseline knows.</param>
public sealed record CountsShape(
    int Failed,
    int Warned,
    int NotAssessed,
    int NeedsPerson,
    int Open,
    int Departed,
    int Passed,
    int NotApplicable,
    [property: JsonConverter(typeof(WholeOrZeroToken))] int DepartureWarnings,
    [property: JsonConverter(typeof(WholeOrZeroToken))] int KnownFailed,
    [property: JsonConverter(typeof(WholeOrZeroToken))] int KnownWarned,
    [property: JsonConverter(typeof(WholeOrZeroToken))] int KnownNotAssessed);

/// <summary>A departure and what became of it.</summary>
/// <param name="Id">Id of the departure.</param>
/// <param name="Rule">Rule from which the plan departs.</param>
/// <param name="Address">Element of the plan.</param>
/// <param name="Plan">Plan it is for; null for any.</param>
/// <param name="Reason">Why.</param>
/// <param name="CompensatingMeasure">What is done instead.</param>
/// <param name="AskedBy">Who asked.</param>
/// <param name="ApprovedBy">Who permits it.</param>
/// <param name="ApprovedOn">Day of the permission.</param>
/// <param name="ExpiresOn">Last day.</param>
/// <param name="Accepted">Value that is accepted, as written.</param>
/// <param name="Reference">What records it.</param>
/// <param name="File">File that holds it.</param>
/// <param name="State">What became of it; everything but holds is a warning.</param>
/// <param name="Message">The same as a sentence.</param>
/// <param name="Status">Status of its finding without it; null where there is none.</param>
/// <param name="Outcome">Outcome of its finding; null where there is none.</param>
/// <param name="Value">Value of its finding; null where there is none.</param>
public sealed record DepartureShape(
    string Id,
    string Rule,
    string Address,
    string? Plan,
    string Reason,
    string CompensatingMeasure,
    string AskedBy,
    string ApprovedBy,
    DateOnly ApprovedOn,
    DateOnly ExpiresOn,
    string? Accepted,
    string? Reference,
    string File,
    DepartureState State,
    [property: JsonConverter(typeof(SentenceToken))] string Message,
    [property: Schema(Later = true)] Status? Status,
    [property: Schema(Later = true)] Outcome? Outcome,
    [property: Schema(Later = true)] ShownValue? Value);
