using System.Text;
using System.Text.Json;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading.Plans;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;

namespace Laygate.Checking.Keys;

/// <summary>
/// Which rules ask for which keys. No table says so: the quantities of every rule are asked of plans that state nothing, and they name
/// what they lack. One such plan has each element once; one has none, since an element may decide what else would be asked for.
/// </summary>
internal sealed class KeyUses
{
    private readonly IReadOnlyList<QuantityContext> contexts;
    private readonly Dictionary<(string Kind, string Key), SortedDictionary<string, RuleDefinition>> uses = [];

    public KeyUses(PlanTools tools, RuleBook book)
    {
        contexts = [.. new[] { true, false }.Select(withElements =>
            new QuantityContext(Bare(tools.Reader.Schema, withElements), tools.Catalogue, LaygateAssumptions.Set(), seed: 1) { IsQuick = true })];
        foreach (var rule in book.InForce.Where(rule => rule.Definition.AppliesTo != ElementKind.Value))
        {
            foreach (var input in Quantities(rule).SelectMany(Asked))
            {
                Note(input, rule.Definition);
            }
        }
    }

    /// <summary>The rules that ask for a key or for the group that it is in, by id.</summary>
    public IEnumerable<RuleDefinition> Of(SchemaKey key)
    {
        var found = new SortedDictionary<string, RuleDefinition>(StringComparer.Ordinal);
        for (var within = key.Within; within.Length > 0; within = within[..Math.Max(0, within.LastIndexOf('.'))])
        {
            foreach (var (id, rule) in uses.GetValueOrDefault((Kind(key.Address), within)) ?? [])
            {
                found[id] = rule;
            }
        }

        return found.Values;
    }

    private static IEnumerable<QuantityDefinition> Quantities(CheckedRule rule) =>
    [
        rule.Quantity, .. rule.When.Select(match => match.Quantity),
        .. rule.Bounds.SelectMany(bound => bound.Limit switch
        {
            CheckedTable table => table.Keys,
            CheckedQuantity other => [other.Quantity],
            _ => [],
        }),
    ];

    private IEnumerable<InputReference> Asked(QuantityDefinition quantity) => contexts
        .SelectMany(context => context.Elements.Of(quantity.Element).Select(element => context.Get(quantity.Name, element)))
        .SelectMany(answer => (answer.Absence?.Missing ?? []).Concat((answer.Value as PresenceValue)?.MissingAt ?? []).Append(answer.Input).OfType<InputReference>());

    private void Note(InputReference input, RuleDefinition rule)
    {
        var key = (Kind(input.Address), input.Key);
        if (!uses.TryGetValue(key, out var rules))
        {
            uses[key] = rules = new SortedDictionary<string, RuleDefinition>(StringComparer.Ordinal);
        }

        rules[rule.Id] = rule;
    }

    private static string Kind(string address) => address.Split(':')[0];

    private static Plan Bare(LoadedSchema schema, bool withElements)
    {
        var text = Group(schema.Root, withElements);
        return PlanMapper.Map(YamlReader.Read(Encoding.UTF8.GetBytes(text)).Documents[0]).Plan ?? throw new InvalidOperationException("The examples of the plan schema make no plan.");
    }

    // What must be there, by the examples of the schema, and where it is wished each element once.
    private static string Group(SchemaNode group, bool withElements) => $"{{{string.Join(", ", SchemaKeys.Properties(group)
        .Where(key => SchemaKeys.IsRequired(group, key.Key) || (withElements && HoldsElements(key.Value)))
        .Select(key => $"\"{key.Key}\": {Value(key.Value, withElements)}"))}}}";

    private static string Value(SchemaNode node, bool withElements) => SchemaKeys.Item(node) is { } item ? $"[{Value(item, withElements)}]"
        : node.Conjuncts.Any(part => part.Kinds == ValueKinds.Map) ? Group(node, withElements)
        : Needs.KindsOf(node) == ValueKinds.WholeNumber ? Needs.Examples(node)[0]
        : $"\"{JsonEncodedText.Encode(Needs.Examples(node)[0])}\"";

    private static bool HoldsElements(SchemaNode node) =>
        (SchemaKeys.Item(node) ?? node) is var target && (SchemaKeys.Address(target) is not null || SchemaKeys.Properties(target).Any(key => HoldsElements(key.Value)));
}
