using Laygate.Reading.Yaml;

namespace Laygate.ConformanceTests.Faults;

/// <summary>A change to a plan, to be planted in its text.</summary>
/// <param name="Id">Id of the change.</param>
/// <param name="Plan">Name of the plan.</param>
/// <param name="Family">Family of faults, or kind of harmless changes.</param>
/// <param name="What">What is changed, in words.</param>
/// <param name="Expected">Statuses that a careful reader would give, the first one first; empty for a harmless change.</param>
/// <param name="Text">The changed plan.</param>
internal sealed record Fault(string Id, string Plan, string Family, string What, IReadOnlyList<string> Expected, string Text)
{
    /// <summary>Whether a warning is not enough.</summary>
    public bool MustFail => Expected.Count > 0 && !Expected.Contains("warn", StringComparer.Ordinal);
}

/// <summary>The lists of faults and harmless changes, read from their files.</summary>
internal static class FaultLists
{
    private const string Folder = "tests/Laygate.ConformanceTests/Faults";

    public static string PathOf(string file) => $"{Folder}/{file}";

    public static IReadOnlyList<Fault> First { get; } = Load("faults.yaml");

    public static IReadOnlyList<Fault> More { get; } = Load("more-faults.yaml");

    public static IReadOnlyList<Fault> Harmless { get; } = Load("harmless.yaml");

    public static IReadOnlyList<Fault> Faults { get; } = [.. First, .. More];

    /// <summary>The entries of a list in a file beside this one.</summary>
    public static IReadOnlyList<MapToken> Entries(string file)
    {
        var path = Path.Combine(Repository.Root, Folder, file);
        var read = YamlReader.Read(File.ReadAllBytes(path), "list");
        Assert.Empty(read.Problems);
        return [.. ((ListToken)Assert.Single(read.Documents).Root).Items.Cast<MapToken>()];
    }

    public static string? Text(MapToken entry, string key) => (entry[key] as ScalarToken)?.Text;

    public static IReadOnlyList<string> Texts(MapToken entry, string key) => entry[key] switch
    {
        ScalarToken one => [one.Text],
        ListToken list => [.. list.Items.Cast<ScalarToken>().Select(item => item.Text)],
        _ => [],
    };

    public static string TextOfPlan(string plan) => File.ReadAllText(Path.Combine(Repository.Root, Folder, "plans", plan + ".yaml"));

    private static List<Fault> Load(string file) => [.. Entries(file).Select(entry => new Fault(
        Text(entry, "id")!,
        Text(entry, "plan")!,
        Text(entry, "family") ?? Text(entry, "kind")!,
        Text(entry, "fault") ?? Text(entry, "change")!,
        Text(entry, "expected")?.Split('/') ?? [],
        Changed(entry, TextOfPlan(Text(entry, "plan")!))))];

    private static string Changed(MapToken entry, string text)
    {
        if (Text(entry, "comments") is "yes")
        {
            return string.Join('\n', text.Split('\n').SelectMany(line => new[] { "# a remark", line }));
        }

        var plan = PlanText.Read(text);
        foreach (var edit in (entry["edits"] as ListToken)?.Items.Cast<MapToken>() ?? [])
        {
            plan = PlanText.Set(plan, Text(edit, "at")!, Text(edit, "remove") is null ? Plain(edit["to"]!) : null);
        }

        return PlanText.Write(Text(entry, "reverse") is { } path ? PlanText.Reversed(plan, path) : plan);
    }

    // The lists quote what would be a number or a flag to a reader of them; in a plan it stands as it is.
    private static YamlToken Plain(YamlToken value) => value switch
    {
        ScalarToken scalar => scalar with { Style = scalar.Text.Contains(": ", StringComparison.Ordinal) || scalar.Text.Contains(" #", StringComparison.Ordinal) ? ScalarStyle.Quoted : ScalarStyle.Plain },
        ListToken list => new ListToken([.. list.Items.Select(Plain)], list.Span),
        MapToken map => new MapToken([.. map.Entries.Select(entry => entry with { Value = Plain(entry.Value) })], map.Span),
        _ => value,
    };
}
