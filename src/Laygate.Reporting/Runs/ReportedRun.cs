using System.Collections.Frozen;
using Laygate.Reporting.Language;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Runs;

/// <summary>What one run found; every format that is made for a host or a person takes it.</summary>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Results">Files in the given order.</param>
/// <param name="Problems">What stopped the run as a whole, such as a rule file that cannot be read.</param>
public sealed record ReportedRun(string ProgramVersion, IReadOnlyList<FileResult> Results, IReadOnlyList<Problem> Problems)
{
    /// <summary>Parts of a report that a format for machines lists besides what fails and what warns.</summary>
    public IReadOnlyCollection<FindingGroup> Include { get; init; } = [];

    /// <summary>Files in which a warning counts as failed at the gate.</summary>
    public IReadOnlySet<string> WarningsFail { get; init; } = FrozenSet<string>.Empty;

    /// <summary>Files in which what is not assessed counts as failed at the gate.</summary>
    public IReadOnlySet<string> NotAssessedFail { get; init; } = FrozenSet<string>.Empty;

    /// <summary>Absolute address of a page about the program; null where there is none.</summary>
    public string? InformationUri { get; init; }

    /// <summary>Absolute address below which the page of each rule stands as <c>ID.md</c>; null where there is none.</summary>
    public string? RulePages { get; init; }

    /// <summary>The rules in force, each once; none where no form lists them.</summary>
    public IReadOnlyList<RuleInForce> RulesInForce { get; init; } = [];

    /// <summary>What has changed in each file since an earlier revision, by the name of the file; null where none was named.</summary>
    public IReadOnlyDictionary<string, ComparisonResult>? Earlier { get; init; }

    /// <summary>A sentence that the page says above everything else, for example why it has no plots; null where there is nothing to say.</summary>
    public string? Notice { get; init; }

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
