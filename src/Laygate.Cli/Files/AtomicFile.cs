namespace Laygate.Cli.Files;

/// <summary>Writes a file whole or not at all: a reader never sees half a report.</summary>
internal static class AtomicFile
{
    /// <summary>Writes beside the target and then takes its place.</summary>
    public static void Write(string path, ReadOnlySpan<byte> bytes)
    {
        var full = Path.GetFullPath(path);
        var beside = $"{full}.{Environment.ProcessId}.part";
        try
        {
            File.WriteAllBytes(beside, bytes);
            File.Move(beside, full, overwrite: true);
        }
        finally
        {
            File.Delete(beside);
        }
    }
}
