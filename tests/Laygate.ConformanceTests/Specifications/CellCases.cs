using System.Globalization;
using System.Text;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Specifications;

/// <summary>The rule folder with the cells of the tables added to the cases of their rules, so that a changed figure is noticed by a case or by a cell.</summary>
internal sealed class CellCases(IRuleFolder rules) : IRuleFolder
{
    private readonly Lazy<Dictionary<string, string>> added = new(Write);

    public string Name => rules.Name;

    public IReadOnlyList<string> Files => rules.Files;

    public byte[] Read(string file) => added.Value.TryGetValue(file, out var cases)
        ? [.. rules.Read(file), .. Encoding.UTF8.GetBytes(cases)]
        : rules.Read(file);

    private static Dictionary<string, string> Write()
    {
        var texts = new Dictionary<string, StringBuilder>(StringComparer.Ordinal);
        foreach (var cell in TableCells.All)
        {
            foreach (var value in new[] { cell.Inside, cell.Outside })
            {
                foreach (var finding in CellCheck.Findings(cell, value))
                {
                    var file = $"{finding.RuleName}/cases.yaml";
                    texts.TryAdd(file, new StringBuilder());
                    Append(texts[file], cell, value, finding);
                }
            }
        }

        return texts.ToDictionary(pair => pair.Key, pair => pair.Value.ToString(), StringComparer.Ordinal);
    }

    // What the finding must be is held against the table elsewhere; here it pins the rule file.
    private static void Append(StringBuilder text, TableCell cell, string value, Finding finding)
    {
        text.Append(CultureInfo.InvariantCulture, $"  - case: \"{cell.File} {(cell.IsLow ? "min" : "max")} {value}\"\n    base: {cell.Base}\n");
        if (CellCheck.With(cell).ToList() is { Count: > 0 } with)
        {
            text.Append(CultureInfo.InvariantCulture, $"    with: [{string.Join(", ", with)}]\n");
        }

        text.Append("    give:\n");
        foreach (var group in cell.Conditions.Append((cell.Quantity, value)).GroupBy(one => CellCheck.AddressOf(one.Item1), StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $"      \"{group.Key}\":\n");
            foreach (var (quantity, stated) in group)
            {
                var place = string.Equals(quantity, cell.Quantity, StringComparison.Ordinal) && cell.Place is { } at ? $", place: {at}" : string.Empty;
                text.Append(CultureInfo.InvariantCulture, $"        {quantity}: {(place.Length > 0 ? $"{{ expected: \"{stated}\"{place} }}" : $"\"{stated}\"")}\n");
            }
        }

        text.Append(CultureInfo.InvariantCulture, $"    finding: {{ address: \"{finding.Address}\", outcome: {Words.Of(finding.Outcome)}, status: {Words.Of(finding.Status)}");
        if (finding.Limit is { } limit)
        {
            text.Append(CultureInfo.InvariantCulture, $", value: \"{value}\", limit: \"{Limit(limit)}\", strength: {Words.Of(limit.Strength)}");
        }

        text.Append(" }\n");
    }

    // Six decimals, because a case is compared to the digits that are written.
    private static string Limit(ShownLimit limit) => string.Join(" to ", new[] { limit.Low, limit.High }.OfType<ShownValue>()
        .Select(end => $"{end.Number!.Value.ToString("F6", CultureInfo.InvariantCulture)} {end.Unit}".TrimEnd()));
}
