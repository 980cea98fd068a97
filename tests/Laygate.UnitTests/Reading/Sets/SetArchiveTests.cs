using System.IO.Compression;
using System.Text;
using Laygate.Reading.Sets;

namespace Laygate.UnitTests.Reading.Sets;

/// <summary>Archives are made with the platform's own writer, and broken byte by byte where it makes no such archive.</summary>
public sealed class SetArchiveTests
{
    [Fact]
    public void Files_come_out_as_they_went_in()
    {
        byte[] odd = [0xEF, 0xBB, 0xBF, .. "a: 1\r\n\0"u8, 0xFF];
        var (files, problems) = SetArchive.Unpack("set.zip", Zip(("firm/", []), ("firm/straße ü.yaml", odd), ("empty.yaml", [])));
        Assert.Empty(problems);
        Assert.Equal(["firm/straße ü.yaml", "empty.yaml"], files.Select(file => file.Name), StringComparer.Ordinal);
        Assert.Equal(odd, files[0].Bytes);
        Assert.Empty(files[1].Bytes);
    }

    [Fact]
    public void Names_that_lead_elsewhere_are_refused_before_anything_is_unpacked()
    {
        Assert.Contains("leads out of the set", Refusal(Zip(("../../etc/passwd", "a"u8.ToArray()))), StringComparison.Ordinal);
        Assert.Contains("root of a disk", Refusal(Zip(("/etc/passwd", "a"u8.ToArray()))), StringComparison.Ordinal);
        Assert.Contains("backslash", Refusal(Zip(("firm\\a.yaml", "a"u8.ToArray()))), StringComparison.Ordinal);
        Assert.Contains("Two files have the name `a.yaml`", Refusal(Zip(("a.yaml", "a"u8.ToArray()), ("a.yaml", "b"u8.ToArray()))), StringComparison.Ordinal);
        Assert.Contains("letter case only", Refusal(Zip(("a.yaml", "a"u8.ToArray()), ("A.yaml", "b"u8.ToArray()))), StringComparison.Ordinal);
        Assert.Contains("NUL", Refusal(Replaced(Zip(("a#b.yaml", "a"u8.ToArray())), "a#b.yaml"u8, "a\0b.yaml"u8)), StringComparison.Ordinal);
        Assert.Contains("UTF-8", Refusal(Replaced(Zip(("a#b.yaml", "a"u8.ToArray())), "a#b.yaml"u8, [(byte)'a', 0xFC, .. "b.yaml"u8])), StringComparison.Ordinal);
        Assert.Contains("leads out of the set", Refusal(Zip(("../x/", []), ("a.yaml", "a"u8.ToArray()))), StringComparison.Ordinal);
    }

    [Fact]
    public void Links_and_encrypted_entries_are_refused()
    {
        Assert.Contains("`a.yaml` is a link", Refusal(Zip(entry => entry.ExternalAttributes = unchecked((int)0xA1FF0000), ("a.yaml", "/etc/passwd"u8.ToArray()))), StringComparison.Ordinal);

        // Bit 0 of the general flags, in the list of entries (APPNOTE.TXT, 4.4.4, recalled).
        var zip = Zip(("a.yaml", "a"u8.ToArray()));
        zip[zip.AsSpan().LastIndexOf("PK\u0001\u0002"u8) + 8] |= 1;
        Assert.Contains("`a.yaml` is encrypted", Refusal(zip), StringComparison.Ordinal);
    }

    [Fact]
    public void What_unpacks_to_too_much_is_not_unpacked()
    {
        Assert.Contains("more than 100 times its packed size", Refusal(Zip(("a.yaml", new byte[1 << 20]))), StringComparison.Ordinal);
        Assert.Contains("larger than 1 MiB", Refusal(Zip(("a.yaml", new byte[(1 << 20) + 1]))), StringComparison.Ordinal);
        var noise = Noise(1 << 20);
        Assert.Contains("more than 4 MiB unpacked", Refusal(Zip([.. Enumerable.Range(0, 5).Select(file => ($"{file}.yaml", noise))])), StringComparison.Ordinal);
        Assert.Contains("61 entries", Refusal(Zip([.. Enumerable.Range(0, 61).Select(file => ($"{file}.yaml", "a"u8.ToArray()))])), StringComparison.Ordinal);
        Assert.Contains("0 entries", Refusal(Zip()), StringComparison.Ordinal);
    }

    [Fact]
    public void An_archive_that_lies_about_the_size_of_a_file_is_not_believed()
    {
        // The length of the unpacked file in the list of entries and before the file itself (4.4.9): said to be 1 byte.
        var zip = Zip(("a.yaml", new byte[1 << 20]));
        BitConverter.GetBytes(1).CopyTo(zip, zip.AsSpan().LastIndexOf("PK\u0001\u0002"u8) + 24);
        BitConverter.GetBytes(1).CopyTo(zip, 22);
        var (files, problems) = SetArchive.Unpack("set.zip", zip);
        Assert.True(problems.Count > 0 || files[0].Bytes.Length <= 1);
    }

    [Fact]
    public void Damage_is_said()
    {
        var zip = Zip(("a.yaml", Noise(1000)));
        zip[200] ^= 0xFF;
        Assert.Contains("`a.yaml`", Refusal(zip), StringComparison.Ordinal);
        Assert.Contains("no ZIP archive, or it is damaged", Refusal(zip[..100]), StringComparison.Ordinal);
        Assert.Contains("no ZIP archive, or it is damaged", Refusal("PK\u0003\u0004"u8.ToArray()), StringComparison.Ordinal);
    }

    [Fact]
    public void No_damage_of_any_byte_throws()
    {
        var zip = Zip(("firm/a.yaml", Noise(50)), ("b.yaml", "format: 1\n"u8.ToArray()));
        for (var at = 0; at < zip.Length; at++)
        {
            foreach (var value in (byte[])[0, 0xFF, (byte)(zip[at] ^ 1)])
            {
                var damaged = zip.ToArray();
                damaged[at] = value;
                var (files, problems) = SetArchive.Unpack("set.zip", damaged);
                Assert.True(files.Count > 0 || problems.Count > 0);
            }
        }
    }

    internal static byte[] Zip(params (string Name, byte[] Bytes)[] files) => Zip(_ => { }, files);

    private static byte[] Zip(Action<ZipArchiveEntry> change, params (string Name, byte[] Bytes)[] files)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true, Encoding.UTF8))
        {
            foreach (var (name, content) in files)
            {
                var entry = zip.CreateEntry(name);
                change(entry);
                using var stream = entry.Open();
                stream.Write(content);
            }
        }

        return bytes.ToArray();
    }

    private static string Refusal(byte[] zip)
    {
        var (files, problems) = SetArchive.Unpack("set.zip", zip);
        Assert.Empty(files);
        Assert.All(problems, problem => Assert.Equal("set.zip", problem.File));
        return string.Join('\n', problems.Select(problem => problem.Message));
    }

    private static byte[] Replaced(byte[] bytes, ReadOnlySpan<byte> from, ReadOnlySpan<byte> to)
    {
        var changed = bytes.ToArray();
        for (var at = changed.AsSpan().IndexOf(from); at >= 0; at = changed.AsSpan().IndexOf(from))
        {
            to.CopyTo(changed.AsSpan(at));
        }

        return changed;
    }

    private static byte[] Noise(int length)
    {
        var bytes = new byte[length];
        new Random(20271129).NextBytes(bytes);
        return bytes;
    }
}
