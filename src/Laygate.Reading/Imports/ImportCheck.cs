using System.Text;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Imports;

/// <summary>Holds imported entries against the schema of plans and what can be true in one, each value at its place in the file from outside.</summary>
internal static class ImportCheck
{
    // The smallest plan (docs/plan-format.md); nothing of it is written anywhere.
    private const string Smallest = "format: 1\nplan: { id: import, stage: concept }\ncourses: [{ id: course, mix: mix, thickness: 45 mm }]\n";

    /// <summary>What is wrong with entries.</summary>
    public static IReadOnlyList<ReadingProblem> Of(IReadOnlyList<ImportedEntry> entries, IReadOnlyList<string> path, PlanReader reader)
    {
        var smallest = YamlReader.Read(Encoding.UTF8.GetBytes(Smallest)).Documents[0];
        YamlToken value = new ListToken([.. entries.Select(Entry)], TextSpan.FileStart);
        foreach (var key in path.Skip(1).Reverse())
        {
            value = new MapToken([new MapEntry(Key(key, TextSpan.FileStart), value)], TextSpan.FileStart);
        }

        var root = (MapToken)smallest.Root;
        var document = smallest with { Root = new MapToken([.. root.Entries, new MapEntry(Key(path[0], TextSpan.FileStart), value)], root.Span) };
        var shape = PlanShape.Check(document, reader.Schema);
        return shape.Count > 0 ? shape : reader.ReadValues(document).Problems;
    }

    private static YamlToken Entry(ImportedEntry entry) => new MapToken(
        [.. entry.Values.Select(value => new MapEntry(Key(value.Key, value.Span), value.Ids.Count > 0 ? new ListToken([.. value.Ids.Select(id => Text(id, value.Span))], value.Span) : Text(value.Text, value.Span)))],
        entry.Values.Count > 0 ? entry.Values[0].Span : TextSpan.FileStart);

    private static ScalarToken Key(string key, TextSpan at) => new(key, ScalarStyle.Plain, at);

    // Only plain digits count as a number, and only they are written plain; a word such as `null` is a text here.
    private static ScalarToken Text(string text, TextSpan at) => new(text, ImportTexts.IsPlainNumber(text) ? ScalarStyle.Plain : ScalarStyle.Quoted, at);
}
