using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Checking.Sizing;

/// <summary>Looks for the months in which a plan can be laid: the plan is judged at the mean temperature of each, and compared with the warmest.</summary>
internal sealed class SizedMonths(PlanTools tools, RuleBook book, AssumptionSet assumptions, SizingDraft draft)
{
    private const int InAYear = 12;

    /// <summary>From the warmest month on, the last one in which no limit is missed that the warmest month meets, and what is missed in the next.</summary>
    public LatestMonth? Of(IReadOnlyList<SizingWeather> months)
    {
        var warmest = Enumerable.Range(0, InAYear).MaxBy(month => months[month].Degrees);
        if (Missed(months[warmest]) is not { } always)
        {
            return null;
        }

        for (var step = 1; step < InAYear; step++)
        {
            var month = (warmest + step) % InAYear;
            if (Missed(months[month])?.FirstOrDefault(finding => !always.Exists(other => string.Equals(other.Rule, finding.Rule, StringComparison.Ordinal) && string.Equals(other.Address, finding.Address, StringComparison.Ordinal))) is { } broken)
            {
                return new LatestMonth(((warmest + step - 1) % InAYear) + 1, broken.Rule, broken.Title, broken.Address);
            }
        }

        return new LatestMonth(((warmest + InAYear - 1) % InAYear) + 1, null, null, null);
    }

    private List<Finding>? Missed(SizingWeather weather)
    {
        if (draft.Plan(assumptions, weather: weather, isMonth: true) is not { } plan)
        {
            return null;
        }

        var context = new QuantityContext(plan, tools.Catalogue, assumptions, seed: 1) { IsQuick = true };
        var report = Evaluator.Evaluate(book, context, new EvaluationSettings { File = string.Empty, CheckedOn = default, Stage = Stage.Submission });
        return [.. report.Findings.Where(finding => finding is { Outcome: Outcome.Missed, Missing.Count: 0 })];
    }
}
