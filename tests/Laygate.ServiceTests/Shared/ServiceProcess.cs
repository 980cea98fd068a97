using System.Diagnostics;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Text;

namespace Laygate.ServiceTests.Shared;

/// <summary>The built service as a process of its own, so that it can be killed.</summary>
internal sealed class ServiceProcess : IDisposable
{
    private readonly StringBuilder output = new();
    private readonly Process process;

    /// <summary>Starts it.</summary>
    /// <param name="port">Where it listens.</param>
    /// <param name="settings">Settings, as <c>Name=value</c>.</param>
    /// <param name="command">The command before the arguments; null: the program that was built beside the tests.</param>
    /// <param name="folder">Working folder.</param>
    /// <param name="environment">Variables beside the settings, as <c>NAME=value</c>.</param>
    public ServiceProcess(int port, IEnumerable<string> settings, string[]? command = null, string? folder = null, params string[] environment)
    {
        Port = port;
        var start = new ProcessStartInfo { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = folder ?? Path.GetTempPath() };
        command ??= [Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } host ? host : "dotnet", Library];
        start.FileName = command[0];
        foreach (var argument in command[1..])
        {
            start.ArgumentList.Add(argument);
        }

        start.Environment["ASPNETCORE_URLS"] = $"http://127.0.0.1:{port}";
        foreach (var setting in settings)
        {
            start.Environment["Laygate__" + setting.Split('=', 2)[0]] = setting.Split('=', 2)[1];
        }

        foreach (var variable in environment)
        {
            start.Environment[variable.Split('=', 2)[0]] = variable.Split('=', 2)[1];
        }

        process = Process.Start(start)!;
        process.OutputDataReceived += Keep;
        process.ErrorDataReceived += Keep;
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    public static string Library { get; } = Path.Combine(AppContext.BaseDirectory, "Laygate.Service.dll");

    public int Port { get; }

    public int Id => process.Id;

    public string Output
    {
        get
        {
            lock (output)
            {
                return output.ToString();
            }
        }
    }

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    public HttpClient Client(string? key = null)
    {
        var client = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{Port}"), Timeout = Patience.Longest };
        client.DefaultRequestHeaders.Authorization = key is null ? null : new AuthenticationHeaderValue("Bearer", key);
        return client;
    }

    /// <summary>Waits until it is ready.</summary>
    public async Task<ServiceProcess> ReadyAsync()
    {
        using var client = Client();
        var watch = Stopwatch.StartNew();
        while (watch.Elapsed < Patience.Longest)
        {
            Assert.False(process.HasExited, "the service ended: " + Output);
            try
            {
                using var answer = await client.GetAsync("/healthz/ready");
                if (answer.IsSuccessStatusCode)
                {
                    return this;
                }
            }
            catch (HttpRequestException)
            {
                // Not listening yet.
            }

            await Task.Delay(50);
        }

        throw new TimeoutException("not ready: " + Output);
    }

    /// <summary>Kills it without warning (SIGKILL).</summary>
    public void Kill()
    {
        process.Kill();
        process.WaitForExit();
    }

    /// <summary>Asks it to stop (SIGTERM) and waits.</summary>
    /// <returns>Its exit code.</returns>
    public int Stop()
    {
        using var kill = Process.Start("kill", ["-TERM", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
        Assert.True(process.WaitForExit(Patience.Longest), "does not stop");
        return process.ExitCode;
    }

    public void Dispose()
    {
        if (!process.HasExited)
        {
            Kill();
        }

        process.Dispose();
    }

    private void Keep(object sender, DataReceivedEventArgs line)
    {
        lock (output)
        {
            output.AppendLine(line.Data);
        }
    }
}
