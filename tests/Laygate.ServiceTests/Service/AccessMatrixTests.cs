using System.Globalization;
using System.Net.Http.Headers;
using System.Text;
using Laygate.ServiceTests.Shared;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Laygate.ServiceTests.Service;

/// <summary>
/// Every endpoint against every caller: a submission of Ada, asked for by nobody, by another submitter, by Ada, by a reviewer and by an administrator. The table beside
/// this file holds one row for each endpoint with the status that each of them gets; an endpoint without a row, and a row without an endpoint, fail.
/// Requests that change something are sent so that whoever may do it is refused for what it lacks (400, 409, 412, 428), never for who it is (401, 403, 404).
/// </summary>
public sealed class AccessMatrixTests(OneService one) : IClassFixture<OneService>
{
    private static string Table => Path.Combine(SourceTree.Root, "tests", "Laygate.ServiceTests", "Service", "access-matrix.txt");

    [Fact]
    public async Task Every_endpoint_answers_every_caller_as_the_table_says()
    {
        var id = await RunningService.SubmitAsync(one.Ada, RunningService.Plan("concept-fifteen-lines.yaml"), "?file_name=plan.yaml");
        await RunningService.ScreenedAsync(one.Ada, id);
        using (var handed = await one.Ada.PostAsync($"/api/v1/submissions/{id}/records", RecordApiTests.Form(RecordApiTests.Small)))
        {
            Assert.Equal(System.Net.HttpStatusCode.Created, handed.StatusCode);
        }

        HttpClient[] callers = [one.Nobody, one.Bo, one.Ada, one.Reviewer, one.Administrator];
        var rows = new List<string>();
        foreach (var (method, pattern) in Endpoints())
        {
            var statuses = new List<string>();
            foreach (var caller in callers)
            {
                using var request = Request(method, pattern, id);
                using var answer = await caller.SendAsync(request);
                statuses.Add(((int)answer.StatusCode).ToString(CultureInfo.InvariantCulture));
            }

            rows.Add($"{method,-6} {pattern,-52} {string.Join(' ', statuses)}");
        }

        var found = string.Join('\n', rows.Prepend($"{"method",-6} {"endpoint",-52} nobody, other submitter, its submitter, reviewer, administrator")) + "\n";
        if (Environment.GetEnvironmentVariable("LAYGATE_APPROVE") is { Length: > 0 })
        {
            await File.WriteAllTextAsync(Table, found);
        }

        Assert.Equal((await File.ReadAllTextAsync(Table)).ReplaceLineEndings("\n"), found);
    }

    [Fact]
    public void What_only_reviewers_do_is_refused_to_submitters_and_to_nobody_in_the_table_itself()
    {
        foreach (var row in File.ReadLines(Table).Skip(1).Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries)))
        {
            var (pattern, statuses) = (row[1], row[2..]);
            if (pattern.Contains("/keys", StringComparison.Ordinal) || pattern.Contains("/audit", StringComparison.Ordinal) || pattern.StartsWith("/administration", StringComparison.Ordinal))
            {
                Assert.Equal(["401", "403", "403", "403"], statuses[..4]);
            }
            else if (row[0] is not "GET" && (pattern.Contains("decision", StringComparison.Ordinal) || pattern.Contains("screenings", StringComparison.Ordinal) || pattern.Contains("assignee", StringComparison.Ordinal) || pattern is "/submissions/{id}/take" or "/submissions/{id}/release" or "/submissions/return"))
            {
                Assert.Equal(["401", "403", "403"], statuses[..3]);
                Assert.DoesNotContain(statuses[3], new[] { "401", "403", "404" }, StringComparer.Ordinal);
            }
            else if (pattern.Contains("/submissions/{id}", StringComparison.Ordinal))
            {
                // What it may not see is not there.
                Assert.Equal(["401", "404"], statuses[..2]);
            }
        }
    }

    private IEnumerable<(string Method, string Pattern)> Endpoints() => one.Running.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
        .SelectMany(endpoint => (endpoint.Metadata.GetMetadata<Microsoft.AspNetCore.Routing.HttpMethodMetadata>()?.HttpMethods ?? ["GET"]).Select(method => (method, "/" + endpoint.RoutePattern.RawText!.Trim('/'))))
        .Distinct().OrderBy(pair => pair.Item2, StringComparer.Ordinal).ThenBy(pair => pair.method, StringComparer.Ordinal);

    private static HttpRequestMessage Request(string method, string pattern, string id)
    {
        var path = pattern.Replace("{documentName}", "v1", StringComparison.Ordinal).Replace("{form}", "json", StringComparison.Ordinal).Replace("{other}", id, StringComparison.Ordinal)
            .Replace("{**name}", pattern.Contains("/records/", StringComparison.Ordinal) ? "record.yaml" : "plan.yaml", StringComparison.Ordinal).Replace("{record:int}", "1", StringComparison.Ordinal).Replace("{name}", "plan.schema.json", StringComparison.Ordinal)
            .Replace("{id}", pattern.Contains("/rules/", StringComparison.Ordinal) ? "LAY-001" : pattern.Contains("/keys/", StringComparison.Ordinal) || pattern.Contains("/sessions/", StringComparison.Ordinal) ? "none" : id, StringComparison.Ordinal);
        var request = new HttpRequestMessage(new HttpMethod(method), path);
        if (!pattern.StartsWith("/api", StringComparison.Ordinal))
        {
            request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue("text/html"));
        }

        if (method is not ("GET" or "DELETE"))
        {
            request.Content = !pattern.StartsWith("/api", StringComparison.Ordinal) ? new MultipartFormDataContent { { new StringContent("a: 1"), "plan" }, { new StringContent("x"), "comment" }, { new StringContent("true"), Laygate.Service.Pages.PageTexts.Open + Laygate.Service.Pages.PageTexts.NameOf(new("", "LAY-000", "nowhere")) } }
                : pattern is "/api/v1/checks" or "/api/v1/sheets" or "/api/v1/submissions" ? RunningService.Yaml("a: 1")
                : pattern.EndsWith("/records", StringComparison.Ordinal) ? RecordApiTests.Form([RecordApiTests.Small[1]])
                : pattern.EndsWith("/comments", StringComparison.Ordinal) ? new StringContent("{\"rule\":\"LAY-000\",\"address\":\"nowhere\",\"text\":\"x\"}", Encoding.UTF8, "application/json")
                : new StringContent("{}", Encoding.UTF8, "application/json");
        }

        return request;
    }
}
