using System.Globalization;
using System.Text.RegularExpressions;

namespace Laygate.Reading.Yaml;

/// <summary>Why a text is not the number or measure that its writer probably meant.</summary>
/// <param name="Explanation">The trap in plain words, without a full stop, fit to follow a colon.</param>
/// <param name="RightForm">The text as it should be written; null where that depends on what is meant.</param>
public sealed record ScalarTrap(string Explanation, string? RightForm);

/// <summary>Knows the ways to write a value that programs read differently, and names the right form.</summary>
public static partial class ScalarTraps
{
    private const int LongestText = 200;
    // The length of the text bounds the work; a clock would refuse a sound text on a busy machine.
    private const int NoClock = Timeout.Infinite;

    /// <summary>The trap that a text falls into.</summary>
    /// <param name="text">The raw text of a value.</param>
    /// <returns>The trap; null when the text shows none.</returns>
    public static ScalarTrap? Explain(string text)
    {
        if (text.Length is 0 or > LongestText)
        {
            return null;
        }

        return Word(text) ?? ClockTime(text) ?? JoinedKey(text) ?? OtherBase(text) ?? NumberRepair.Explain(text);
    }

    /// <summary>The trap that a scalar falls into: quoted and block texts were meant as they stand, so they fall into none.</summary>
    /// <param name="scalar">The scalar.</param>
    public static ScalarTrap? Explain(ScalarToken scalar) =>
        scalar is { Style: ScalarStyle.Plain, Kind: ScalarKind.Text } ? Explain(scalar.Text) : null;

    private static ScalarTrap? Word(string text) => text.ToUpperInvariant() switch
    {
        "YES" or "NO" or "ON" or "OFF" or "TRUE" or "FALSE" or "Y" or "N" =>
            new ScalarTrap($"`{text}` is read as a word, and fits only where such a word is asked for", null),
        ".NAN" or ".INF" or "-.INF" or "+.INF" or "NAN" or "INF" or "INFINITY" or "-INF" =>
            new ScalarTrap($"`{text}` is not a number that can be calculated with", null),
        _ => null,
    };

    private static ScalarTrap? ClockTime(string text)
    {
        if (!Clock().IsMatch(text))
        {
            return null;
        }

        var parts = text.Split(':').Select(part => int.Parse(part, CultureInfo.InvariantCulture)).ToArray();
        var minutes = string.Create(CultureInfo.InvariantCulture, $"{parts[0] * 60 + parts[1]} min");
        var asDuration = parts.Length == 2 ? $"; a duration is written `{minutes}`" : string.Empty;
        return new ScalarTrap($"`{text}` looks like a time of day, and some programs read it as a number to the base 60{asDuration}", null);
    }

    private static ScalarTrap? JoinedKey(string text)
    {
        var found = Joined().Match(text);
        return found.Success
            ? new ScalarTrap("a blank is missing behind the colon", $"{found.Groups["key"].Value}: {found.Groups["value"].Value}")
            : null;
    }

    private static ScalarTrap? OtherBase(string text)
    {
        if (text.Length is < 3 or > 14 || text[0] != '0')
        {
            return null;
        }

        int? numberBase = text[1] switch { 'x' or 'X' => 16, 'o' or 'O' => 8, 'b' or 'B' => 2, _ => null };
        if (numberBase is not { } found)
        {
            return null;
        }

        var value = 0L;
        foreach (var letter in text.AsSpan(2))
        {
            if (!char.IsAsciiHexDigit(letter) || Convert.ToInt32(letter.ToString(), 16) is var digit && digit >= found)
            {
                return null;
            }

            value = value * found + digit;
        }

        return new ScalarTrap(
            string.Create(CultureInfo.InvariantCulture, $"`{text}` is written to the base {found}; only ordinary digits are read"),
            value.ToString(CultureInfo.InvariantCulture));
    }

    [GeneratedRegex("^[0-9]{1,2}:[0-9]{2}(:[0-9]{2})?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, NoClock)]
    private static partial Regex Clock();

    [GeneratedRegex("^(?<key>[A-Za-z_][A-Za-z0-9_-]*):(?<value>[^ /].*)$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, NoClock)]
    private static partial Regex Joined();
}
