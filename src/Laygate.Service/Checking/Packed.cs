using System.IO.Compression;

namespace Laygate.Service.Checking;

/// <summary>Packs what is kept with a screening, and unpacks it.</summary>
internal static class Packed
{
    /// <summary>What is written, packed.</summary>
    public static byte[] Of(Action<Stream> write)
    {
        using var bytes = new MemoryStream();
        using (var packed = new BrotliStream(bytes, CompressionLevel.Optimal, leaveOpen: true))
        {
            write(packed);
        }

        return bytes.ToArray();
    }

    /// <summary>Reads what was packed.</summary>
    /// <exception cref="InvalidDataException">It was not packed so.</exception>
    public static Stream Open(byte[] kept) => new BrotliStream(new MemoryStream(kept), CompressionMode.Decompress);
}
