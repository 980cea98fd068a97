using System.Text.RegularExpressions;

namespace Laygate.Reading.Measures;

/// <summary>The written form of a measure: sign, digits, one point, one blank, a unit. The plan schema asks for the same form.</summary>
internal static partial class MeasureText
{
    /// <summary>The number of a measure as a pattern of the schema. Its length is bounded, so that every number is finite and exact enough.</summary>
    public const string NumberPattern = @"[+-]?(?:0|[1-9][0-9]{0,9})(?:\.[0-9]{1,6})?";

    /// <summary>Longest text that is looked at closely.</summary>
    public const int Longest = 200;

    // The length of the text bounds the work; a clock would refuse a sound text on a busy machine.
    private const int NoClock = Timeout.Infinite;

    /// <summary>Number and unit of a text in the right form; null for any other text.</summary>
    public static (string Number, string Unit)? Split(string text)
    {
        if (text.Length > Longest)
        {
            return null;
        }

        var found = Form().Match(text);
        return found.Success ? (found.Groups["number"].Value, found.Groups["unit"].Value) : null;
    }

    /// <summary>Whether a text is a number of the right form and nothing else.</summary>
    public static bool IsBareNumber(string text) => text.Length <= Longest && Bare().IsMatch(text);

    /// <summary>The number and the rest of a text that begins with digits, whatever is wrong with either; null when it does not.</summary>
    public static (string Number, string Behind)? Loosely(string text)
    {
        if (text.Length > Longest)
        {
            return null;
        }

        var found = Loose().Match(text);
        return found.Success ? (found.Groups["number"].Value, found.Groups["rest"].Value.Trim()) : null;
    }

    [GeneratedRegex("^(?<number>" + NumberPattern + @") (?<unit>[^ 0-9].*)\z", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, NoClock)]
    private static partial Regex Form();

    [GeneratedRegex("^" + NumberPattern + @"\z", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, NoClock)]
    private static partial Regex Bare();

    [GeneratedRegex(@"^(?<number>[+-]?[0-9.]+)(?<rest>.*)\z", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, NoClock)]
    private static partial Regex Loose();
}
