using YamlDotNet.Core;

namespace Laygate.Reading.Yaml;

/// <summary>A list or map whose end has not been read yet.</summary>
internal sealed class OpenCollection(bool isMap, bool isFlow, AnchorName anchor, TextSpan span, List<ReadingProblem> problems)
{
    private readonly List<YamlToken> _items = [];
    private readonly List<MapEntry> _entries = [];
    private readonly Dictionary<string, TextSpan> _keys = new(StringComparer.Ordinal);
    private ScalarToken? _key;
    private bool _keyTaken;
    private TextSpan? _last;

    public bool IsMap => isMap;

    /// <summary>Whether it is written in brackets or braces.</summary>
    public bool IsFlow => isFlow;

    public AnchorName Anchor => anchor;

    public TextSpan Span => span;

    /// <summary>Whether the next token is a key.</summary>
    public bool AwaitsKey => isMap && !_keyTaken;

    public void Add(YamlToken token)
    {
        if (!isMap)
        {
            _items.Add(token);
        }
        else if (_keyTaken)
        {
            AddValue(token);
        }
        else
        {
            AddKey(token);
        }

        _last = token.Span;
    }

    /// <summary>The finished token; block collections end with their last child.</summary>
    public YamlToken Close(TextSpan? closer)
    {
        // The parser gives a pair without braces, [a: b], no place of its own.
        var start = isFlow && closer is null && _entries is [var first, ..] ? first.Key.Span : span;
        var whole = start.To(closer ?? _last ?? span);
        return isMap ? new MapToken(_entries.AsReadOnly(), whole) : new ListToken(_items.AsReadOnly(), whole);
    }

    private void AddKey(YamlToken token)
    {
        _keyTaken = true;
        _key = token is ScalarToken key && Accept(key) ? key : null;
    }

    private bool Accept(ScalarToken key)
    {
        var problem = key switch
        {
            { Style: ScalarStyle.Plain, Text: "" } => ReadingProblems.MissingKey(key.Span),
            { Style: ScalarStyle.Plain, Text: "<<" } => ReadingProblems.MergeKey(key.Span),
            _ when !_keys.TryAdd(key.Text, key.Span) => ReadingProblems.DuplicateKey(key, _keys[key.Text]),
            _ => null,
        };
        if (problem is not null)
        {
            problems.Add(problem);
        }

        return problem is null;
    }

    private void AddValue(YamlToken token)
    {
        if (_key is not null)
        {
            _entries.Add(new MapEntry(_key, token));
        }

        _keyTaken = false;
    }
}
