using System.Text.Json;
using Laygate.Reporting.Text;

namespace Laygate.Reporting.Sarif;

/// <summary>Text of SARIF messages.</summary>
internal static class SarifText
{
    /// <summary>Longest short and full description that the largest host takes.</summary>
    public const int LongestDescription = 1024;

    /// <summary>
    /// Text on one line that reads as it was written: square brackets would begin a link and are escaped with a backslash (SARIF 3.11.6),
    /// braces would begin a placeholder and are doubled (3.11.5).
    /// </summary>
    public static string Plain(string text) => PlainText.Show(text)
        .Replace(PlainText.Glue, ' ')
        .Replace("\\", "\\\\", StringComparison.Ordinal)
        .Replace("[", "\\[", StringComparison.Ordinal)
        .Replace("]", "\\]", StringComparison.Ordinal)
        .Replace("{", "{{", StringComparison.Ordinal)
        .Replace("}", "}}", StringComparison.Ordinal);

    /// <summary>A message object with text that ends with a full stop.</summary>
    public static void Message(Utf8JsonWriter json, string name, string text)
    {
        json.WriteStartObject(name);
        json.WriteString("text", Sentence(Plain(text)));
        json.WriteEndObject();
    }

    /// <summary>A description that a host does not refuse for its length.</summary>
    public static void Description(Utf8JsonWriter json, string name, string text)
    {
        var plain = Plain(text);
        json.WriteStartObject(name);
        json.WriteString("text", Sentence(plain.Length <= LongestDescription - 1 ? plain : plain[..(LongestDescription - 2)] + "…"));
        json.WriteEndObject();
    }

    private static string Sentence(string text) => text.EndsWith('.') || text.EndsWith('!') || text.EndsWith('?') ? text : text + ".";
}
