namespace Laygate.Cli.Files;

/// <summary>Writes a file whole or not at all: a reader never sees half a report.</summary>
internal static class AtomicFile
{
    // What stands here is no file that another may replace: a superuser would lose a device.
    private static readonly string[] Devices = ["/dev/", "/proc/"];

    /// <summary>Writes beside the target and then takes its place. A link stays a link, a device stays a device.</summary>
    public static void Write(string path, ReadOnlySpan<byte> bytes)
    {
        var full = Target(path);
        if (IsDevice(full))
        {
            using var device = new FileStream(full, FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
            device.Write(bytes);
            return;
        }

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

    /// <summary>The file that a path leads to, over any links.</summary>
    public static string Target(string path)
    {
        var full = Path.GetFullPath(path);
        try
        {
            return IsDevice(full) || new FileInfo(full) is not { LinkTarget: not null } link ? full : link.ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? full;
        }
        catch (IOException)
        {
            // A link that leads to itself: writing says so.
            return full;
        }
    }

    private static bool IsDevice(string full) => Array.Exists(Devices, folder => full.StartsWith(folder, StringComparison.Ordinal));
}
