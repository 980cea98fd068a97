using System.Globalization;
using System.IO.Compression;
using System.Text;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Reading.Sets;

/// <summary>
/// Unpacks a ZIP archive in memory, within bounds. What an archive says of its entries is not believed: bytes are counted as they come and held against
/// the checksum. Entries for folders are passed over. Names are those of the list at the end of the archive, as other programs read them.
/// </summary>
public static class SetArchive
{
    // File types of Unix, in the upper half of the attributes (APPNOTE.TXT of the ZIP format, 4.4.15, leaves them to the system; the bits are those of POSIX sys/stat.h, recalled).
    private const int TypeMask = 0xF000;
    private const int PlainType = 0x8000;
    private const int FolderType = 0x4000;

    /// <summary>Whether bytes begin as an archive does.</summary>
    /// <param name="bytes">The bytes.</param>
    public static bool IsOne(ReadOnlySpan<byte> bytes) => bytes.StartsWith("PK\u0003\u0004"u8) || bytes.StartsWith("PK\u0005\u0006"u8);

    /// <summary>Unpacks an archive.</summary>
    /// <param name="archive">The archive, as it is shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <returns>The files in their order, or all reasons why it cannot be used. Never throws for bad input.</returns>
    public static (IReadOnlyList<SetFile> Files, IReadOnlyList<Problem> Problems) Unpack(string archive, byte[] bytes)
    {
        try
        {
            using var zip = new ZipArchive(new MemoryStream(bytes, writable: false), ZipArchiveMode.Read, leaveOpen: false, Encoding.UTF8);
            var problems = Listed(archive, zip);
            return problems.Count > 0 ? ([], problems) : Read(archive, zip);
        }
        catch (Exception error) when (IsDamage(error))
        {
            return ([], [SetNames.Of(archive, "This is no ZIP archive, or it is damaged.", "Pack the files again as ZIP.")]);
        }
    }

    // What the list of entries says is looked at before anything is unpacked.
    private static IReadOnlyList<Problem> Listed(string archive, ZipArchive zip)
    {
        if (zip.Entries.Count > SetLimits.Entries || zip.Entries.Count(entry => !IsFolder(entry)) is 0 or > SetLimits.Files)
        {
            return [SetNames.Of(archive, string.Create(CultureInfo.InvariantCulture, $"The archive has {zip.Entries.Count} entries; it may have 1 to {SetLimits.Files} files."), "Pack the plan and the files that it uses only.")];
        }

        List<Problem> problems = [.. zip.Entries.Select(entry => Fault(entry) is var (message, hint) ? SetNames.Of(archive, message, hint) : null).OfType<Problem>()];
        problems.AddRange(SetNames.Check(archive, [.. zip.Entries.Where(entry => !IsFolder(entry)).Select(entry => entry.FullName)]));
        problems.AddRange(SetNames.Check(archive, [.. zip.Entries.Where(IsFolder).Select(entry => entry.FullName.TrimEnd('/')).Distinct(StringComparer.Ordinal)]));
        return problems;
    }

    private static (string Message, string Hint)? Fault(ZipArchiveEntry entry)
    {
        var shown = TokenNames.Quote(entry.FullName.Replace('\0', ' '));
        return entry.IsEncrypted ? ($"{shown} is encrypted.", "Pack it without a password.")
            : IsFolder(entry) && entry.Length > 0 ? ($"{shown} is a folder that has content.", "Pack the files again.")
            : Type(entry) is not (0 or PlainType or FolderType) || (Type(entry) == FolderType && !IsFolder(entry)) ? ($"{shown} is a link or another special file.", "Pack the file itself.")
            : entry.Length > SetLimits.FileBytes ? ($"{shown} is larger than 1 MiB.", "Split it, or leave it out.")
            : null;
    }

    private static (IReadOnlyList<SetFile> Files, IReadOnlyList<Problem> Problems) Read(string archive, ZipArchive zip)
    {
        var files = new List<SetFile>();
        var problems = new List<Problem>();
        var left = SetLimits.Bytes;
        foreach (var entry in zip.Entries.Where(entry => !IsFolder(entry)))
        {
            var (bytes, problem) = Bytes(entry, left);
            if (problem is var (message, hint))
            {
                problems.Add(SetNames.Of(archive, message, hint));
            }

            left -= bytes.Length;
            files.Add(new SetFile(entry.FullName, bytes));
            if (left < 0)
            {
                return ([], [.. problems, SetNames.Of(archive, "The archive holds more than 4 MiB unpacked.", "Pack the plan and the files that it uses only.")]);
            }
        }

        return problems.Count > 0 ? ([], problems) : (files, []);
    }

    private static (byte[] Bytes, (string Message, string Hint)? Problem) Bytes(ZipArchiveEntry entry, int left)
    {
        var shown = TokenNames.Quote(entry.FullName);
        var most = Math.Min(Math.Min(SetLimits.FileBytes, left) + 1, Math.Max(SetLimits.SmallFile, entry.CompressedLength * SetLimits.Ratio) + 1);
        byte[] bytes;
        try
        {
            using var stream = entry.Open();
            bytes = AtMost(stream, (int)most);
        }
        catch (Exception error) when (IsDamage(error))
        {
            return ([], ($"{shown} cannot be unpacked: it is damaged, or packed in an unusual way.", "Pack the files again as ZIP."));
        }

        return bytes.Length > SetLimits.FileBytes ? (bytes, ($"{shown} is larger than 1 MiB.", "Split it, or leave it out."))
            : bytes.Length > SetLimits.SmallFile && bytes.Length > entry.CompressedLength * SetLimits.Ratio ? (bytes, ($"{shown} has more than {SetLimits.Ratio} times its packed size.", "Send the file by itself, or leave it out."))
            : bytes.Length > left ? (bytes, null)
            : Checksum(bytes) != entry.Crc32 ? (bytes, ($"{shown} does not have the checksum that the archive names: it is damaged.", "Pack the files again."))
            : (bytes, null);
    }

    private static byte[] AtMost(Stream stream, int most)
    {
        using var bytes = new MemoryStream();
        var buffer = new byte[16 << 10];
        int count;
        while (bytes.Length < most && (count = stream.Read(buffer, 0, (int)Math.Min(buffer.Length, most - bytes.Length))) > 0)
        {
            bytes.Write(buffer, 0, count);
        }

        return bytes.ToArray();
    }

    private static bool IsFolder(ZipArchiveEntry entry) => entry.FullName.EndsWith('/');

    private static int Type(ZipArchiveEntry entry) => (entry.ExternalAttributes >> 16) & TypeMask;

    private static bool IsDamage(Exception error) => error is InvalidDataException or IOException or NotSupportedException or ArgumentException or OverflowException;

    // CRC-32 as ZIP has it: polynomial 0x04C11DB7, reflected (APPNOTE.TXT, 4.4.7, recalled).
    private static uint Checksum(byte[] bytes)
    {
        var sum = uint.MaxValue;
        foreach (var one in bytes)
        {
            sum ^= one;
            for (var bit = 0; bit < 8; bit++)
            {
                sum = (sum & 1) == 0 ? sum >> 1 : (sum >> 1) ^ 0xEDB88320;
            }
        }

        return ~sum;
    }
}
