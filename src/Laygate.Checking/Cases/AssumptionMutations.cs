using System.Globalization;
using Laygate.Engineering.Assumptions;
using Laygate.Rules.Definitions;

namespace Laygate.Checking.Cases;

/// <summary>Changes each figure of the assumptions of a specification by one unit of its last digit.</summary>
internal static class AssumptionMutations
{
    /// <summary>Changed copies of a specification.</summary>
    public static IEnumerable<(Survivor Survivor, Specification Changed)> Of(Specification specification)
    {
        for (var index = 0; index < specification.Assume.Count; index++)
        {
            var at = index;
            var assumption = specification.Assume[at];
            foreach (var (part, from, to, changed) in Of(assumption))
            {
                yield return (
                    new Survivor(assumption.Id, specification.Name, $"assume/{part}", $"{from} {assumption.Unit}".TrimEnd(), $"{to} {assumption.Unit}".TrimEnd()),
                    specification with { Assume = [.. specification.Assume.Select((one, place) => place == at ? changed : one)] });
            }
        }
    }

    private static IEnumerable<(string Part, string From, string To, Assumption Changed)> Of(Assumption assumption) =>
    [
        .. Steps(assumption.Number).Select(step => ("value", step.From, step.To, assumption with { Number = step.Value })),
        .. Steps(assumption.Low).Select(step => ("low", step.From, step.To, assumption with { Low = step.Value })),
        .. Steps(assumption.High).Select(step => ("high", step.From, step.To, assumption with { High = step.Value })),
    ];

    // The shortest text of a number has the digits that were written, but for zeros at the end.
    private static IEnumerable<(string From, string To, double Value)> Steps(double number)
    {
        var exact = (decimal)number;
        var text = exact.ToString(CultureInfo.InvariantCulture);
        var point = text.IndexOf('.', StringComparison.Ordinal);
        var unit = 1m;
        for (var place = 0; point >= 0 && place < text.Length - point - 1; place++)
        {
            unit /= 10;
        }

        foreach (var changed in new[] { exact + unit, exact - unit })
        {
            yield return (text, changed.ToString(CultureInfo.InvariantCulture), (double)changed);
        }
    }
}
