using System.Globalization;
using System.Text;
using Laygate.Model.Measures;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Plans;

/// <summary>A number that the text of a plan states.</summary>
/// <param name="Path">Where: keys, and places in lists.</param>
/// <param name="Number">The number.</param>
/// <param name="Unit">Unit as written; empty for a count.</param>
/// <param name="At">Where it stands in the file.</param>
internal sealed record StatedNumber(string Path, decimal Number, string Unit, TextSpan At)
{
    private const decimal Longest = 10_000_000_000m; // A number has at most ten digits before the point.
    private static readonly decimal[] Factors = [1000m, 0.001m, 1_000_000m, -1m, 0m];

    /// <summary>All numbers of a plan but the version of its format.</summary>
    public static IEnumerable<StatedNumber> Of(string text) =>
        Inside(YamlReader.Read(Encoding.UTF8.GetBytes(text)).Documents[0].Root, string.Empty).Where(number => number.Path != "format");

    /// <summary>The same with absurd figures, as a plan would write them; none that the form of numbers does not let in.</summary>
    public IEnumerable<string> Absurd() => Factors
        .Select(factor => Unit.Length == 0 ? decimal.Truncate(Number * factor) : decimal.Round(Number * factor, 6))
        .Where(number => number != Number && Math.Abs(number) < Longest).Distinct()
        .Select(number => $"{number.ToString("0.######", CultureInfo.InvariantCulture)} {Unit}".TrimEnd());

    /// <summary>The plan with another figure here.</summary>
    public string In(string text, string written)
    {
        var lines = text.Split('\n');
        var line = lines[At.Line - 1];
        lines[At.Line - 1] = $"{line[..(At.Column - 1)]}{written}{line[(At.EndColumn - 1)..]}";
        return string.Join('\n', lines);
    }

    /// <summary>Whether a finding points here.</summary>
    public bool IsAt(Position position) => (position.Line, position.Column) == (At.Line, At.Column);

    private static IEnumerable<StatedNumber> Inside(YamlToken token, string path) => token switch
    {
        MapToken map => map.Entries.SelectMany(entry => Inside(entry.Value, path.Length == 0 ? entry.Key.Text : $"{path}/{entry.Key.Text}")),
        ListToken list => list.Items.SelectMany((item, index) => Inside(item, string.Create(CultureInfo.InvariantCulture, $"{path}/{index}"))),
        ScalarToken { Style: ScalarStyle.Plain } scalar => Read(scalar.Text, path, scalar.Span) is { } number ? [number] : [],
        _ => [],
    };

    /// <summary>The number that a plain text states; null when it is none.</summary>
    public static StatedNumber? Read(string text, string path, TextSpan at)
    {
        var space = text.IndexOf(' ', StringComparison.Ordinal);
        var (digits, unit) = space < 0 ? (text, string.Empty) : (text[..space], text[(space + 1)..]);
        return decimal.TryParse(digits, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && (unit.Length == 0 || UnitTable.Find(unit) is not null)
            ? new StatedNumber(path, number, unit, at)
            : null;
    }
}
