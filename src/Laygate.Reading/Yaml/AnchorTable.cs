using System.Globalization;
using YamlDotNet.Core;

namespace Laygate.Reading.Yaml;

/// <summary>The anchors of a document. Aliases are looked up while reading, so an anchor that is still open means a cycle.</summary>
internal sealed class AnchorTable(List<ReadingProblem> problems)
{
    private readonly Dictionary<string, (YamlToken? Token, TextSpan Span)> _anchors = new(StringComparer.Ordinal);
    private int _aliases;

    public void Clear() => _anchors.Clear();

    /// <summary>Remembers an anchor whose list or map is only beginning.</summary>
    public void Open(AnchorName anchor, TextSpan span)
    {
        if (anchor.IsEmpty)
        {
            return;
        }

        if (_anchors.TryGetValue(anchor.Value, out var first))
        {
            AddDuplicate(anchor.Value, span, first.Span);
        }

        _anchors[anchor.Value] = (null, span);
    }

    /// <summary>Remembers an anchor together with what it stands for.</summary>
    public void Define(AnchorName anchor, YamlToken token, TextSpan span)
    {
        if (anchor.IsEmpty)
        {
            return;
        }

        if (token is ScalarToken && _anchors.TryGetValue(anchor.Value, out var first))
        {
            AddDuplicate(anchor.Value, span, first.Span);
        }

        _anchors[anchor.Value] = (token, span);
    }

    /// <summary>Counts one alias more; false when there are too many.</summary>
    public bool CountAlias(TextSpan span)
    {
        if (++_aliases <= ReadingLimits.Aliases)
        {
            return true;
        }

        problems.Add(ReadingProblems.TooManyAliases(span));
        return false;
    }

    /// <summary>What an alias stands for; an empty text when it stands for nothing that can be used.</summary>
    public YamlToken Resolve(AnchorName alias, TextSpan span)
    {
        if (!_anchors.TryGetValue(alias.Value, out var found))
        {
            problems.Add(new ReadingProblem($"The alias `*{alias.Value}` has no anchor `&{alias.Value}` above it.", span, "Define the anchor first, or put quotes around a text that begins with `*`."));
        }
        else if (found.Token is null)
        {
            problems.Add(new ReadingProblem($"The alias `*{alias.Value}` stands inside its own anchor: the content would never end.", span, "Write the value out."));
        }

        return found.Token ?? new ScalarToken(string.Empty, ScalarStyle.Quoted, span);
    }

    private void AddDuplicate(string name, TextSpan span, TextSpan first) => problems.Add(new ReadingProblem(
        string.Create(CultureInfo.InvariantCulture, $"The anchor `&{name}` is defined here for the second time; the first is at line {first.Line}, column {first.Column}."),
        span,
        "Give each anchor its own name."));
}
