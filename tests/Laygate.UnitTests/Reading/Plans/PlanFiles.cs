using System.Text;
using System.Text.RegularExpressions;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Plans;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.UnitTests.Reading.Plans;

/// <summary>The plan with every key, and changed copies of it.</summary>
internal static partial class PlanFiles
{
    public static string EveryKey { get; } = File.ReadAllText(Path.Combine(SourceTree.Root, "tests", "Laygate.UnitTests", "Reading", "Plans", "every-key.yaml"));

    public static string SchemaText { get; } = File.ReadAllText(Path.Combine(SourceTree.Root, "schemas", "plan.schema.json"));

    public static LoadedSchema Schema { get; } = SchemaLoader.Load(SchemaText);

    /// <summary>The plan with every key, in which one text that occurs once is replaced.</summary>
    public static string Changed(string old, string replacement, string? text = null)
    {
        text ??= EveryKey;
        var first = text.IndexOf(old, StringComparison.Ordinal);
        Assert.True(first >= 0, $"Not in the plan: {old}");
        Assert.True(text.IndexOf(old, first + 1, StringComparison.Ordinal) < 0, $"More than once in the plan: {old}");
        return text.Replace(old, replacement, StringComparison.Ordinal);
    }

    public static YamlDocument Read(string text)
    {
        var result = YamlReader.Read(Encoding.UTF8.GetBytes(text));
        Assert.Empty(result.Problems);
        return Assert.Single(result.Documents);
    }

    public static PlanMapping Map(string text) => PlanMapper.Map(Read(text));

    public static Plan Plan(string text)
    {
        var mapping = Map(text);
        Assert.Empty(mapping.Problems);
        return mapping.Plan!;
    }

    public static IReadOnlyList<ReadingProblem> Contradictions(string text)
    {
        var mapping = Map(text);
        Assert.Empty(mapping.Problems);
        return PlanConsistency.Check(mapping.Plan!, mapping.Positions);
    }

    /// <summary>Problems of the first stage that has any: reading, schema, mapping, consistency.</summary>
    public static IReadOnlyList<ReadingProblem> Problems(string text)
    {
        var reading = YamlReader.Read(Encoding.UTF8.GetBytes(text));
        if (!reading.IsSound)
        {
            return reading.Problems;
        }

        var shape = PlanShape.Check(reading.Documents[0], Schema);
        if (shape.Count > 0)
        {
            return shape;
        }

        var mapping = PlanMapper.Map(reading.Documents[0]);
        return mapping.Plan is null ? mapping.Problems : PlanConsistency.Check(mapping.Plan, mapping.Positions);
    }

    /// <summary>Line and column of the first occurrence of a text, counted from 1.</summary>
    public static (int Line, int Column) Place(string text, string part)
    {
        var at = text.IndexOf(part, StringComparison.Ordinal);
        Assert.True(at >= 0, $"Not in the plan: {part}");
        var before = text[..at];
        return (before.Count(letter => letter == '\n') + 1, at - before.LastIndexOf('\n'));
    }

    /// <summary>Every number of the plan with every key, with its unit: the keys that lead to it and where it stands.</summary>
    public static IEnumerable<(string Path, TextSpan Span)> Numbers() => Numbers(Read(EveryKey).Root, string.Empty);

    /// <summary>A text in one line of the plan with every key.</summary>
    public static string TextAt(TextSpan span) => EveryKey.Split('\n')[span.Line - 1][(span.Column - 1)..(span.EndColumn - 1)];

    private static IEnumerable<(string Path, TextSpan Span)> Numbers(YamlToken token, string path) => token switch
    {
        MapToken map => map.Entries.SelectMany(entry => Numbers(entry.Value, path.Length == 0 ? entry.Key.Text : $"{path}/{entry.Key.Text}")),
        ListToken list => list.Items.SelectMany(item => Numbers(item, path)),
        ScalarToken scalar when IsNumber(scalar.Text) => [(path, scalar.Span)],
        _ => [],
    };

    private static bool IsNumber(string text) => Number().Match(text) is { Success: true } match && (match.Groups["unit"].Value is var unit && (unit.Length == 0 || UnitTable.Find(unit) is not null));

    [GeneratedRegex("^[+-]?[0-9]+([.][0-9]+)?( (?<unit>.+))?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Number();
}
