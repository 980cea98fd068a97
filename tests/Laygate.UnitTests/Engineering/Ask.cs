using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.UnitTests.Engineering;

/// <summary>Asks quantities of a plan.</summary>
internal static class Ask
{
    private static readonly QuantityCatalogue Catalogue = LaygateQuantities.Catalogue();
    private static readonly AssumptionSet Assumptions = LaygateAssumptions.Set();

    public static QuantityContext Context(Plan plan) => new(plan, Catalogue, Assumptions, 1);

    public static Answer Answer(Plan plan, string quantity, string address)
    {
        var context = Context(plan);
        return context.Get(quantity, context.Elements.Find(address)!);
    }

    /// <summary>The expected number in the given unit.</summary>
    public static double Number(Plan plan, string quantity, string address, string unit = "") =>
        In(Answer(plan, quantity, address), unit);

    public static double In(Answer answer, string unit)
    {
        Assert.True(answer.Value is NumberValue, answer.Absence is { } absence ? $"{absence.Reason} {absence.Note?.Id} {string.Join(' ', absence.Missing)} {string.Join(' ', absence.Note?.Arguments ?? [])}" : "not a number");
        var number = (NumberValue)answer.Value;
        return unit.Length == 0 ? number.Si : UnitTable.Find(unit)!.FromSi(number.Si);
    }

    public static string[] Missing(Answer answer)
    {
        Assert.Equal(AbsenceReason.MissingInput, answer.Absence?.Reason);
        return [.. answer.Absence!.Missing.Select(input => $"{input.Address}/{input.Key}")];
    }
}
