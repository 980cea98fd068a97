using System.Net.Http.Json;
using Laygate.Register;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Service;

/// <summary>Control characters in what a caller writes: refused alike on both databases, never stored, never taken for a database that is away.</summary>
[Collection(SharedStores.Name)]
public sealed class OddTextTests(Stores stores)
{
    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Control_characters_are_a_bad_request_wherever_they_stand(Engine engine)
    {
        await using var service = engine == Engine.Sqlite ? await RunningService.StartAsync() : await RunningService.StartAsync(null, "Database=" + stores.New(engine).Connection);
        using var client = service.Client(service.Administrator);
        var id = await RunningService.SubmitAsync(client, "a: 1");
        await RunningService.ScreenedAsync(client, id);
        foreach (var odd in new[] { "%00", "%01", "%1B", "%7F", "%C2%85", "%0A" })
        {
            foreach (var address in new[] { $"/api/v1/submissions?search=a{odd}", $"/api/v1/submissions?cursor={odd}", $"/api/v1/submissions?{odd}=1", $"/api/v1/submissions/a{odd}", $"/api/v1/submissions/a{odd}/report", $"/api/v1/submissions/a{odd}/history", $"/api/v1/rules/a{odd}", $"/submissions/a{odd}", $"/submissions?search={odd}" })
            {
                using var answer = await client.GetAsync(address);
                Assert.True((int)answer.StatusCode == 400, $"{address} gives {(int)answer.StatusCode}");
            }

            foreach (var query in new[] { $"file_name=a{odd}.yaml", $"revision_of={odd}" })
            {
                using var answer = await client.PostAsync("/api/v1/submissions?" + query, RunningService.Yaml("a: 1"));
                Assert.True((int)answer.StatusCode == 400, $"{query} gives {(int)answer.StatusCode}");
            }

            using var revoked = await client.DeleteAsync($"/api/v1/keys/{odd}");
            Assert.Equal(400, (int)revoked.StatusCode);
            using var nobody = service.Client();
            using var cookie = new HttpRequestMessage(HttpMethod.Get, "/api/v1/submissions");
            cookie.Headers.Add("Cookie", $"laygate=laygate_{odd}_x");
            using var byCookie = await nobody.SendAsync(cookie);
            Assert.Equal(400, (int)byCookie.StatusCode);
            using var form = new FormUrlEncodedContent([KeyValuePair.Create("key", "laygate_" + Uri.UnescapeDataString(odd) + "_x")]);
            using var signIn = await nobody.PostAsync("/sign-in", form);
            Assert.Equal(400, (int)signIn.StatusCode);
        }

        foreach (var odd in new[] { "\0", "\u0001", "\u001B", "\u007F", "\u0085" })
        {
            await RefusedAsync(client, "/api/v1/keys", new { name = "a" + odd, role = "submitter" });
            await RefusedAsync(client, $"/api/v1/submissions/{id}/screenings", new { reason = "a" + odd });
            await RefusedAsync(client, "/api/v1/screenings", new { reason = "a" + odd });
            await RefusedAsync(client, $"/api/v1/submissions/{id}/decision", new { decision = "returned", comment = "a" + odd });
        }

        await RefusedAsync(client, "/api/v1/screenings", new { reason = new string('a', 10_001) });
        await RefusedAsync(client, $"/api/v1/submissions/{id}/screenings", new { reason = new string('a', 10_001) });
        await RefusedAsync(client, $"/api/v1/submissions/{id}/screenings", new { reason = " " });
        using var history = await client.GetAsync($"/api/v1/submissions/{id}/history");
        Assert.DoesNotContain("screening_asked", await history.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    private static async Task RefusedAsync(HttpClient client, string address, object body)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, address) { Content = JsonContent.Create(body) };
        request.Headers.TryAddWithoutValidation("If-Match", "\"4\"");
        using var answer = await client.SendAsync(request);
        Assert.True((int)answer.StatusCode == 400, $"{address} gives {(int)answer.StatusCode}");
    }
}
