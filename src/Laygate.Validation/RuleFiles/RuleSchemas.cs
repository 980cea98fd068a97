using Laygate.Validation.Schema;

namespace Laygate.Validation.RuleFiles;

/// <summary>The schemas of the files of a rule book.</summary>
/// <param name="Rule"><c>rule.schema.json</c>.</param>
/// <param name="Cases"><c>cases.schema.json</c>.</param>
/// <param name="Specification"><c>specification.schema.json</c>.</param>
/// <param name="Sources"><c>sources.schema.json</c>.</param>
public sealed record RuleSchemas(LoadedSchema Rule, LoadedSchema Cases, LoadedSchema Specification, LoadedSchema Sources)
{
    /// <summary>Loads them.</summary>
    /// <param name="read">Gives the text of a schema by its file name.</param>
    public static RuleSchemas Load(Func<string, string> read) => new(
        SchemaLoader.Load(read("rule.schema.json")),
        SchemaLoader.Load(read("cases.schema.json")),
        SchemaLoader.Load(read("specification.schema.json")),
        SchemaLoader.Load(read("sources.schema.json")));

    /// <summary>Loads those that ship inside the program.</summary>
    public static RuleSchemas Embedded() => Load(EmbeddedSchemas.Text);
}
