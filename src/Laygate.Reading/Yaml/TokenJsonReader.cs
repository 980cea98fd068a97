using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Newtonsoft.Json;

namespace Laygate.Reading.Yaml;

/// <summary>
/// Lets JSON tools read a token tree. It tells lines and columns of the YAML file, so that whatever is built from it,
/// and every error found in that, knows its place.
/// </summary>
public sealed class TokenJsonReader : JsonReader, IJsonLineInfo
{
    private readonly Stack<Level> _levels = new();
    private YamlToken? _next;
    private YamlToken _current;

    /// <summary>Reads a tree from its top token.</summary>
    /// <param name="root">The top token.</param>
    public TokenJsonReader(YamlToken root)
    {
        _next = root;
        _current = root;
        MaxDepth = ReadingLimits.Depth + 1;
    }

    /// <inheritdoc />
    public int LineNumber => _current.Span.Line;

    /// <inheritdoc />
    public int LinePosition => _current.Span.Column;

    /// <inheritdoc />
    public bool HasLineInfo() => true;

    /// <inheritdoc />
    public override bool Read()
    {
        if (_next is { } token)
        {
            return Begin(token);
        }

        if (!_levels.TryPeek(out var level))
        {
            return false;
        }

        if (level.MoveNext(out var key, out var value))
        {
            return Continue(key, value);
        }

        _levels.Pop();
        _current = level.Token;
        SetToken(level.Token is MapToken ? JsonToken.EndObject : JsonToken.EndArray);
        return true;
    }

    private bool Continue(ScalarToken? key, YamlToken value)
    {
        if (key is null)
        {
            return Begin(value);
        }

        _next = value;
        _current = key;
        SetToken(JsonToken.PropertyName, key.Text);
        return true;
    }

    private bool Begin(YamlToken token)
    {
        _next = null;
        _current = token;
        if (token is ScalarToken scalar)
        {
            SetScalar(scalar);
        }
        else
        {
            _levels.Push(new Level(token));
            SetToken(token is MapToken ? JsonToken.StartObject : JsonToken.StartArray);
        }

        return true;
    }

    private void SetScalar(ScalarToken scalar)
    {
        switch (scalar.Kind)
        {
            case ScalarKind.Null:
                SetToken(JsonToken.Null);
                break;
            case ScalarKind.WholeNumber:
                SetToken(JsonToken.Integer, long.Parse(scalar.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture));
                break;
            case ScalarKind.DecimalNumber:
                SetToken(JsonToken.Float, decimal.Parse(scalar.Text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture));
                break;
            default:
                SetToken(JsonToken.String, scalar.Text);
                break;
        }
    }

    private sealed class Level(YamlToken token)
    {
        private int _index;

        public YamlToken Token => token;

        public bool MoveNext(out ScalarToken? key, [NotNullWhen(true)] out YamlToken? value)
        {
            (key, value) = token switch
            {
                MapToken map when _index < map.Entries.Count => (map.Entries[_index].Key, map.Entries[_index].Value),
                ListToken list when _index < list.Items.Count => (null, list.Items[_index]),
                _ => (null, (YamlToken?)null),
            };
            _index++;
            return value is not null;
        }
    }
}
