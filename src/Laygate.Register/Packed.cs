using System.IO.Compression;

namespace Laygate.Register;

/// <summary>Packs what is kept with a screening, and unpacks it.</summary>
public static class Packed
{
    /// <summary>What is written, packed.</summary>
    /// <param name="write">Writes it.</param>
    public static byte[] Of(Action<Stream> write)
    {
        ArgumentNullException.ThrowIfNull(write);
        using var bytes = new MemoryStream();
        using (var packed = new BrotliStream(bytes, CompressionLevel.Optimal, leaveOpen: true))
        {
            write(packed);
        }

        return bytes.ToArray();
    }

    /// <summary>Reads what was packed.</summary>
    /// <param name="kept">What <see cref="Of"/> gave.</param>
    /// <exception cref="InvalidDataException">It was not packed so; said when it is read.</exception>
    public static Stream Open(byte[] kept) => new BrotliStream(new MemoryStream(kept), CompressionMode.Decompress);

    /// <summary>All of what was packed; the bytes themselves where they were not packed so.</summary>
    /// <param name="kept">What <see cref="Of"/> gave.</param>
    public static byte[] All(byte[] kept)
    {
        using var bytes = new MemoryStream();
        try
        {
            using var unpacked = Open(kept);
            unpacked.CopyTo(bytes);
            return bytes.ToArray();
        }
        catch (Exception error) when (error is InvalidDataException or InvalidOperationException)
        {
            return kept;
        }
    }
}
