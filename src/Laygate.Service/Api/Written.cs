using Microsoft.IO;

namespace Laygate.Service.Api;

/// <summary>An answer in blocks of memory that are used again: reports have a megabyte and more, and a block of that size for each would cost a full collection each.</summary>
/// <param name="type">Media type.</param>
/// <param name="write">Writes the body.</param>
internal sealed class Written(string type, Action<Stream> write) : IResult
{
    private const long Kept = 64 << 20;

    /// <summary>The blocks; one store serves the whole process.</summary>
    public static RecyclableMemoryStreamManager Blocks() => new(new RecyclableMemoryStreamManager.Options { MaximumSmallPoolFreeBytes = Kept });

    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        // Written whole before the first byte goes out, so that an error still becomes an answer of its own.
        await using var bytes = httpContext.RequestServices.GetRequiredService<RecyclableMemoryStreamManager>().GetStream();
        write(bytes);
        httpContext.Response.ContentType = type;
        httpContext.Response.ContentLength = bytes.Length;
        bytes.Position = 0;
        await bytes.CopyToAsync(httpContext.Response.Body, httpContext.RequestAborted);
    }
}
