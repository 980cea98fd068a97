using Laygate.Reading.Schema;

namespace Laygate.Reading.RuleFiles;

/// <summary>The schemas of the files of a rule book; each is loaded when it is first needed, because a run on shipped rules needs none.</summary>
public sealed class RuleSchemas
{
    private readonly Lazy<LoadedSchema> rule;
    private readonly Lazy<LoadedSchema> cases;
    private readonly Lazy<LoadedSchema> specification;
    private readonly Lazy<LoadedSchema> sources;

    private RuleSchemas(Func<string, string> read)
    {
        rule = new(() => SchemaLoader.Load(read("rule.schema.json")));
        cases = new(() => SchemaLoader.Load(read("cases.schema.json")));
        specification = new(() => SchemaLoader.Load(read("specification.schema.json")));
        sources = new(() => SchemaLoader.Load(read("sources.schema.json")));
    }

    /// <summary><c>rule.schema.json</c>.</summary>
    public LoadedSchema Rule => rule.Value;

    /// <summary><c>cases.schema.json</c>.</summary>
    public LoadedSchema Cases => cases.Value;

    /// <summary><c>specification.schema.json</c>.</summary>
    public LoadedSchema Specification => specification.Value;

    /// <summary><c>sources.schema.json</c>.</summary>
    public LoadedSchema Sources => sources.Value;

    /// <summary>The schemas of a host.</summary>
    /// <param name="read">Gives the text of a schema by its file name.</param>
    public static RuleSchemas Load(Func<string, string> read) => new(read);

    /// <summary>Those that ship inside the program.</summary>
    public static RuleSchemas Embedded() => new(EmbeddedSchemas.Text);
}
