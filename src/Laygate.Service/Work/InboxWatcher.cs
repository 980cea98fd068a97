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
/// holds it open for writing; one that cannot be read gets a report that says so; nothing is deleted, moved or changed.
/// </summary>
internal sealed class InboxWatcher(CheckDesk desk, TimeProvider clock, IOptions<ServiceSettings> options, ILogger<InboxWatcher> log) : BackgroundService
{
    private const int LargestFile = 4 << 20;
    private static readonly string[] Endings = [".yaml", ".yml"];

    private readonly ServiceSettings settings = options.Value;
    private readonly Dictionary<string, (long Size, DateTime Changed, DateTimeOffset Since)> seen = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (long Size, DateTime Changed)> done = new(StringComparer.Ordinal);

    /// <summary>Looks once.</summary>
    public void Look(CancellationToken cancel)
    {
        foreach (var path in Directory.EnumerateFiles(settings.Inbox).Where(IsPlan).Order(StringComparer.Ordinal))
        {
            cancel.ThrowIfCancellationRequested();
            try
            {
                if (IsSettled(path) && Read(path) is { } bytes)
                {
                    Report(path, bytes, cancel);
                }
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException)
            {
                Log.InboxFile(log, error.GetType().Name);
            }
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
            try
            {
                await Task.Run(() => Look(stoppingToken), stoppingToken);
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException)
            {
                Log.InboxFile(log, error.GetType().Name);
            }
        }
    }

    private static bool IsPlan(string path) =>
        Endings.Contains(Path.GetExtension(path), StringComparer.OrdinalIgnoreCase) && !Path.GetFileName(path).StartsWith('.');

    private bool IsSettled(string path)
    {
        var file = new FileInfo(path);
        var (size, changed) = (file.Length, file.LastWriteTimeUtc);
        if (done.TryGetValue(path, out var before) && before == (size, changed))
        {
            return false;
        }

        var now = clock.GetUtcNow();
        if (!seen.TryGetValue(path, out var last) || last.Size != size || last.Changed != changed)
        {
            seen[path] = (size, changed, now);
            return false;
        }

        return now - last.Since >= TimeSpan.FromSeconds(settings.InboxSettleSeconds);
    }

    // Null while someone holds it open for writing, or when it changed while it was read.
    private byte[]? Read(string path)
    {
        var (size, changed, _) = seen[path];
        try
        {
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            var bytes = new byte[Math.Min(stream.Length, LargestFile)];
            stream.ReadExactly(bytes);
            var after = new FileInfo(path);
            return after.Length == size && after.LastWriteTimeUtc == changed ? bytes : null;
        }
        catch (IOException)
        {
            return null;
        }
        catch (UnauthorizedAccessException)
        {
            Beside(path, ".unreadable.txt", "The file cannot be read: the service may not open it.\n"u8.ToArray());
            done[path] = (size, changed);
            return null;
        }
    }

    private void Report(string path, byte[] bytes, CancellationToken cancel)
    {
        var (size, changed, _) = seen[path];
        var name = Path.GetFileName(path);
        var hash = Convert.ToHexStringLower(SHA256.HashData(bytes));
        try
        {
            var result = desk.Open(Screening.Wish() with { Page = true }).Run(name, bytes, cancel);
            Beside(path, ".report.json", Screening.Json(result));
            Beside(path, ".report.html", Html(result));
            Beside(path, ".report.txt", Text(result));
            Log.InboxReport(log, hash, result.Problems.Count);
        }
        catch (Exception error) when (error is not (OperationCanceledException or IOException or UnauthorizedAccessException))
        {
            // An error of our own must not stop the others; it is said beside the file.
            Beside(path, ".report.txt", System.Text.Encoding.UTF8.GetBytes($"{name}: an error of the program itself ({error.GetType().Name}). Please report it.\n"));
            Log.InboxFile(log, error.GetType().Name);
        }

        done[path] = (size, changed);
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
            : TerminalReport.Lines([result], new TerminalSettings(80, All: false));
        return System.Text.Encoding.UTF8.GetBytes(string.Concat(lines.Select(line => line.Text + "\n")));
    }

    // Whole or not at all: whoever looks into the folder never sees half a report.
    private static void Beside(string path, string ending, byte[] bytes)
    {
        var part = $"{path}{ending}.part";
        File.WriteAllBytes(part, bytes);
        File.Move(part, path + ending, overwrite: true);
    }
}
