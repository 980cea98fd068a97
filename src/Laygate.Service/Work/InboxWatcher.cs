using System.Security.Cryptography;
using Laygate.Reporting.Html;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Results;
using Laygate.Service.Checking;
using Laygate.Service.Settings;
using Microsoft.Extensions.Options;

namespace Laygate.Service.Work;

/// <summary>
/// Watches a folder: each plan in it gets a report beside it. A file is read only when its size and time stand still and nobody
/// holds it open for writing; one that cannot be read gets a report that says so; nothing is deleted, moved or changed. No link is
/// followed, neither to what is read nor to where is written.
/// </summary>
internal sealed class InboxWatcher(CheckDesk desk, TimeProvider clock, IOptions<ServiceSettings> options, ILogger<InboxWatcher> log) : BackgroundService
{
    private const int LargestFile = 4 << 20;
    private const string Unreadable = ".unreadable.txt";
    private static readonly string[] Endings = [".yaml", ".yml"];

    private readonly ServiceSettings settings = options.Value;

    // Links that the settings lead over are the administrator's; one that comes later is somebody else's.
    private readonly string folder = options.Value.Inbox.Length > 0 ? PlainFiles.Real(options.Value.Inbox) : string.Empty;
    private readonly Dictionary<string, (FileFacts Facts, DateTimeOffset Since)> seen = new(StringComparer.Ordinal);
    private readonly Dictionary<string, FileFacts> done = new(StringComparer.Ordinal);

    /// <summary>Looks once.</summary>
    public void Look(CancellationToken cancel)
    {
        try
        {
            using var files = PlainFiles.Hold(folder);
            foreach (var name in Directory.EnumerateFiles(folder).Select(path => Path.GetFileName(path)).Where(IsPlan).Order(StringComparer.Ordinal))
            {
                cancel.ThrowIfCancellationRequested();
                Look(files, name, cancel);
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            Log.InboxFile(log, error.GetType().Name);
        }
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (settings.Inbox.Length == 0)
        {
            return;
        }

        using var timer = new PeriodicTimer(TimeSpan.FromSeconds(Math.Max(0.1, settings.InboxSettleSeconds / 2)), clock);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            await Task.Run(() => Look(stoppingToken), stoppingToken);
        }
    }

    private static bool IsPlan(string name) => Endings.Contains(Path.GetExtension(name), StringComparer.OrdinalIgnoreCase) && !name.StartsWith('.');

    private void Look(PlainFiles files, string name, CancellationToken cancel)
    {
        try
        {
            if (files.Look(name) is not { } facts || !IsSettled(name, facts))
            {
                return;
            }

            if (!facts.IsPlain)
            {
                Refuse(files, name, facts, "The file is not read: it is a link, has a second name, or is not a plain file. Put a copy of the file here.\n"u8);
            }
            else if (Read(files, name, facts) is { } bytes)
            {
                Report(files, name, bytes, cancel);
                done[name] = facts;
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            Log.InboxFile(log, error.GetType().Name);
        }
    }

    private bool IsSettled(string name, FileFacts facts)
    {
        if (done.TryGetValue(name, out var before) && before == facts)
        {
            return false;
        }

        var now = clock.GetUtcNow();
        if (!seen.TryGetValue(name, out var last) || last.Facts != facts)
        {
            seen[name] = (facts, now);
            return false;
        }

        return now - last.Since >= TimeSpan.FromSeconds(settings.InboxSettleSeconds);
    }

    // Null while someone holds it open for writing, or when it changed while it was read.
    private byte[]? Read(PlainFiles files, string name, FileFacts facts)
    {
        try
        {
            return files.Read(name, facts, LargestFile);
        }
        catch (IOException)
        {
            return null;
        }
        catch (UnauthorizedAccessException)
        {
            Refuse(files, name, facts, "The file cannot be read: the service may not open it.\n"u8);
            return null;
        }
    }

    private void Refuse(PlainFiles files, string name, FileFacts facts, ReadOnlySpan<byte> why)
    {
        Beside(files, name + Unreadable, why);
        done[name] = facts;
        Log.InboxRefused(log);
    }

    private void Report(PlainFiles files, string name, byte[] bytes, CancellationToken cancel)
    {
        var hash = Convert.ToHexStringLower(SHA256.HashData(bytes));
        try
        {
            var result = desk.Open(Screening.Wish() with { Page = true }).Run(name, bytes, cancel);
            Beside(files, name + ".report.json", Screening.Json(result));
            Beside(files, name + ".report.html", Html(result));
            Beside(files, name + ".report.txt", Text(result));
            Log.InboxReport(log, hash, result.Problems.Count);
        }
        catch (Exception error) when (error is not (OperationCanceledException or IOException or UnauthorizedAccessException))
        {
            // An error of our own must not stop the others; it is said beside the file.
            Beside(files, name + ".report.txt", System.Text.Encoding.UTF8.GetBytes($"{name}: an error of the program itself ({error.GetType().Name}). Please report it.\n"));
            Log.InboxFile(log, error.GetType().Name);
        }
    }

    private static byte[] Html(FileResult result)
    {
        using var page = new MemoryStream();
        HtmlWriter.Write(new ReportedRun(CheckDesk.Version, [result], []), page);
        return page.ToArray();
    }

    private static byte[] Text(FileResult result)
    {
        var lines = result.Problems.Count > 0
            ? ProblemLines.Lines(result.Problems)
            : TerminalReport.Lines([result], new TerminalSettings(80) { Full = true });
        return System.Text.Encoding.UTF8.GetBytes(string.Concat(lines.Select(line => line.Text + "\n")));
    }

    // Whole or not at all: whoever looks into the folder never sees half a report. Whoever may not list the folder may not read it either.
    private static void Beside(PlainFiles files, string name, ReadOnlySpan<byte> bytes) => files.Write(
        name, bytes, UnixFileMode.UserRead | UnixFileMode.UserWrite | (files.Mode() & (UnixFileMode.GroupRead | UnixFileMode.OtherRead)));
}
