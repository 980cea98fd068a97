using System.Diagnostics;
using System.Diagnostics.Metrics;
using Laygate.Service;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Service;

/// <summary>What whoever runs the service relies on: the verb that copies the register, and the measure of the queue.</summary>
public sealed class OperationTests
{
    [Fact]
    public async Task The_backup_verb_copies_a_register_in_use_and_the_copy_serves()
    {
        var folder = Directory.CreateTempSubdirectory("laygate-backup-").FullName;
        var restored = Directory.CreateTempSubdirectory("laygate-restored-").FullName;
        string id;
        string key;
        await using (var service = await RunningService.StartAsync(folder))
        {
            key = service.Administrator;
            using var client = service.Client(key);
            id = await RunningService.SubmitAsync(client, RunningService.Plan("concept-fifteen-lines.yaml"));
            await RunningService.ScreenedAsync(client, id);
            Assert.Equal((0, string.Empty), await BackUpAsync(folder, Path.Combine(restored, "register.db")));
        }

        await using (var copy = await RunningService.StartAsync(restored))
        {
            using var client = copy.Client(key);
            Assert.Equal("screened", (await RunningService.ScreenedAsync(client, id)).GetProperty("state").GetString());
            Assert.Equal(RunningService.Plan("concept-fifteen-lines.yaml"), await client.GetStringAsync($"/api/v1/submissions/{id}/text"));
        }

        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
        Directory.Delete(restored, recursive: true);
    }

    [Fact]
    public async Task A_backup_to_a_place_that_cannot_be_written_says_so()
    {
        var folder = Directory.CreateTempSubdirectory("laygate-backup-").FullName;
        var (code, error) = await BackUpAsync(folder, "/nowhere/at/all/copy.db");
        Assert.InRange(code, 1, 3);
        Assert.StartsWith("Laygate.Service: ", error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task The_metrics_say_how_many_submissions_wait()
    {
        var measured = -1;
        using var listener = new MeterListener();
        listener.InstrumentPublished = (instrument, own) =>
        {
            if (instrument.Meter.Name == Telemetry.Name && instrument.Name is "laygate.queue")
            {
                own.EnableMeasurementEvents(instrument);
            }
        };

        // Other tests run services of their own; only this one has 7 submissions that nobody screens.
        listener.SetMeasurementEventCallback<int>((_, value, _, _) => measured = Math.Max(measured, value));
        listener.Start();
        await using var service = await RunningService.StartAsync(null, "Workers=0");
        using var client = service.Client(service.Administrator);
        for (var number = 0; number < 7; number++)
        {
            await RunningService.SubmitAsync(client, $"{RunningService.Plan("concept-fifteen-lines.yaml")}# {number}\n");
        }

        await Patience.UntilAsync(
            () =>
            {
                listener.RecordObservableInstruments();
                return measured >= 7;
            },
            "seven in the queue");
        Assert.Equal(7, measured);
    }

    private static async Task<(int Code, string Error)> BackUpAsync(string data, string path)
    {
        var start = new ProcessStartInfo("dotnet", [ServiceProcess.Library, "backup", path]) { UseShellExecute = false, RedirectStandardError = true, RedirectStandardOutput = true, WorkingDirectory = data };
        start.Environment["Laygate__Data"] = data;
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        _ = await output;
        return (process.ExitCode, error);
    }
}
