using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net;
using System.Text.Json;

namespace Laygate.ServiceTests.Shared;

/// <summary>
/// Receives metrics and traces as OTLP 1.0 over HTTP asks for (protobuf bodies on <c>/v1/traces</c> and <c>/v1/metrics</c>). They are decoded outside
/// this platform, by the published message definitions in the npm package @opentelemetry/otlp-transformer, which <c>tests/Tools/otlp.mjs</c> drives.
/// </summary>
internal sealed class TelemetryReceiver : IDisposable
{
    private readonly HttpListener listener = new();
    private readonly ConcurrentQueue<(string Kind, byte[] Body)> received = new();
    private readonly string folder = Directory.CreateTempSubdirectory("laygate-otlp-").FullName;

    public TelemetryReceiver()
    {
        Address = $"http://127.0.0.1:{ServiceProcess.FreePort()}/";
        listener.Prefixes.Add(Address);
        listener.Start();
        _ = ListenAsync();
    }

    public string Address { get; }

    /// <summary>Every body, as it came.</summary>
    public IReadOnlyList<byte[]> Bodies => [.. received.Select(one => one.Body)];

    /// <summary>What has come of one kind, decoded.</summary>
    public IReadOnlyList<JsonElement> Decoded(string kind)
    {
        var files = received.Where(one => one.Kind == kind).Select((one, index) => (Path: Path.Combine(folder, $"{kind}-{index}"), one.Body)).ToList();
        files.ForEach(file => File.WriteAllBytes(file.Path, file.Body));
        Needs.Tool("@opentelemetry/otlp-transformer/build/src/generated/root.js");
        var start = new ProcessStartInfo("node", [Path.Combine(SourceTree.Root, "tests", "Tools", "otlp.mjs"), kind, .. files.Select(file => file.Path)]) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var lines = process.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, error.GetAwaiter().GetResult());
        return [.. lines.Select(line => JsonSerializer.Deserialize<JsonElement>(line).GetProperty("message"))];
    }

    public void Dispose()
    {
        listener.Close();
        Directory.Delete(folder, recursive: true);
    }

    private async Task ListenAsync()
    {
        while (listener.IsListening)
        {
            try
            {
                var context = await listener.GetContextAsync();
                using var body = new MemoryStream();
                await context.Request.InputStream.CopyToAsync(body);
                received.Enqueue((Path.GetFileName(context.Request.Url!.AbsolutePath), body.ToArray()));
                context.Response.ContentType = "application/x-protobuf";
                context.Response.Close();
            }
            catch (Exception error) when (error is HttpListenerException or ObjectDisposedException or InvalidOperationException)
            {
                return;
            }
        }
    }
}
