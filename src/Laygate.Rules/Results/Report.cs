using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Results;

/// <summary>A place in a file, lines and columns from 1, columns in UTF-16 units, the end exclusive.</summary>
/// <param name="Line">First line.</param>
/// <param name="Column">First column.</param>
/// <param name="EndLine">Last line.</param>
/// <param name="EndColumn">Column behind the last character.</param>
public sealed record Position(int Line, int Column, int EndLine, int EndColumn)
{
    /// <summary>The file, as it is to be shown, where it is another than the one that is spoken of: a file of parts that a plan uses. Null: the same.</summary>
    public string? File { get; init; }
}

/// <summary>A file that a plan uses.</summary>
/// <param name="File">Name as it is to be shown.</param>
/// <param name="Hash">SHA-256 of its bytes, hexadecimal.</param>
/// <param name="Parts">What was taken from it, such as <c>rollers/r7</c>, in order.</param>
public sealed record UsedFile(string File, string Hash, IReadOnlyList<string> Parts);

/// <summary>Why something could not be read.</summary>
/// <param name="File">Name of the file as given.</param>
/// <param name="Message">What is wrong, in one sentence.</param>
/// <param name="Hint">What to do; null when the message says it.</param>
/// <param name="Position">Where; null when the file as a whole is meant.</param>
public sealed record Problem(string File, string Message, string? Hint, Position? Position);

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

    /// <summary>Files that the plan uses, with what was taken from each.</summary>
    public IReadOnlyList<UsedFile> Uses { get; init; } = [];

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
public sealed record FileResult(string File, IReadOnlyList<Report> Reports, IReadOnlyList<Problem> Problems)
{
    /// <summary>The job of several shifts that the file holds; null where it holds plans.</summary>
    public JobSummary? Job { get; init; }
}

/// <summary>What one run found, as its JSON report holds it.</summary>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Files">Files in the given order.</param>
/// <param name="Problems">What stopped the run as a whole, such as a rule file that cannot be read.</param>
public sealed record StoredRun(string ProgramVersion, IReadOnlyList<FileResult> Files, IReadOnlyList<Problem> Problems);
