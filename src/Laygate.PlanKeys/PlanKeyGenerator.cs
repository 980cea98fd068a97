using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Text;

namespace Laygate.PlanKeys;

/// <summary>
/// Writes code from the plan schema while a project is compiled. The project's property <c>PlanKeys</c> says which: <c>records</c>
/// (the model of a plan with its lists of words), <c>mapping</c> (from the keys of a document into these records) or <c>numbers</c> (the walk over
/// what these records state as numbers).
/// </summary>
[Generator(LanguageNames.CSharp)]
public sealed class PlanKeyGenerator : IIncrementalGenerator
{
    private const string SchemaFile = "plan.schema.json";

    /// <inheritdoc/>
    public void Initialize(IncrementalGeneratorInitializationContext context)
    {
        var schema = context.AdditionalTextsProvider
            .Where(file => Path.GetFileName(file.Path) is SchemaFile)
            .Select((file, cancel) => file.GetText(cancel)?.ToString() ?? string.Empty);
        var part = context.AnalyzerConfigOptionsProvider.Select((options, _) => (Kind: Property(options.GlobalOptions, "PlanKeys"), Room: Property(options.GlobalOptions, "RootNamespace")));
        context.RegisterSourceOutput(schema.Combine(part), (output, input) => Write(output, SchemaReader.Read(input.Left), input.Right.Kind, input.Right.Room));
    }

    private static void Write(SourceProductionContext output, PlanSchema schema, string kind, string room)
    {
        switch (kind)
        {
            case "records":
                Add(output, "PlanRecords", RecordWriter.Write(schema));
                Add(output, "PlanWords", WordWriter.Write(schema));
                break;
            case "mapping":
                Add(output, "KeyMapping", MappingWriter.Write(schema, room));
                break;
            case "numbers":
                Add(output, "StatedValues", NumberWriter.Write(schema, room));
                break;
            default:
                throw new FormatException($"The property PlanKeys is `{kind}`; known are `records`, `mapping` and `numbers`.");
        }
    }

    private static void Add(SourceProductionContext output, string name, string code) =>
        output.AddSource($"{name}.g.cs", SourceText.From(code, Encoding.UTF8));

    private static string Property(Microsoft.CodeAnalysis.Diagnostics.AnalyzerConfigOptions options, string name) =>
        options.TryGetValue($"build_property.{name}", out var value) ? value : string.Empty;
}
