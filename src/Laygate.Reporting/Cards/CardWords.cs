using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards;

/// <summary>What the cards of all roles have in common: words, figures, free text of the plan, lines about limits.</summary>
internal sealed class CardWords(SiteSheet sheet, CardTexts texts)
{
    /// <summary>The sheet.</summary>
    public SiteSheet Sheet => sheet;

    /// <summary>Words of the language.</summary>
    public CardTexts Texts => texts;

    /// <summary>Figures and times.</summary>
    public CardNumbers Numbers { get; } = new(texts, sheet);

    /// <summary>A text that names something, such as an id.</summary>
    public string Show(string? text) => string.IsNullOrWhiteSpace(text) ? "—" : PlainText.Show(text);

    /// <summary>Free text of the plan; in quotes where the card speaks another language.</summary>
    public string Own(string? text) => string.IsNullOrWhiteSpace(text) ? "—" : Quoted(text, Numbers.IsForeign);

    /// <summary>Free texts of the plan, those that are stated, one after the other.</summary>
    public string Own(params string?[] some) => string.Join(", ", some.Where(text => !string.IsNullOrWhiteSpace(text)).Select(text => Own(text))) is { Length: > 0 } all ? all : "—";

    /// <summary>Free text of the plan, or that it is not stated.</summary>
    public string Or(string? text) => string.IsNullOrWhiteSpace(text) ? texts["none"] : Own(text);

    /// <summary>Words of a rule that this language has not.</summary>
    public string Foreign(string text) => Quoted(text, texts.Language is not "en");

    /// <summary>A rule's title and remedy.</summary>
    public CardLine Wrong(Finding finding)
    {
        var (title, remedy) = texts.Rule(finding.Rule) ?? (Foreign(finding.Title), Foreign(finding.Remedy));
        return $"{title}. {remedy} ({Show(finding.Rule)})";
    }

    /// <summary>Why the plan fails, each rule once: by its title, or by its number and places where this language has no words for it.</summary>
    public IEnumerable<string> Failing() => sheet.Failing.GroupBy(finding => finding.Rule, StringComparer.Ordinal).Select(same =>
        (texts.Rule(same.Key)?.Title ?? (texts.Language is "en" ? Show(same.First().Title) : null)) is { } title
            ? $"{title} ({Show(same.Key)})"
            : $"{Show(same.Key)}: {string.Join(", ", same.Select(finding => Show(finding.Address)).Distinct(StringComparer.Ordinal))}");

    /// <summary>A yes or no of the plan.</summary>
    public string Flag(bool? flag, string key) => texts[$"{key}.{(flag switch { true => "yes", false => "no", _ => "unknown" })}"];

    /// <summary>A table; a column of which no row says anything takes room from those that do.</summary>
    public CardTable Table<T>(string title, string[] head, IEnumerable<T> rows, Func<T, IReadOnlyList<string>> cells) => Table(title, head, rows, (row, _) => cells(row));

    /// <summary>The same for rows that are numbered from 0.</summary>
    public CardTable Table<T>(string title, string[] head, IEnumerable<T> rows, Func<T, int, IReadOnlyList<string>> cells)
    {
        var all = rows.Select(cells).ToList();
        var kept = Enumerable.Range(0, head.Length).Where(column => column == 0 || all.Exists(row => row[column] is not "—")).ToList();
        if (kept.Count == 1 && head.Length > 1)
        {
            all.Clear();
        }

        return new(title, [.. kept.Select(column => texts.Find(head[column]) is { Length: > 0 } word ? word : Show(head[column]))], [.. all.Select(row => (IReadOnlyList<string>)[.. kept.Select(column => row[column])])]);
    }

    /// <summary>Limits to watch: what is watched, each limit with its places, what to do otherwise. What is watched in the same way is said once.</summary>
    public IEnumerable<CardLine> Limits(IEnumerable<SheetLimit> limits) => limits
        .GroupBy(limit => Instruction(limit))
        .Select(same =>
        {
            var ends = same.GroupBy(limit => Numbers.Limit(limit.Finding.Limit!), StringComparer.Ordinal).Select(end => Places(end.Select(limit => limit.Finding.Address)) + end.Key).ToList();
            return new CardLine(same.Key.Watch, $"{string.Join("; ", ends)}. {same.Key.Otherwise} ({string.Join(", ", same.Select(limit => Show(limit.Finding.Rule)).Distinct(StringComparer.Ordinal))})");
        });

    private (string Watch, string Otherwise) Instruction(SheetLimit limit) =>
        texts.OnSite(limit.Finding.Rule) ?? (Foreign(limit.OnSite.Watch), Foreign(limit.OnSite.Otherwise));

    // What there is only once, such as the weather or the only course, needs no name, nor do all of a kind.
    private string Places(IEnumerable<string> addresses)
    {
        var places = addresses.Select(address => address.Split(':', 2)).Where(parts => parts.Length == 2)
            .GroupBy(parts => parts[0], parts => parts[1], StringComparer.Ordinal)
            .Select(kind => (kind.Key, Ids: kind.Distinct(StringComparer.Ordinal).ToList())).Where(kind => kind.Ids.Count < All(kind.Key))
            .Select(kind => $"{Kind(kind.Key)} {string.Join(", ", kind.Ids.Select(Show))}").ToList();
        return places.Count == 0 ? string.Empty : $"{string.Join(", ", places)} ";
    }

    private int All(string kind) => kind switch
    {
        "course" => sheet.Courses.Count,
        "trucks" => sheet.Trucks.Count,
        "mix" => sheet.Mixes.Count,
        "pair" => sheet.Courses.Count / 2,
        "phase" => 0, // The rollers of a phase have a card of their own.
        _ => int.MaxValue,
    };

    private string Kind(string kind) => texts.Find($"kind-of.{kind}") is { Length: > 0 } word ? word : Show(kind);

    private string Quoted(string text, bool isForeign) => isForeign ? texts["quoted", PlainText.Show(text)] : PlainText.Show(text);
}
