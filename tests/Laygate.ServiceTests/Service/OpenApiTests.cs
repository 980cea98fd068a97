using System.Diagnostics;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Service;

public sealed class OpenApiTests(OneService one) : IClassFixture<OneService>
{
    private static string Committed => Path.Combine(SourceTree.Root, "docs", "openapi.json");

    [Fact]
    public async Task The_committed_description_is_what_the_service_answers()
    {
        var served = (await one.Nobody.GetStringAsync("/openapi/v1.json")).ReplaceLineEndings("\n").TrimEnd() + "\n";
        if (Environment.GetEnvironmentVariable("LAYGATE_APPROVE") is { Length: > 0 })
        {
            await File.WriteAllTextAsync(Committed, served);
        }

        Assert.Equal(await File.ReadAllTextAsync(Committed), served);
    }

    [SkippableFact]
    public void A_public_linter_finds_no_error_in_the_description()
    {
        var linter = Needs.Tool("@redocly/cli/bin/cli.js");
        var start = new ProcessStartInfo("node", [linter, "lint", Committed, "--format", "stylish"]) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = Path.GetTempPath() };
        (start.Environment["REDOCLY_TELEMETRY"], start.Environment["REDOCLY_SUPPRESS_UPDATE_NOTICE"]) = ("off", "true");
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, output.GetAwaiter().GetResult() + error);
    }
}
