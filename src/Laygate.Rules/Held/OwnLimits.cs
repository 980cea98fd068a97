using Laygate.Engineering.Quantities;
using Laygate.Engineering.Records.Happened;
using Laygate.Model.Plans;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Held;

/// <summary>The limit that a plan sets itself: what happens keeps to the value that it states.</summary>
internal static class OwnLimits
{
    /// <summary>Name under which such limits stand in place of the id of a rule.</summary>
    public const string Name = "own-limit";

    /// <summary>The limit as a rule; null where the plan states no such value for the element.</summary>
    public static CheckedRule? Of(HappenedQuantity quantity, Element element, QuantityContext context)
    {
        if (quantity.Own == OwnLimit.None || context.Catalogue.Find(quantity.Quantity) is not { } known || known.Element != element.Kind
            || context.Get(quantity.Quantity, element) is not { Origin: Origin.Stated, Value: NumberValue stated } answer)
        {
            return null;
        }

        var unit = answer.Unit ?? context.UnitOf(known);
        var end = new LimitEnd(stated.Si, new LimitValue(unit?.FromSi(stated.Si) ?? stated.Si, unit?.Spelling ?? string.Empty, string.Empty));
        var isUpper = quantity.Own == OwnLimit.AtMost;
        var range = new CheckedRange(isUpper ? null : end, isUpper ? end : null);
        var bound = new Bound
        {
            Strength = Strength.Required,
            Basis = Basis.Requirement,
            Limit = new ConstantLimit(range.Low?.Stated, range.High?.Stated),
            Source = new SourceReference { Source = "laygate-derivation", Clause = "the plan keeps its own limits", Evidence = Evidence.Derived },
            Place = answer.Place,
        };
        return new CheckedRule(Definition(quantity, isUpper, element.Kind, bound), known, [], [new CheckedBound(bound, new CheckedConstant(range), Layer.GeneralPractice, null, isUpper)], []);
    }

    private static RuleDefinition Definition(HappenedQuantity quantity, bool isUpper, ElementKind kind, Bound bound) => new()
    {
        Id = Name,
        Family = "plan",
        Name = Name,
        Title = "Beyond what the plan itself states",
        Why = "The shift did not keep to its plan.",
        Remedy = "Change the work, or the plan.",
        Local = string.Empty,
        AppliesTo = kind,
        Check = isUpper ? CheckKind.AtMost : CheckKind.AtLeast,
        Quantity = quantity.Quantity,
        Bounds = [bound],
        FromStage = Stage.Submission,
        Life = new Life(LifeState.InUse, "0.1.0", null),
    };
}
