using System.Globalization;

namespace Laygate.Mutation;

/// <summary>Takes the mutants one after another and writes what became of each; what has a line already is not run again.</summary>
internal sealed class Driver : IDisposable
{
    private readonly string folder;
    private readonly double budget;
    private readonly double budgetAlone;
    // What so many tests reach is computed anew for each of them.
    private const int TestsOfAKeptValue = 10;

    private readonly List<TestRecord> tests;
    private readonly ILookup<int, string> kept;

    private readonly TestOrder order;
    private Child? worker;

    /// <summary>Judges the mutants of a folder.</summary>
    /// <param name="folder">The mutated copy, with its lists.</param>
    /// <param name="budget">What the tests of one mutant may cost, ms of processor time as measured without a mutant.</param>
    /// <param name="budgetAlone">The same for a mutant in a process of its own; 0 leaves these out.</param>
    public Driver(string folder, double budget, double budgetAlone)
    {
        (this.folder, this.budget, this.budgetAlone) = (folder, budget, budgetAlone);
        tests = [.. File.ReadLines(Path.Combine(folder, "tests.tsv")).Select(TestRecord.Parse)];
        kept = File.ReadLines(Path.Combine(folder, "kept.tsv")).Select(line => line.Split('\t'))
            .ToLookup(parts => int.Parse(parts[0], CultureInfo.InvariantCulture), parts => parts[1] + "\t" + parts[2]);
        order = new TestOrder(tests);
    }

    public void Run(IReadOnlyList<(int Id, string Folder)> mutants, string results)
    {
        var done = File.Exists(results) ? File.ReadLines(results).Select(line => line.Split('\t')[0]).ToHashSet(StringComparer.Ordinal) : [];
        foreach (var (mutant, place) in mutants.Where(mutant => !done.Contains(mutant.Id.ToString(CultureInfo.InvariantCulture))))
        {
            var (outcome, test) = Judge(mutant, place);
            File.AppendAllText(results, $"{mutant}\t{outcome}\t{(test < 0 ? "" : tests[test].Name)}\n");
        }
    }

    public void Dispose() => worker?.Dispose();

    private (string Outcome, int Test) Judge(int mutant, string place)
    {
        var reaching = Usable().Where(test => tests[test].Hits.Contains(mutant)).ToList();
        var keepers = reaching.Count < TestsOfAKeptValue ? KeptBy(mutant) : [];
        if (reaching.Count == 0 && keepers.Count == 0)
        {
            return ("uncovered", -1);
        }

        if (keepers.Count > 0)
        {
            return budgetAlone > 0 ? InOwnProcess(mutant, Budget.Fill(tests, Near(mutant, place, keepers), budgetAlone)) : ("kept", -1);
        }

        var chosen = order.Best(reaching, budget);
        var found = InWorker(mutant, chosen, again: true);
        order.Learn(chosen, found.Test);
        return found;
    }

    private IEnumerable<int> Usable() => Enumerable.Range(0, tests.Count).Where(test => tests[test].Passed && tests[test].Id != TestRecord.Discovery);

    /// <summary>The classes in whose tests, or in whose search for tests, a value is made once that the mutant changes.</summary>
    private HashSet<string> KeptBy(int mutant) =>
        kept[mutant].Concat(tests.Where(test => test.Id == TestRecord.Discovery && test.Hits.Contains(mutant)).Select(test => test.Assembly + "\t" + test.Type)).ToHashSet(StringComparer.Ordinal);

    /// <summary>Tests that may notice a mutant whose effect stays for the whole process: those that reach it, those of the same folder, then others of the assembly.</summary>
    private IEnumerable<int> Near(int mutant, string place, HashSet<string> keepers)
    {
        var assemblies = keepers.Select(keeper => keeper.Split('\t')[0]).ToHashSet(StringComparer.Ordinal);
        // Tests of a folder lie in one of the same name.
        var folder = $".{place.Split('/')[^1]}.";
        return Usable().Where(test => keepers.Contains(TestRecord.Anywhere) || assemblies.Contains(tests[test].Assembly)).OrderBy(test =>
            tests[test].Hits.Contains(mutant) ? 0
            : tests[test].Type.Contains(folder, StringComparison.Ordinal) ? 1
            : keepers.Contains(tests[test].Assembly + "\t" + tests[test].Type) ? 2 : 3).ThenBy(test => tests[test].Cost);
    }

    private (string Outcome, int Test) InWorker(int mutant, List<int> chosen, bool again)
    {
        worker ??= new Child("work", folder);
        worker.Send($"{mutant} {string.Join(' ', chosen)}");
        var answer = worker.Answer(Ceiling).Split(' ');
        if (answer[0] is "survived" or "killed" or "slow")
        {
            return (answer[0], answer.Length > 1 ? int.Parse(answer[1], CultureInfo.InvariantCulture) : -1);
        }

        Console.Error.WriteLine($"{mutant}: {string.Join(' ', answer)} {tests[int.Parse(answer[1], CultureInfo.InvariantCulture)].Name}");

        // What the mutant left behind must not judge the next one.
        worker.Dispose();
        worker = null;
        var test = int.Parse(answer[1], CultureInfo.InvariantCulture);
        return answer[0] == "doubtful"
            ? again ? InWorker(mutant, chosen, again: false) : ("doubtful", test)
            : (answer[0], test);
    }

    private (string Outcome, int Test) InOwnProcess(int mutant, List<int> chosen)
    {
        using var child = new Child(["one", folder, mutant.ToString(CultureInfo.InvariantCulture), .. chosen.Select(test => test.ToString(CultureInfo.InvariantCulture))]);
        var answer = child.Answer(Ceiling).Split(' ');
        return (answer[0], answer.Length > 1 ? int.Parse(answer[1], CultureInfo.InvariantCulture) : -1);
    }

    /// <summary>Ten times what the test takes, and room for the compiler of the runtime.</summary>
    private TimeSpan Ceiling(int test) => TimeSpan.FromMilliseconds((10 * tests[test].Cost) + 8_000);
}
