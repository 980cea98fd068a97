using System.Diagnostics;
using System.Globalization;
using Laygate.FuzzTests.Fuzzing;
using Laygate.FuzzTests.Metamorphic;

namespace Laygate.FuzzTests;

/// <summary>
/// The fuzzer as a command, see <see cref="Words"/>.
/// </summary>
internal static class Program
{
    private const string Words = """
        Tries inputs that are made from sound ones, and prints how many of each kind were taken and refused, and what must never be.

          dotnet run -c Release --project tests/Laygate.FuzzTests -- [options]

          --count N      inputs; without it until the minutes are over
          --minutes M    ends after so many minutes
          --seed S       seed, usually 1
          --first I      number of the first input, usually 0
          --workers W    threads, usually 2
          --only NAME    inputs of this target only
          --replay I     tries input I of the seed alone and writes it to artifacts/fuzz/
          --file PATH    tries a file; --only names its target
          --keep         writes each input that fails to artifacts/fuzz/
          --plans N      asks N random plans for the metamorphic properties instead
          --plan I       writes random plan I to artifacts/fuzz/

        """;

    /// <summary>Runs the command.</summary>
    /// <returns>0 when nothing happened that must never be, else 1; 2 for arguments that are none.</returns>
    public static async Task<int> Main(string[] args)
    {
        if (args.Length == 0 || args.Contains("--help", StringComparer.Ordinal))
        {
            Console.Write(Words);
            return args.Length == 0 ? 2 : 0;
        }

        if (args.Contains("--plans", StringComparer.Ordinal))
        {
            return Ask((int)Number(args, "--first", 0), (int)Number(args, "--plans", 0), (int)Number(args, "--workers", 2));
        }

        if (Text(args, "--plan") is { } number)
        {
            var kept = Path.Combine(Directory.CreateDirectory(Path.Combine(SourceTree.Root, "artifacts", "fuzz")).FullName, $"plan-{number}.json");
            await File.WriteAllTextAsync(kept, RandomPlan.Next((int)Number(args, "--plan", 0)).Plan.ToJsonString());
            Console.WriteLine(kept);
            return 0;
        }

        await using var targets = new TargetList();
        var seed = (int)Number(args, "--seed", 1);
        var maker = new InputMaker(seed, targets.All);
        var run = new FuzzRun(maker);
        var since = Stopwatch.StartNew();
        if (Text(args, "--file") is { } path)
        {
            run.Try(new FuzzInput(0, targets.All.First(target => target.Name == Text(args, "--only")), path, await File.ReadAllBytesAsync(path)));
        }
        else if (args.Contains("--replay", StringComparer.Ordinal))
        {
            var input = maker.Make(Number(args, "--replay", 0));
            Console.WriteLine($"{input.Target.Name}: {input.Changes}\n{await KeepAsync(input)}");
            run.Try(input);
        }
        else
        {
            var most = TimeSpan.FromMinutes(Number(args, "--minutes", int.MaxValue));
            run.Try(Number(args, "--first", 0), Number(args, "--count", int.MaxValue), (int)Number(args, "--workers", 2), () => since.Elapsed < most, Text(args, "--only"));
        }

        await TellAsync(run, seed, args.Contains("--keep", StringComparer.Ordinal), since.Elapsed);
        return run.Complaints.Count > 0 ? 1 : 0;
    }

    private static int Ask(int first, int count, int workers)
    {
        var properties = new Properties();
        Parallel.For(first, first + count, new ParallelOptions { MaxDegreeOfParallelism = workers }, properties.Ask);
        foreach (var line in properties.Broken)
        {
            Console.WriteLine(line);
        }

        foreach (var (property, answers) in properties.Compared.Concat(properties.Excepted))
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{property}: {answers}"));
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} plans from {first} ({Process.GetCurrentProcess().TotalProcessorTime.TotalSeconds:F0} s of processor time), {properties.Broken.Count()} answers that must not be"));
        return properties.Broken.Any() ? 1 : 0;
    }

    private static async Task TellAsync(FuzzRun run, int seed, bool isKept, TimeSpan elapsed)
    {
        foreach (var complaint in run.Complaints.Take(200))
        {
            Console.WriteLine($"{complaint.Input.Index} {complaint.Input.Target.Name} ({complaint.Input.Changes})\n  {complaint.What}{(isKept ? "\n  " + await KeepAsync(complaint.Input) : string.Empty)}");
        }

        Console.WriteLine("| target | inputs | taken | refused | must never be | most allocated by one, MB | seconds |\n|---|---|---|---|---|---|---|");
        foreach (var (name, tally) in run.Tallies)
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {name} | {tally.Inputs} | {tally.Accepted} | {tally.Refused} | {tally.Complaints} | {tally.MostAllocated >> 20} | {tally.Seconds:F0} |"));
        }

        var total = run.Tallies.Sum(tally => tally.Value.Inputs);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"seed {seed}: {total} inputs in {elapsed.TotalMinutes:F1} minutes ({Process.GetCurrentProcess().TotalProcessorTime.TotalSeconds:F0} s of processor time, {Process.GetCurrentProcess().PeakWorkingSet64 >> 20} MB at most), {run.Complaints.Count} that must never be"));
    }

    private static async Task<string> KeepAsync(FuzzInput input)
    {
        var path = Path.Combine(Directory.CreateDirectory(Path.Combine(SourceTree.Root, "artifacts", "fuzz")).FullName, string.Create(CultureInfo.InvariantCulture, $"{input.Target.Name.Replace(' ', '-')}-{input.Index}.txt"));
        await File.WriteAllBytesAsync(path, input.Bytes);
        return path;
    }

    private static string? Text(string[] args, string name) => Array.IndexOf(args, name) is >= 0 and var at && at + 1 < args.Length ? args[at + 1] : null;

    private static long Number(string[] args, string name, long otherwise) => Text(args, name) is { } text ? long.Parse(text, CultureInfo.InvariantCulture) : otherwise;
}
