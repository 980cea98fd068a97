namespace Laygate.Reading.Schema;

/// <summary>The kinds of value that a schema may allow. Truth values are missing on purpose: no plain word becomes one.</summary>
[Flags]
internal enum ValueKinds
{
    None = 0,
    Map = 1,
    List = 2,
    Text = 4,
    WholeNumber = 8,
    Number = 16,
    Null = 32,
}

/// <summary>One schema as written, with its annotations; the base of all wording.</summary>
internal sealed class SchemaNode
{
    /// <summary>The kinds allowed; none stated means all.</summary>
    public ValueKinds Kinds { get; set; }

    public Dictionary<string, SchemaNode> Properties { get; } = new(StringComparer.Ordinal);

    public List<string> Required { get; } = [];

    public bool AllowsOtherKeys { get; set; } = true;

    public SchemaPattern? KeyPattern { get; set; }

    public SchemaNode? KeyPatternValue { get; set; }

    public SchemaNode? Item { get; set; }

    public int? MinItems { get; set; }

    public int? MaxItems { get; set; }

    public bool UniqueItems { get; set; }

    public List<string> Words { get; } = [];

    public SchemaPattern? Pattern { get; set; }

    public int? MinLength { get; set; }

    public int? MaxLength { get; set; }

    public decimal? Minimum { get; set; }

    public decimal? Maximum { get; set; }

    public decimal? ExclusiveMinimum { get; set; }

    public decimal? ExclusiveMaximum { get; set; }

    public List<SchemaNode> AnyOf { get; } = [];

    public List<SchemaNode> OneOf { get; } = [];

    public List<SchemaNode> AllOf { get; } = [];

    public SchemaNode? Not { get; set; }

    /// <summary>The name of the definition that stands here instead; set alone.</summary>
    public string? Reference { get; set; }

    /// <summary>What <see cref="Reference"/> names; looked up when all definitions are read, so that they may refer to each other.</summary>
    public SchemaNode? Target { get; set; }

    /// <summary>A short noun for the value, without article: <c>length</c>.</summary>
    public string? Title { get; set; }

    public string? Description { get; set; }

    /// <summary>What is for readers of the schema alone: how findings name a group.</summary>
    public string? Comment { get; set; }

    /// <summary>What each of <see cref="Words"/> means.</summary>
    public List<string> WordMeanings { get; } = [];

    public List<string> Examples { get; } = [];

    /// <summary>This schema, or the definition that stands for it.</summary>
    public SchemaNode Resolved => Target is null ? this : Target.Resolved;

    /// <summary>This schema and all that must hold together with it.</summary>
    public IEnumerable<SchemaNode> Conjuncts =>
        Target is null ? AllOf.SelectMany(part => part.Conjuncts).Prepend(this) : Target.Conjuncts;

    /// <summary>The alternatives of which one must hold.</summary>
    public IReadOnlyList<SchemaNode> Alternatives => AnyOf.Count > 0 ? AnyOf : OneOf;
}
