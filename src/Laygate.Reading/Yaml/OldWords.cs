namespace Laygate.Reading.Yaml;

/// <summary>A word of an earlier version, where it stands, and what is written now.</summary>
public sealed record FoundOldWord(TextSpan Span, string Old, string New);

/// <summary>
/// Puts the words of this version in the place of those of the last one, so that the schema and all that follows know only one. Keys are renamed where they
/// stand at the top of a document, words where they are the value of a key below another one.
/// </summary>
internal sealed class OldWords
{
    /// <summary>Plans of version 0.1.</summary>
    public static OldWords OfPlans { get; } = new([],
    [
        ("screeds", "kind", "tamper-and-vibration", "tamper"),
        ("screeds", "kind", "tamper-and-pressure-bars", "high-compaction"),
    ]);

    /// <summary>Rules and specifications of version 0.1.</summary>
    public static OldWords OfRules { get; } = new(
    [
        ("select", "bring_in"), ("deselect", "take_out"),
    ],
    [
        ("life", "state", "preview", "on-trial"), ("life", "state", "stable", "in-use"), ("life", "state", "deprecated", "leaving"), ("life", "state", "removed", "gone"),
    ]);

    /// <summary>Cases of verification of version 0.1, which numbered the convection forms.</summary>
    public static OldWords OfCases { get; } = new([], new[]
    {
        ("C1", "barber-1957"), ("C2", "corlew-dickson-1968"), ("C3", "nusselt-juerges-1922"), ("C4", "mcadams-1954"), ("C5", "en-iso-6946"), ("C6", "vehrencamp-1953"),
        ("C7", "ashrae-1989"), ("C8", "emmel-2007"), ("C9", "walton-1983"), ("C10", "smooth-glass"), ("C11", "herb-2008"), ("C12", "jansson-2006"),
        ("C13", "turbulent-plate"), ("C13K", "kreith-plate"), ("C13S", "schlichting-plate"), ("C13L", "laminar-plate"), ("C14", "mcadams-hot-plate"),
    }.SelectMany(form => new[] { ("weather", "form", form.Item1, form.Item2), ("inputs", "form", form.Item1, form.Item2) }));

    private readonly Dictionary<string, string> keys;
    private readonly Dictionary<(string Above, string Key, string Old), string> words;

    private OldWords(IEnumerable<(string Old, string New)> keys, IEnumerable<(string Above, string Key, string Old, string New)> words)
    {
        this.keys = keys.ToDictionary(key => key.Old, key => key.New, StringComparer.Ordinal);
        this.words = words.ToDictionary(word => (word.Above, word.Key, word.Old), word => word.New);
    }

    /// <summary>The document in the words of this version. Where old and new key both stand, the old one stays, and the schema refuses it.</summary>
    /// <param name="root">Top token.</param>
    /// <returns>The document, the same one where nothing is old, and what was found.</returns>
    public (YamlToken Root, IReadOnlyList<FoundOldWord> Found) Renew(YamlToken root)
    {
        var found = new List<FoundOldWord>();
        return (Renew(root, string.Empty, string.Empty, isTop: true, found), found);
    }

    // Depth is bounded by the reader.
    private YamlToken Renew(YamlToken token, string above, string key, bool isTop, List<FoundOldWord> found)
    {
        switch (token)
        {
            case ScalarToken word when words.TryGetValue((above, key, word.Text), out var now):
                found.Add(new FoundOldWord(word.Span, word.Text, now));
                return word with { Text = now };
            case ListToken list:
                var items = list.Items.Select(item => Renew(item, above, key, isTop: false, found)).ToList();
                return items.SequenceEqual(list.Items, ReferenceEqualityComparer.Instance) ? list : new ListToken(items, list.Span);
            case MapToken map:
                var entries = map.Entries.Select(entry => Renew(map, entry, key, isTop, found)).ToList();
                return entries.SequenceEqual(map.Entries, ReferenceEqualityComparer.Instance) ? map : new MapToken(entries, map.Span);
            default:
                return token;
        }
    }

    private MapEntry Renew(MapToken map, MapEntry entry, string above, bool isTop, List<FoundOldWord> found)
    {
        var key = entry.Key;
        if (isTop && keys.TryGetValue(key.Text, out var now) && map.Find(now) is null)
        {
            found.Add(new FoundOldWord(key.Span, key.Text, now));
            key = key with { Text = now };
        }

        var value = Renew(entry.Value, above, entry.Key.Text, isTop: false, found);
        return ReferenceEquals(key, entry.Key) && ReferenceEquals(value, entry.Value) ? entry : new MapEntry(key, value);
    }
}
