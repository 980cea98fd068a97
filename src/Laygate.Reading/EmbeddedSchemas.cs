using Laygate.Reading.Schema;

namespace Laygate.Reading;

/// <summary>The schemas that ship inside the program, the same files as in <c>schemas/</c>.</summary>
internal static class EmbeddedSchemas
{
    /// <summary>The schema of plans.</summary>
    public static LoadedSchema Plan() => SchemaLoader.Load(Text("plan.schema.json"));

    /// <summary>The schema of verification cases.</summary>
    public static LoadedSchema VerificationCase() => SchemaLoader.Load(Text("verification-case.schema.json"));

    /// <summary>The text of a schema by its file name.</summary>
    /// <exception cref="InvalidOperationException">The program was built without it.</exception>
    public static string Text(string name)
    {
        using var stream = typeof(EmbeddedSchemas).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The program was built without its schema {name}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
