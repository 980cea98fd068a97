using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Npgsql;

namespace Laygate.ServiceTests.Shared;

/// <summary>A real PostgreSQL server in a folder of its own, on a loopback port. It refuses to run as root, so root starts it as nobody.</summary>
public sealed class PostgreSqlServer : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("laygate-pg-").FullName;
    private readonly string programs;
    private readonly int port = FreePort();
    private Process server = null!;
    private int databases;

    public PostgreSqlServer()
    {
        programs = Needs.PostgreSql();
        if (IsRoot)
        {
            Run("chown", "nobody", folder);
        }

        Run([.. AsNobody(), Path.Combine(programs, "initdb"), "-D", Data, "-A", "trust", "-U", "laygate", "-E", "UTF8", "--locale=C", "-N"]);
        Start();
    }

    public string Programs => programs;

    public int Port => port;

    private static bool IsRoot => string.Equals(Environment.UserName, "root", StringComparison.Ordinal);

    private string Data => Path.Combine(folder, "data");

    /// <summary>Makes an empty database.</summary>
    /// <returns>Its connection string.</returns>
    public string NewDatabase()
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"test{Interlocked.Increment(ref databases)}");
        using var connection = new NpgsqlConnection(Connection("postgres"));
        connection.Open();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // A name of our own.
        command.CommandText = "CREATE DATABASE " + name;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
        return Connection(name);
    }

    /// <summary>Kills the server without warning, with all its processes, and starts it again.</summary>
    public void KillAndRestart()
    {
        server.Kill(entireProcessTree: true);
        server.WaitForExit();
        server.Dispose();
        File.Delete(Path.Combine(Data, "postmaster.pid"));
        Start();
    }

    public void Dispose()
    {
        if (!server.HasExited)
        {
            Run("kill", "-INT", server.Id.ToString(CultureInfo.InvariantCulture));
        }

        if (!server.WaitForExit(TimeSpan.FromMinutes(2)))
        {
            server.Kill(entireProcessTree: true);
        }

        server.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static string[] AsNobody() => IsRoot ? ["setpriv", "--reuid=nobody", "--regid=nogroup", "--clear-groups"] : [];

    private static void Run(params string[] command)
    {
        using var process = Launch(command);
        var error = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{string.Join(' ', command)}: {error}");
    }

    private static Process Launch(string[] command)
    {
        var start = new ProcessStartInfo(command[0], command[1..]) { UseShellExecute = false, RedirectStandardError = true, RedirectStandardOutput = true, WorkingDirectory = "/" };
        var process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        return process;
    }

    private string Connection(string database) =>
        string.Create(CultureInfo.InvariantCulture, $"Host=127.0.0.1;Port={port};Username=laygate;Database={database};Timeout=120;Command Timeout=600");

    // Kept before it answers, so that it is stopped even when it never does.
    private void Start()
    {
        server = Launch([
            .. AsNobody(), Path.Combine(programs, "postgres"), "-D", Data, "-p", port.ToString(CultureInfo.InvariantCulture),
            "-c", "listen_addresses=127.0.0.1", "-c", "unix_socket_directories=" + folder, "-c", "max_connections=200"]);
        server.ErrorDataReceived += (_, _) => { };
        server.BeginErrorReadLine();
        var deadline = Stopwatch.StartNew();
        while (!Answers())
        {
            Assert.True(deadline.Elapsed < Patience.Longest && !server.HasExited, "PostgreSQL does not start");
            Thread.Sleep(50);
        }
    }

    private bool Answers()
    {
        try
        {
            NpgsqlConnection.ClearAllPools();
            using var connection = new NpgsqlConnection(Connection("postgres"));
            connection.Open();
            return true;
        }
        catch (NpgsqlException)
        {
            return false;
        }
    }
}
