using System.Diagnostics;
using System.Text.RegularExpressions;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Service;

/// <summary>What the container does, without a container engine: the same publish and start, by a user without rights in a tree without write permission.</summary>
[Long]
public sealed class DeploymentTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("laygate-deploy-").FullName;

    private static string Dockerfile => File.ReadAllText(Path.Combine(SourceTree.Root, "Dockerfile"));

    private static bool IsRoot => string.Equals(Environment.UserName, "root", StringComparison.Ordinal);

    public void Dispose()
    {
        Run("chmod", "-R", "u+w", folder);
        Directory.Delete(folder, recursive: true);
    }

    [SkippableFact]
    public async Task The_published_service_runs_without_rights_and_writes_only_its_data()
    {
        Skip.IfNot(FullRun.IsAsked, "Publishing takes minutes: set LAYGATE_FULL_RUN to run it.");
        var publish = Regex.Match(Dockerfile, "RUN dotnet (?<publish>publish src/Laygate.Service [^&]*) -o /program", RegexOptions.None, Patience.Longest).Groups["publish"].Value;
        Assert.NotEmpty(publish);
        var program = Path.Combine(folder, "program");
        // The same program sooner: analyzers change nothing in it and have read the code when it was built.
        Run(["dotnet", .. publish.Split(' '), "-p:RunAnalyzers=false", "-p:UseSharedCompilation=true", "-o", program], SourceTree.Root);
        var data = Directory.CreateDirectory(Path.Combine(folder, "data")).FullName;
        var before = Files(program);
        Run("chmod", "-R", "a-w,a+rX", program);
        Run("chmod", "a+rx", folder);
        string[] user = [];
        if (IsRoot)
        {
            Run("chown", "nobody", data);
            user = ["setpriv", "--reuid=nobody", "--regid=nogroup", "--clear-groups", "env", "HOME=/nonexistent"];
        }

        string[] entry = [.. user, "dotnet", Path.Combine(program, "Laygate.Service.dll")];
        using var service = await new ServiceProcess(ServiceProcess.FreePort(), ["Data=" + data], entry, data).ReadyAsync();
        Assert.Equal(0, Health(entry, service.Port, data));
        var key = Regex.Match(service.Output, "laygate_[0-9a-f]+_[A-Za-z0-9_-]+", RegexOptions.None, Patience.Longest).Value;
        using (var client = service.Client(key))
        {
            var id = await RunningService.SubmitAsync(client, RunningService.Plan("concept-fifteen-lines.yaml"));
            Assert.Equal("screened", (await RunningService.ScreenedAsync(client, id)).GetProperty("state").GetString());
        }

        Assert.Equal(0, service.Stop());
        Assert.Equal(1, Health(entry, service.Port, data));
        Assert.Equal(before, Files(program));
        Assert.True(File.Exists(Path.Combine(data, "register.db")));
    }

    [Fact]
    public void The_container_has_no_rights_a_health_check_and_labels()
    {
        var stages = Dockerfile.Split("\nFROM ").Where(stage => stage.Contains("ENTRYPOINT", StringComparison.Ordinal)).ToList();
        Assert.Equal(2, stages.Count);
        Assert.All(stages, stage => Assert.Contains("USER $APP_UID", stage, StringComparison.Ordinal));
        Assert.All(stages, stage => Assert.Contains("org.opencontainers.image.title", stage, StringComparison.Ordinal));
        Assert.Contains("HEALTHCHECK", stages.Single(stage => stage.Contains("AS service", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [SkippableFact]
    public void A_public_linter_finds_nothing_in_the_Dockerfile()
    {
        var linter = Needs.Tool("dockerfilelint/bin/dockerfilelint");
        Run(["node", linter, Path.Combine(SourceTree.Root, "Dockerfile")], SourceTree.Root);
    }

    private static List<string> Files(string program) =>
        [.. Directory.EnumerateFileSystemEntries(program, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)];

    private static int Health(string[] entry, int port, string data)
    {
        var start = new ProcessStartInfo(entry[0], [.. entry[1..], "health"]) { UseShellExecute = false, WorkingDirectory = data };
        start.Environment["ASPNETCORE_URLS"] = $"http://0.0.0.0:{port}";
        using var process = Process.Start(start)!;
        process.WaitForExit();
        return process.ExitCode;
    }

    private static void Run(params string[] command) => Run(command, "/");

    private static void Run(string[] command, string folder)
    {
        var start = new ProcessStartInfo(command[0], command[1..]) { UseShellExecute = false, WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, output.GetAwaiter().GetResult() + error);
    }
}
