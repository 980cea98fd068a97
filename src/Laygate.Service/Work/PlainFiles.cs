using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Win32.SafeHandles;

namespace Laygate.Service.Work;

/// <summary>What the system says of a file without following a link.</summary>
/// <param name="IsPlain">Whether it is an ordinary file with this one name: no link, pipe, device or second name.</param>
/// <param name="Size">Size, bytes.</param>
/// <param name="Changed">When its content last changed, ns since 1970.</param>
/// <param name="Mode">Rights.</param>
internal readonly record struct FileFacts(bool IsPlain, long Size, long Changed, UnixFileMode Mode);

/// <summary>
/// Files of one folder, always by the folder that is held and never by a path: whoever may write to the folder cannot lead the
/// service elsewhere by links. The framework always follows links, so this asks Linux itself.
/// </summary>
internal sealed class PlainFiles : IDisposable
{
    private readonly SafeFileHandle folder;

    private PlainFiles(SafeFileHandle folder) => this.folder = folder;

    /// <summary>Holds a folder.</summary>
    /// <param name="path">Its path, without links.</param>
    /// <exception cref="IOException">It is not there, or a part of the path has become a link.</exception>
    public static PlainFiles Hold(string path)
    {
        var held = Checked(Native.Open(Native.Name("/"), Native.OnlyName | Native.Directory | Native.CloseOnExec, 0));
        foreach (var part in path.Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            using var above = held;
            held = Checked(Native.OpenAt(above, Native.Name(part), Native.OnlyName | Native.Directory | Native.NoFollow | Native.CloseOnExec, 0));
        }

        return new PlainFiles(held);
    }

    /// <summary>A path as it is without links, at this moment.</summary>
    public static string Real(string path, int depth = 0)
    {
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        if (Path.GetDirectoryName(full) is not { } above || depth > 40)
        {
            return full;
        }

        var parent = Real(above, depth + 1);
        var here = Path.Combine(parent, Path.GetFileName(full));
        return new DirectoryInfo(here).LinkTarget is { } target ? Real(Path.GetFullPath(target, parent), depth + 1) : here;
    }

    /// <summary>Rights of the folder.</summary>
    public UnixFileMode Mode() => Facts(folder, [0], Native.ThisFile).Mode;

    /// <summary>What is known of a file; null when there is none.</summary>
    public FileFacts? Look(string name)
    {
        var facts = new byte[Native.FactsSize];
        return Native.Statx(folder, Native.Name(name), Native.LinkItself, Native.BasicFacts, facts) == 0 ? Native.Read(facts) : null;
    }

    /// <summary>Reads a plain file; null when it is none any more, is held open for writing, or has changed.</summary>
    /// <param name="name">Its name in the folder.</param>
    /// <param name="expected">What it was when it was looked at.</param>
    /// <param name="atMost">Most bytes.</param>
    /// <exception cref="UnauthorizedAccessException">It may not be read.</exception>
    public byte[]? Read(string name, FileFacts expected, int atMost)
    {
        // Without blocking: a pipe that nobody writes to would hold the watcher for ever.
        using var file = Checked(Native.OpenAt(folder, Native.Name(name), Native.NoFollow | Native.NonBlocking | Native.CloseOnExec, 0));
        if (Facts(file, [0], Native.ThisFile) != expected || Native.Lock(file, Native.SharedNow) != 0)
        {
            return null;
        }

        using var stream = new FileStream(file, FileAccess.Read, bufferSize: 1);
        var bytes = new byte[Math.Min(expected.Size, atMost)];
        stream.ReadExactly(bytes);
        return Facts(file, [0], Native.ThisFile) == expected ? bytes : null;
    }

    /// <summary>Writes a file whole or not at all. What stands under the name, also a link, is replaced, never followed.</summary>
    /// <param name="name">Its name in the folder.</param>
    /// <param name="bytes">Its content.</param>
    /// <param name="mode">Its rights; the mask of the process may take more.</param>
    public void Write(string name, ReadOnlySpan<byte> bytes, UnixFileMode mode)
    {
        // A name that nobody can guess, and made new: whatever stands under it already is not opened.
        var part = Native.Name("." + Path.GetRandomFileName() + ".part");
        using (var file = Checked(Native.OpenAt(folder, part, Native.Write | Native.Create | Native.New | Native.NoFollow | Native.CloseOnExec, (uint)mode)))
        using (var stream = new FileStream(file, FileAccess.Write, bufferSize: 1))
        {
            stream.Write(bytes);
        }

        if (Native.RenameAt(folder, part, folder, Native.Name(name)) != 0)
        {
            var error = Error();
            _ = Native.UnlinkAt(folder, part, 0);
            throw error;
        }
    }

    public void Dispose() => folder.Dispose();

    private static FileFacts Facts(SafeFileHandle at, byte[] name, int how)
    {
        var facts = new byte[Native.FactsSize];
        return Native.Statx(at, name, how, Native.BasicFacts, facts) == 0 ? Native.Read(facts) : throw Error();
    }

    private static SafeFileHandle Checked(SafeFileHandle handle) => handle.IsInvalid ? throw Error() : handle;

    private static Exception Error() => Marshal.GetLastPInvokeError() is var code && code is 1 or 13
        ? new UnauthorizedAccessException(Marshal.GetPInvokeErrorMessage(code))
        : new IOException(Marshal.GetPInvokeErrorMessage(code));

    /// <summary>Calls of Linux. Numbers from open(2), statx(2) and flock(2); where processors differ, x86 differs from ARM.</summary>
    private static class Native
    {
        public const int Write = 0x1;
        public const int Create = 0x40;
        public const int New = 0x80;
        public const int NonBlocking = 0x800;
        public const int CloseOnExec = 0x80000;
        public const int OnlyName = 0x200000;
        public const int SharedNow = 1 | 4;
        public const int LinkItself = 0x100;
        public const int ThisFile = 0x1000;
        public const uint BasicFacts = 0x7ff;
        public const int FactsSize = 256;
        private const int KindMask = 0xF000;
        private const int PlainKind = 0x8000;

        public static readonly int Directory = IsArm ? 0x4000 : 0x10000;
        public static readonly int NoFollow = IsArm ? 0x8000 : 0x20000;

        private static bool IsArm => RuntimeInformation.ProcessArchitecture is Architecture.Arm64 or Architecture.Arm;

        public static byte[] Name(string name) => Encoding.UTF8.GetBytes(name + '\0');

        // struct statx is the same on every processor: links at 16, mode at 28, size at 40, time of the last change at 112.
        public static FileFacts Read(ReadOnlySpan<byte> facts)
        {
            var links = BinaryPrimitives.ReadUInt32LittleEndian(facts[16..]);
            var mode = BinaryPrimitives.ReadUInt16LittleEndian(facts[28..]);
            var changed = (BinaryPrimitives.ReadInt64LittleEndian(facts[112..]) * 1_000_000_000) + BinaryPrimitives.ReadUInt32LittleEndian(facts[120..]);
            return new FileFacts((mode & KindMask) == PlainKind && links == 1, BinaryPrimitives.ReadInt64LittleEndian(facts[40..]), changed, (UnixFileMode)(mode & 0x1FF));
        }

        [DllImport("libc", EntryPoint = "open", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern SafeFileHandle Open(byte[] path, int flags, uint mode);

        [DllImport("libc", EntryPoint = "openat", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern SafeFileHandle OpenAt(SafeFileHandle folder, byte[] name, int flags, uint mode);

        [DllImport("libc", EntryPoint = "statx", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int Statx(SafeFileHandle folder, byte[] name, int flags, uint mask, byte[] facts);

        [DllImport("libc", EntryPoint = "flock", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int Lock(SafeFileHandle file, int how);

        [DllImport("libc", EntryPoint = "renameat", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int RenameAt(SafeFileHandle from, byte[] name, SafeFileHandle to, byte[] newName);

        [DllImport("libc", EntryPoint = "unlinkat", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int UnlinkAt(SafeFileHandle folder, byte[] name, int flags);
    }
}
