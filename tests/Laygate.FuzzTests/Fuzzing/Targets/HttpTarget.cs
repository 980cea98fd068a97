using System.Net.Http.Headers;
using System.Text.Json;
using Laygate.ServiceTests.Shared;
using static Laygate.FuzzTests.Fuzzing.Refusal;

namespace Laygate.FuzzTests.Fuzzing.Targets;

/// <summary>The service in this process: bodies that are plans, and bodies in JSON.</summary>
/// <param name="isJson">Whether they are JSON.</param>
/// <param name="service">The service.</param>
internal sealed class HttpTarget(bool isJson, Lazy<RunningService> service) : Target
{
    // Statuses that docs/openapi.json lists for these addresses; 503 speaks of a machine that is busy and is none of an input.
    private static readonly int[] Documented = [200, 201, 400, 404, 406, 409, 412, 413, 415, 422, 428];
    private static readonly string[] ForPlans =
    [
        "/api/v1/checks?quick=true", "/api/v1/checks?quick=true&rules=us-wa", "/api/v1/checks?quick=true&rules=de&stage=release", "/api/v1/checks?quick=true&date=2027-05-01", "/api/v1/checks?quick=true&remedies=true",
        "/api/v1/sheets?draft=true", "/api/v1/submissions?file_name=fuzz.yaml",
    ];

    // The word that a body of each kind holds, and where it goes.
    private static readonly (string Word, string Address)[] ForJson =
    [
        ("\"old\"", "/api/v1/comparisons"), ("\"role\"", "/api/v1/keys"), ("\"decision\"", "/api/v1/submissions/nowhere/decision"), ("\"reason\"", "/api/v1/screenings"), ("", "/api/v1/submissions/nowhere/screenings"),
    ];

    private static readonly string[] Types = ["application/json", "application/sarif+json", "text/html", "text/markdown"];
    private readonly Lazy<HttpClient> client = new(() => service.Value.Client(service.Value.Administrator));

    /// <inheritdoc/>
    public override string Name => isJson ? "http json" : "http plan";

    /// <inheritdoc/>
    public override int Share => 8;

    /// <inheritdoc/>
    public override SeedSet Seeds { get; } = isJson ? SeedFiles.Bodies() : SeedFiles.SmallPlans();

    /// <inheritdoc/>
    public override long? MostAllocated => null;

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, AddressOf(bytes)) { Content = new ByteArrayContent(bytes) };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue(isJson ? "application/json" : "application/yaml");
        request.Headers.TryAddWithoutValidation("If-Match", "\"1\"");
        if (!isJson)
        {
            request.Headers.TryAddWithoutValidation("Accept", Types[Choice(bytes, Types.Length, salt: 1)]);
        }

        using var answer = client.Value.SendAsync(request).GetAwaiter().GetResult();
        var body = answer.Content.ReadAsByteArrayAsync().GetAwaiter().GetResult();
        var status = (int)answer.StatusCode;
        Require(Documented.Contains(status), $"status {status} of {request.RequestUri}");
        if (status < 300)
        {
            return Answer.Accepted;
        }

        Require(answer.Content.Headers.ContentType?.MediaType == "application/problem+json", $"a refusal with {status} as {answer.Content.Headers.ContentType}");
        using var json = JsonDocument.Parse(body);
        Require(json.RootElement.GetProperty("title").GetString() is { Length: > 0 } && json.RootElement.GetProperty("detail").GetString() is { Length: > 0 }, $"a refusal with {status} and no words");
        if (status == 422)
        {
            Require(json.RootElement.GetProperty("errors").EnumerateArray().All(error => error.GetProperty("detail").GetString() is { Length: > 0 } && error.GetProperty("line").GetInt32() > 0 && error.GetProperty("column").GetInt32() > 0), "an error without words or place");
        }

        return Answer.Refused;
    }

    private string AddressOf(byte[] bytes)
    {
        if (!isJson)
        {
            return ForPlans[Choice(bytes, ForPlans.Length)];
        }

        var text = System.Text.Encoding.UTF8.GetString(bytes);
        return ForJson.First(kind => text.Contains(kind.Word, StringComparison.Ordinal)).Address;
    }
}
