using Laygate.Reading.Yaml;

namespace Laygate.Reading.Schema;

/// <summary>Words problems with the keys of one map.</summary>
internal sealed class KeyWording(KeyPlaces places, SchemaNode node, MapToken map, NamedPlace place)
{
    private const int MostKeys = 12;

    private readonly List<string> _free = node.Properties.Keys.Where(known => map.Find(known) is null).ToList();

    /// <summary>The keys that an unknown one may have been meant for; those already given are not.</summary>
    public IReadOnlyList<string> MeantBy(ScalarToken key) => NearestNames.Of(key.Text, _free);

    public ReadingProblem Unknown(ScalarToken key, bool withAdvice) => new(
        node.KeyPattern is null || node.Properties.Count > 0
            ? $"{TokenNames.Quote(key.Text)} is not a key of {place.Label}."
            : $"{TokenNames.Quote(key.Text)} cannot be a name here.",
        key.Span,
        withAdvice ? Advice(key) : null);

    public ReadingProblem Missing(string key)
    {
        var property = node.Properties.GetValueOrDefault(key);
        var meaning = property is null ? string.Empty : Needs.FirstSentence(property);
        var example = property is null ? null : Needs.Examples(property).Concat(Needs.Words(property)).FirstOrDefault();
        return new ReadingProblem(
            meaning.Length > 0 ? $"{place.Capital} lacks the key `{key}`: {Uncapital(meaning)}." : $"{place.Capital} lacks the key `{key}`.",
            place.Anchor,
            example is null ? $"Add `{key}:`." : $"Add it, for example `{key}: {example}`.");
    }

    private string? Advice(ScalarToken key)
    {
        if (MeantBy(key) is { Count: > 0 } near)
        {
            return NearestNames.Asked(near);
        }

        if (places.Of(key.Text) is { Count: > 0 } elsewhere)
        {
            return $"It belongs {string.Join(" or ", elsewhere)}.";
        }

        if (node.Properties.Count is > 0 and <= MostKeys)
        {
            return $"Known here: {Needs.Listed([.. node.Properties.Keys])}.";
        }

        return node.Properties.Count == 0 && node.KeyPattern is null ? "Remove it." : null;
    }

    // Descriptions begin with a capital; an abbreviation keeps it.
    private static string Uncapital(string text) =>
        text.Length > 1 && char.IsUpper(text[0]) && char.IsLower(text[1]) ? string.Concat(text[..1].ToLowerInvariant(), text[1..]) : text;
}
