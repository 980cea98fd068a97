namespace Laygate.Service.Access;

/// <summary>Where a browser goes after signing in: an address of this service, never another site.</summary>
internal static class LocalAddress
{
    /// <summary>Where to go when nothing else is said.</summary>
    public const string Start = "/";

    private const int Longest = 2000;

    /// <summary>The address as it was asked for; the start page where it leads elsewhere or cannot be told.</summary>
    /// <remarks>A browser reads a backslash as a slash and passes over tabs and line ends (WHATWG URL, 4.4), so an address with any of them is none.</remarks>
    public static string Of(string? address) =>
        address is { Length: > 0 and <= Longest } && address[0] == '/' && !address.StartsWith("//", StringComparison.Ordinal)
        && !address.Contains('\\', StringComparison.Ordinal) && !address.Any(char.IsControl) && Uri.TryCreate(address, UriKind.Relative, out _)
            ? address
            : Start;

    /// <summary>The address of a page that was asked for.</summary>
    public static string Of(HttpRequest request) => HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method) ? Of(request.Path + request.QueryString) : Start;
}
