#pragma warning disable CA1416 // The service watches a folder on Linux only.
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

    [Fact]
    public void A_link_is_not_followed_and_what_it_leads_to_is_not_shown()
    {
        using var elsewhere = new TempFolder();
        var secret = elsewhere.Write("secret.yaml", "SECRETMARK: [");
        File.CreateSymbolicLink(Path.Combine(folder, "link.yaml"), secret);
        File.CreateSymbolicLink(Path.Combine(folder, "nowhere.yaml"), Path.Combine(folder, "missing"));
        Run("ln", secret, Path.Combine(folder, "second-name.yaml"));
        Settle();
        Assert.DoesNotContain(Directory.GetFiles(folder, "*.report.*"), _ => true);
        foreach (var name in new[] { "link.yaml", "nowhere.yaml", "second-name.yaml" })
        {
            Assert.Contains("not a plain file", File.ReadAllText(Path.Combine(folder, name + ".unreadable.txt")), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_pipe_does_not_hold_the_watcher()
    {
        Run("mkfifo", Path.Combine(folder, "pipe.yaml"));
        var plan = Write("z.yaml", "a: 1");
        await Task.Run(Settle).WaitAsync(TimeSpan.FromMinutes(5));
        Assert.True(File.Exists(plan + ".report.txt"));
        Assert.Contains("not a plain file", File.ReadAllText(Path.Combine(folder, "pipe.yaml.unreadable.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_link_that_waits_where_a_report_is_written_is_replaced_and_not_followed()
    {
        using var elsewhere = new TempFolder();
        var victim = elsewhere.Write("victim.txt", "kept");
        var plan = Write("a.yaml", "a: 1");
        foreach (var ending in new[] { ".report.json", ".report.html", ".report.txt" })
        {
            File.CreateSymbolicLink(plan + ending, victim);
            File.CreateSymbolicLink(plan + ending + ".part", victim);
        }

        Settle();
        Assert.Equal("kept", File.ReadAllText(victim));
        Assert.Null(new FileInfo(plan + ".report.json").LinkTarget);
        Assert.Contains("report_version", File.ReadAllText(plan + ".report.json"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_that_has_become_a_link_is_not_followed()
    {
        using var elsewhere = new TempFolder();
        var plan = elsewhere.Write("a.yaml", "a: 1");
        Directory.Delete(folder);
        Directory.CreateSymbolicLink(folder, elsewhere.Path);
        Settle();
        Assert.Equal(plan, Assert.Single(Directory.GetFiles(elsewhere.Path)));
        Directory.Delete(folder);
        Directory.CreateDirectory(folder);
    }

    [Theory]
    [InlineData("rwx------", "rw-------")]
    [InlineData("rwxr-x---", "rw-r-----")]
    [InlineData("rwxrwxrwx", "rw-r--r--")]
    [InlineData("rwx-wx-wx", "rw-------")]
    public void A_report_is_open_to_no_more_people_than_its_folder(string of, string expected)
    {
        File.SetUnixFileMode(folder, Mode(of));
        var plan = Write("a.yaml", "a: 1");
        Settle();
        foreach (var ending in new[] { ".report.json", ".report.html", ".report.txt" })
        {
            Assert.Equal(Mode(expected), File.GetUnixFileMode(plan + ending));
        }
    }

    private static UnixFileMode Mode(string letters) => (UnixFileMode)letters.Select((letter, at) => letter == '-' ? 0 : 1 << (8 - at)).Sum();

    private static void Run(string program, params string[] arguments)
    {
        using var process = System.Diagnostics.Process.Start(program, arguments);
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
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
