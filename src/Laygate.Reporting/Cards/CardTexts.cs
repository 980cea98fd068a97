using System.Collections.Frozen;
using System.Globalization;

namespace Laygate.Reporting.Cards;

/// <summary>The words of one language. A language has every key, which a test holds.</summary>
public sealed class CardTexts
{
    /// <summary>Where a long word may be broken.</summary>
    internal const char SoftHyphen = '\u00AD';

    private readonly FrozenDictionary<string, string> words;

    private readonly FrozenDictionary<string, string> rules;

    private readonly FrozenDictionary<string, string> onSite;

    private CardTexts(string language, string table, string ruleTable, string siteTable)
    {
        Language = language;
        onSite = siteTable.Split('\n').Select(line => line.Split(" = ", 2)).Where(pair => pair.Length == 2).ToFrozenDictionary(pair => pair[0], pair => pair[1], StringComparer.Ordinal);
        rules = ruleTable.Split('\n').Select(line => line.Split(" = ", 2)).Where(pair => pair.Length == 2).ToFrozenDictionary(pair => pair[0], pair => pair[1], StringComparer.Ordinal);
        words = table.Split('\n').Select(line => line.Split(" = ", 2)).Where(pair => pair.Length == 2).ToFrozenDictionary(pair => pair[0], pair => pair[1].Replace('|', SoftHyphen), StringComparer.Ordinal);
    }

    /// <summary>Languages by their ISO 639 codes.</summary>
    public static IReadOnlyList<string> Languages { get; } = ["en", "de"];

    /// <summary>Code of the language.</summary>
    public string Language { get; }

    /// <summary>All keys.</summary>
    internal IReadOnlyCollection<string> Keys => words.Keys;

    /// <summary>All texts of a language, for whoever must know which words are the program's own.</summary>
    public IEnumerable<string> All => words.Values.Concat(rules.Values).Concat(onSite.Values);

    /// <summary>The words of a language.</summary>
    /// <param name="language">One of <see cref="Languages"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such language.</exception>
    public static CardTexts Of(string language) => language switch
    {
        "en" => new CardTexts(language, EnglishTexts.Table, string.Empty, string.Empty),
        "de" => new CardTexts(language, GermanTexts.Table, GermanRules.Table, GermanRules.OnSite),
        _ => throw new ArgumentOutOfRangeException(nameof(language), language, "There are no cards in this language."),
    };

    /// <summary>Title of a rule and what to do, in this language; null where only the rule itself has words. What to do is empty where a card does not show it.</summary>
    internal (string Title, string Remedy)? Rule(string id) => rules.TryGetValue(id, out var text)
        ? text.Split(" | ", 2) is [var title, var remedy] ? (title, remedy) : (text, string.Empty)
        : null;

    /// <summary>What a rule has the crew watch, and what to do otherwise, in this language; null where only the rule itself has words.</summary>
    internal (string Watch, string Otherwise)? OnSite(string id) => onSite.TryGetValue(id, out var text) && text.Split(" | ", 2) is [var watch, var otherwise]
        ? (watch, otherwise)
        : null;

    /// <summary>A text with its blanks filled in; the empty text where the key is not there.</summary>
    internal string Find(string key) => words.GetValueOrDefault(key, string.Empty);

    /// <summary>A text with its blanks filled in.</summary>
    public string this[string key, params string[] arguments] =>
        arguments.Length == 0 ? words[key] : string.Format(CultureInfo.InvariantCulture, words[key], arguments);
}
