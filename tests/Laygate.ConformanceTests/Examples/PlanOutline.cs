using YamlDotNet.RepresentationModel;

namespace Laygate.ConformanceTests.Examples;

/// <summary>What stands at a place of a plan, found with the YAML library's own node reader and none of our code.</summary>
internal sealed class PlanOutline
{
    private readonly Dictionary<(int Line, int Column), Spot> spots = [];
    private readonly string[] lines;

    private PlanOutline(string text, YamlNode root)
    {
        lines = text.Split('\n');
        Root = root;
        Visit(root, []);
    }

    /// <summary>The plan itself.</summary>
    public YamlNode Root { get; }

    public static PlanOutline Of(string text)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(text));
        return new PlanOutline(text, Assert.Single(stream.Documents).RootNode);
    }

    /// <summary>The key, or the value without keys of its own, that begins exactly there; null when none does.</summary>
    public Spot? At(int line, int column) => spots.GetValueOrDefault((line, column));

    /// <summary>The characters of one line, the end not included.</summary>
    public string Text(int line, int column, int end) => lines[line - 1][(column - 1)..(end - 1)];

    /// <summary>By what an entry of a list is named: its id, course or station, or itself.</summary>
    public static string Name(YamlNode item) => item switch
    {
        YamlMappingNode map => new[] { "id", "course", "at" }.Select(key => Child(map, key)).OfType<YamlScalarNode>().FirstOrDefault()?.Value ?? "?",
        YamlScalarNode scalar => scalar.Value ?? string.Empty,
        _ => "?",
    };

    /// <summary>The value of a key, or the entry of a list with that name.</summary>
    public static YamlNode? Child(YamlNode node, string name) => node switch
    {
        YamlMappingNode map => map.Children.FirstOrDefault(pair => pair.Key is YamlScalarNode key && string.Equals(key.Value, name, StringComparison.Ordinal)).Value,
        YamlSequenceNode list => list.Children.FirstOrDefault(item => string.Equals(Name(item), name, StringComparison.Ordinal)),
        _ => null,
    };

    private void Visit(YamlNode node, IReadOnlyList<string> path)
    {
        switch (node)
        {
            case YamlMappingNode map:
                foreach (var (key, value) in map.Children)
                {
                    IReadOnlyList<string> below = [.. path, ((YamlScalarNode)key).Value!];
                    // The first key of a list entry stands for the entry too.
                    Add(key, new Spot(below, value, IsKey: true, StartsEntry: ReferenceEquals(key, map.Children[0].Key)));
                    Visit(value, below);
                }

                break;
            case YamlSequenceNode list:
                foreach (var item in list.Children)
                {
                    Visit(item, [.. path, Name(item)]);
                }

                break;
            case YamlScalarNode scalar:
                Add(scalar, new Spot(path, scalar, IsKey: false, StartsEntry: false));
                break;
        }
    }

    private void Add(YamlNode node, Spot spot) => spots[((int)node.Start.Line, (int)node.Start.Column)] = spot with { Text = ((YamlScalarNode)node).Value! };
}

/// <summary>A key or value of a plan.</summary>
/// <param name="Path">Keys and names of list entries from the top, its own last.</param>
/// <param name="Value">The value.</param>
/// <param name="IsKey">Whether the key stands there, not the value.</param>
/// <param name="StartsEntry">Whether it is the first key of its group.</param>
internal sealed record Spot(IReadOnlyList<string> Path, YamlNode Value, bool IsKey, bool StartsEntry)
{
    /// <summary>What is written there, without quotes.</summary>
    public string Text { get; init; } = string.Empty;
}
