using System.Globalization;
using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;

namespace Laygate.ConformanceTests.Specifications;

/// <summary>One end of one limit as its publication states it: the tables of this folder are typed by hand, never from the rule files.</summary>
/// <param name="File">Table and line, for messages.</param>
/// <param name="Jurisdiction">Name of the specification, or <c>general</c>.</param>
/// <param name="Quantity">The quantity that is limited.</param>
/// <param name="Base">Base plan on which it is asked.</param>
/// <param name="Place">Where a temperature is measured; null where the publication does not say.</param>
/// <param name="Conditions">Quantities that must have these values for the limit to speak.</param>
/// <param name="IsLow">Whether it is the lower end.</param>
/// <param name="Limit">The number as the publication writes it.</param>
/// <param name="Unit">Its unit; empty for a ratio.</param>
/// <param name="Exclusive">Whether the end itself is outside.</param>
/// <param name="Strength">Whether the source requires or advises.</param>
/// <param name="Evidence">How the figure is known: what the mark of the row becomes.</param>
/// <param name="Row">The publication and what it limits.</param>
internal sealed record TableCell(
    string File,
    string Jurisdiction,
    string Quantity,
    string Base,
    string? Place,
    IReadOnlyList<(string Quantity, string Value)> Conditions,
    bool IsLow,
    string Limit,
    string Unit,
    bool Exclusive,
    Strength Strength,
    Evidence Evidence,
    string Row)
{
    private int Decimals => Limit.Contains('.', StringComparison.Ordinal) ? Limit.Length - Limit.IndexOf('.', StringComparison.Ordinal) - 1 : 0;

    public decimal Number => decimal.Parse(Limit, CultureInfo.InvariantCulture);

    /// <summary>A value that the limit just allows.</summary>
    public string Inside => Write(Exclusive ? Number + (IsLow ? Step : -Step) : Number);

    /// <summary>A value that the limit just refuses: a tenth of its last digit beyond it.</summary>
    public string Outside => Write(Exclusive ? Number : Number + (IsLow ? -Step : Step));

    private decimal Step => (decimal)Math.Pow(10, -Decimals - 1);

    public override string ToString() =>
        $"{File}: {Jurisdiction}, {Quantity}, {string.Join("; ", Conditions.Select(one => $"{one.Quantity}={one.Value}"))}, {(IsLow ? "min" : "max")} {Limit} {Unit} ({Row})";

    private string Write(decimal number) => $"{number.ToString(CultureInfo.InvariantCulture)} {Unit}".TrimEnd();
}

/// <summary>Reads the tables.</summary>
internal static class TableCells
{
    private const string Header = "jurisdiction,quantity,conditions,min,max,unit,ends,strength,mark,carrier,row";

    // What stands only on such a carrier is recalled, whatever it calls itself (rules/README.md, evidence).
    private static readonly string[] WeakCarriers = ["forum", "exam", "card", "checklist", "trade page", "news", "slides"];

    public static IReadOnlyList<TableCell> All { get; } =
    [
        .. Directory.EnumerateFiles(Path.Combine(Repository.Root, "tests/Laygate.ConformanceTests/Specifications"), "*.csv")
            .Order(StringComparer.Ordinal)
            .SelectMany(Read),
    ];

    private static IEnumerable<TableCell> Read(string file)
    {
        var lines = File.ReadAllLines(file);
        Assert.Equal(Header, lines[0]);
        return lines.Select((line, index) => (line, index)).Skip(1).Where(at => at.line.Length > 0)
            .SelectMany(at => Cells(at.line.Split(','), $"{Path.GetFileName(file)}:{at.index + 1}")).ToList();
    }

    private static IEnumerable<TableCell> Cells(string[] fields, string at)
    {
        Assert.True(fields.Length == 11, $"{at} has {fields.Length} fields.");
        var conditions = fields[2].Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(one => one.Split('=', 2)).Select(pair => (Quantity: pair[0], Value: pair[1])).ToList();
        foreach (var (limit, isLow) in new[] { (fields[3], true), (fields[4], false) }.Where(end => end.Item1.Length > 0))
        {
            yield return new TableCell(
                at,
                fields[0],
                fields[1],
                conditions.FirstOrDefault(one => one.Quantity is "base").Value ?? "single",
                conditions.FirstOrDefault(one => one.Quantity is "place").Value,
                [.. conditions.Where(one => one.Quantity is not ("base" or "place"))],
                isLow,
                limit,
                fields[5],
                fields[6] is "exclusive",
                fields[7] is "advised" ? Strength.Advised : Strength.Required,
                EvidenceOf(fields[8], fields[9], at),
                fields[10]);
        }
    }

    private static Evidence EvidenceOf(string mark, string carrier, string at)
    {
        Assert.True(carrier.Length == 0 || WeakCarriers.Contains(carrier, StringComparer.Ordinal), $"{at}: the carrier {carrier} is not listed.");
        return mark switch
        {
            "derived" => Evidence.Derived,
            _ when mark.StartsWith("MEM", StringComparison.Ordinal) || carrier.Length > 0 => Evidence.Recalled,
            "SEEN-2nd" => Evidence.SecondHand,
            "SEEN" => Evidence.Read,
            _ => throw new InvalidDataException($"{at}: the table has no mark {mark}."),
        };
    }
}
