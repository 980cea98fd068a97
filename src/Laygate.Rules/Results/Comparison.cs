namespace Laygate.Rules.Results;

/// <summary>What became of a finding from one check to the next.</summary>
public enum ChangeKind
{
    /// <summary>Only the later check has it.</summary>
    New,

    /// <summary>Only the earlier check had it.</summary>
    Gone,

    /// <summary>Both have it, but outcome, status, value, limit or missing inputs differ.</summary>
    Changed,

    /// <summary>Both have it alike.</summary>
    Unchanged,
}

/// <summary>Which way a change goes at the gate.</summary>
public enum ChangeDirection
{
    /// <summary>The gate makes the same of it as before.</summary>
    Level,

    /// <summary>Nearer to passing.</summary>
    Better,

    /// <summary>Farther from passing.</summary>
    Worse,
}

/// <summary>A place where the text of two plans differs.</summary>
/// <param name="Path">The place by keys, entries of lists by their id: <c>courses.wearing.thickness</c>.</param>
/// <param name="Old">What stood there; null when nothing did.</param>
/// <param name="New">What stands there now; null when nothing does.</param>
/// <param name="OldPosition">Where it stood.</param>
/// <param name="NewPosition">Where it stands.</param>
public sealed record TextChange(string Path, string? Old, string? New, Position? OldPosition, Position? NewPosition);

/// <summary>A finding in two checks.</summary>
/// <param name="Kind">What became of it.</param>
/// <param name="Direction">Which way it went.</param>
/// <param name="Old">The earlier finding; null when it is new.</param>
/// <param name="New">The later finding; null when it is gone.</param>
public sealed record FindingChange(ChangeKind Kind, ChangeDirection Direction, Finding? Old, Finding? New)
{
    /// <summary>Changes of the plan's text that went into the value, the limit or the conditions of the finding.</summary>
    public IReadOnlyList<TextChange> Behind { get; init; } = [];

    /// <summary>The later finding, or the earlier one when it is gone.</summary>
    public Finding Either => New ?? Old ?? throw new InvalidOperationException("A change has at least one finding.");
}

/// <summary>A quantity whose value moved.</summary>
/// <param name="Address">Element it belongs to.</param>
/// <param name="Quantity">Its name.</param>
/// <param name="Meaning">What it means.</param>
/// <param name="Old">Earlier value; null when there was none.</param>
/// <param name="New">Later value; null when there is none.</param>
public sealed record QuantityChange(string Address, string Quantity, string Meaning, ShownValue? Old, ShownValue? New);

/// <summary>Two checks of one plan side by side.</summary>
/// <param name="Old">The earlier report; null when the plan is new.</param>
/// <param name="New">The later report; null when the plan is gone.</param>
/// <param name="Findings">Findings in the order of the later report, then those that are gone.</param>
/// <param name="Quantities">Quantities that moved, each once.</param>
/// <param name="Text">Places where the plan's text differs, in the order of the later plan.</param>
public sealed record PlanComparison(
    Report? Old,
    Report? New,
    IReadOnlyList<FindingChange> Findings,
    IReadOnlyList<QuantityChange> Quantities,
    IReadOnlyList<TextChange> Text)
{
    /// <summary>How many findings became what.</summary>
    public ChangeCounts Counts { get; init; } = new(0, 0, 0, 0);

    /// <summary>Whether it is about what lies between the shifts of a job; the plan is the job then.</summary>
    public bool IsBetweenShifts { get; init; }
}

/// <summary>How many findings of a comparison became what; each is in exactly one.</summary>
/// <param name="New">Findings that only the later check has.</param>
/// <param name="Gone">Findings that only the earlier check had.</param>
/// <param name="Changed">Findings that differ in outcome, status, value, limit or missing inputs.</param>
/// <param name="Unchanged">Findings that are alike; they are not listed.</param>
public sealed record ChangeCounts(int New, int Gone, int Changed, int Unchanged);

/// <summary>The comparison of two files.</summary>
/// <param name="OldFile">Name of the earlier file as given.</param>
/// <param name="NewFile">Name of the later file as given.</param>
/// <param name="Plans">One entry per plan.</param>
/// <param name="Problems">Why a file could not be read; when there are any, there are no plans.</param>
public sealed record ComparisonResult(
    string OldFile, string NewFile, IReadOnlyList<PlanComparison> Plans, IReadOnlyList<Problem> Problems);
