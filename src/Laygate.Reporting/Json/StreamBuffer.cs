using System.Buffers;

namespace Laygate.Reporting.Json;

/// <summary>Passes what is written on to a stream, piece by piece: over a bare stream a writer of JSON would hold everything in one block that it doubles again and again.</summary>
/// <param name="output">Where to write; stays open.</param>
internal sealed class StreamBuffer(Stream output) : IBufferWriter<byte>
{
    private byte[] block = new byte[32 << 10];
    private int used;

    /// <inheritdoc/>
    public void Advance(int count) => used += count;

    /// <inheritdoc/>
    public Memory<byte> GetMemory(int sizeHint = 0)
    {
        var wanted = Math.Max(sizeHint, 1);
        if (block.Length - used < wanted)
        {
            Flush();
            block = block.Length < wanted ? new byte[wanted] : block;
        }

        return block.AsMemory(used);
    }

    /// <inheritdoc/>
    public Span<byte> GetSpan(int sizeHint = 0) => GetMemory(sizeHint).Span;

    /// <summary>Writes what waits.</summary>
    public void Flush()
    {
        output.Write(block, 0, used);
        used = 0;
    }
}
