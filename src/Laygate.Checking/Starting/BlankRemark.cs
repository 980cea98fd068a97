using System.Globalization;
using Laygate.Model.Measures;
using Laygate.Reading.Measures;
using Laygate.Reading.Schema;

namespace Laygate.Checking.Starting;

/// <summary>What a blank wants, from what the schema says of its key: the words to choose from, or the form with an example in the plan's units, and what it means.</summary>
internal static class BlankRemark
{
    private const int MostWords = 12;

    /// <summary>The remark beside a blank.</summary>
    /// <param name="node">What stands behind its key.</param>
    /// <param name="path">The key from the top of the plan.</param>
    /// <param name="units">Units of the plan.</param>
    public static string Of(SchemaNode node, string path, UnitSystem units)
    {
        var meaning = Needs.FirstSentence(node);
        var words = Needs.Words(node);
        if (words.Count > MostWords)
        {
            return string.Create(CultureInfo.InvariantCulture, $"{meaning}. One of {words.Count} words, which laygate explain {path} lists. Such as {Shown(node, words, units)}");
        }

        if (words.Count > 0)
        {
            return words is ["yes", "no"] ? $"yes or no: {Lowered(meaning)}" : $"{string.Join(", ", words)}: {Lowered(meaning)}";
        }

        return Needs.Examples(node) is [var example, ..] ? $"{meaning}. Such as {(example.StartsWith('+') ? $"\"{example}\"" : Example(example, units))}" : meaning;
    }

    // Sieves are words with a unit: one of the plan's units where the example has others.
    private static string Shown(SchemaNode node, IReadOnlyList<string> words, UnitSystem units)
    {
        var example = Needs.Examples(node) is [var first, ..] && words.Contains(first, StringComparer.Ordinal) ? first : words[0];
        var isOther = units == UnitSystem.UnitedStates && MeasureText.Split(example) is (_, "mm");
        return isOther ? words.LastOrDefault(word => word.EndsWith("/2 in", StringComparison.Ordinal)) ?? example : example;
    }

    /// <summary>What a word of a closed list means; null where nothing says so.</summary>
    public static string? OfWord(SchemaNode node, string word)
    {
        var list = node.Conjuncts.FirstOrDefault(part => part.Words.Count > 0);
        return list?.Words.IndexOf(word) is >= 0 and var index && index < list.WordMeanings.Count ? list.WordMeanings[index] : null;
    }

    /// <summary>An example in the units of the plan; as it is where it is no measure, or has them already.</summary>
    public static string Example(string example, UnitSystem units)
    {
        if (MeasureText.Split(example) is not var (digits, spelling) || UnitTable.Find(spelling) is not { } unit || OfSystem(unit, units) is not { } other)
        {
            return example;
        }

        return $"{Rounded(other.FromSi(unit.ToSi(double.Parse(digits, CultureInfo.InvariantCulture))))} {other.Spelling}";
    }

    /// <summary>A number in the unit that the plan has for it, to two digits; as it is where it has that unit already.</summary>
    public static (double Number, string Unit) InUnits(double number, string spelling, UnitSystem units) =>
        UnitTable.Find(spelling) is { } unit && OfSystem(unit, units) is { } other ? (double.Parse(Rounded(other.FromSi(unit.ToSi(number))), CultureInfo.InvariantCulture), other.Spelling) : (number, spelling);

    // Two digits: an example, not a conversion.
    private static string Rounded(double number)
    {
        if (number == 0)
        {
            return "0";
        }

        var places = 1 - (int)Math.Floor(Math.Log10(Math.Abs(number)));
        return MeasureReader.WriteNumber(places >= 0 ? Math.Round(number, Math.Min(places, 6)) : Math.Round(number * Math.Pow(10, places)) / Math.Pow(10, places));
    }

    private static Unit? OfSystem(Unit unit, UnitSystem units)
    {
        if (unit.System == units)
        {
            return null;
        }

        var other = (unit.Spelling, units) switch
        {
            ("mm" or "cm", UnitSystem.UnitedStates) => "in",
            ("m", UnitSystem.UnitedStates) => "ft",
            ("km", UnitSystem.UnitedStates) => "mi",
            ("°C" or "C", UnitSystem.UnitedStates) => "°F",
            ("m/min", UnitSystem.UnitedStates) => "ft/min",
            ("km/h" or "m/s", UnitSystem.UnitedStates) => "mph",
            ("kg", UnitSystem.UnitedStates) => "lb",
            ("t", UnitSystem.UnitedStates) => "short ton",
            ("t/h", UnitSystem.UnitedStates) => "short ton/h",
            ("t/m3" or "kg/m3", UnitSystem.UnitedStates) => "lb/ft3",
            ("kg/m2" or "g/m2", UnitSystem.UnitedStates) => "lb/yd2",
            ("L/m2", UnitSystem.UnitedStates) => "gal/yd2",
            ("in", UnitSystem.Metric) => "mm",
            ("ft", UnitSystem.Metric) => "m",
            ("°F" or "F", UnitSystem.Metric) => "°C",
            ("ft/min", UnitSystem.Metric) => "m/min",
            ("mph", UnitSystem.Metric) => "km/h",
            ("lb", UnitSystem.Metric) => "kg",
            ("short ton", UnitSystem.Metric) => "t",
            ("short ton/h", UnitSystem.Metric) => "t/h",
            ("lb/ft3", UnitSystem.Metric) => "t/m3",
            ("lb/yd2", UnitSystem.Metric) => "kg/m2",
            ("gal/yd2", UnitSystem.Metric) => "L/m2",
            _ => null,
        };
        return other is null ? null : UnitTable.Find(other);
    }

    private static string Lowered(string text) => text.Length > 1 && char.IsUpper(text[0]) && char.IsLower(text[1]) ? char.ToLowerInvariant(text[0]) + text[1..] : text;
}
