using Laygate.Service.Checking;
using Laygate.Service.Settings;
using Laygate.Service.Work;
using Laygate.ServiceTests.Shared;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;

namespace Laygate.ServiceTests.Service;

public sealed class InboxTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("laygate-inbox-").FullName;
    private readonly TestClock clock = new();
    private readonly InboxWatcher watcher;

    public InboxTests()
    {
        var options = Options.Create(new ServiceSettings { Inbox = folder, InboxSettleSeconds = 2 });
        watcher = new InboxWatcher(new CheckDesk(options, clock), clock, options, NullLogger<InboxWatcher>.Instance);
    }

    public void Dispose()
    {
        watcher.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public void A_plan_gets_its_reports_beside_it_once()
    {
        var plan = Write("a.yaml", RunningService.Plan("concept-fifteen-lines.yaml"));
        Settle();
        Assert.Contains("report_version", File.ReadAllText(plan + ".report.json"), StringComparison.Ordinal);
        Assert.NotEmpty(File.ReadAllText(plan + ".report.txt"));
        var page = File.ReadAllText(plan + ".report.html");
        Assert.Contains("Findings by subject", page, StringComparison.Ordinal);
        Assert.Contains("All inputs as read", page, StringComparison.Ordinal);
        var written = File.GetLastWriteTimeUtc(plan + ".report.json");
        Settle();
        Assert.Equal(written, File.GetLastWriteTimeUtc(plan + ".report.json"));
        Assert.Equal(RunningService.Plan("concept-fifteen-lines.yaml"), File.ReadAllText(plan));
        Assert.Equal(4, Directory.GetFiles(folder).Length);
    }

    [Fact]
    public void A_file_that_still_grows_is_not_read()
    {
        var text = RunningService.Plan("concept-fifteen-lines.yaml");
        for (var part = 1; part <= 4; part++)
        {
            Write("a.yaml", text[..(text.Length * part / 5)]);
            watcher.Look(default);
            clock.Move(TimeSpan.FromSeconds(1.9));
            watcher.Look(default);
        }

        Assert.Single(Directory.GetFiles(folder));
        Write("a.yaml", text);
        Settle();
        Assert.Equal(4, Directory.GetFiles(folder).Length);
    }

    [Fact]
    public void A_file_that_is_open_for_writing_is_not_read()
    {
        var plan = Write("a.yaml", "a: 1");
        using (new FileStream(plan, FileMode.Open, FileAccess.ReadWrite, FileShare.None))
        {
            Settle();
            Assert.Single(Directory.GetFiles(folder));
        }

        Settle();
        Assert.Contains("a.yaml", File.ReadAllText(plan + ".report.txt"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_read_is_reported_and_nothing_is_deleted()
    {
        File.WriteAllBytes(Path.Combine(folder, "broken.yaml"), [0xFF, 0xFE, 0, 0]);
        Write("wrong.yml", "plan: [");
        Write("notes.txt", "no plan");
        Write(".hidden.yaml", "a: 1");
        Settle();
        Assert.True(new FileInfo(Path.Combine(folder, "broken.yaml.report.txt")).Length > 0);
        Assert.Contains("1", File.ReadAllText(Path.Combine(folder, "wrong.yml.report.txt")), StringComparison.Ordinal);
        Assert.Contains("Could not be read", File.ReadAllText(Path.Combine(folder, "wrong.yml.report.html")), StringComparison.Ordinal);
        Assert.Equal(10, Directory.GetFiles(folder).Length);
    }

    [Fact]
    public async Task A_running_service_watches_its_inbox()
    {
        await using var service = await RunningService.StartAsync(null, "Inbox=" + folder, "InboxSettleSeconds=0.2");
        var plan = Write("a.yaml", RunningService.Plan("concept-fifteen-lines.yaml"));
        await Patience.UntilAsync(() => File.Exists(plan + ".report.txt"), "the report");

        Assert.NotEmpty(await File.ReadAllTextAsync(plan + ".report.txt"));
        using var report = System.Text.Json.JsonDocument.Parse(await File.ReadAllBytesAsync(plan + ".report.json"));
        Assert.Equal(1, report.RootElement.GetProperty("files").GetArrayLength());
    }

    private string Write(string name, string text)
    {
        var path = Path.Combine(folder, name);
        File.WriteAllText(path, text);
        return path;
    }

    private void Settle()
    {
        watcher.Look(default);
        clock.Move(TimeSpan.FromSeconds(3));
        watcher.Look(default);
    }
}
