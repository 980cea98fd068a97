using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Tests and hold points.</summary>
internal static class QualityQuantities
{
    private static readonly Define Test = new(ElementKind.Test);
    private static readonly Define HoldPoint = new(ElementKind.HoldPoint);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Test.Presence("complete", "Where, when and by whom it is tested.", (_, e) => Complete((Test)e.Subject!)),
        HoldPoint.Presence("complete", "Criterion, evidence, owner and who releases.", (_, e) => Complete((HoldPoint)e.Subject!)),
    ];

    /// <summary>How complete a test is.</summary>
    internal static Answer Complete(Test test) => Answers.Fields(
        new InputReference($"test:{test.Id}", string.Empty),
        ("where", Answers.Given(test.Where)),
        ("when", Answers.Given(test.When)),
        ("by", Answers.Given(test.By)));

    /// <summary>How complete a hold point is.</summary>
    internal static Answer Complete(HoldPoint point) => Answers.Fields(
        new InputReference($"hold-point:{point.Id}", string.Empty),
        ("criterion", Answers.Given(point.Criterion)),
        ("evidence", Answers.Given(point.Evidence)),
        ("owner", Answers.Given(point.Owner)),
        ("released_by", Answers.Given(point.ReleasedBy)));
}
