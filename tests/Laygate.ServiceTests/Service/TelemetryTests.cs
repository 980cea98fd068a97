using System.Text;
using System.Text.Json;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Service;

/// <summary>Metrics and traces as another program receives them: over OTLP, decoded by the published definitions (see <see cref="TelemetryReceiver"/>).</summary>
public sealed class TelemetryTests
{
    private const string Mark = "SECRETMARK";

    [SkippableFact]
    public async Task Metrics_and_traces_arrive_and_hold_nothing_of_a_plan()
    {
        Needs.Tool("@opentelemetry/otlp-transformer/build/src/generated/root.js");
        var data = Directory.CreateTempSubdirectory("laygate-telemetry-").FullName;
        using var receiver = new TelemetryReceiver();
        using (var service = new ServiceProcess(
            ServiceProcess.FreePort(),
            ["Data=" + data],
            environment:
            [
                "OTEL_EXPORTER_OTLP_ENDPOINT=" + receiver.Address, "OTEL_EXPORTER_OTLP_PROTOCOL=http/protobuf",
                "OTEL_METRIC_EXPORT_INTERVAL=1000", "OTEL_BSP_SCHEDULE_DELAY=500",
            ]))
        {
            await service.ReadyAsync();
            var key = service.Output[service.Output.IndexOf(Laygate.Register.AccessKeys.Mark, StringComparison.Ordinal)..].Split('\n')[0].Trim();
            await UseAsync(service, key);

            // Longer than the five seconds in which the queue is counted once.
            await Patience.UntilAsync(() => Points(receiver, "laygate.queue").Count > 0, "the length of the queue");

            Assert.Equal(0, service.Stop());
            Hidden(receiver, key);
        }

        Measured(receiver);
        Traced(receiver);
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(data, recursive: true);
    }

    private static async Task UseAsync(ServiceProcess service, string key)
    {
        using var client = service.Client(key);
        foreach (var plan in new[] { Plan(), $"{Mark}: [", $"format: {Mark}" })
        {
            using var check = await client.PostAsync("/api/v1/checks?quick=true", RunningService.Yaml(plan));
            Assert.Equal(plan == Plan() ? 200 : 422, (int)check.StatusCode);
            using var refused = await client.PostAsync($"/api/v1/checks?stage={Mark}", RunningService.Yaml(plan));
            var id = await RunningService.SubmitAsync(client, plan, $"?file_name={Mark}.yaml");
            await RunningService.ScreenedAsync(client, id);
            using var list = await client.GetAsync($"/api/v1/submissions?search={Mark}");
            using var report = await client.GetAsync($"/api/v1/submissions/{id}/report");
        }
    }

    // A plan that can be read, with the mark in its title and in every id.
    private static string Plan() => RunningService.Plan("concept-fifteen-lines.yaml")
        .Replace(" id: ", $" id: x-{Mark.ToLowerInvariant()}-", StringComparison.Ordinal)
        .Replace(" mix: ", $" mix: x-{Mark.ToLowerInvariant()}-", StringComparison.Ordinal)
        .Replace("title: ", $"title: {Mark} ", StringComparison.Ordinal) + $"# {Mark}\n";

    private static void Hidden(TelemetryReceiver receiver, string key)
    {
        Assert.NotEmpty(receiver.Bodies);
        Assert.All(receiver.Bodies, body =>
        {
            var text = Encoding.Latin1.GetString(body);
            Assert.DoesNotContain(Mark, text, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain(key, text, StringComparison.Ordinal);
        });
    }

    private static void Measured(TelemetryReceiver receiver)
    {
        var durations = Points(receiver, "laygate.check.duration");
        Assert.All(durations, point => Assert.Equal(
            long.Parse(point.GetProperty("count").GetString()!, System.Globalization.CultureInfo.InvariantCulture),
            point.Each("bucketCounts").Sum(count => long.Parse(count.GetString()!, System.Globalization.CultureInfo.InvariantCulture))));
        Assert.Equal(["request", "screening"], durations.Select(point => Attribute(point, "kind")).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.Contains(durations, point => Attribute(point, "kind") == "screening" && point.GetProperty("count").GetString() == "3");

        // The counter is cumulative: the largest is the last.
        var screenings = Points(receiver, "laygate.screenings").Where(point => Attribute(point, "result") == "stored").Max(point => long.Parse(point.GetProperty("asInt").GetString()!, System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(3, screenings);
        Assert.Contains(Points(receiver, "laygate.queue"), point => point.GetProperty("asInt").GetString() == "0");
    }

    private static void Traced(TelemetryReceiver receiver)
    {
        var spans = receiver.Decoded("traces").SelectMany(message => message.Each("resourceSpans"))
            .SelectMany(resource => resource.Each("scopeSpans")).SelectMany(scope => scope.Each("spans")).ToList();
        var requests = spans.Where(span => span.GetProperty("kind").GetString() == "SPAN_KIND_SERVER").ToList();
        var check = requests.First(span => Attribute(span, "http.route") == "/api/v1/checks" && Attribute(span, "http.response.status_code") == "200");
        Assert.Contains(spans, span => span.GetProperty("name").GetString() == "check"
            && span.GetProperty("traceId").GetString() == check.GetProperty("traceId").GetString()
            && span.GetProperty("parentSpanId").GetString() == check.GetProperty("spanId").GetString());
    }

    private static List<JsonElement> Points(TelemetryReceiver receiver, string name) =>
    [
        .. receiver.Decoded("metrics").SelectMany(message => message.Each("resourceMetrics"))
            .SelectMany(resource => resource.Each("scopeMetrics")).SelectMany(scope => scope.Each("metrics"))
            .Where(metric => metric.GetProperty("name").GetString() == name)
            .SelectMany(metric => new[] { "histogram", "sum", "gauge" }.Where(kind => metric.TryGetProperty(kind, out _)).SelectMany(kind => metric.GetProperty(kind).Each("dataPoints"))),
    ];

    private static string? Attribute(JsonElement of, string key)
    {
        var value = of.Each("attributes").Where(one => one.GetProperty("key").GetString() == key).Select(one => one.GetProperty("value")).FirstOrDefault();
        return value.ValueKind == JsonValueKind.Undefined ? null : value.EnumerateObject().First().Value.ToString();
    }
}

file static class Repeated
{
    /// <summary>The entries of a repeated field; none where the message leaves the field out, as protobuf does with an empty one (a process that has measured nothing yet exports a resource without scopes).</summary>
    public static IEnumerable<JsonElement> Each(this JsonElement message, string field) =>
        message.TryGetProperty(field, out var entries) ? entries.EnumerateArray() : [];
}
