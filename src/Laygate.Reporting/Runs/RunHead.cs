using System.Collections.Frozen;
using Laygate.Reporting.Language;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Runs;

/// <summary>What is known of a run before its first plan is checked.</summary>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Problems">What stopped the run as a whole, such as a rule file that cannot be read.</param>
public record RunHead(string ProgramVersion, IReadOnlyList<Problem> Problems)
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

    /// <summary>A sentence that the page says above everything else, for example why it has no plots; null where there is nothing to say.</summary>
    public string? Notice { get; init; }

    /// <summary>Whether plans are compared with an earlier revision.</summary>
    public virtual bool IsCompared { get; init; }

    /// <summary>Names, with <c>/</c> between their parts, that more than one file of the run has: what must be unique in a form is then remembered beyond the file.</summary>
    public virtual IReadOnlySet<string> SharedNames { get; init; } = FrozenSet<string>.Empty;

    /// <summary>The names that occur more than once.</summary>
    public static IReadOnlySet<string> SharedAmong(IEnumerable<string> files) =>
        files.Select(Plain).GroupBy(name => name, StringComparer.Ordinal).Where(same => same.Skip(1).Any()).Select(same => same.Key).ToFrozenSet(StringComparer.Ordinal);

    /// <summary>Whether another file of the run has the same name.</summary>
    internal bool IsShared(string file) => SharedNames.Count > 0 && SharedNames.Contains(Plain(file));

    private static string Plain(string file) => file.Replace('\\', '/');
}
