namespace Laygate.Reading.Yaml;

/// <summary>What a scalar counts as when it is compared with a schema.</summary>
public enum ScalarKind
{
    /// <summary>Nothing written, or <c>~</c> or <c>null</c>.</summary>
    Null,

    /// <summary>A whole number in plain digits.</summary>
    WholeNumber,

    /// <summary>A number with a decimal point and digits on both sides.</summary>
    DecimalNumber,

    /// <summary>Everything else, words such as <c>no</c> and <c>true</c> included.</summary>
    Text,
}

/// <summary>
/// Tells numbers from texts. Stricter than YAML on purpose: what two versions of YAML read differently
/// (<c>017</c>, <c>1:30</c>, <c>no</c>) stays a text, so that no reader can take it for another value.
/// </summary>
public static class ScalarForms
{
    /// <summary>Longest number, in characters: every shorter one fits the number types of all JSON readers.</summary>
    public const int LongestNumber = 17;

    /// <summary>What a scalar counts as.</summary>
    /// <param name="text">Its text.</param>
    /// <param name="style">Its style; only plain scalars can be anything but text.</param>
    public static ScalarKind Classify(string text, ScalarStyle style)
    {
        if (style != ScalarStyle.Plain)
        {
            return ScalarKind.Text;
        }

        if (text is "" or "~" or "null" or "Null" or "NULL")
        {
            return ScalarKind.Null;
        }

        return text.Length > LongestNumber ? ScalarKind.Text : NumberKind(text);
    }

    private static ScalarKind NumberKind(ReadOnlySpan<char> text)
    {
        var digits = text is ['-', ..] ? text[1..] : text;
        var point = digits.IndexOf('.');
        var whole = point < 0 ? digits : digits[..point];
        if (!IsDigits(whole) || whole is ['0', _, ..])
        {
            return ScalarKind.Text;
        }

        if (point < 0)
        {
            return ScalarKind.WholeNumber;
        }

        return IsDigits(digits[(point + 1)..]) ? ScalarKind.DecimalNumber : ScalarKind.Text;
    }

    private static bool IsDigits(ReadOnlySpan<char> text) => text.Length > 0 && !text.ContainsAnyExceptInRange('0', '9');
}
