using System.Text;

namespace Laygate.Reading.Personal;

/// <summary>What stands at a key about a person.</summary>
public enum PersonalSort
{
    /// <summary>The name of a person.</summary>
    Name,

    /// <summary>The name of a person, or a role.</summary>
    Who,

    /// <summary>How a person is reached: a telephone number or a radio channel.</summary>
    Call,

    /// <summary>A role.</summary>
    Role,

    /// <summary>The hash of another text, by which a name in that text could be tried.</summary>
    Hash,
}

/// <summary>A value about a person.</summary>
/// <param name="Start">Where it begins in the text, as written, with its quotation marks.</param>
/// <param name="End">Just behind it.</param>
/// <param name="Sort">What it is.</param>
/// <param name="Value">What it says.</param>
public sealed record PersonalPlace(int Start, int End, PersonalSort Sort, string Value);

/// <summary>A text with the values in it that are about persons.</summary>
/// <param name="Text">The text.</param>
/// <param name="Places">The values, in their order.</param>
/// <param name="Encoding">How it is stored; with its byte order mark, where it has one.</param>
public sealed record PersonalText(string Text, IReadOnlyList<PersonalPlace> Places, Encoding Encoding)
{
    /// <summary>The text with other values; each line stays the line that it was.</summary>
    /// <param name="word">What stands in the place of a value; null: it stays.</param>
    public string With(Func<PersonalPlace, string?> word)
    {
        ArgumentNullException.ThrowIfNull(word);
        var (text, at) = (new StringBuilder(Text.Length), 0);
        foreach (var place in Places)
        {
            text.Append(Text, at, place.Start - at);
            text.Append(word(place) is { } put ? Written(Text[place.Start..place.End], put) : Text[place.Start..place.End]);
            at = place.End;
        }

        return text.Append(Text, at, Text.Length - at).ToString();
    }

    /// <summary>A text as bytes in the encoding of this one.</summary>
    /// <param name="text">The text.</param>
    public byte[] Bytes(string text) => [.. Encoding.GetPreamble(), .. Encoding.GetBytes(text)];

    // Quotation marks, an anchor and the ends of lines stay, so that everything behind stands on its line.
    private static string Written(string raw, string word)
    {
        var body = raw.StartsWith('&') && raw.IndexOfAny([' ', '\n', '\t']) is > 0 and var end ? raw[(end + 1)..].TrimStart() : raw;
        var quote = body.StartsWith('"') ? "\"" : body.StartsWith('\'') ? "'" : string.Empty;
        var written = new StringBuilder(raw[..^body.Length]).Append(quote).Append(word).Append(quote);
        for (var at = raw.IndexOf('\n', StringComparison.Ordinal); at >= 0; at = raw.IndexOf('\n', at + 1))
        {
            var indent = at + 1;
            while (indent < raw.Length && raw[indent] == ' ')
            {
                indent++;
            }

            written.Append(at > 0 && raw[at - 1] == '\r' ? "\r" : string.Empty).Append(raw, at, indent - at);
        }

        return written.ToString();
    }
}
