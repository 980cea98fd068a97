using System.Collections.Concurrent;
using System.Globalization;
using Laygate.Register;
using Laygate.ServiceTests.Shared;
using Microsoft.EntityFrameworkCore;

namespace Laygate.ServiceTests.Service;

/// <summary>
/// Real processes that die by SIGKILL, or work side by side. The counting is done by SQL on the database, not by the program.
/// <c>LAYGATE_KILLS</c> sets the number of kills; the usual number fits the build server.
/// </summary>
[Collection(SharedStores.Name)]
[Long]
public sealed class KillTests(Stores stores)
{
    private static int Kills => int.TryParse(Environment.GetEnvironmentVariable("LAYGATE_KILLS"), NumberStyles.None, CultureInfo.InvariantCulture, out var kills) ? kills : FullRun.IsAsked ? 3 : 1;

    [SkippableTheory]
    [InlineDataOfFullRun(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Killing_the_service_loses_nothing_and_screens_nothing_twice(Engine engine)
    {
        var settings = stores.New(engine);
        var key = await KeyAsync(settings);
        var acknowledged = new ConcurrentDictionary<string, string>(StringComparer.Ordinal);
        var random = new Random(20271114);
        var port = ServiceProcess.FreePort();
        for (var kill = 0; kill < Kills; kill++)
        {
            using var service = await new ServiceProcess(port, Settings(settings)).ReadyAsync();
            using var client = service.Client(key);
            using var stop = new CancellationTokenSource();
            var load = Enumerable.Range(0, 2).Select(sender => LoadAsync(client, $"{kill}-{sender}", acknowledged, stop.Token)).ToList();
            // Killed at a random number of answers: at least one, or the kill would show nothing.
            var enough = acknowledged.Count + random.Next(1, 15);
            await Patience.UntilAsync(() => acknowledged.Count >= enough, "answers before the kill");
            service.Kill();
            await stop.CancelAsync();
            await Task.WhenAll(load);
        }

        Assert.NotEmpty(acknowledged);
        using var last = await new ServiceProcess(port, Settings(settings)).ReadyAsync();
        await EmptyAsync(settings);
        Assert.Equal(0, last.Stop());
        await CountAsync(settings, acknowledged);
    }

    [SkippableFact]
    public async Task Two_replicas_on_one_database_screen_nothing_twice()
    {
        var settings = stores.New(Engine.PostgreSql);
        var key = await KeyAsync(settings);
        using var one = new ServiceProcess(ServiceProcess.FreePort(), Settings(settings));
        using var two = new ServiceProcess(ServiceProcess.FreePort(), Settings(settings));
        await one.ReadyAsync();
        await two.ReadyAsync();
        var acknowledged = new ConcurrentDictionary<string, string>(StringComparer.Ordinal);
        await Task.WhenAll(new[] { one, two }.Select(async (service, at) =>
        {
            using var client = service.Client(key);
            for (var index = 0; index < 15; index++)
            {
                acknowledged[await SubmitAsync(client, $"{at}-{index}")] = $"{at}-{index}";
            }
        }));
        await EmptyAsync(settings);
        Assert.Equal((0, 0), (one.Stop(), two.Stop()));
        await CountAsync(settings, acknowledged);
        Assert.Contains("Screened", one.Output, StringComparison.Ordinal);
        Assert.Contains("Screened", two.Output, StringComparison.Ordinal);
        await using var context = Open(settings);
        Assert.Equal(30, await NumberAsync(context, "SELECT count(*) AS \"Value\" FROM jobs WHERE attempt = 1 AND state = 'Done'"));
    }

    [FactOfFullRun]
    public async Task Nothing_of_a_plan_reaches_the_logs()
    {
        var settings = stores.New(Engine.Sqlite);
        var key = await KeyAsync(settings);
        using var service = await new ServiceProcess(ServiceProcess.FreePort(), Settings(settings)).ReadyAsync();
        using var client = service.Client(key);
        foreach (var plan in new[] { Plan("SECRETMARK"), "SECRETMARK: [", "\u0001SECRETMARK", "format: SECRETMARK" })
        {
            using var check = await client.PostAsync("/api/v1/checks?stage=SECRETMARK", RunningService.Yaml(plan));
            using var second = await client.PostAsync("/api/v1/checks", RunningService.Yaml(plan));
            var id = await RunningService.SubmitAsync(client, plan, "?file_name=SECRETMARK.yaml");
            await RunningService.ScreenedAsync(client, id);
            using var list = await client.GetAsync("/api/v1/submissions?search=SECRETMARK&cursor=SECRETMARK");
        }

        service.Stop();
        Assert.Contains("api/v1/submissions", service.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("SECRETMARK", service.Output, StringComparison.Ordinal);
        Assert.DoesNotContain(key, service.Output, StringComparison.Ordinal);
        Assert.All(service.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries), line => Assert.StartsWith("{\"@t\":", line, StringComparison.Ordinal));
    }

    private static string Plan(string mark) => RunningService.Plan("concept-fifteen-lines.yaml").Replace(" id: ", $" id: x-{mark.ToLowerInvariant()}-", StringComparison.Ordinal).Replace(" mix: ", $" mix: x-{mark.ToLowerInvariant()}-", StringComparison.Ordinal) + $"# {mark}\n";

    private static string[] Settings(RegisterSettings settings) => settings.Engine == Engine.PostgreSql
        ? ["Database=" + settings.Connection, "LeaseSeconds=2", "MaxFailures=100", "RequestsPerMinute=1000000"]
        : ["Data=" + Path.GetDirectoryName(settings.Connection), "LeaseSeconds=2", "MaxFailures=100", "RequestsPerMinute=1000000"];

    private static async Task<string> KeyAsync(RegisterSettings settings)
    {
        var database = new RegisterDatabase(settings, TimeProvider.System, new SystemSecrets(), new NoMoments());
        var keys = new AccessKeys(database);
        await database.MigrateAsync(cancel => keys.FirstAdministratorAsync(cancel), default);

        // To an address that the service refuses to reach: each notice is tried and waits.
        await new Subscriptions(database).AddAsync(new NewSubscription(Channel.Webhook, "https://127.0.0.1/", [NoticeEvent.Submitted, NoticeEvent.Screened], null, "whsec_c2VjcmV0"), Caller.Machine, default);
        return (await keys.IssueAsync("load", Role.Submitter, null, Caller.Machine, default)).Secret;
    }

    private static async Task LoadAsync(HttpClient client, string sender, ConcurrentDictionary<string, string> acknowledged, CancellationToken stop)
    {
        for (var number = 0; !stop.IsCancellationRequested; number++)
        {
            try
            {
                acknowledged[await SubmitAsync(client, $"{sender}-{number}")] = $"{sender}-{number}";
                await Task.Delay(100, stop);
            }
            catch (Exception error) when (error is HttpRequestException or OperationCanceledException or IOException)
            {
                return;
            }
        }
    }

    // Every second plan comes with a file that it uses.
    private static async Task<string> SubmitAsync(HttpClient client, string mark)
    {
        var plan = RunningService.Plan("concept-fifteen-lines.yaml") + $"# {mark}\n";
        if (mark[^1] % 2 != 0)
        {
            return await RunningService.SubmitAsync(client, plan);
        }

        using var form = new MultipartFormDataContent { { new StringContent(plan + "uses: [parts.yaml]\n"), "plan", "plan.yaml" }, { new StringContent($"parts: 1 # {mark}\n"), "file", "parts.yaml" } };
        using var answer = await client.PostAsync("/api/v1/submissions", form);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        return (await RunningService.JsonAsync(answer)).GetProperty("id").GetString()!;
    }

    private static Laygate.Register.Storage.RegisterContext Open(RegisterSettings settings) =>
        new RegisterDatabase(settings, TimeProvider.System, new SystemSecrets(), new NoMoments()).Open();

    private static async Task EmptyAsync(RegisterSettings settings)
    {
        await using var context = Open(settings);
        await Patience.UntilAsync(
            async () => await NumberAsync(context, "SELECT count(*) AS \"Value\" FROM jobs WHERE state <> 'Done'") == 0, "an empty queue");
    }

    private static async Task CountAsync(RegisterSettings settings, ConcurrentDictionary<string, string> acknowledged)
    {
        await using var context = Open(settings);
        foreach (var id in acknowledged.Keys)
        {
            Assert.Equal(1, await NumberAsync(context, $"SELECT count(*) AS \"Value\" FROM submissions WHERE id = '{id}' AND state = 'Screened'"));
        }

        Assert.Equal(0, await NumberAsync(context, "SELECT count(*) AS \"Value\" FROM submissions s WHERE (SELECT count(*) FROM reports r WHERE r.number = s.number) <> 1"));
        Assert.Equal(0, await NumberAsync(context, "SELECT count(*) AS \"Value\" FROM history h WHERE h.event IN ('Received', 'Screened') AND (SELECT count(*) FROM notices n WHERE n.entry = h.entry) <> 1"));
        Assert.Equal(0, await NumberAsync(context, "SELECT count(*) AS \"Value\" FROM submissions s WHERE (SELECT count(*) FROM history h WHERE h.number = s.number AND h.event = 'Screened') <> 1"));
        Assert.Equal(0, await NumberAsync(context, "SELECT count(*) AS \"Value\" FROM submissions s WHERE (SELECT count(*) FROM texts t WHERE t.number = s.number) <> 1"));
        Assert.Equal(0, await NumberAsync(context, "SELECT count(*) AS \"Value\" FROM submissions s WHERE (SELECT count(*) FROM files f WHERE f.number = s.number) <> s.files"));
        Assert.NotEqual(0, await NumberAsync(context, "SELECT count(*) AS \"Value\" FROM submissions WHERE files = 1 AND state = 'Screened'"));
        Assert.All(context.Reports.Select(report => report.Json), json => System.Text.Json.JsonDocument.Parse(json).Dispose());
    }

    private static async Task<int> NumberAsync(Laygate.Register.Storage.RegisterContext context, string sql) =>
#pragma warning disable EF1002 // Text of the test itself.
        (int)await context.Database.SqlQueryRaw<long>(sql).SingleAsync();
#pragma warning restore EF1002
}
