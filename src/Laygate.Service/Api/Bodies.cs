using Microsoft.Net.Http.Headers;

namespace Laygate.Service.Api;

/// <summary>What requests bring along.</summary>
internal static class Bodies
{
    /// <summary>Most bytes of a plan.</summary>
    public const int LargestPlan = 1 << 20;

    /// <summary>Media types of a plan, YAML first.</summary>
    public static readonly string[] PlanTypes = ["application/yaml", "application/json", "text/yaml", "application/x-yaml", "text/plain", "application/octet-stream"];

    /// <summary>Media types of an archive.</summary>
    public static readonly string[] ArchiveTypes = ["application/zip", "application/x-zip-compressed"];

    /// <summary>Media type of a form with files.</summary>
    public const string Form = "multipart/form-data";

    /// <summary>The bytes of a plan exactly as sent.</summary>
    /// <exception cref="BadHttpRequestException">There is none, it is too large, or it is packed or of another kind.</exception>
    public static async Task<byte[]> PlanAsync(HttpRequest request, CancellationToken cancel)
    {
        Unpacked(request);
        if (request.ContentType is { } type && (!MediaTypeHeaderValue.TryParse(type, out var media) || !PlanTypes.Contains(media.MediaType.Value, StringComparer.OrdinalIgnoreCase)))
        {
            throw new BadHttpRequestException($"Send the plan as one of: {string.Join(", ", PlanTypes)}; or a set of files as {ArchiveTypes[0]} or {Form}.", StatusCodes.Status415UnsupportedMediaType);
        }

        return await ReadAsync(request.Body, LargestPlan, cancel);
    }

    /// <summary>Sees to it that a body is not packed on its way.</summary>
    /// <exception cref="BadHttpRequestException">It is.</exception>
    public static void Unpacked(HttpRequest request)
    {
        if (request.Headers.ContentEncoding.Count > 0)
        {
            throw new BadHttpRequestException("Send the plan unpacked: a Content-Encoding is not read.", StatusCodes.Status415UnsupportedMediaType);
        }
    }

    /// <summary>All bytes of a stream, at most so many.</summary>
    public static async Task<byte[]> ReadAsync(Stream body, int most, CancellationToken cancel, bool mayBeEmpty = false)
    {
        using var bytes = new MemoryStream();
        var buffer = new byte[16 << 10];
        int count;
        while ((count = await body.ReadAsync(buffer, cancel)) > 0)
        {
            if (bytes.Length + count > most)
            {
                throw new BadHttpRequestException("Too large.", StatusCodes.Status413PayloadTooLarge);
            }

            bytes.Write(buffer, 0, count);
        }

        return bytes.Length > 0 || mayBeEmpty ? bytes.ToArray() : throw new BadHttpRequestException("The body is empty. Send the plan as the body.");
    }

    /// <summary>The media type that the caller likes best (RFC 9110, 12.5.1); the first of those that it likes equally, and the first of all when it does not say.</summary>
    /// <exception cref="BadHttpRequestException">It takes none of them.</exception>
    public static string Offer(HttpRequest request, params string[] types)
    {
        if (request.Headers.Accept.Count == 0)
        {
            return types[0];
        }

        var accepted = request.GetTypedHeaders().Accept;
        return types.Where(type => Quality(accepted, type) > 0).MaxBy(type => Quality(accepted, type))
            ?? throw new BadHttpRequestException($"This answer comes as {string.Join(" or ", types)}.", StatusCodes.Status406NotAcceptable);
    }

    /// <summary>Says in the description of the interface that the body is a plan or a set of files.</summary>
    public static RouteHandlerBuilder TakesPlan(this RouteHandlerBuilder route) => route.Accepts<string>(PlanTypes[0], [.. PlanTypes[1..], ArchiveTypes[0], Form]);

    // The narrowest range that fits decides, whatever the others say. The platform's own comparison would count SARIF as a kind of application/json.
    private static double Quality(IList<MediaTypeHeaderValue> accepted, string type)
    {
        var media = new MediaTypeHeaderValue(type);
        return accepted.Where(range => range.MatchesAllTypes || (range.MatchesAllSubTypes ? range.Type.Equals(media.Type, StringComparison.OrdinalIgnoreCase) : range.MediaType.Equals(media.MediaType, StringComparison.OrdinalIgnoreCase)))
            .OrderBy(range => range.MatchesAllTypes ? 2 : range.MatchesAllSubTypes ? 1 : 0)
            .Select(range => range.Quality ?? 1)
            .FirstOrDefault();
    }

    /// <summary>The values of a query parameter that may be repeated.</summary>
    public static IReadOnlyList<string>? Texts(HttpRequest request, string name) =>
        request.Query.TryGetValue(name, out var values) ? [.. values.OfType<string>().Where(value => value.Length > 0)] : null;
}
