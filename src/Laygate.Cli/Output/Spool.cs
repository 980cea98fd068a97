using Laygate.Cli.Arguments;

namespace Laygate.Cli.Output;

/// <summary>
/// A place for the part of a result that must wait: in memory while it is small, then in a file that has no name any more and goes with the
/// process, however it ends.
/// </summary>
/// <param name="folder">Where the file may stand.</param>
internal sealed class Spool(string folder) : Stream
{
    /// <summary>Bytes that are kept in memory.</summary>
    public const int MostInMemory = 1 << 20;

    private Stream inner = new MemoryStream();

    /// <summary>Whether it has gone to a file.</summary>
    public bool IsFile => inner is FileStream;

    /// <inheritdoc/>
    public override bool CanRead => true;

    /// <inheritdoc/>
    public override bool CanSeek => true;

    /// <inheritdoc/>
    public override bool CanWrite => true;

    /// <inheritdoc/>
    public override long Length => inner.Length;

    /// <inheritdoc/>
    public override long Position
    {
        get => inner.Position;
        set => inner.Position = value;
    }

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<byte> buffer)
    {
        try
        {
            if (!IsFile && inner.Position + buffer.Length > MostInMemory)
            {
                MoveToFile();
            }

            inner.Write(buffer);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw Refused();
        }
    }

    /// <inheritdoc/>
    public override void Flush()
    {
        try
        {
            inner.Flush();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw Refused();
        }
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => inner.Read(buffer, offset, count);

    /// <inheritdoc/>
    public override int Read(Span<byte> buffer) => inner.Read(buffer);

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => inner.Seek(offset, origin);

    /// <inheritdoc/>
    public override void SetLength(long value) => inner.SetLength(value);

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
        }

        base.Dispose(disposing);
    }

    private void MoveToFile()
    {
        var path = Path.Combine(folder, $".{Path.GetRandomFileName()}.part");
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.ReadWrite, BufferSize = 64 << 10 };
        if (OperatingSystem.IsWindows())
        {
            options.Options = FileOptions.DeleteOnClose;
        }
        else
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        var file = new FileStream(path, options);
        if (!OperatingSystem.IsWindows())
        {
            File.Delete(path);
        }

        var at = inner.Position;
        inner.Position = 0;
        inner.CopyTo(file);
        file.Position = at;
        inner.Dispose();
        inner = file;
    }

    private ArgumentProblem Refused() => new($"A part of the result has to wait, and there is no room for it in `{folder}`: make room there, or write another form.");
}
