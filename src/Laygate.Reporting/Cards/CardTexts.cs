using System.Collections.Frozen;
using System.Globalization;

namespace Laygate.Reporting.Cards;

/// <summary>The words of one language. A language has every key, which a test holds.</summary>
public sealed class CardTexts
{
    /// <summary>Where a long word may be broken.</summary>
    internal const char SoftHyphen = '\u00AD';

    private readonly FrozenDictionary<string, string> words;

    private CardTexts(string language, string table)
    {
        Language = language;
        words = table.Split('\n').Select(line => line.Split(" = ", 2)).Where(pair => pair.Length == 2).ToFrozenDictionary(pair => pair[0], pair => pair[1].Replace('|', SoftHyphen), StringComparer.Ordinal);
    }

    /// <summary>Languages by their ISO 639 codes.</summary>
    public static IReadOnlyList<string> Languages { get; } = ["en", "de"];

    /// <summary>Code of the language.</summary>
    public string Language { get; }

    /// <summary>All keys.</summary>
    internal IReadOnlyCollection<string> Keys => words.Keys;

    /// <summary>The words of a language.</summary>
    /// <param name="language">One of <see cref="Languages"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such language.</exception>
    public static CardTexts Of(string language) => language switch
    {
        "en" => new CardTexts(language, EnglishTexts.Table),
        "de" => new CardTexts(language, GermanTexts.Table),
        _ => throw new ArgumentOutOfRangeException(nameof(language), language, "There are no cards in this language."),
    };

    /// <summary>A text with its blanks filled in.</summary>
    public string this[string key, params string[] arguments] =>
        arguments.Length == 0 ? words[key] : string.Format(CultureInfo.InvariantCulture, words[key], arguments);
}
