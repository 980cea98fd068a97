using Laygate.Cli.Files;
using Laygate.Reading;

namespace Laygate.Cli.Verbs;

/// <summary>
/// The schema that an editor reads beside a plan. An editor cannot look into the program, and the program lies elsewhere on every machine: so the
/// schema stands in a file of the repository, written once, and plans name it by the way from their own folder.
/// </summary>
internal static class SchemaFile
{
    /// <summary>The way from a plan to the schema, which is written where there is none yet.</summary>
    /// <param name="plan">Path of the plan.</param>
    /// <param name="usesParts">Whether the plan uses parts.</param>
    /// <returns>The way, and the file where it was written now.</returns>
    public static (string Way, string? Made) For(string plan, bool usesParts)
    {
        var schema = usesParts ? "plan-with-parts" : "plan";
        var name = $"{schema}.schema.json";
        var folder = Path.GetDirectoryName(Path.GetFullPath(plan))!;
        var root = PartFilesOnDisk.RootOf(folder);
        for (var at = folder; at is not null && at.Length >= root.Length; at = Path.GetDirectoryName(at))
        {
            if (((string[])[Path.Combine(at, name), Path.Combine(at, "schemas", name)]).FirstOrDefault(File.Exists) is { } there)
            {
                return (Way(folder, there), null);
            }
        }

        var file = Path.Combine(root, name);
        NewFiles.Replace(file, EmbeddedSchemas.ForEditors(schema));
        return (Way(folder, file), Path.GetRelativePath(Directory.GetCurrentDirectory(), file).Replace('\\', '/'));
    }

    private static string Way(string folder, string file) => Path.GetRelativePath(folder, file).Replace('\\', '/');
}
