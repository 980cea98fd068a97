using System.Text.Json.Serialization;
using Laygate.Rules.Results;

namespace Laygate.Exchange.Reports;

/// <summary>What <c>laygate check --format json</c> writes. Keys may be added; none is renamed or removed under the same report_version.</summary>
/// <param name="ReportVersion">Version of this shape; in version 1 an hour was called go, caution or no-go.</param>
/// <param name="Program">Name of the program.</param>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Files">Files in the given order.</param>
/// <param name="Problems">What stopped the run as a whole, such as a rule file that cannot be read.</param>
/// <param name="Caution">Show these sentences wherever findings are shown.</param>
public sealed record RunShape(
    [property: Schema(Only = RunShape.Version)] int ReportVersion,
    string Program,
    string ProgramVersion,
    IReadOnlyList<FileShape> Files,
    IReadOnlyList<ProblemShape> Problems,
    [property: JsonConverter(typeof(SentencesToken)), Schema(NotEmpty = true)] IReadOnlyList<string> Caution)
{
    /// <summary>Version of the shape; a key may be added without raising it, none is renamed or removed.</summary>
    public const int Version = 2;

    /// <summary>The oldest version of the shape that can be read.</summary>
    public const int Oldest = 1;

    /// <summary>Name of the program in every report.</summary>
    public const string Name = "laygate";
}

/// <summary>One file: reports, or problems that stopped it.</summary>
/// <param name="File">Name as given.</param>
/// <param name="Reports">One report for each plan in the file.</param>
/// <param name="Problems">Why it could not be read.</param>
/// <param name="Job">The job of several shifts that the file holds: the first report is then about what lies between the shifts, each further one about one shift, in their order. Left out where the file holds plans.</param>
/// <param name="Lots">Lots of acceptance of the job, and how each goes over its shifts. Left out where the job states none.</param>
public sealed record FileShape(
    string File,
    IReadOnlyList<ReportShape> Reports,
    IReadOnlyList<ProblemShape> Problems,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull), Schema(Later = true)] JobSummary? Job = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull), Schema(Later = true)] IReadOnlyList<LotOfJob>? Lots = null);

/// <summary>Why something could not be read.</summary>
/// <param name="File">Name as given.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Hint">What to do.</param>
/// <param name="Position">Place in the file.</param>
public sealed record ProblemShape(string File, string Message, string? Hint, PositionShape? Position);

/// <summary>Lines and columns from 1, columns in UTF-16 units, the end exclusive.</summary>
/// <param name="Line">First line.</param>
/// <param name="Column">First column.</param>
/// <param name="EndLine">Last line.</param>
/// <param name="EndColumn">Column behind the last character.</param>
/// <param name="File">File of parts in which it stands; left out where it stands in the file that is spoken of.</param>
public sealed record PositionShape(
    [property: JsonConverter(typeof(FromOneToken)), Schema(Least = 1)] int Line,
    [property: JsonConverter(typeof(FromOneToken)), Schema(Least = 1)] int Column,
    [property: JsonConverter(typeof(FromOneToken)), Schema(Least = 1)] int EndLine,
    [property: JsonConverter(typeof(FromOneToken)), Schema(Least = 1)] int EndColumn,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull), Schema(Later = true)] string? File = null);
