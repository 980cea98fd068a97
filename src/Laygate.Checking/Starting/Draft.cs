namespace Laygate.Checking.Starting;

/// <summary>A piece of a plan that is being begun.</summary>
internal abstract class DraftNode;

/// <summary>A text, or a blank that is left for a person.</summary>
/// <param name="text">The text as it is meant, without quotation marks; null for a blank.</param>
internal sealed class DraftText(string? text) : DraftNode
{
    /// <summary>The text; null for a blank.</summary>
    public string? Text { get; set; } = text;

    /// <summary>Where a blank is wanted only if something else says so, as a remark; null where it is always wanted.</summary>
    public string? OnlyWhere { get; set; }

    /// <summary>What the blank wants, where that is one word of many; null where the schema says it.</summary>
    public string? Asked { get; set; }

    /// <summary>A blank.</summary>
    public static DraftText Blank => new(null);
}

/// <summary>Entries one after the other.</summary>
internal sealed class DraftList : DraftNode
{
    /// <summary>The entries.</summary>
    public List<DraftNode> Items { get; } = [];

    /// <summary>The entry of a name: its id, or what it is named by in references.</summary>
    public int IndexOf(string name) => Items.FindIndex(item => string.Equals(NameOf(item), name, StringComparison.Ordinal));

    /// <summary>The names of the entries that have one.</summary>
    public IReadOnlyList<string> EntryNames => [.. Items.Select(NameOf).OfType<string>()];

    private static string? NameOf(DraftNode item) => item switch
    {
        DraftText text => text.Text,
        DraftMap map => DraftMap.Names.Select(key => (map[key] as DraftText)?.Text).FirstOrDefault(name => name is not null),
        _ => null,
    };
}

/// <summary>Keys with values.</summary>
internal sealed class DraftMap : DraftNode
{
    /// <summary>Keys by which references name an entry of a list; a reference to a part stands for its id.</summary>
    public static readonly string[] Names = ["id", "part", "course", "at", "depth", "phase"];

    /// <summary>The keys in the order in which they came.</summary>
    public List<KeyValuePair<string, DraftNode>> Entries { get; } = [];

    /// <summary>The value of a key; null when it is not there.</summary>
    public DraftNode? this[string key] => Entries.Find(entry => string.Equals(entry.Key, key, StringComparison.Ordinal)).Value;

    /// <summary>Makes keys with texts; a null is a blank.</summary>
    public static DraftMap Of(params ReadOnlySpan<(string Key, string? Text)> texts)
    {
        var map = new DraftMap();
        foreach (var (key, text) in texts)
        {
            map.Set(key, new DraftText(text));
        }

        return map;
    }

    /// <summary>Adds a key, or gives it another value.</summary>
    public DraftMap Set(string key, DraftNode value)
    {
        var index = Entries.FindIndex(entry => string.Equals(entry.Key, key, StringComparison.Ordinal));
        if (index < 0)
        {
            Entries.Add(new(key, value));
        }
        else
        {
            Entries[index] = new(key, value);
        }

        return this;
    }

    /// <summary>Takes a key out.</summary>
    public void Remove(string key) => Entries.RemoveAll(entry => string.Equals(entry.Key, key, StringComparison.Ordinal));

    /// <summary>Adds a key with a list of texts.</summary>
    public DraftMap SetList(string key, params IEnumerable<string> texts)
    {
        var list = new DraftList();
        list.Items.AddRange(texts.Select(text => new DraftText(text)));
        return Set(key, list);
    }

    /// <summary>The value that a way of keys leads to, names of list entries among them; null where there is none.</summary>
    public DraftNode? At(ReadOnlySpan<string> way)
    {
        DraftNode? at = this;
        foreach (var step in way)
        {
            at = at switch
            {
                DraftMap map => map[step],
                DraftList list when list.IndexOf(step) is var index and >= 0 => list.Items[index],
                _ => null,
            };
        }

        return at;
    }

    /// <summary>The group of a key, made when it is missing.</summary>
    public DraftMap Group(string key)
    {
        if (this[key] is not DraftMap group)
        {
            Set(key, group = new DraftMap());
        }

        return group;
    }

    /// <summary>The list of a key, made when it is missing.</summary>
    public DraftList List(string key)
    {
        if (this[key] is not DraftList list)
        {
            Set(key, list = new DraftList());
        }

        return list;
    }
}
