using Laygate.Rules.Results;

namespace Laygate.Reporting.Runs;

/// <summary>What one run found; every format that is made for a host or a person takes it.</summary>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Results">Files in the given order.</param>
/// <param name="Problems">What stopped the run as a whole, such as a rule file that cannot be read.</param>
public sealed record ReportedRun(string ProgramVersion, IReadOnlyList<FileResult> Results, IReadOnlyList<Problem> Problems) : RunHead(ProgramVersion, Problems)
{
    /// <summary>What has changed in each file since an earlier revision, by the name of the file; null where none was named.</summary>
    public IReadOnlyDictionary<string, ComparisonResult>? Earlier { get; init; }

    /// <inheritdoc/>
    public override bool IsCompared => Earlier is not null;

    /// <inheritdoc/>
    public override IReadOnlySet<string> SharedNames => SharedAmong(Results.Select(result => result.File));

    /// <summary>All reports in order.</summary>
    public IEnumerable<Report> Reports => Results.SelectMany(result => result.Reports);

    /// <summary>All problems: those of the run, then those of its files.</summary>
    public IEnumerable<Problem> AllProblems => Problems.Concat(Results.SelectMany(result => result.Problems));

    /// <summary>A run that was read back from its JSON report.</summary>
    public static ReportedRun Of(StoredRun run) => new(run.ProgramVersion, run.Files, run.Problems);

    /// <summary>A run with nothing but reports.</summary>
    public static ReportedRun Of(params IReadOnlyList<Report> reports) => new(
        reports.Count > 0 ? reports[0].ProgramVersion : string.Empty,
        [.. reports.GroupBy(report => report.File, StringComparer.Ordinal).Select(file => new FileResult(file.Key, [.. file], []))],
        []);
}
