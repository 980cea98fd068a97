using System.Globalization;

namespace Laygate.Mutation;

/// <summary>Takes the mutants one after another and writes what became of each; what has a line already is not run again.</summary>
internal sealed class Driver(string folder, double budget, double budgetAlone) : IDisposable
{
    private readonly List<TestRecord> tests = [.. File.ReadLines(Path.Combine(folder, "tests.tsv")).Select(TestRecord.Parse)];
    private readonly ILookup<int, string> kept = File.ReadLines(Path.Combine(folder, "kept.tsv")).Select(line => line.Split('\t'))
        .ToLookup(parts => int.Parse(parts[0], CultureInfo.InvariantCulture), parts => parts[1] + "\t" + parts[2]);

    private Child? worker;

    public void Run(IEnumerable<int> mutants, string results)
    {
        var done = File.Exists(results) ? File.ReadLines(results).Select(line => line.Split('\t')[0]).ToHashSet(StringComparer.Ordinal) : [];
        foreach (var mutant in mutants.Where(mutant => !done.Contains(mutant.ToString(CultureInfo.InvariantCulture))))
        {
            var (outcome, test) = Judge(mutant);
            File.AppendAllText(results, $"{mutant}\t{outcome}\t{(test < 0 ? "" : tests[test].Name)}\n");
        }
    }

    public void Dispose() => worker?.Dispose();

    private (string Outcome, int Test) Judge(int mutant)
    {
        var covering = Within(budget, Usable().Where(test => tests[test].Hits.Contains(mutant)));
        var alone = Within(budgetAlone, Alone(mutant));
        if (covering.Count == 0 && alone.Count == 0)
        {
            return ("uncovered", -1);
        }

        var found = covering.Count == 0 ? ("survived", -1) : InWorker(mutant, covering, again: true);
        return found.Item1 == "survived" && alone.Count > 0 ? InOwnProcess(mutant, alone) : found;
    }

    private IEnumerable<int> Usable() => Enumerable.Range(0, tests.Count).Where(test => tests[test].Passed && tests[test].Id != TestRecord.Discovery);

    /// <summary>Tests that may notice a mutant whose effect stays for the whole process: those of the class where it was reached, then others of the assembly.</summary>
    private IEnumerable<int> Alone(int mutant)
    {
        var places = kept[mutant].Concat(tests.Where(test => test.Id == TestRecord.Discovery && test.Hits.Contains(mutant)).Select(test => test.Assembly + "\t" + test.Type)).ToHashSet(StringComparer.Ordinal);
        if (places.Count == 0)
        {
            return [];
        }

        var assemblies = places.Select(place => place.Split('\t')[0]).ToHashSet(StringComparer.Ordinal);
        return Usable().Where(test => assemblies.Contains(tests[test].Assembly))
            .OrderBy(test => tests[test].Hits.Contains(mutant) ? 0 : places.Contains(tests[test].Assembly + "\t" + tests[test].Type) ? 1 : 2).ThenBy(test => tests[test].Cost);
    }

    private List<int> Within(double most, IEnumerable<int> chosen)
    {
        var spent = 0.0;
        var ordered = chosen is IOrderedEnumerable<int> ? chosen : chosen.OrderBy(test => tests[test].Cost);
        return [.. ordered.TakeWhile(test => (spent += tests[test].Cost + 0.5) <= most)];
    }

    private (string Outcome, int Test) InWorker(int mutant, List<int> chosen, bool again)
    {
        worker ??= new Child("work", folder);
        worker.Send($"{mutant} {string.Join(' ', chosen)}");
        var answer = worker.Answer(Ceiling).Split(' ');
        if (answer[0] is "survived" or "killed")
        {
            return (answer[0], answer.Length > 1 ? int.Parse(answer[1], CultureInfo.InvariantCulture) : -1);
        }

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
    private TimeSpan Ceiling(int test) => TimeSpan.FromMilliseconds((10 * tests[test].Cost) + 20_000);
}
