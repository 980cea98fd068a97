using System.Globalization;
using Laygate.Rules.Definitions;

namespace Laygate.Checking.Cases;

/// <summary>Changes each figure of a definition by one unit of its last digit.</summary>
internal static class LimitMutations
{
    /// <summary>Changed copies of a rule.</summary>
    public static IEnumerable<(string Where, string From, string To, RuleDefinition Changed)> Of(RuleDefinition rule)
    {
        foreach (var (where, from, to, bounds) in Of(rule.Bounds))
        {
            yield return (where, from, to, rule with { Bounds = bounds });
        }

        for (var index = 0; index < rule.When.Count; index++)
        {
            var at = index;
            var condition = rule.When[at];
            foreach (var (part, value) in new[] { ("at_least", condition.AtLeast), ("below", condition.Below) })
            {
                foreach (var changed in Steps(value))
                {
                    var now = string.Equals(part, "below", StringComparison.Ordinal) ? condition with { Below = changed } : condition with { AtLeast = changed };
                    yield return ($"when/{at}/{part}", value!.Text, changed.Text, rule with { When = With(rule.When, at, now) });
                }
            }
        }
    }

    /// <summary>Changed copies of bounds.</summary>
    public static IEnumerable<(string Where, string From, string To, IReadOnlyList<Bound> Changed)> Of(IReadOnlyList<Bound> bounds)
    {
        for (var index = 0; index < bounds.Count; index++)
        {
            foreach (var (where, from, to, limit) in Of(bounds[index].Limit))
            {
                yield return (string.Create(CultureInfo.InvariantCulture, $"bounds/{index}/{where}"), from, to, With(bounds, index, bounds[index] with { Limit = limit }));
            }
        }
    }

    private static IEnumerable<(string Where, string From, string To, Limit Changed)> Of(Limit limit) => limit switch
    {
        ConstantLimit constant =>
        [
            .. Steps(constant.Low).Select(value => ("low", constant.Low!.Text, value.Text, (Limit)(constant with { Low = value }))),
            .. Steps(constant.High).Select(value => ("high", constant.High!.Text, value.Text, (Limit)(constant with { High = value }))),
        ],
        QuantityLimit quantity => Steps(new LimitValue(quantity.Factor, string.Empty, quantity.FactorText))
            .Select(value => ("times", quantity.FactorText, value.Text, (Limit)(quantity with { Factor = value.Number, FactorText = value.Text }))),
        TableLimit table => Cells(table).Concat(Edges(table)),
        _ => [],
    };

    private static IEnumerable<(string Where, string From, string To, Limit Changed)> Cells(TableLimit table)
    {
        for (var index = 0; index < table.Rows.Count; index++)
        {
            var row = table.Rows[index];
            var where = string.Create(CultureInfo.InvariantCulture, $"table/rows/{index}");
            foreach (var value in Steps(row.Low))
            {
                yield return ($"{where}/low", row.Low!.Text, value.Text, table with { Rows = With(table.Rows, index, row with { Low = value }) });
            }

            foreach (var value in Steps(row.High))
            {
                yield return ($"{where}/high", row.High!.Text, value.Text, table with { Rows = With(table.Rows, index, row with { High = value }) });
            }
        }
    }

    // An edge between two bands stands in both rows; it moves in all of them at once, or the table would only get a gap.
    private static IEnumerable<(string Where, string From, string To, Limit Changed)> Edges(TableLimit table)
    {
        for (var key = 0; key < table.Keys.Count; key++)
        {
            var column = key;
            var edges = table.Rows.SelectMany(row => new[] { row.Matches[column].AtLeast, row.Matches[column].Below }).OfType<LimitValue>().Distinct().ToList();
            foreach (var edge in edges)
            {
                foreach (var value in Steps(edge))
                {
                    yield return ($"table/{table.Keys[column]}", edge.Text, value.Text, table with { Rows = [.. table.Rows.Select(row => row with { Matches = With(row.Matches, column, Move(row.Matches[column], edge, value)) })] });
                }
            }
        }
    }

    private static RowMatch Move(RowMatch match, LimitValue edge, LimitValue now) =>
        match with { AtLeast = match.AtLeast == edge ? now : match.AtLeast, Below = match.Below == edge ? now : match.Below };

    private static IEnumerable<LimitValue> Steps(LimitValue? value)
    {
        if (value is null)
        {
            yield break;
        }

        var digits = value.Text.Split(' ')[0];
        var point = digits.IndexOf('.', StringComparison.Ordinal);
        var decimals = point < 0 ? 0 : digits.Length - point - 1;
        foreach (var step in new[] { 1m, -1m })
        {
            var unit = 1m;
            for (var place = 0; place < decimals; place++)
            {
                unit /= 10;
            }

            var number = decimal.Parse(digits, CultureInfo.InvariantCulture) + (step * unit);
            var text = number.ToString(CultureInfo.InvariantCulture);
            yield return new LimitValue((double)number, value.Unit, value.Unit.Length == 0 ? text : $"{text} {value.Unit}");
        }
    }

    private static List<T> With<T>(IReadOnlyList<T> list, int index, T now) => [.. list.Select((item, at) => at == index ? now : item)];
}
