using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>
/// Orders findings by what they mean for the job: life and the contract first, then what fails, then requirements that warn, then what a person must
/// look at, then advice. So advice, however grave its subject, never stands above a requirement.
/// </summary>
public static class FindingOrder
{
    /// <summary>The findings in order; what is alike stays in the report's order.</summary>
    public static IReadOnlyList<Finding> Of(IEnumerable<Finding> findings) =>
        [.. findings.OrderBy(Tier).ThenBy(Grave).ThenBy(finding => finding.Outcome == Outcome.Met).ThenBy(Consequence).ThenBy(Known)];

    /// <summary>Whether a finding is never left out: it fails and guards lives, or the contract sets its limit.</summary>
    public static bool IsMust(Finding finding) =>
        finding.Status == Status.Fail && (finding.Severity == Severity.A || IsOfContract(finding.Limit) || IsOfContract(finding.OtherLimit));

    /// <summary>0 life and contract, 1 failures, 2 requirements that warn, 3 not decided, 4 advice.</summary>
    internal static int Tier(Finding finding) => finding switch
    {
        _ when IsMust(finding) => 0,
        { Status: Status.Fail } => 1,
        { Outcome: Outcome.NotAssessed or Outcome.NeedsPerson } => 3,
        { Limit.Strength: Strength.Required } => 2,
        _ => 4,
    };

    private static bool IsOfContract(ShownLimit? limit) => limit?.Layer == Layer.ParticularSpecification;

    // Life before the contract, the contract before the rest; severities among themselves.
    private static int Grave(Finding finding) => finding switch
    {
        { Severity: Severity.A } => 0,
        _ when IsOfContract(finding.Limit) => 1,
        { Severity: Severity.B } => 2,
        { Severity: Severity.C } => 3,
        _ => 4,
    };

    // What can hurt somebody, what is torn out again, what stops the shift, what is shown afterwards. The order is our judgement.
    private static int Consequence(Finding finding) => finding.RuleName.Split('/')[0] switch
    {
        "safety" => 0,
        "friction-and-opening" => 1,
        "rolling" or "weather" or "mixes" or "layers" or "bond-and-joints" => 2,
        "supply" or "paving" => 3,
        "quality" => 4,
        _ => 5,
    };

    private static int Known(Finding finding) => finding.Limit?.Source.Evidence switch
    {
        Evidence.Confirmed => 0,
        Evidence.Read => 1,
        Evidence.SecondHand => 2,
        Evidence.Derived => 3,
        Evidence.CommonPractice => 4,
        Evidence.Judgement => 5,
        Evidence.Recalled => 6,
        _ => 7,
    };
}
