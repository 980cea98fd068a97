using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Rules.Evaluation;

/// <summary>Asks the context for answers and remembers the assumptions they rest on, each once.</summary>
/// <param name="context">The context.</param>
/// <param name="remembers">Whether anybody will ask for the assumptions.</param>
internal sealed class AnswerLog(QuantityContext context, bool remembers = true)
{
    private readonly HashSet<(string Id, string Address, InputReference? StandsFor)> seen = [];
    private readonly List<AssumptionUse> assumptions = [];

    public QuantityContext Context => context;

    public Plan Plan => context.Plan;

    public IReadOnlyList<AssumptionUse> Assumptions => assumptions;

    public Answer Get(string quantity, Element element)
    {
        var answer = context.Get(quantity, element);
        if (!remembers)
        {
            return answer;
        }

        foreach (var use in answer.Working.Assumptions)
        {
            if (seen.Add((use.Id, use.Address, use.StandsFor)))
            {
                assumptions.Add(use);
            }
        }

        return answer;
    }
}
