using Laygate.Cli.Arguments;
using Laygate.Cli.Files;

namespace Laygate.Cli.Output;

/// <summary>Writes a result to standard output or to a file, whole or not at all.</summary>
internal sealed class ResultOutput(Streams streams)
{
    /// <summary>Writes text as UTF-8.</summary>
    /// <param name="path">File; null for standard output.</param>
    /// <param name="text">The text.</param>
    /// <exception cref="ArgumentProblem">The file cannot be written.</exception>
    public void Write(string? path, string text) => Write(path, Streams.Utf8.GetBytes(text));

    /// <summary>Writes bytes.</summary>
    /// <param name="path">File; null for standard output.</param>
    /// <param name="bytes">The bytes.</param>
    /// <exception cref="ArgumentProblem">The file cannot be written.</exception>
    public void Write(string? path, byte[] bytes)
    {
        if (path is not null)
        {
            WriteFile(path, bytes);
            return;
        }

        streams.Out.Write(bytes);
        streams.Out.Flush();
    }

    /// <summary>Sees to it that no result takes the place of what it is made from.</summary>
    /// <param name="path">File of the result; null for standard output.</param>
    /// <param name="inputs">Files that are read.</param>
    /// <exception cref="ArgumentProblem">It would.</exception>
    public static void KeepApart(string? path, IEnumerable<string> inputs)
    {
        if (path is { Length: > 0 } && AtomicFile.Target(path) is var target
            && inputs.FirstOrDefault(input => input is not ("" or "-") && string.Equals(AtomicFile.Target(input), target, StringComparison.Ordinal)) is { } same)
        {
            throw new ArgumentProblem($"--output would write over `{same}`, which is read: give the result a file of its own.");
        }
    }

    /// <summary>Writes a file.</summary>
    /// <exception cref="ArgumentProblem">It cannot be written.</exception>
    public static void WriteFile(string path, ReadOnlySpan<byte> bytes)
    {
        try
        {
            AtomicFile.Write(path, bytes);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Refused(path);
        }
    }

    /// <summary>Writes a file from what was put aside.</summary>
    /// <exception cref="ArgumentProblem">It cannot be written.</exception>
    public static void WriteFile(string path, Spool bytes)
    {
        try
        {
            using var file = new AtomicFile(path);
            bytes.Position = 0;
            bytes.CopyTo(file.Stream);
            file.Finish();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Refused(path);
        }
    }

    /// <summary>Says that a file cannot be written.</summary>
    public static ArgumentProblem Refused(string path) => new($"The result cannot be written to `{path}`: check that the folder exists and that you may write there.");
}
