namespace Laygate.Reading.Parts;

/// <summary>A kind of part: a list of files of parts, and the place in a plan where such a part is used.</summary>
/// <param name="List">Key of the list in a file of parts, such as <c>rollers</c>.</param>
/// <param name="Path">Keys that lead to the place in a plan.</param>
/// <param name="IsList">Whether a list of entries stands there; else a single group.</param>
internal sealed record PartKind(string List, IReadOnlyList<string> Path, bool IsList = true);

/// <summary>What a file of parts may hold.</summary>
internal static class PartKinds
{
    /// <summary>The key by which an entry names its part.</summary>
    public const string Reference = "part";

    /// <summary>The key under which files are named.</summary>
    public const string Uses = "uses";

    /// <summary>The entry of a plan that stands for every measure of its files that applies to it.</summary>
    public const string ThatApply = "that-apply";

    /// <summary>The key of a measure in a file of parts that says when it applies.</summary>
    public const string AppliesWhen = "applies_when";

    /// <summary>Kind of the parts that say when they apply.</summary>
    public const string Measures = "measures";

    /// <summary>Most parts that one is made of in turn, where it asks when it applies: judgement, a firm has two or three.</summary>
    public const int LongestChain = 50;

    /// <summary>All kinds.</summary>
    public static IReadOnlyList<PartKind> All { get; } =
    [
        new("people", ["plan", "people"]),
        new("mixes", ["mixes"]),
        new("plants", ["supply", "plants"]),
        new("trucks", ["supply", "trucks"]),
        new("feeders", ["supply", "feeder"], IsList: false),
        new("pavers", ["pavers"]),
        new("rollers", ["rolling", "rollers"]),
        new("tests", ["tests"]),
        new("hold_points", ["hold_points"]),
        new("contingencies", ["contingencies"]),
        new(Measures, [Measures]),
        new("learnt", ["learnt"]),
    ];
}
