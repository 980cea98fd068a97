using System.Text.Json.Serialization;

namespace Laygate.Exchange.Verification;

/// <summary>What <c>laygate verify --format json</c> writes, with full digits; a key without a value is left out.</summary>
/// <param name="VerificationVersion">Version of this shape.</param>
/// <param name="Program">Name of the program.</param>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Tally">Counts of the whole run.</param>
/// <param name="Files">Files in the given order.</param>
public sealed record ManualShape(int VerificationVersion, string Program, string ProgramVersion, TallyShape Tally, IEnumerable<ManualFileShape> Files)
{
    /// <summary>Version of the shape; a key may be added without raising it, none is renamed or removed.</summary>
    public const int Version = 1;
}

/// <summary>Counts; each check is in exactly one of within, off and not computed.</summary>
/// <param name="Files">Files.</param>
/// <param name="UnreadableFiles">Files with problems.</param>
/// <param name="Cases">Cases.</param>
/// <param name="Checks">Checks.</param>
/// <param name="Within">Checks within their tolerance.</param>
/// <param name="Off">Checks off by more than their tolerance.</param>
/// <param name="NotComputed">Checks without a computed value.</param>
public sealed record TallyShape(int Files, int UnreadableFiles, int Cases, int Checks, int Within, int Off, int NotComputed);

/// <summary>One file: cases, or problems that stopped it.</summary>
/// <param name="File">Name as given.</param>
/// <param name="Cases">Cases.</param>
/// <param name="Problems">Why it could not be used.</param>
public sealed record ManualFileShape(string File, IEnumerable<ManualCaseShape> Cases, IEnumerable<ManualProblemShape> Problems);

/// <summary>Why a file could not be used.</summary>
/// <param name="Message">What is wrong.</param>
/// <param name="Hint">What to do.</param>
/// <param name="Line">Line.</param>
/// <param name="Column">Column.</param>
public sealed record ManualProblemShape(string Message, string? Hint, int? Line, int? Column);

/// <summary>One case of the manual.</summary>
/// <param name="Document">Number of the case in its file, from 1.</param>
/// <param name="Topic">Topic.</param>
/// <param name="Title">What is verified.</param>
/// <param name="Source">Source of the expected values.</param>
/// <param name="Evidence">How they are known.</param>
/// <param name="Remark">Remark.</param>
/// <param name="Checks">Checks in the order of the file.</param>
public sealed record ManualCaseShape(int Document, string Topic, string Title, ManualSourceShape Source, string Evidence, string? Remark, IEnumerable<ManualCheckShape> Checks);

/// <summary>Where expected values come from.</summary>
/// <param name="Document">Document.</param>
/// <param name="Edition">Edition or year.</param>
/// <param name="Place">Section, table or page.</param>
public sealed record ManualSourceShape(string Document, string? Edition, string? Place);

/// <summary>One expected value and what was computed for it.</summary>
/// <param name="Quantity">What is compared.</param>
/// <param name="Unit">Unit of expected, computed, difference and allowed difference.</param>
/// <param name="Expected">Value from the source.</param>
/// <param name="Computed">Value computed now.</param>
/// <param name="Difference">Computed minus expected.</param>
/// <param name="Tolerance">Tolerance as the case file writes it.</param>
/// <param name="AllowedDifference">Tolerance in the unit.</param>
/// <param name="Verdict">Within, off or not-computed.</param>
/// <param name="Reason">Why there is no computed value.</param>
/// <param name="Line">Line of the expected value.</param>
/// <param name="Column">Its column.</param>
public sealed record ManualCheckShape(
    string Quantity,
    string Unit,
    double Expected,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.Never)] double? Computed,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.Never)] double? Difference,
    string Tolerance,
    double AllowedDifference,
    string Verdict,
    string? Reason,
    int Line,
    int Column);

/// <summary>How a run of the manual becomes JSON.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(ManualShape))]
public sealed partial class ManualShapes : JsonSerializerContext;
