using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Laygate.Cli;

/// <summary>
/// Memory of a run that ends soon, asked for in few large pieces. The native program would otherwise get each page of its heap and of its own
/// code when it is first touched: some 10,000 times, which took a third of a quick check and a tenth of a full one.
/// </summary>
internal static class StartMemory
{
    // Bytes: what a quick check of an example allocates, nearly all of which stays: rules, schema and plan. Collected bit by bit, it is copied several times.
    private const long Room = 32_000_000;

    // Bytes, twice the room: a run that needs more has most of it here too.
    private const int HugeFor = 64 << 20;

    /// <summary>Readies memory, where the machine gives it.</summary>
    /// <param name="isShort">Whether the run is so short that its code is better mapped at once, though that counts all of it as memory.</param>
    public static void Begin(bool isShort)
    {
        if (!OperatingSystem.IsLinux() || RuntimeFeature.IsDynamicCodeSupported)
        {
            PutOffCollecting();
            return;
        }

        // What the system refuses, on a machine without large pages or an older one, stays as it is.
        var heap = Pages.Heap();
        Pages.InTwoMegabytes(heap, HugeFor);
        if (isShort)
        {
            Pages.MapCode();
        }

        PutOffCollecting();
        _ = Task.Run(() => Pages.Fill(heap, (nuint)Room)); // Cleared by another core while this one reads the command line.
    }

    private static void PutOffCollecting()
    {
        try
        {
            // Where a run needs more room, the runtime collects as usual from there on.
            GC.TryStartNoGCRegion(Room);
        }
        catch (ArgumentOutOfRangeException)
        {
            // A limit of the heap below the room: nothing is put off.
        }
    }

    /// <summary>What Linux is told about pages: <c>madvise(2)</c> for all, and the program headers of <c>elf(5)</c>, which <c>getauxval(3)</c> finds.</summary>
    private static class Pages
    {
        // Numbers of the headers of Linux, the same on every processor: MADV_HUGEPAGE, MADV_POPULATE_READ and MADV_POPULATE_WRITE.
        private const int Huge = 14;
        private const int MapNow = 22;
        private const int FillNow = 23;
        private const long HugeSize = 2 << 20;
        private const long Size = 4096;

        // AT_PHDR, AT_PHENT and AT_PHNUM of getauxval; PT_LOAD and PF_X of elf.
        private const nuint HeadersAt = 3;
        private const nuint HeaderSize = 4;
        private const nuint HeaderCount = 5;
        private const int Loaded = 1;
        private const int Executable = 1;

        // The heap grows upwards from where its first objects are.
        public static nint Heap()
        {
            var first = GCHandle.Alloc(new byte[1], GCHandleType.Pinned);
            var place = first.AddrOfPinnedObject();
            first.Free();
            return (nint)(place & -HugeSize);
        }

        public static void InTwoMegabytes(nint heap, nuint length) => _ = Advise(heap, length, Huge);

        public static void Fill(nint heap, nuint length) => _ = Advise(heap, length, FillNow);

        // Headers as on every 64-bit system: kind at 0, flags at 4, address at 16, length in memory at 40. The program stands where it was linked.
        public static void MapCode()
        {
            for (var i = 0; i < (int)Auxiliary(HeaderCount); i++)
            {
                var header = (nint)Auxiliary(HeadersAt) + (i * (nint)Auxiliary(HeaderSize));
                if (Marshal.ReadInt32(header) == Loaded && (Marshal.ReadInt32(header + 4) & Executable) != 0)
                {
                    var from = Marshal.ReadIntPtr(header + 16);
                    var page = (nint)(from & -Size);
                    _ = Advise(page, (nuint)(from + Marshal.ReadIntPtr(header + 40) - page), MapNow);
                }
            }
        }

        [DllImport("libc", EntryPoint = "madvise")]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        private static extern int Advise(nint address, nuint length, int advice);

        [DllImport("libc", EntryPoint = "getauxval")]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        private static extern nuint Auxiliary(nuint kind);
    }
}
