using Laygate.Cli.Arguments;
using Laygate.Rules.Results;

namespace Laygate.Cli.Files;

/// <summary>Reads the bytes of one input.</summary>
internal static class PlanBytes
{
    /// <summary>The bytes, or why there are none.</summary>
    public static (byte[]? Bytes, Problem? Problem) Read(PlanInput input)
    {
        if (input.Read is not { } read)
        {
            return (null, input.Problem);
        }

        byte[] bytes;
        try
        {
            bytes = read();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return (null, new Problem(input.Name, "The file cannot be read.", "Check that it exists and that you may read it.", null));
        }

        return bytes.Length > PlanFiles.LongestRead
            ? (null, new Problem(input.Name, "The file has more than 4 MiB; it is not read.", "A plan has at most 1 MiB: split it, or remove what does not belong in it.", null))
            : (bytes, null);
    }

    /// <summary>The bytes of a file that a command needs beside plans; whoever reads it refuses what is longer than the bound.</summary>
    /// <param name="file">Its path.</param>
    /// <param name="most">Bytes beyond which nothing is read on.</param>
    /// <exception cref="ArgumentProblem">It cannot be read.</exception>
    public static byte[] Needed(string file, int most = PlanFiles.LongestRead)
    {
        try
        {
            return PlanFiles.ReadFile(file, most);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ArgumentProblem($"`{file}` cannot be read: check that it exists and that you may read it.");
        }
    }
}
