using System.Collections.Frozen;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading.Plans;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Parts;

/// <summary>Which conditions of its site hold for a plan: those that it states, and those that its other data decide. A condition that is not known is not there.</summary>
internal sealed class PlanConditions
{
    private readonly Lazy<LoadedSchema> schema = new(EmbeddedSchemas.Plan);
    private readonly Lazy<QuantityCatalogue> catalogue = new(LaygateQuantities.Catalogue);

    /// <summary>The conditions by their keys; none where the plan has not the shape of one, which is told when it is read.</summary>
    public IReadOnlyDictionary<string, bool> Of(MapToken plan)
    {
        var document = new YamlDocument(OldWords.OfPlans.Renew(plan).Root, 1);
        if (PlanShape.Check(document, schema.Value).Count > 0 || PlanMapper.Map(document).Plan is not { } mapped)
        {
            return FrozenDictionary<string, bool>.Empty;
        }

        var context = new QuantityContext(mapped, catalogue.Value, LaygateAssumptions.Set(), seed: 1) { IsQuick = true };
        return context.Elements.Find("site") is not { } site ? FrozenDictionary<string, bool>.Empty
            : SiteConditions.Keys.Select(flag => (flag.Key, Answer: context.Get($"site.{flag.Key}", site).Value as FlagValue))
                .Where(one => one.Answer is not null).ToFrozenDictionary(one => one.Key, one => one.Answer!.Yes, StringComparer.Ordinal);
    }
}
