using System.Runtime.InteropServices;

namespace Laygate.Cli.Files;

/// <summary>Writes a file whole or not at all: a reader never sees half a report. It is written beside its place and takes it when it is whole.</summary>
internal sealed class AtomicFile : IDisposable
{
    // What stands here is no file that another may replace: a superuser would lose a device.
    private static readonly string[] Devices = ["/dev/", "/proc/"];

    private readonly string full;
    private readonly string? beside;
    private readonly List<PosixSignalRegistration> ends = [];

    /// <summary>Opens a file for writing. A link stays a link, a device stays a device.</summary>
    public AtomicFile(string path)
    {
        full = Target(path);
        if (IsDevice(full))
        {
            Stream = new FileStream(full, FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
            return;
        }

        // A name that nobody can guess, and made new: a link that waits under it is not followed.
        beside = Path.Combine(Folder, $".{Path.GetRandomFileName()}.part");
        ends.AddRange(((PosixSignal[])[PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP]).Select(signal => PosixSignalRegistration.Create(signal, _ => File.Delete(beside))));
        Stream = New(beside, Mode(full));
    }

    /// <summary>Where to write.</summary>
    public Stream Stream { get; }

    /// <summary>The folder in which the file will stand; for a device that of temporary files.</summary>
    public string Folder => IsDevice(full) ? Path.GetTempPath() : Path.GetDirectoryName(full) ?? full;

    /// <summary>Writes a file that is at hand as a whole.</summary>
    public static void Write(string path, ReadOnlySpan<byte> bytes)
    {
        using var file = new AtomicFile(path);
        file.Stream.Write(bytes);
        file.Finish();
    }

    /// <summary>The file is whole and takes its place.</summary>
    public void Finish()
    {
        Stream.Dispose();
        if (beside is not null)
        {
            File.Move(beside, full, overwrite: true);
        }
    }

    /// <summary>Leaves nothing behind of a file that was not finished.</summary>
    public void Dispose()
    {
        try
        {
            Stream.Dispose();
        }
        catch (IOException)
        {
            // Nobody needs what could not be written any more.
        }

        if (beside is not null)
        {
            File.Delete(beside);
        }

        ends.ForEach(end => end.Dispose());
    }

    /// <summary>The file that a path leads to, over any links.</summary>
    public static string Target(string path)
    {
        var named = Path.GetFullPath(path);
        try
        {
            return IsDevice(named) || new FileInfo(named) is not { LinkTarget: not null } link ? named : link.ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? named;
        }
        catch (IOException)
        {
            // A link that leads to itself: writing says so.
            return named;
        }
    }

    // Whoever could not read the file before cannot read the new one either.
    private static FileStream New(string path, UnixFileMode? mode)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (OperatingSystem.IsWindows() || mode is not { } kept)
        {
            return new FileStream(path, options);
        }

        options.UnixCreateMode = kept;
        var stream = new FileStream(path, options);
        File.SetUnixFileMode(stream.SafeFileHandle, kept);
        return stream;
    }

    private static UnixFileMode? Mode(string full) => OperatingSystem.IsWindows() || !File.Exists(full)
        ? null
        : File.GetUnixFileMode(full) & ~(UnixFileMode.SetUser | UnixFileMode.SetGroup | UnixFileMode.StickyBit);

    private static bool IsDevice(string full) => Array.Exists(Devices, folder => full.StartsWith(folder, StringComparison.Ordinal));
}
