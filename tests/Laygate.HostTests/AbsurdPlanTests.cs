using System.Diagnostics;

namespace Laygate.HostTests;

/// <summary>A plan whose figures are slips by a factor of millions is judged in the memory of an ordinary one: the runtime refuses more, and no output may then be an error of the program.</summary>
public sealed class AbsurdPlanTests
{
    // An ordinary plan needs some 100 MB; 23.9 GB were measured for the first of these.
    private const string MostHeap = "0x20000000";

    [Theory]
    [InlineData("to: 12672 ft|tonnage: 1863 short ton", "to: 9999999999 ft|tonnage: 1470170453 short ton")]
    [InlineDataOfFullRun("nameplate: 280 short ton/h, planned: 240 short ton/h", "nameplate: 100000000 short ton/h, planned: 100000000 short ton/h")]
    [InlineDataOfFullRun("speed: 23 ft/min", "speed: 100000000 ft/min")]
    [InlineDataOfFullRun("capacity: 12 short ton", "capacity: 100000000 short ton")]
    [InlineData("count: 18, payload: 20 short ton", "count: 1999999999, payload: 0.001 short ton")]
    [InlineDataOfFullRun("passes: 5", "passes: 1999999999")]
    [InlineDataOfFullRun("haul_out: 28 min, haul_out_bad: 38 min", "haul_out: 99999999 min, haul_out_bad: 99999999 min")]
    [InlineDataOfFullRun("done_within: 26 min", "done_within: 999999999 min")]
    [InlineDataOfFullRun("after: 2.5 h", "after: 99999999 h")]
    [InlineDataOfFullRun("thickness: 2.0 in|thickness_lowest: 1.75 in", "thickness: 99999999 in|thickness_lowest: 1.75 in")]
    [InlineDataOfFullRun("width: 12 ft", "width: 99999999 ft")]
    [InlineDataOfFullRun("silo_at_start: 100 short ton, silo_capacity: 200 short ton", "silo_at_start: 100000000 short ton, silo_capacity: 200000000 short ton")]
    public void Figures_out_of_all_measure_take_no_memory_out_of_all_measure(string find, string put)
    {
        var plan = File.ReadAllText(Path.Combine(SourceTree.Root, "examples", "county-route-us.yaml"));
        foreach (var (old, made) in find.Split('|').Zip(put.Split('|')))
        {
            Assert.Contains(old, plan, StringComparison.Ordinal);
            plan = plan.Replace(old, made, StringComparison.Ordinal);
        }

        var folder = Directory.CreateTempSubdirectory("laygate-test-").FullName;
        File.WriteAllText(Path.Combine(folder, "plan.yaml"), plan);
        File.WriteAllText(Path.Combine(folder, "laygate.sh"), BuiltProgram.Wrapper());
        foreach (var command in (string[])["check plan.yaml --rules us-wa --outlook --format html --output page.html", "sheet plan.yaml --rules us-wa --draft --output sheet.html"])
        {
            var (code, error) = Run(folder, command);
            Assert.True(code is >= 0 and <= 2, $"{command}: {code} {error}");
        }

        Directory.Delete(folder, recursive: true);
    }

    private static (int Code, string Error) Run(string folder, string command)
    {
        var start = new ProcessStartInfo("/bin/sh", ["-c", $"sh ./laygate.sh {command}"]) { WorkingDirectory = folder, RedirectStandardError = true, UseShellExecute = false };
        start.Environment["DOTNET_GCHeapHardLimit"] = MostHeap;
        start.Environment["LAYGATE_TRACE"] = "1";
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(Patience.Longest))
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail($"laygate {command} does not end");
        }

        return (process.ExitCode, error.GetAwaiter().GetResult());
    }
}
