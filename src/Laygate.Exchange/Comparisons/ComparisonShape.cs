using System.Text.Json.Serialization;
using Laygate.Exchange.Reports;
using Laygate.Rules.Results;

namespace Laygate.Exchange.Comparisons;

/// <summary>What <c>laygate compare --format json</c> writes. Keys may be added; none is renamed or removed under the same comparison_version.</summary>
/// <param name="ComparisonVersion">Version of this shape.</param>
/// <param name="Program">Name of the program.</param>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Files">Pairs of files in the given order.</param>
/// <param name="Caution">Show these sentences wherever findings are shown.</param>
public sealed record ComparisonShape(
    [property: Schema(Only = ComparisonShape.Version)] int ComparisonVersion,
    string Program,
    string ProgramVersion,
    IEnumerable<PairShape> Files,
    [property: JsonConverter(typeof(SentencesToken)), Schema(NotEmpty = true)] IReadOnlyList<string> Caution)
{
    /// <summary>Version of the shape; a key may be added without raising it, none is renamed or removed.</summary>
    public const int Version = 1;
}

/// <summary>Two files side by side.</summary>
/// <param name="OldFile">Name of the earlier file.</param>
/// <param name="NewFile">Name of the later file.</param>
/// <param name="Plans">The plans of both, each once.</param>
/// <param name="Problems">Why a file could not be read; then there are no plans.</param>
public sealed record PairShape(string OldFile, string NewFile, IEnumerable<PlanShape> Plans, IReadOnlyList<ProblemShape> Problems);

/// <summary>A plan in two checks.</summary>
/// <param name="Old">One state of the plan; null when there is no such plan.</param>
/// <param name="New">One state of the plan; null when there is no such plan.</param>
/// <param name="Counts">How many findings became what.</param>
/// <param name="Findings">Findings that are not alike, in the order of the later report, then those that are gone.</param>
/// <param name="Quantities">Quantities that moved, each once.</param>
/// <param name="Text">Places where the text of the plan differs.</param>
public sealed record PlanShape(
    StateShape? Old, StateShape? New, ChangeCounts Counts, IEnumerable<FindingChangeShape> Findings, IReadOnlyList<QuantityChange> Quantities, IReadOnlyList<TextChangeShape> Text);

/// <summary>One state of a plan.</summary>
/// <param name="Plan">Id of the plan.</param>
/// <param name="Revision">Revision of the plan.</param>
/// <param name="PlanHash">SHA-256 of the file.</param>
/// <param name="BookHash">Hash of the merged rule book.</param>
public sealed record StateShape(string Plan, string? Revision, string PlanHash, string BookHash);

/// <summary>A finding in two checks.</summary>
/// <param name="Change">What became of the finding.</param>
/// <param name="Direction">Which way it went at the gate: fail weighs more than warn, warn more than all else.</param>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Address">Address of the element.</param>
/// <param name="Title">Title of the rule.</param>
/// <param name="Old">The earlier finding; null when it is new.</param>
/// <param name="New">The later finding; null when it is gone.</param>
/// <param name="Behind">Changes of the text that went into value, limit or conditions.</param>
public sealed record FindingChangeShape(
    [property: Schema(Words = "new gone changed")] ChangeKind Change,
    ChangeDirection Direction,
    string Rule,
    string Address,
    string Title,
    FindingShape? Old,
    FindingShape? New,
    IReadOnlyList<TextChangeShape> Behind);

/// <summary>A place where the text of two plans differs.</summary>
/// <param name="Path">Place by keys, entries of lists by their id.</param>
/// <param name="Old">What stood there; null when nothing did.</param>
/// <param name="New">What stands there; null when nothing does.</param>
/// <param name="OldLine">Line in the earlier file.</param>
/// <param name="NewLine">Line in the later file.</param>
/// <param name="OldFile">File of parts to which the earlier line belongs; left out where it is the plan's own.</param>
/// <param name="NewFile">File of parts to which the later line belongs; left out where it is the plan's own.</param>
public sealed record TextChangeShape(
    string Path,
    string? Old,
    string? New,
    [property: Schema(Least = 1)] int? OldLine,
    [property: Schema(Least = 1)] int? NewLine,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull), Schema(Later = true)] string? OldFile,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull), Schema(Later = true)] string? NewFile);
