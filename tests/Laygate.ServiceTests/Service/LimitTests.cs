using System.Net;
using System.Net.Sockets;
using System.Text;
using Laygate.Register;
using Laygate.Service.Checking;
using Laygate.ServiceTests.Shared;
using Microsoft.Extensions.DependencyInjection;

namespace Laygate.ServiceTests.Service;

public sealed class LimitTests
{
    [Fact]
    public async Task Too_many_checks_at_once_are_sent_away_with_a_time_to_wait()
    {
        await using var service = await RunningService.StartAsync(null, "CheckSlots=1", "CheckQueue=0", "AnonymousChecks=true");
        using var client = service.Client();
        var answers = await Task.WhenAll(Enumerable.Range(0, 5).Select(_ => client.PostAsync("/api/v1/checks", RunningService.Yaml(RunningService.Plan()))));
        Assert.Contains(answers, answer => answer.StatusCode == HttpStatusCode.OK);
        var sentAway = answers.Where(answer => answer.StatusCode == HttpStatusCode.TooManyRequests).ToList();
        Assert.NotEmpty(sentAway);
        Assert.All(sentAway, answer => Assert.NotNull(answer.Headers.RetryAfter));
        await CheckApiTests.RefusedAsync(sentAway[0], 429);
        await Patience.UntilAsync(
            async () =>
            {
                using var later = await client.PostAsync("/api/v1/checks", RunningService.Yaml(RunningService.Plan("concept-fifteen-lines.yaml")));
                return later.StatusCode == HttpStatusCode.OK;
            },
            "a check that is taken again");
    }

    [Fact]
    public async Task A_check_that_takes_too_long_is_called_off_and_frees_its_place()
    {
        await using var service = await RunningService.StartAsync(null, "CheckSlots=1", "CheckQueue=0", "CheckSeconds=0.1", "AnonymousChecks=true");
        using var client = service.Client();

        // On a busy machine the clock may be noticed only when the check is done: then it is answered, and the next one may be called off.
        HttpResponseMessage? refused = null;
        await Patience.UntilAsync(
            async () =>
            {
                var answer = await client.PostAsync("/api/v1/checks", RunningService.Yaml(RunningService.Plan()));
                refused = answer.StatusCode == HttpStatusCode.ServiceUnavailable ? answer : null;
                return refused is not null;
            },
            "a check that is called off");
        await CheckApiTests.RefusedAsync(refused!, 503);

        // The one place is free again as soon as the check has noticed that it was called off; until then the next one is sent away.
        await Patience.UntilAsync(
            async () =>
            {
                using var next = await client.PostAsync("/api/v1/checks", RunningService.Yaml(RunningService.Plan("concept-fifteen-lines.yaml")));
                return next.StatusCode != HttpStatusCode.TooManyRequests;
            },
            "a free place");
    }

    [Fact]
    public async Task Each_key_has_its_own_rate()
    {
        await using var service = await RunningService.StartAsync(null, "RequestsPerMinute=5");
        using var ada = service.Client(await service.KeyAsync("Ada", Role.Submitter));
        using var bo = service.Client(await service.KeyAsync("Bo", Role.Submitter));
        // On a busy machine a minute may end in between and the count begin anew: the first refusal is what counts.
        var answers = new List<HttpResponseMessage>();
        await Patience.UntilAsync(
            async () =>
            {
                answers.Add(await ada.GetAsync("/api/v1/schemas"));
                return answers[^1].StatusCode != HttpStatusCode.OK;
            },
            "a refusal for the rate");
        Assert.InRange(answers.Count, 6, int.MaxValue);
        await CheckApiTests.RefusedAsync(answers[^1], 429);
        Assert.NotNull(answers[^1].Headers.RetryAfter);
        using var other = await bo.GetAsync("/api/v1/schemas");
        Assert.Equal(HttpStatusCode.OK, other.StatusCode);
        using var health = await ada.GetAsync("/healthz/ready");
        Assert.Equal(HttpStatusCode.OK, health.StatusCode);
    }

    [Fact]
    public async Task A_body_that_trickles_is_cut_off()
    {
        await using var service = await RunningService.StartAsync(null, "AnonymousChecks=true");
        using var socket = new TcpClient();
        await socket.ConnectAsync(service.Address.Host, service.Address.Port);
        await using var stream = socket.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes($"POST /api/v1/checks HTTP/1.1\r\nHost: {service.Address.Authority}\r\nContent-Type: application/yaml\r\nContent-Length: 100000\r\n\r\n"));
        var answer = ReadAsync(stream);
        for (var sent = 0; !answer.IsCompleted && sent < Patience.Milliseconds / 500; sent++)
        {
            try
            {
                await stream.WriteAsync("a"u8.ToArray());
            }
            catch (IOException)
            {
                break;
            }

            await Task.Delay(500);
        }

        Assert.StartsWith("HTTP/1.1 408", await answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Settings_that_cannot_work_are_refused_at_start()
    {
        var refused = await Assert.ThrowsAsync<Microsoft.Extensions.Options.OptionsValidationException>(() => RunningService.StartAsync(Path.GetTempPath(), "Workers=-1", "Inbox=/nowhere"));
        Assert.Contains("Workers", refused.Message, StringComparison.Ordinal);
        Assert.Contains("Inbox", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Background_work_waits_while_all_places_are_taken_but_not_for_ever()
    {
        await using var service = await RunningService.StartAsync(null, "CheckSlots=1", "ScreeningPatience=3600");
        using var client = service.Client(service.Administrator);
        var pool = service.Services.GetRequiredService<CheckPool>();
        using var gate = new ManualResetEventSlim();
        var busy = pool.RunAsync(
            _ =>
            {
                gate.Wait(CancellationToken.None);
                return true;
            },
            default);
        var patient = pool.WaitForRoomAsync(TimeSpan.FromHours(1), default);
        await pool.WaitForRoomAsync(TimeSpan.FromMilliseconds(120), default); // Looks thrice, and goes on beside the busy place.
        Assert.False(patient.IsCompleted);
        using var off = new CancellationTokenSource();
        var calledOff = pool.WaitForRoomAsync(TimeSpan.FromHours(1), off.Token);
        await off.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => calledOff);
        var id = await RunningService.SubmitAsync(client, RunningService.Plan("concept-fifteen-lines.yaml"));
        gate.Set();
        await patient;
        Assert.Equal("screened", (await RunningService.ScreenedAsync(client, id)).GetProperty("state").GetString());
        await busy;
    }

    [Fact]
    public async Task Stopping_hands_back_what_is_unfinished_and_the_next_start_finishes_it()
    {
        var folder = Directory.CreateTempSubdirectory("laygate-stop-").FullName;
        string id;
        string key;
        await using (var first = await RunningService.StartAsync(folder, "LeaseSeconds=3600"))
        {
            key = first.Administrator;
            using var client = first.Client(key);
            id = await RunningService.SubmitAsync(client, RunningService.Plan());
            var reader = first.Services.GetRequiredService<RegisterReader>();
            var caller = new Caller("x", "x", Role.Reviewer);
            while ((await reader.FindAsync(id, caller, default))!.State == SubmissionState.Received)
            {
                await Task.Delay(2);
            }
        }

        await using var second = await RunningService.StartAsync(folder, "LeaseSeconds=3600");
        using var again = second.Client(key);
        Assert.Equal("screened", (await RunningService.ScreenedAsync(again, id)).GetProperty("state").GetString());
        using var answer = await again.GetAsync($"/api/v1/submissions/{id}/history");
        Assert.Single((await RunningService.JsonAsync(answer)).EnumerateArray(), entry => entry.GetProperty("event").GetString() == "screened");
        await second.StopAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    private static async Task<string> ReadAsync(NetworkStream stream)
    {
        var buffer = new byte[4096];
        try
        {
            return Encoding.ASCII.GetString(buffer, 0, await stream.ReadAsync(buffer));
        }
        catch (IOException)
        {
            return string.Empty;
        }
    }
}
