using System.Globalization;

namespace Laygate.Reading.Schema;

/// <summary>Says in words what a schema asks for.</summary>
internal static class Needs
{
    private const int MostWords = 8;

    /// <summary>The kinds of value allowed, alternatives and definitions included; none means all.</summary>
    public static ValueKinds KindsOf(SchemaNode node)
    {
        var allowed = ValueKinds.None;
        foreach (var part in node.Conjuncts)
        {
            var kinds = part.Kinds;
            if (kinds == ValueKinds.None && part.Alternatives.Count > 0 && part.Alternatives.All(branch => KindsOf(branch) != ValueKinds.None))
            {
                kinds = part.Alternatives.Aggregate(ValueKinds.None, (all, branch) => all | KindsOf(branch));
            }

            if (kinds == ValueKinds.None)
            {
                continue;
            }

            allowed = allowed == ValueKinds.None ? kinds : allowed & kinds;
        }

        return allowed;
    }

    /// <summary>"a length such as `40 mm`", "a list", "one of `a` and `b`", "this or that".</summary>
    public static string Of(SchemaNode node)
    {
        if (Words(node) is { Count: > 0 } words)
        {
            return words.Count == 1 ? $"the word `{words[0]}`" : $"one of {Listed(words)}";
        }

        var examples = Examples(node);
        var noun = node.Conjuncts.Select(part => part.Title).FirstOrDefault(title => title is not null);
        if (noun is null && examples.Count == 0 && Branches(node) is { Count: > 0 } branches)
        {
            return string.Join(" or ", branches.Select(Of).Distinct(StringComparer.Ordinal));
        }

        return WithExamples(noun is null ? Kind(KindsOf(node)) : WithArticle(noun), examples);
    }

    public static IReadOnlyList<string> Words(SchemaNode node) =>
        node.Conjuncts.Select(part => part.Words).FirstOrDefault(words => words.Count > 0) ?? [];

    public static IReadOnlyList<string> Examples(SchemaNode node) =>
        node.Conjuncts.Select(part => part.Examples).FirstOrDefault(examples => examples.Count > 0) ?? [];

    /// <summary>The first sentence of the description, without its full stop; empty when there is none.</summary>
    public static string FirstSentence(SchemaNode node)
    {
        var text = node.Conjuncts.Select(part => part.Description).FirstOrDefault(description => description is not null);
        if (text is null)
        {
            return string.Empty;
        }

        var end = text.IndexOf(". ", StringComparison.Ordinal);
        return (end < 0 ? text : text[..end]).TrimEnd('.', ' ');
    }

    public static string Listed(IReadOnlyList<string> words)
    {
        var quoted = words.Take(MostWords).Select(word => $"`{word}`").ToList();
        if (words.Count > MostWords)
        {
            return string.Create(CultureInfo.InvariantCulture, $"{string.Join(", ", quoted)} and {words.Count - MostWords} more");
        }

        return quoted.Count == 1 ? quoted[0] : $"{string.Join(", ", quoted.SkipLast(1))} and {quoted[^1]}";
    }

    public static string WithArticle(string noun) =>
        noun.Length > 0 && "aeiou".Contains(char.ToLowerInvariant(noun[0]), StringComparison.Ordinal) ? $"an {noun}" : $"a {noun}";

    private static List<SchemaNode> Branches(SchemaNode node) => node.Conjuncts.SelectMany(part => part.Alternatives).ToList();

    private static string WithExamples(string noun, IReadOnlyList<string> examples) =>
        examples.Count == 0 ? noun : $"{noun} such as {string.Join(" or ", examples.Take(2).Select(example => $"`{example}`"))}";

    /// <summary>The kinds of value in words.</summary>
    public static string Kind(ValueKinds kinds) => kinds switch
    {
        ValueKinds.Map => "a group of keys",
        ValueKinds.List => "a list",
        ValueKinds.Text => "a text",
        ValueKinds.WholeNumber => "a whole number",
        ValueKinds.Number or (ValueKinds.Number | ValueKinds.WholeNumber) => "a number",
        ValueKinds.Null => "nothing",
        ValueKinds.Text | ValueKinds.WholeNumber or ValueKinds.Text | ValueKinds.WholeNumber | ValueKinds.Number => "a text or a number",
        _ => "another kind of value",
    };
}
