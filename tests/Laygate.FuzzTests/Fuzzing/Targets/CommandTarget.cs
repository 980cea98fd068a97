using System.Text;
using Laygate.Cli;
using Laygate.Cli.Checking;
using Laygate.Cli.Output;
using Laygate.ConformanceTests;
using static Laygate.FuzzTests.Fuzzing.Refusal;

namespace Laygate.FuzzTests.Fuzzing.Targets;

/// <summary>The program itself, with files on the disk: its exit code is one that is documented, and a refusal names file, line and column.</summary>
/// <param name="name">Name of the target.</param>
/// <param name="file">The file that the input becomes.</param>
/// <param name="share">Its share of the inputs.</param>
/// <param name="seeds">Its seeds.</param>
internal sealed class CommandTarget(string name, string file, int share, SeedSet seeds) : Target, IDisposable
{
    private static readonly byte[] Plan = Repository.Bytes("examples/concept-fifteen-lines.yaml");

    private static readonly string[] Commands =
    [
        "check PLAN --quick", "check PLAN --quick --format json --all", "check PLAN --quick --format html", "check PLAN OTHER --quick --format junit", "check PLAN OTHER PLAN --quick --format sarif --fail-on warn",
        "baseline PLAN --output BASE", "compare OTHER PLAN", "check PLAN OTHER --quick --format markdown",
    ];

    private readonly ThreadLocal<string> folder = new(() => Directory.CreateTempSubdirectory("laygate-fuzz-").FullName, trackAllValues: true);

    /// <inheritdoc/>
    public override string Name => name;

    /// <inheritdoc/>
    public override int Share => share;

    /// <inheritdoc/>
    public override SeedSet Seeds => seeds;

    // The rule pack is read for each run, and plans are checked side by side.
    /// <inheritdoc/>
    public override long? MostAllocated => null;

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes)
    {
        var at = folder.Value!;
        string In(string one) => Path.Combine(at, one);
        foreach (var old in Directory.GetFiles(at))
        {
            File.Delete(old);
        }

        File.WriteAllBytes(In("plan.yaml"), Plan);
        File.WriteAllBytes(In("other.yaml"), Plan);
        File.WriteAllBytes(In(file), bytes);
        var command = Commands[Choice(bytes, Commands.Length)].Split(' ')
            .Select(word => word switch { "PLAN" => In("plan.yaml"), "OTHER" => In("other.yaml"), "BASE" => In("written.json"), _ => word }).ToList();
        command.AddRange(file switch
        {
            "rules.yaml" => ["--rules", In(file)],
            "departures.yaml" when command[0] is not "compare" => ["--departures", In(file)],
            "known.json" when command[0] is "check" => ["--baseline", In(file)],
            _ => [],
        });
        using var output = new MemoryStream();
        using var error = new StringWriter();
        var code = new App(new PlanPipeline(), new Streams { Input = () => new MemoryStream(), Out = output, Error = error }, TimeProvider.System, trace: true).Run(command);
        var said = error.ToString();
        Require(code is ExitCodes.Clean or ExitCodes.Findings or ExitCodes.Unreadable, $"exit code {code} of `{string.Join(' ', command)}`: {said}");
        Require(code != ExitCodes.Unreadable || said.Length > 0, "exit code 2 without a word");
        return code == ExitCodes.Unreadable ? Answer.Refused : Answer.Accepted;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var one in folder.Values)
        {
            Directory.Delete(one, recursive: true);
        }

        folder.Dispose();
    }
}
