namespace Laygate.Cli.Output;

/// <summary>A stream of the process that may refuse to be written to: its disk is full, or it is closed.</summary>
/// <param name="inner">The stream; null where the process was started without it.</param>
/// <param name="refused">Called when it refuses; when it returns, what was to be written is dropped.</param>
internal sealed class GuardedStream(Stream? inner, Action refused) : Stream
{
    /// <inheritdoc/>
    public override bool CanRead => false;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => true;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<byte> buffer)
    {
        if (inner is null)
        {
            refused();
            return;
        }

        try
        {
            inner.Write(buffer);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            refused();
        }
    }

    /// <summary>Opens a stream of the process; one that was closed before the program began refuses when it is written to.</summary>
    /// <param name="number">Its number.</param>
    /// <param name="open">Opens it.</param>
    /// <param name="refused">Called when it refuses.</param>
    public static GuardedStream Of(int number, Func<Stream> open, Action refused)
    {
        try
        {
            return new GuardedStream(StandardHandle.IsOfTheCaller(number) ? open() : null, refused);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new GuardedStream(null, refused);
        }
    }

    /// <inheritdoc/>
    public override void Flush()
    {
        try
        {
            inner?.Flush();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            refused();
        }
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();
}
