namespace Laygate.Reading.Yaml;

/// <summary>How a scalar was written.</summary>
public enum ScalarStyle
{
    /// <summary>Without quotation marks; the only style that can be a number or stand for "no value".</summary>
    Plain,

    /// <summary>In single or double quotation marks: always a text.</summary>
    Quoted,

    /// <summary>As a block behind <c>|</c> or <c>&gt;</c>: always a text.</summary>
    Block,
}

/// <summary>One piece of a document together with its place in the file. Never changes once read.</summary>
/// <param name="Span">Where it stands. A piece inserted by an alias stands where the alias is used, its children where they are written.</param>
public abstract record YamlToken(TextSpan Span)
{
    /// <summary>Tokens in this subtree with every alias expanded, itself and keys included.</summary>
    internal virtual int NodeCount => 1;

    /// <summary>Levels of lists and maps in this subtree; 0 for a scalar.</summary>
    internal virtual int Depth => 0;
}

/// <summary>A text or a number: kept as written and converted by whoever knows what it should be.</summary>
/// <param name="Text">The raw text; in quoted and block style with its escapes and folds resolved.</param>
/// <param name="Style">How it was written.</param>
/// <param name="Span">Where it stands.</param>
public sealed record ScalarToken(string Text, ScalarStyle Style, TextSpan Span) : YamlToken(Span)
{
    /// <summary>What the text counts as when it is compared with a schema.</summary>
    public ScalarKind Kind => ScalarForms.Classify(Text, Style);

    /// <summary>Whether nothing was written, or one of the words that YAML takes for nothing.</summary>
    public bool IsNull => Kind == ScalarKind.Null;
}

/// <summary>One key with its value.</summary>
/// <param name="Key">The key; always a scalar.</param>
/// <param name="Value">What stands behind the colon.</param>
public sealed record MapEntry(ScalarToken Key, YamlToken Value);

/// <summary>Keys with values, in the order of the file; no key twice.</summary>
/// <param name="Entries">The entries in the order of the file.</param>
/// <param name="Span">From the first key to the end of the last value.</param>
public sealed record MapToken(IReadOnlyList<MapEntry> Entries, TextSpan Span) : YamlToken(Span)
{
    internal override int NodeCount { get; } = 1 + Entries.Sum(entry => 1 + entry.Value.NodeCount);

    internal override int Depth { get; } = 1 + Entries.Select(entry => entry.Value.Depth).DefaultIfEmpty(0).Max();

    // A hostile map may hold 25,000 keys; looking each one up in turn would take a minute.
    private readonly Dictionary<string, MapEntry> _byKey = Entries.ToDictionary(entry => entry.Key.Text, StringComparer.Ordinal);

    /// <summary>The entry of a key, or null when the key is not there.</summary>
    /// <param name="key">The key, compared letter by letter.</param>
    public MapEntry? Find(string key) => _byKey.GetValueOrDefault(key);

    /// <summary>The value of a key, or null when the key is not there.</summary>
    /// <param name="key">The key, compared letter by letter.</param>
    public YamlToken? this[string key] => Find(key)?.Value;
}

/// <summary>Entries one after the other.</summary>
/// <param name="Items">The entries in the order of the file.</param>
/// <param name="Span">From the first entry to the end of the last.</param>
public sealed record ListToken(IReadOnlyList<YamlToken> Items, TextSpan Span) : YamlToken(Span)
{
    internal override int NodeCount { get; } = 1 + Items.Sum(item => item.NodeCount);

    internal override int Depth { get; } = 1 + Items.Select(item => item.Depth).DefaultIfEmpty(0).Max();
}

/// <summary>One document of a file.</summary>
/// <param name="Root">Its only top token.</param>
/// <param name="Number">Which document of the file it is, counted from 1.</param>
public sealed record YamlDocument(YamlToken Root, int Number)
{
    /// <summary>The top map, or a problem that says what stands there instead.</summary>
    /// <param name="what">What the document should be, such as <c>plan</c> or <c>rule</c>.</param>
    /// <param name="firstKey">A key that such a document begins with, shown in the message.</param>
    /// <param name="problem">The problem when the top is no map; else null.</param>
    public MapToken? AsMap(string what, string firstKey, out ReadingProblem? problem)
    {
        problem = Root is MapToken ? null : new ReadingProblem(
            $"A {what} is made of keys with values; this document is only {TokenNames.Of(Root)}.",
            TokenNames.Head(Root).Span,
            $"Begin it with a key such as `{firstKey}:`.");
        return Root as MapToken;
    }
}
