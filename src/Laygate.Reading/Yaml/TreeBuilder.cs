using YamlDotNet.Core.Events;
using YamlScalarStyle = YamlDotNet.Core.ScalarStyle;

namespace Laygate.Reading.Yaml;

/// <summary>Builds token trees from parser events with a stack of its own, so that depth costs no call stack.</summary>
internal sealed class TreeBuilder(SourceText source, List<ReadingProblem> problems)
{
    private readonly Stack<OpenCollection> _open = new();
    private readonly AnchorTable _anchors = new(problems);
    private readonly bool _hasTab = source.Text.Contains('\t', StringComparison.Ordinal);
    private int _nodes;
    private TextSpan _documentStart = TextSpan.FileStart;

    /// <summary>The documents completed so far.</summary>
    public List<YamlDocument> Documents { get; } = [];

    /// <summary>Whether a limit was passed and nothing more is read.</summary>
    public bool IsStopped { get; private set; }

    /// <summary>Where the innermost bracket or brace that is still open stands; null outside of both.</summary>
    public TextSpan? OpenBracket => _open.TryPeek(out var parent) && parent.IsFlow ? parent.Span : null;

    /// <summary>Takes the next event of the parser.</summary>
    public void Take(ParsingEvent next)
    {
        switch (next)
        {
            case DocumentStart:
                _anchors.Clear();
                _documentStart = SpanOf(next);
                break;
            case AnchorAlias alias:
                TakeAlias(alias);
                break;
            case Scalar scalar:
                TakeScalar(scalar);
                break;
            case MappingStart or SequenceStart:
                TakeStart((NodeEvent)next);
                break;
            case MappingEnd or SequenceEnd:
                TakeEnd(next);
                break;
        }
    }

    private void TakeScalar(Scalar scalar)
    {
        var span = Trimmed(scalar);
        if (!Count(1, span))
        {
            return;
        }

        RefuseTag(scalar, span);
        RefuseTab(span);
        ScalarChecks.Check(scalar.Value, span, problems);
        var isEmptyDocument = _open.Count == 0 && scalar is { Value: "", Style: YamlScalarStyle.Plain };
        var token = new ScalarToken(scalar.Value, StyleOf(scalar.Style), isEmptyDocument ? _documentStart : span);
        _anchors.Define(scalar.Anchor, token, span);
        Place(token);
    }

    private void TakeAlias(AnchorAlias alias)
    {
        var span = SpanOf(alias);
        RefuseTab(span);
        if (_open.TryPeek(out var parent) && parent.AwaitsKey)
        {
            problems.Add(new ReadingProblem("An alias cannot stand for a key.", span, "Write the key out."));
        }

        if (!_anchors.CountAlias(span))
        {
            IsStopped = true;
        }

        var target = _anchors.Resolve(alias.Value, span);
        if (IsStopped || !Count(target.NodeCount, span) || !FitsDepth(target.Depth, span))
        {
            return;
        }

        Place(target with { Span = span });
    }

    private void TakeStart(NodeEvent start)
    {
        var span = SpanOf(start);
        if (!Count(1, span) || !FitsDepth(1, span))
        {
            return;
        }

        RefuseTag(start, span);
        RefuseTab(span);
        if (_open.TryPeek(out var parent) && parent.AwaitsKey)
        {
            problems.Add(new ReadingProblem("A key must be a single word or text, not a list or a group of keys.", span, "If a text begins with `[` or `{`, put it in quotes."));
        }

        _anchors.Open(start.Anchor, span);
        var isFlow = start is MappingStart { Style: MappingStyle.Flow } or SequenceStart { Style: SequenceStyle.Flow };
        _open.Push(new OpenCollection(start is MappingStart, isFlow, start.Anchor, span, problems));
    }

    private void TakeEnd(ParsingEvent end)
    {
        var collection = _open.Pop();
        var token = collection.Close(collection.IsFlow ? Closer(end, collection.IsMap ? '}' : ']') : null);
        _anchors.Define(collection.Anchor, token, collection.Span);
        Place(token);
    }

    // A pair without braces in a list in brackets has no closer of its own.
    private TextSpan? Closer(ParsingEvent end, char closer)
    {
        var offset = source.OffsetOf(end.Start.Line, end.Start.Column);
        return offset < source.Text.Length && source.Text[offset] == closer ? source.SpanOf(offset + 1, offset + 1) : null;
    }

    private void Place(YamlToken token)
    {
        if (_open.TryPeek(out var parent))
        {
            parent.Add(token);
        }
        else
        {
            Documents.Add(new YamlDocument(token, Documents.Count + 1));
        }
    }

    private bool Count(int nodes, TextSpan span)
    {
        _nodes += nodes;
        return _nodes <= ReadingLimits.Nodes || Stop(ReadingProblems.TooManyNodes(span));
    }

    private bool FitsDepth(int levels, TextSpan span) =>
        _open.Count + levels <= ReadingLimits.Depth || Stop(ReadingProblems.TooDeep(span));

    private bool Stop(ReadingProblem problem)
    {
        problems.Add(problem);
        IsStopped = true;
        return false;
    }

    private void RefuseTag(NodeEvent node, TextSpan span)
    {
        if (!node.Tag.IsEmpty)
        {
            problems.Add(ReadingProblems.Tag(span));
        }
    }

    // The parser takes a tab before the first key of a file and behind the dash of an entry, and counts it as one column.
    private void RefuseTab(TextSpan span)
    {
        if (!_hasTab || OpenBracket is not null)
        {
            return;
        }

        var lead = source.Line(span.Line).AsSpan(0, span.Column - 1);
        var tab = lead.IndexOf('\t');
        if (tab >= 0 && lead.Trim(" -\t").IsEmpty)
        {
            problems.Add(ReadingProblems.Tab(span.Line, tab + 1));
        }
    }

    private TextSpan SpanOf(ParsingEvent piece)
    {
        var start = source.OffsetOf(piece.Start.Line, piece.Start.Column);
        var end = source.OffsetOf(piece.End.Line, piece.End.Column);
        while (end > start && char.IsWhiteSpace(source.Text[end - 1]))
        {
            end--;
        }

        return source.SpanOf(start, Math.Clamp(end, Math.Min(start + 1, source.Text.Length), source.Text.Length));
    }

    // The parser ends a block scalar at the start of the line that follows it.
    private TextSpan Trimmed(Scalar scalar)
    {
        var start = source.OffsetOf(scalar.Start.Line, scalar.Start.Column);
        var end = source.OffsetOf(scalar.End.Line, scalar.End.Column);
        while (end > start && char.IsWhiteSpace(source.Text[end - 1]))
        {
            end--;
        }

        return source.SpanOf(start, Math.Max(start, end));
    }

    private static ScalarStyle StyleOf(YamlScalarStyle style) => style switch
    {
        YamlScalarStyle.SingleQuoted or YamlScalarStyle.DoubleQuoted => ScalarStyle.Quoted,
        YamlScalarStyle.Literal or YamlScalarStyle.Folded => ScalarStyle.Block,
        _ => ScalarStyle.Plain,
    };
}
