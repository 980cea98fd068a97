using System.Text;
using Laygate.Checking.Scaffolding;
using Laygate.Model.Measures;
using Laygate.Reading.Measures;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Reading.Schema;

namespace Laygate.Checking.Starting;

/// <summary>Writes a draft as YAML: keys in the order of the schema, beside each blank what belongs there.</summary>
/// <param name="schema">The schema of plans.</param>
/// <param name="units">Units of the examples.</param>
internal sealed class DraftWriter(LoadedSchema schema, UnitSystem units)
{
    /// <summary>Columns that one line takes at most where keys stand side by side.</summary>
    private const int LongestLine = 110;

    /// <summary>Columns up to which remarks begin below each other.</summary>
    private const int RemarkColumn = 34;

    private readonly StringBuilder text = new();
    private DraftMap whole = new();
    private Func<SchemaNode, string, string>? fill;

    /// <summary>Writes a plan.</summary>
    /// <param name="plan">The draft.</param>
    /// <param name="filled">What to write in place of a blank, by what stands there and its path; null: the blank with a remark.</param>
    public string Write(DraftMap plan, Func<SchemaNode, string, string>? filled = null)
    {
        text.Clear();
        (whole, fill) = (plan, filled);
        Map(plan, schema.Root, string.Empty, string.Empty, isFirstGiven: false);
        return text.ToString();
    }

    /// <summary>Writes entries of a list of a plan, without the key above them.</summary>
    /// <param name="entries">The entries.</param>
    /// <param name="list">Key of the list at the top of a plan.</param>
    /// <param name="indent">Blanks before each line.</param>
    /// <param name="plan">The plan to which they belong.</param>
    public string Entries(IEnumerable<DraftNode> entries, string list, int indent, DraftMap plan)
    {
        text.Clear();
        (whole, fill) = (plan, null);
        var node = SchemaKeys.Item(DraftPlaces.Find(schema.Root, list)!)!;
        foreach (var entry in entries)
        {
            Item(entry, node, list, new string(' ', indent));
        }

        return text.ToString();
    }

    private void Map(DraftMap map, SchemaNode node, string path, string indent, bool isFirstGiven)
    {
        var isFirst = isFirstGiven;
        foreach (var (key, value) in InOrder(map, node))
        {
            text.Append(isFirst ? string.Empty : indent).Append(key).Append(':');
            isFirst = false;
            Value(value, DraftPlaces.Find(node, key), path.Length == 0 ? key : $"{path}.{key}", indent);
        }
    }

    private void Value(DraftNode value, SchemaNode? node, string path, string indent)
    {
        switch (value)
        {
            case DraftText scalar:
                Scalar(scalar, node, path);
                break;
            case DraftMap map when OneLine(map, node, path, indent.Length + path.Length) is { } line:
                text.Append(' ').Append(line).Append('\n');
                break;
            case DraftMap map:
                text.Append('\n');
                Map(map, node!, path, indent + "  ", isFirstGiven: false);
                break;
            // Measures stand on lines of their own: more are added behind the last one.
            case DraftList { Items: var items } when path is not PartKinds.Measures && items.TrueForAll(item => item is DraftText { Text: not null }):
                text.Append(" [").AppendJoin(", ", items.Select(item => Shown(((DraftText)item).Text!, node is null ? null : SchemaKeys.Item(node)))).Append("]\n");
                break;
            case DraftList list:
                text.Append('\n');
                foreach (var item in list.Items)
                {
                    Item(item, SchemaKeys.Item(node!)!, path, indent + "  ");
                }

                break;
        }
    }

    private void Item(DraftNode item, SchemaNode node, string path, string indent)
    {
        text.Append(indent).Append('-');
        if (item is DraftText scalar)
        {
            Scalar(scalar, node, path);
        }
        else if (item is DraftMap map && OneLine(map, node, path, indent.Length) is { } line)
        {
            text.Append(' ').Append(line).Append('\n');
        }
        else if (item is DraftMap block)
        {
            text.Append(' ');
            Map(block, node, path, indent + "  ", isFirstGiven: true);
        }
    }

    private void Scalar(DraftText scalar, SchemaNode? node, string path)
    {
        if (scalar.Text is { } known)
        {
            text.Append(' ').Append(Shown(known, node));
            if (fill is null && path is "measures.kind" && BlankRemark.OfWord(node!, known) is { } meaning)
            {
                Remark(meaning);
            }

            text.Append('\n');
        }
        else if (fill is not null)
        {
            text.Append(' ').Append(Shown(scalar.Asked?.Split(',')[0] ?? fill(node!, path), node)).Append('\n');
        }
        else
        {
            text.Append(' ').Append(Blanks.Mark);
            Remark($"{(DraftReferences.Ids(whole, path) is { Count: > 0 } ids ? string.Join(", ", ids) : scalar.Asked ?? BlankRemark.Of(node!, path, units))}{(scalar.OnlyWhere is { } where ? $"; {where}" : string.Empty)}");
            text.Append('\n');
        }
    }

    // Remarks begin below each other where the lines before them are short enough.
    private void Remark(string remark)
    {
        var start = text.Length;
        while (start > 0 && text[start - 1] != '\n')
        {
            start--;
        }

        text.Append(' ', Math.Max(1, RemarkColumn - (text.Length - start))).Append("# ").Append(remark);
    }

    // Groups whose values are all known and short stand on one line.
    private string? OneLine(DraftMap map, SchemaNode? node, string path, int used)
    {
        if (fill is not null || map.Entries.Count == 0 || (path.IndexOf('.', StringComparison.Ordinal) < 0 && !path.EndsWith('s') && map.Entries.Count > 4))
        {
            return null;
        }

        var parts = new List<string>();
        foreach (var (key, value) in InOrder(map, node!))
        {
            var inner = DraftPlaces.Find(node!, key);
            var shown = value switch
            {
                DraftText { Text: { } known } => Shown(known, inner),
                DraftList { Items: var items } when items.TrueForAll(item => item is DraftText { Text: not null }) => $"[{string.Join(", ", items.Select(item => Shown(((DraftText)item).Text!, SchemaKeys.Item(inner!))))}]",
                DraftMap { Entries.Count: > 0 } group => OneLine(group, inner, $"{path}.{key}", used),
                _ => null,
            };
            if (shown is null)
            {
                return null;
            }

            parts.Add($"{key}: {shown}");
        }

        var line = $"{{ {string.Join(", ", parts)} }}";
        return used + line.Length <= LongestLine ? line : null;
    }

    // Words, counts and flags as they are; any other text in quotation marks where it could be taken for something else.
    private static string Shown(string known, SchemaNode? node) =>
        node is not null && (Needs.Words(node).Count > 0 || Needs.KindsOf(node) == ValueKinds.WholeNumber) ? known
        : MeasureText.Split(known) is not null || IsTime(known) ? known
        : NewEntry.Scalar(known);

    private static bool IsTime(string known) => known.Length > 1 && char.IsAsciiDigit(known[0]) && known.All(letter => char.IsAsciiDigit(letter) || letter is '-' or ':' or 'T') && (known.Contains('-', StringComparison.Ordinal) || known.Contains(':', StringComparison.Ordinal));

    private static IEnumerable<KeyValuePair<string, DraftNode>> InOrder(DraftMap map, SchemaNode node)
    {
        var order = SchemaKeys.Properties(node).Select((property, index) => (property.Key, index)).ToDictionary(pair => pair.Key, pair => pair.index, StringComparer.Ordinal);
        return map.Entries.OrderBy(entry => entry.Key switch
        {
            PartKinds.Reference => -1,
            PartKinds.Uses => 1,
            _ => order.GetValueOrDefault(entry.Key, int.MaxValue) * 2,
        });
    }
}
