using System.Globalization;
using System.Text.RegularExpressions;

namespace Laygate.Reading.Yaml;

/// <summary>Turns a number or measure written in one of the common wrong ways into the right form.</summary>
internal static partial class NumberRepair
{
    // The length of the text bounds the work; a clock would refuse a sound text on a busy machine.
    private const int NoClock = Timeout.Infinite;

    /// <summary>What is wrong with a number or measure and its right form; null when nothing is wrong or it is none.</summary>
    public static ScalarTrap? Explain(string text)
    {
        var faults = new List<string>();
        var plain = PlainCharacters(text, faults);
        var found = Measure().Match(plain);
        if (!found.Success)
        {
            return null;
        }

        var number = Number(found.Groups["number"].Value, faults);
        var sign = found.Groups["sign"].Value;
        var unit = found.Groups["unit"].Value;
        if (sign is "+" && unit.Length == 0)
        {
            faults.Add("a plus sign is not written");
            sign = string.Empty;
        }

        if (unit.Length > 0 && found.Groups["gap"].Length != 1)
        {
            faults.Add(found.Groups["gap"].Length == 0 ? "a blank is missing between number and unit" : "one blank stands between number and unit");
        }

        if (number is { Length: > ScalarForms.LongestNumber })
        {
            faults.Add("it has more digits than can be meant");
        }

        if (faults.Count == 0)
        {
            return null;
        }

        var isRepaired = number is not null && sign.Length + number.Length <= ScalarForms.LongestNumber;
        return new ScalarTrap(string.Join("; ", faults), isRepaired ? sign + number + (unit.Length > 0 ? $" {unit}" : string.Empty) : null);
    }

    private static string PlainCharacters(string text, List<string> faults)
    {
        var blanks = SpecialBlank().Replace(text, " ");
        if (!string.Equals(blanks, text, StringComparison.Ordinal))
        {
            faults.Add("it contains a non-breaking or narrow blank, which looks like a blank but is none");
        }

        var minus = SpecialMinus().Replace(blanks, "-");
        if (!string.Equals(minus, blanks, StringComparison.Ordinal))
        {
            faults.Add("the minus is a dash; write the hyphen of the keyboard");
        }

        return minus;
    }

    // Null where two readings are left and only the writer knows which is meant.
    private static string? Number(string number, List<string> faults)
    {
        if (number.AsSpan().ContainsAny('e', 'E'))
        {
            return Exponent(number, faults);
        }

        var ungrouped = number.Replace("_", string.Empty, StringComparison.Ordinal).Replace("'", string.Empty, StringComparison.Ordinal).Replace(" ", string.Empty, StringComparison.Ordinal);
        var grouped = !string.Equals(ungrouped, number, StringComparison.Ordinal);
        if (Ambiguous().IsMatch(ungrouped))
        {
            var (thousands, decimals) = (ungrouped.Replace(",", string.Empty, StringComparison.Ordinal), ungrouped.Replace(',', '.'));
            faults.Add($"a comma may mean thousands or decimals; write `{thousands}` or `{decimals}`");
            return null;
        }

        var pointed = Pointed(ungrouped, ref grouped, faults);
        if (grouped)
        {
            faults.Add("digits are not grouped");
        }

        return Zeros(pointed, faults);
    }

    private static string Pointed(string number, ref bool grouped, List<string> faults)
    {
        var comma = number.LastIndexOf(',');
        var point = number.LastIndexOf('.');
        var last = Math.Max(comma, point);
        if (last < 0)
        {
            return number;
        }

        // A mark that comes again groups digits; of two kinds of mark the last one is the decimal mark.
        var isGroup = number.IndexOf(number[last]) != last;
        var whole = number[..last].Replace(",", string.Empty, StringComparison.Ordinal).Replace(".", string.Empty, StringComparison.Ordinal);
        grouped |= isGroup || whole.Length != last;
        if (isGroup)
        {
            return whole + number[(last + 1)..];
        }

        if (comma > point)
        {
            faults.Add("a decimal comma is not read; write a decimal point");
        }

        return $"{whole}.{number[(last + 1)..]}";
    }

    private static string Zeros(string number, List<string> faults)
    {
        if (number.StartsWith('.'))
        {
            faults.Add("a digit is missing before the point");
            number = $"0{number}";
        }

        if (number.EndsWith('.'))
        {
            faults.Add("a digit is missing behind the point");
            number = number[..^1];
        }

        var trimmed = LeadingZeros().Replace(number, string.Empty);
        if (trimmed.Length != number.Length)
        {
            faults.Add("it begins with a zero, and some programs then read it to the base 8");
        }

        return trimmed;
    }

    private static string? Exponent(string number, List<string> faults)
    {
        faults.Add("an exponent is not read");
        var isNumber = decimal.TryParse(number, NumberStyles.AllowExponent | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value);
        return isNumber ? value.ToString("0.############################", CultureInfo.InvariantCulture) : null;
    }

    [GeneratedRegex("^(?<sign>[+-]?)(?<number>(?:[0-9]{1,3}(?: [0-9]{3})+(?![0-9])|[0-9.,_']*[0-9][0-9.,_']*)(?:[eE][+-]?[0-9]+)?)(?<gap> *)(?<unit>[A-Za-z°%µμ\"].*)?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, NoClock)]
    private static partial Regex Measure();

    [GeneratedRegex("[\u00A0\u2007\u2009\u202F]", RegexOptions.CultureInvariant, NoClock)]
    private static partial Regex SpecialBlank();

    [GeneratedRegex("^[\u2010-\u2015\u2212](?=[0-9.,])", RegexOptions.CultureInvariant, NoClock)]
    private static partial Regex SpecialMinus();

    [GeneratedRegex("^[1-9][0-9]{0,2},[0-9]{3}$", RegexOptions.CultureInvariant, NoClock)]
    private static partial Regex Ambiguous();

    [GeneratedRegex("^0+(?=[0-9])", RegexOptions.CultureInvariant, NoClock)]
    private static partial Regex LeadingZeros();
}
