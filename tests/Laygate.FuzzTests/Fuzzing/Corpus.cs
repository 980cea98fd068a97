namespace Laygate.FuzzTests.Fuzzing;

/// <summary>Inputs that once did what must never be, kept as files: the index beside them says in a line what each was.</summary>
internal static class Corpus
{
    /// <summary>Where they are.</summary>
    public static string Folder { get; } = Path.Combine(SourceTree.Root, "tests", "Laygate.FuzzTests", "Corpus");

    /// <summary>Each input with its target and what it was.</summary>
    public static IEnumerable<(string File, string Target, string Was)> All() =>
        File.ReadLines(Path.Combine(Folder, "index.txt")).Where(line => line.Length > 0 && line[0] != '#')
            .Select(line => line.Split(" | ")).Select(parts => (parts[0], parts[1], parts[2]));
}
