using System.Globalization;

namespace Laygate.Cli.Output;

/// <summary>
/// Whether the process was started with standard input, output and error. The runtime opens pipes and files of its own before the program
/// begins, and they take the numbers of what was closed: reading such an input would wait for ever, writing to such an output would be lost
/// or harm the runtime.
/// </summary>
internal static class StandardHandle
{
    public const int Input = 0;
    public const int Output = 1;
    public const int Error = 2;

    private const string Handles = "/proc/self/fd";

    // The last octal digit of the flags that the system lists, without those above the way of access: 0 reads, 1 writes.
    private const char Reads = '0';
    private const char Writes = '1';

    /// <summary>Whether a standard handle is what the process was started with, as far as the system tells.</summary>
    /// <param name="number">0, 1 or 2.</param>
    /// <returns>False where it holds a thing of the runtime's own.</returns>
    public static bool IsOfTheCaller(int number) => !IsOwn(number);

    private static bool IsOwn(int number)
    {
        try
        {
            return Target(Path.Combine(Handles, number.ToString(CultureInfo.InvariantCulture))) is { } target
                && (target.StartsWith("/memfd:", StringComparison.Ordinal) || (target.StartsWith("pipe:", StringComparison.Ordinal) && HoldsOtherEnd(target, number == Input ? Writes : Reads)));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // No list of handles here: nothing is known against it.
            return false;
        }
    }

    // A pipe of which this process itself holds the end that its caller should hold.
    private static bool HoldsOtherEnd(string pipe, char access) =>
        Directory.EnumerateFileSystemEntries(Handles).Any(handle => string.Equals(Target(handle), pipe, StringComparison.Ordinal) && Access(handle) == access);

    private static string? Target(string handle) => new FileInfo(handle).LinkTarget;

    private static char? Access(string handle)
    {
        const string Flags = "flags:";
        var line = File.ReadLines(Path.Combine("/proc/self/fdinfo", Path.GetFileName(handle))).FirstOrDefault(line => line.StartsWith(Flags, StringComparison.Ordinal));
        return line?.TrimEnd()[^1];
    }
}
