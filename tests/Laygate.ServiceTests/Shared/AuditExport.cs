using System.Diagnostics;
using System.IO.Compression;

namespace Laygate.ServiceTests.Shared;

/// <summary>Exports for audit in a folder, and the script in them that verifies them.</summary>
internal sealed class AuditExport : IDisposable
{
    /// <summary>Where they are unpacked, and where the script is called from.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("laygate-audit-").FullName;

    /// <summary>Fetches an export and unpacks it; its folder.</summary>
    public async Task<string> FetchAsync(HttpClient client, string name)
    {
        using var answer = await client.GetAsync("/api/v1/audit");
        Assert.Equal("application/zip", answer.Content.Headers.ContentType!.MediaType);
        var target = Path.Combine(Folder, name);
        await using var stream = await answer.Content.ReadAsStreamAsync();
        await ZipFile.ExtractToDirectoryAsync(stream, target);
        return target;
    }

    /// <summary>Runs the script of an export, against the heads of an earlier one where they are given.</summary>
    public (int Code, string Said) Verify(string export, string? heads = null)
    {
        var start = new ProcessStartInfo("sh", [Path.Combine(export, "verify.sh"), .. heads is null ? Array.Empty<string>() : [heads]]) { RedirectStandardOutput = true, UseShellExecute = false, WorkingDirectory = Folder };
        using var process = Process.Start(start)!;
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, said);
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
