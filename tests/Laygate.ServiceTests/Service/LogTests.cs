using System.Text.Json;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Service;

/// <summary>What the service writes about requests: their status, their route, who sent them, and nothing that they say.</summary>
public sealed class LogTests
{
    private const string Mark = "SECRETMARK";

    [FactOfFullRun]
    public async Task Refusals_stand_with_their_status_and_route_and_nothing_that_was_sent_gets_in()
    {
        var folder = Directory.CreateTempSubdirectory("laygate-logs-").FullName;
        List<JsonElement> lines;
        string key;
        using (var service = await new ServiceProcess(ServiceProcess.FreePort(), ["Data=" + folder]).ReadyAsync())
        {
            key = service.Output[service.Output.IndexOf(Laygate.Register.AccessKeys.Mark, StringComparison.Ordinal)..].Split('\n')[0].Trim();
            using var client = service.Client(key);
            foreach (var (address, status) in new[] { ($"/api/v1/submissions?cursor={Mark}", 400), ($"/api/v1/submissions/{key}", 404), ($"/api/v1/rules/{Mark}", 404), ($"/{Mark}/{key}", 404), ($"/submissions/{Mark}", 404), ($"/api/v1/checks?rules={Mark}", 405) })
            {
                using var answer = await client.GetAsync(address);
                Assert.Equal(status, (int)answer.StatusCode);
            }

            using var refused = await client.PostAsync($"/api/v1/checks?stage={Mark}", RunningService.Yaml("a: 1"));
            Assert.Equal(400, (int)refused.StatusCode);
            using var odd = new HttpRequestMessage(new HttpMethod(Mark), "/");
            using var method = await client.SendAsync(odd);
            using var stranger = service.Client("laygate_000000000000_" + Mark);
            using var unknown = await stranger.GetAsync("/api/v1/submissions");
            Assert.Equal(401, (int)unknown.StatusCode);
            Assert.Equal(0, service.Stop());
            lines = [.. service.Output.Split('\n', StringSplitOptions.TrimEntries).Where(line => line.StartsWith('{')).Select(line => JsonDocument.Parse(line).RootElement)];
            Assert.DoesNotContain(Mark, service.Output, StringComparison.OrdinalIgnoreCase);
            // The secret may hold the mark between the parts of a key.
            Assert.Equal(1, service.Output.Split(string.Join('_', key.Split('_')[2..])).Length - 1);
        }

        var requests = lines.Where(line => line.TryGetProperty("StatusCode", out _)).ToList();
        Assert.DoesNotContain(requests, line => line.GetProperty("StatusCode").GetInt32() >= 500);
        Assert.DoesNotContain(lines, line => line.TryGetProperty("@x", out _));
        Contains(requests, "/api/v1/submissions", 400);
        Contains(requests, "/api/v1/submissions/{id}", 404);
        Contains(requests, "/api/v1/rules/{id}", 404);
        Contains(requests, "/submissions/{id}", 404);
        Contains(requests, "/api/v1/checks", 400);
        Contains(requests, "none", 404);
        Assert.Contains(requests, line => line.GetProperty("StatusCode").GetInt32() == 401 && line.GetProperty("Caller").GetString() == "none");
        Assert.Matches("^[0-9a-f]{32}$", requests.First(line => line.GetProperty("StatusCode").GetInt32() == 404).GetProperty("Caller").GetString());
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    [Theory]
    [InlineDataOfFullRun(false)]
    [InlineData(true)]
    public async Task A_cookie_that_cannot_be_secure_is_said_at_start(bool proxy)
    {
        var folder = Directory.CreateTempSubdirectory("laygate-logs-").FullName;
        using (var service = await new ServiceProcess(ServiceProcess.FreePort(), ["Data=" + folder], environment: proxy ? ["ASPNETCORE_FORWARDEDHEADERS_ENABLED=true"] : []).ReadyAsync())
        {
            Assert.Equal(0, service.Stop());
            Assert.Equal(!proxy, service.Output.Contains("ASPNETCORE_FORWARDEDHEADERS_ENABLED", StringComparison.Ordinal));
        }

        Directory.Delete(folder, recursive: true);
    }

    private static void Contains(List<JsonElement> requests, string route, int status) => Assert.Contains(requests, line =>
        line.TryGetProperty("Route", out var logged) && logged.GetString() == route && line.GetProperty("StatusCode").GetInt32() == status);
}
