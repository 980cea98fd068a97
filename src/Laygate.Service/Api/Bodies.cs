using Microsoft.Net.Http.Headers;

namespace Laygate.Service.Api;

/// <summary>What requests bring along.</summary>
internal static class Bodies
{
    /// <summary>Most bytes of a plan.</summary>
    public const int LargestPlan = 1 << 20;

    /// <summary>Media types of a plan, YAML first.</summary>
    public static readonly string[] PlanTypes = ["application/yaml", "application/json", "text/yaml", "application/x-yaml", "text/plain", "application/octet-stream"];

    /// <summary>The bytes of a plan exactly as sent.</summary>
    /// <exception cref="BadHttpRequestException">There is none, it is too large, or it is packed or of another kind.</exception>
    public static async Task<byte[]> PlanAsync(HttpRequest request, CancellationToken cancel)
    {
        if (request.Headers.ContentEncoding.Count > 0)
        {
            throw new BadHttpRequestException("Send the plan unpacked: a Content-Encoding is not read.", StatusCodes.Status415UnsupportedMediaType);
        }

        if (request.ContentType is { } type && (!MediaTypeHeaderValue.TryParse(type, out var media) || !PlanTypes.Contains(media.MediaType.Value, StringComparer.OrdinalIgnoreCase)))
        {
            throw new BadHttpRequestException($"Send the plan as one of: {string.Join(", ", PlanTypes)}.", StatusCodes.Status415UnsupportedMediaType);
        }

        return await ReadAsync(request.Body, cancel);
    }

    /// <summary>All bytes of a stream, at most those of a plan.</summary>
    public static async Task<byte[]> ReadAsync(Stream body, CancellationToken cancel)
    {
        using var bytes = new MemoryStream();
        var buffer = new byte[16 << 10];
        int count;
        while ((count = await body.ReadAsync(buffer, cancel)) > 0)
        {
            if (bytes.Length + count > LargestPlan)
            {
                throw new BadHttpRequestException("Too large.", StatusCodes.Status413PayloadTooLarge);
            }

            bytes.Write(buffer, 0, count);
        }

        return bytes.Length > 0 ? bytes.ToArray() : throw new BadHttpRequestException("The body is empty. Send the plan as the body.");
    }

    /// <summary>Whether the caller takes one of these media types.</summary>
    /// <exception cref="BadHttpRequestException">It takes none of them.</exception>
    public static void Offer(HttpRequest request, params string[] types)
    {
        var accepted = request.GetTypedHeaders().Accept;
        if (request.Headers.Accept.Count > 0 && !types.Any(type => accepted.Any(one => one.Quality is null or > 0 && new MediaTypeHeaderValue(type).IsSubsetOf(new MediaTypeHeaderValue(one.MediaType)))))
        {
            throw new BadHttpRequestException($"This answer comes as {string.Join(" or ", types)}.", StatusCodes.Status406NotAcceptable);
        }
    }

    /// <summary>Says in the description of the interface that the body is a plan.</summary>
    public static RouteHandlerBuilder TakesPlan(this RouteHandlerBuilder route) => route.Accepts<string>(PlanTypes[0], PlanTypes[1..]);

    /// <summary>The values of a query parameter that may be repeated.</summary>
    public static IReadOnlyList<string>? Texts(HttpRequest request, string name) =>
        request.Query.TryGetValue(name, out var values) ? [.. values.OfType<string>().Where(value => value.Length > 0)] : null;
}
