using System.Globalization;
using Laygate.Checking.Scaffolding;
using Laygate.Cli.Arguments;
using Laygate.Cli.Output;

namespace Laygate.Cli.Files;

/// <summary>Writes files that a person goes on with. What is there is never overwritten.</summary>
internal static class NewFiles
{
    /// <summary>Lines that are named one by one, at most.</summary>
    private const int MostLines = 12;

    /// <summary>Makes files in a folder, all or none.</summary>
    /// <returns>A line for each: its name and its blanks.</returns>
    /// <exception cref="ArgumentProblem">One of them is there already, or cannot be written.</exception>
    public static IReadOnlyList<string> Make(string folder, IReadOnlyList<NewFile> files)
    {
        var paths = files.Select(file => folder is "." ? file.Path : Path.Combine(folder, file.Path).Replace('\\', '/')).ToList();
        if (paths.Find(Path.Exists) is { } there)
        {
            throw new ArgumentProblem($"`{there}` is there already; nothing is overwritten.");
        }

        for (var index = 0; index < files.Count; index++)
        {
            Write(paths[index], files[index].Text, FileMode.CreateNew);
        }

        return [.. files.Select((file, index) => $"Made {paths[index]}: {Blanks(file)}.")];
    }

    /// <summary>Writes a file whose changed text keeps all that was in it.</summary>
    /// <exception cref="ArgumentProblem">It cannot be written.</exception>
    public static void Replace(string path, string text)
    {
        try
        {
            if (Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder)
            {
                Directory.CreateDirectory(folder);
            }

            AtomicFile.Write(path, Streams.Utf8.GetBytes(text));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ArgumentProblem($"`{path}` cannot be written: check that you may write there.");
        }
    }

    /// <summary>How many blanks a file has and where.</summary>
    public static string Blanks(NewFile file) => file.Blanks.Count switch
    {
        0 => "complete",
        1 => string.Create(CultureInfo.InvariantCulture, $"fill in what is marked TO FILL IN, on line {file.Blanks[0]}"),
        > MostLines => string.Create(CultureInfo.InvariantCulture, $"fill in what is marked TO FILL IN, on lines {file.Blanks[0]} to {file.Blanks[^1]} ({file.Blanks.Count} of them)"),
        _ => $"fill in what is marked TO FILL IN, on lines {string.Join(", ", file.Blanks.Select(line => line.ToString(CultureInfo.InvariantCulture)))}",
    };

    private static void Write(string path, string text, FileMode mode)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
            using var stream = new FileStream(path, mode, FileAccess.Write);
            stream.Write(Streams.Utf8.GetBytes(text));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ArgumentProblem($"`{path}` cannot be written: check that the folder exists and that you may write there.");
        }
    }
}
