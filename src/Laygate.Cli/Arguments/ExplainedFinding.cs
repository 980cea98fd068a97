using Laygate.Reading.Schema;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Results;

namespace Laygate.Cli.Arguments;

/// <summary>Sees to it that <c>--explain</c> names a finding that one of the plans has.</summary>
/// <param name="choice">What was asked for.</param>
internal sealed class ExplainedFinding(FindingChoice choice)
{
    private readonly SortedSet<string> rules = new(StringComparer.Ordinal);
    private readonly List<string> places = [];
    private bool isFound;

    /// <summary>Looks into the next file.</summary>
    public void Look(FileResult result)
    {
        foreach (var finding in result.Reports.SelectMany(report => report.Findings))
        {
            rules.Add(finding.Rule);
            isFound |= choice.Holds(finding);
            if (choice.IsRuleOf(finding) && !places.Contains(finding.Address, StringComparer.Ordinal))
            {
                places.Add(finding.Address);
            }
        }
    }

    /// <summary>Says what there is in its place.</summary>
    /// <exception cref="ArgumentProblem">Plans were read, and none has it.</exception>
    public void Require()
    {
        if (isFound || rules.Count == 0)
        {
            return;
        }

        var near = NearestNames.Of(choice.Rule, rules) is [var meant, ..] ? $" Did you mean {meant}?" : string.Empty;
        throw new ArgumentProblem(places.Count > 0
            ? $"{choice.Rule} has no finding at `{choice.Address}`. It was judged at {string.Join(", ", places)}."
            : $"No plan has a finding of a rule `{choice.Rule}`.{near} `laygate rules` lists the rules.");
    }
}
