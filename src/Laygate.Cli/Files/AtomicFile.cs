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

        // A name that nobody can guess, and made new: a link that waits under it is not followed.
        var beside = Path.Combine(Path.GetDirectoryName(full) ?? full, $".{Path.GetRandomFileName()}.part");
        try
        {
            WriteNew(beside, bytes, Mode(full));
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

    // Whoever could not read the file before cannot read the new one either.
    private static void WriteNew(string path, ReadOnlySpan<byte> bytes, UnixFileMode? mode)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (OperatingSystem.IsWindows() || mode is not { } kept)
        {
            using var plain = new FileStream(path, options);
            plain.Write(bytes);
            return;
        }

        options.UnixCreateMode = kept;
        using var stream = new FileStream(path, options);
        File.SetUnixFileMode(stream.SafeFileHandle, kept);
        stream.Write(bytes);
    }

    private static UnixFileMode? Mode(string full) => OperatingSystem.IsWindows() || !File.Exists(full)
        ? null
        : File.GetUnixFileMode(full) & ~(UnixFileMode.SetUser | UnixFileMode.SetGroup | UnixFileMode.StickyBit);

    private static bool IsDevice(string full) => Array.Exists(Devices, folder => full.StartsWith(folder, StringComparison.Ordinal));
}
