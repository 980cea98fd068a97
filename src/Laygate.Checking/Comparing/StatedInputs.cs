using Laygate.Engineering.Quantities;
using Laygate.Rules.Binding;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Checking.Comparing;

/// <summary>Which values of a plan's text a finding rests on, directly or through quantities computed from them: value, limit and the conditions of the rule.</summary>
internal sealed class StatedInputs(QuantityContext context, RuleBook book)
{
    private readonly Dictionary<string, CheckedRule> rules = book.InForce.ToDictionary(rule => rule.Definition.Id, StringComparer.Ordinal);

    /// <summary>The places in the plan, by address and key.</summary>
    public IReadOnlySet<InputReference> Of(Finding finding)
    {
        var found = new HashSet<InputReference>(finding.Missing);
        if (finding.Input is { } input)
        {
            found.Add(input);
        }

        var seen = new HashSet<(string, string)>();
        foreach (var working in finding.Working?.Inputs ?? [])
        {
            Follow(working.Quantity, working.Address, found, seen);
        }

        foreach (var quantity in rules.TryGetValue(finding.Rule, out var rule) ? Asked(rule) : [])
        {
            Follow(quantity.Name, finding.Address, found, seen);
        }

        return found;
    }

    private static IEnumerable<QuantityDefinition> Asked(CheckedRule rule) =>
    [
        rule.Quantity,
        .. rule.When.Select(condition => condition.Quantity),
        .. rule.Bounds.SelectMany(bound => bound.Limit switch
        {
            CheckedTable table => table.Keys,
            CheckedQuantity limit => [limit.Quantity],
            _ => (IEnumerable<QuantityDefinition>)[],
        }),
    ];

    private void Follow(string quantity, string address, HashSet<InputReference> found, HashSet<(string, string)> seen)
    {
        if (!seen.Add((quantity, address)))
        {
            return;
        }

        if (context.Catalogue.Find(quantity) is null)
        {
            // A computation that reads the plan itself names the key; what is no key, such as an assumption, stands nowhere.
            found.Add(new InputReference(address, quantity));
            return;
        }

        if (context.Elements.Find(address) is not { } element)
        {
            return;
        }

        var answer = context.Get(quantity, element);
        if (answer.Input is { } input)
        {
            found.Add(input);
        }

        foreach (var inner in answer.Working.Inputs)
        {
            Follow(inner.Quantity, inner.Address, found, seen);
        }
    }
}
