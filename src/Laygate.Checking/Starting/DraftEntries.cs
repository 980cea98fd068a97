using System.Globalization;
using Laygate.Reading.Plans;
using Laygate.Reading.Schema;

namespace Laygate.Checking.Starting;

/// <summary>Adds entries of a kind to lists of a draft: a part of the firm's where one fits, else an entry with blanks.</summary>
internal sealed class DraftEntries(LoadedSchema schema, FirmParts parts)
{
    private static readonly string[] KindKeys = ["kind", "event", "task", "step", "substance"];

    /// <summary>Adds an entry.</summary>
    /// <param name="plan">The draft.</param>
    /// <param name="list">Keys of the list from the top of the plan, with dots.</param>
    /// <param name="kinds">Kinds of which one will do, as the remark names them.</param>
    /// <param name="fields">Keys that it needs, as the remark names them.</param>
    /// <param name="address">The element that asks for it.</param>
    /// <returns>Whether one was added; not where one of these kinds is there.</returns>
    public bool Add(DraftMap plan, string list, string kinds, string fields, string address)
    {
        string[] words = kinds.Split("` or `");
        var (holder, key, node) = Find(plan, list);
        if (holder is null || node is null || SchemaKeys.Item(node) is not { } item)
        {
            return false;
        }

        if (Needs.Words(item).Contains(words[0], StringComparer.Ordinal))
        {
            return AddWord(holder.List(key), item, words[0]);
        }

        var kindKey = KindKeys.FirstOrDefault(name => DraftPlaces.Find(item, name) is { } choice && Needs.Words(choice).Contains(words[0], StringComparer.Ordinal));
        if (kindKey is null)
        {
            return false;
        }

        var entriesThere = holder.List(key);
        var run = address.StartsWith("run:", StringComparison.Ordinal) && DraftPlaces.Find(item, "run") is not null ? address["run:".Length..] : null;
        if (entriesThere.Items.Exists(entry => IsOf(entry, key, kindKey, words) && (run is null || entry is not DraftMap of || (of["run"] as DraftText)?.Text is not { } its || string.Equals(its, run, StringComparison.Ordinal))))
        {
            return false;
        }

        if (parts.With(key, kindKey, words).FirstOrDefault() is { } part)
        {
            entriesThere.Items.Add(new DraftText(part));
            return true;
        }

        var made = DraftMap.Of(("id", FreeId(entriesThere, words[0])), (kindKey, words[0]));
        if (run is not null)
        {
            made.Set("run", new DraftText(run));
        }

        foreach (var field in fields.Split([", ", " and "], StringSplitOptions.RemoveEmptyEntries))
        {
            if (made[field] is null && DraftPlaces.Find(item, field) is { } inner)
            {
                made.Set(field, DraftPlaces.Blank(inner));
            }
        }

        entriesThere.Items.Add(made);
        return true;
    }

    // A list of words says what is done; that it is done, only a person can say.
    private static bool AddWord(DraftList list, SchemaNode item, string word)
    {
        var asked = $"{word}, if that is done: {BlankRemark.OfWord(item, word)}";
        if (list.Items.Exists(entry => entry is DraftText text && (text.Text is { } known ? string.Equals(known, word, StringComparison.Ordinal) : string.Equals(text.Asked, asked, StringComparison.Ordinal))))
        {
            return false;
        }

        var free = list.Items.OfType<DraftText>().FirstOrDefault(text => text is { Text: null, Asked: null });
        if (free is null)
        {
            list.Items.Add(free = DraftText.Blank);
        }

        free.Asked = asked;
        return true;
    }

    private (DraftMap? Holder, string Key, SchemaNode? Node) Find(DraftMap plan, string list)
    {
        var (holder, node) = (plan, schema.Root);
        var way = list.Split('.');
        foreach (var key in way[..^1])
        {
            if (DraftPlaces.Find(node, key) is not { } inner)
            {
                return (null, key, null);
            }

            (holder, node) = (holder.Group(key), inner);
        }

        return (holder, way[^1], DraftPlaces.Find(node, way[^1]));
    }

    private bool IsOf(DraftNode entry, string list, string kindKey, string[] words) => entry switch
    {
        DraftText { Text: { } id } => parts.With(list, kindKey, words).Contains(id, StringComparer.Ordinal),
        DraftMap map when (map[kindKey] as DraftText)?.Text is { } word => words.Contains(word, StringComparer.Ordinal),
        DraftMap map when (map["part"] as DraftText)?.Text is { } id => parts.With(list, kindKey, words).Contains(id, StringComparer.Ordinal),
        _ => false,
    };

    private static string FreeId(DraftList list, string word)
    {
        var id = word;
        for (var number = 2; list.IndexOf(id) >= 0; number++)
        {
            id = string.Create(CultureInfo.InvariantCulture, $"{word}-{number}");
        }

        return id;
    }
}
