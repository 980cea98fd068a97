using Laygate.Rules.Results;
using Laygate.Validation.Schema;

namespace Laygate.Cli.Arguments;

/// <summary>Sees to it that <c>--explain</c> names a finding that there is.</summary>
internal static class ExplainedFinding
{
    /// <summary>Looks for the finding.</summary>
    /// <exception cref="ArgumentProblem">Plans were read, and none has it.</exception>
    public static void RequireExplained(this CheckArguments arguments, IReadOnlyList<FileResult> results)
    {
        var findings = results.SelectMany(result => result.Reports).SelectMany(report => report.Findings).ToList();
        if (arguments.Explain is not { } choice || findings.Count == 0 || findings.Exists(choice.Holds))
        {
            return;
        }

        var places = findings.Where(choice.IsRuleOf).Select(finding => finding.Address).Distinct(StringComparer.Ordinal).ToList();
        throw new ArgumentProblem(places.Count > 0
            ? $"{choice.Rule} has no finding at `{choice.Address}`. It was judged at {string.Join(", ", places)}."
            : $"No finding of a rule `{choice.Rule}` in this plan.{(NearestNames.Of(choice.Rule, findings.Select(finding => finding.Rule).Distinct(StringComparer.Ordinal)) is [var meant, ..] ? $" Did you mean {meant}?" : string.Empty)} `laygate rules` lists the rules.");
    }
}
