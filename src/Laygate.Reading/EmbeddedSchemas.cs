using Laygate.Reading.Imports;
using Laygate.Reading.Jobs;
using Laygate.Reading.Parts;
using Laygate.Reading.Schema;

namespace Laygate.Reading;

/// <summary>The schemas that ship inside the program, the same files as in <c>schemas/</c>.</summary>
public static class EmbeddedSchemas
{
    private const string Ending = ".schema.json";
    private const string OfPlans = "plan";
    private const string OfParts = "parts";
    private const string OfPlansWithParts = "plan-with-parts";
    private const string OfImports = "import";
    private const string OfJobs = "job";

    /// <summary>The names of all schemas, such as <c>plan</c>.</summary>
    public static IReadOnlyList<string> Names { get; } =
        [.. typeof(EmbeddedSchemas).Assembly.GetManifestResourceNames().Where(name => name.EndsWith(Ending, StringComparison.Ordinal)).Select(name => name[..^Ending.Length]).Concat([OfParts, OfPlansWithParts, OfJobs, OfImports]).Order(StringComparer.Ordinal)];

    /// <summary>The text of a schema by its name; null where there is none.</summary>
    /// <param name="name">Its name, such as <c>plan</c>, or the name of its file.</param>
    public static string? Find(string name)
    {
        var own = name.EndsWith(Ending, StringComparison.Ordinal) ? name[..^Ending.Length] : name;
        return own switch
        {
            OfParts => PartSchemas.ForEditors(PartSchemas.Parts(Text("plan.schema.json"))),
            OfImports => ImportSchema.Mapping(Text("record.schema.json")),
            OfPlansWithParts => PartSchemas.ForEditors(PartSchemas.PlanWithParts(Text("plan.schema.json"))),
            OfJobs => PartSchemas.ForEditors(JobSchemas.Job(Text("plan.schema.json"))),
            _ => Names.Contains(own, StringComparer.Ordinal) ? Text(own + Ending) : null,
        };
    }

    /// <summary>The text of a schema as an editor shows each key with its own meaning: the one that code is written from says it once.</summary>
    /// <param name="name">Its name, such as <c>plan</c>.</param>
    /// <exception cref="ArgumentException">There is none.</exception>
    public static string ForEditors(string name)
    {
        var text = Find(name) ?? throw new ArgumentException($"There is no schema `{name}`.", nameof(name));
        return name is OfPlans ? PartSchemas.ForEditors(text) : text;
    }

    /// <summary>The schema of plans.</summary>
    internal static LoadedSchema Plan() => SchemaLoader.Load(Text("plan.schema.json"));

    /// <summary>The schema of verification cases.</summary>
    internal static LoadedSchema VerificationCase() => SchemaLoader.Load(Text("verification-case.schema.json"));

    /// <summary>The text of a schema by its file name.</summary>
    /// <exception cref="InvalidOperationException">The program was built without it.</exception>
    internal static string Text(string name)
    {
        using var stream = typeof(EmbeddedSchemas).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The program was built without its schema {name}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
