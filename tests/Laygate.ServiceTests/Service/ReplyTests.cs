using System.Net;
using Laygate.Register;
using Laygate.ServiceTests.Shared;
using Microsoft.Extensions.DependencyInjection;

namespace Laygate.ServiceTests.Service;

/// <summary>Between report and reply: what is stored counts, whether or not whoever made it or asked for it has heard of it.</summary>
public sealed class ReplyTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("laygate-reply-").FullName;

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_reply_that_is_lost_is_given_again_by_the_next_process_with_the_same_bytes()
    {
        string key;
        string id;
        await using (var dying = await StartAsync(Moment.ReportRead))
        {
            key = dying.Administrator;
            using var client = dying.Client(key);
            id = await RunningService.SubmitAsync(client, RunningService.Plan("concept-fifteen-lines.yaml"));
            await RunningService.ScreenedAsync(client, id);
            foreach (var accept in new[] { "application/json", "application/sarif+json", "text/html" })
            {
                using var request = new HttpRequestMessage(HttpMethod.Get, $"/api/v1/submissions/{id}/report");
                request.Headers.TryAddWithoutValidation("Accept", accept);
                await CheckApiTests.RefusedAsync(await client.SendAsync(request), 500);
            }
        }

        await using var next = await StartAsync(null);
        using var later = next.Client(key);
        using var first = await later.GetAsync($"/api/v1/submissions/{id}/report");
        using var second = await later.GetAsync($"/api/v1/submissions/{id}/report");
        Assert.Equal(HttpStatusCode.OK, first.StatusCode);
        Assert.Equal(first.Headers.ETag, second.Headers.ETag);
        Assert.Equal(await first.Content.ReadAsByteArrayAsync(), await second.Content.ReadAsByteArrayAsync());
        await OnceAsync(later, id);
    }

    [Fact]
    public async Task A_worker_that_does_not_hear_that_its_report_is_stored_does_not_screen_again()
    {
        string key;
        string id;
        await using (var dying = await StartAsync(Moment.ReportCommitted))
        {
            key = dying.Administrator;
            using var client = dying.Client(key);
            id = await RunningService.SubmitAsync(client, RunningService.Plan("concept-fifteen-lines.yaml"));
            var screened = await RunningService.ScreenedAsync(client, id);
            Assert.Equal("screened", screened.GetProperty("state").GetString());

            // The worker lives on: it takes the next one.
            var other = await RunningService.SubmitAsync(client, RunningService.Plan("concept-fifteen-lines.yaml") + "# other\n");
            await RunningService.ScreenedAsync(client, other);
            await OnceAsync(client, id);
            await OnceAsync(client, other);
        }

        await using var next = await StartAsync(null);
        using var later = next.Client(key);
        using var answer = await later.GetAsync($"/api/v1/submissions/{id}/report");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        await OnceAsync(later, id);
    }

    private static async Task OnceAsync(HttpClient client, string id)
    {
        using var answer = await client.GetAsync($"/api/v1/submissions/{id}/history");
        var events = (await RunningService.JsonAsync(answer)).EnumerateArray().Select(entry => entry.GetProperty("event").GetString()).ToList();
        Assert.Equal(["received", "claimed", "screened"], events);
    }

    private Task<RunningService> StartAsync(Moment? diesAt) =>
        RunningService.StartAsync(folder, services => services.AddSingleton<IMoments>(new DiesAt(diesAt)));
}
