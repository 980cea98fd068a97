using System.Diagnostics;
using System.Globalization;
using System.Reflection;
using Xunit.Sdk;

namespace Laygate.Mutation;

/// <summary>
/// Runs tests against mutants on request, one line each: "ID T1 T2 …", tests by their line in the list.
/// Says "run T" before each and ends with "survived", "killed T", or "doubtful T" where the test fails without the mutant too.
/// </summary>
/// <param name="tests">All tests.</param>
/// <param name="keeping">The classes whose tests make values that stay for the whole process.</param>
/// <param name="answer">Where to answer.</param>
internal sealed class Worker(IReadOnlyList<TestRecord> tests, IReadOnlySet<string> keeping, TextWriter answer)
{
    private readonly Dictionary<string, Dictionary<string, IXunitTestCase>> classes = new(StringComparer.Ordinal);
    // A mutant that makes everything slow is left undecided rather than waited for.
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(15);

    private readonly HashSet<int> used = [];
    private readonly Dictionary<string, TestSet> sets = new(StringComparer.Ordinal);

    public void Serve(TextReader requests)
    {
        while (requests.ReadLine() is { } line)
        {
            var numbers = line.Split(' ').Select(number => int.Parse(number, CultureInfo.InvariantCulture)).ToList();
            answer.WriteLine(Judge(numbers[0], numbers.Skip(1)));
            answer.Flush();
        }
    }

    /// <summary>As a request, but the mutant is on from before the first static value is made.</summary>
    public void ServeOne(int mutant, IEnumerable<int> chosen)
    {
        LaygateMutation.Mutant.Active = mutant;
        foreach (var test in chosen)
        {
            if (Fails(test) is true)
            {
                answer.WriteLine($"killed {test}");
                answer.Flush();
                return;
            }
        }

        answer.WriteLine("survived");
        answer.Flush();
    }

    private string Judge(int mutant, IEnumerable<int> chosen)
    {
        var before = Environment.CpuUsage.TotalTime;
        foreach (var test in chosen)
        {
            if (Environment.CpuUsage.TotalTime - before > Longest)
            {
                return "slow";
            }

            // What a test makes once and keeps is made without a mutant.
            LaygateMutation.Mutant.Active = 0;
            if (keeping.Contains(tests[test].Type) && used.Add(test))
            {
                _ = Fails(test);
            }

            TestCaches.Drop();
            LaygateMutation.Mutant.Active = mutant;
            var failed = Fails(test);
            LaygateMutation.Mutant.Active = 0;
            TestCaches.Drop();
            if (failed is true)
            {
                return Fails(test) is true ? $"doubtful {test}" : $"killed {test}";
            }
        }

        return "survived";
    }

    private bool? Fails(int number)
    {
        answer.WriteLine($"run {number}");
        answer.Flush();
        if (Find(number) is { } test)
        {
            return TestSet.Run(test) is not null;
        }

        answer.WriteLine($"missing {number}");
        return null;
    }

    private IXunitTestCase? Find(int number)
    {
        var record = tests[number];
        var key = record.Assembly + record.Type;
        if (!classes.TryGetValue(key, out var cases))
        {
            if (!sets.TryGetValue(record.Assembly, out var set))
            {
                sets[record.Assembly] = set = new TestSet(Assembly.Load(record.Assembly));
            }

            classes[key] = cases = [];
            foreach (var test in set.Find(record.Type))
            {
                cases.TryAdd(test.UniqueID, test);
                cases.TryAdd(TestRecord.OneLine(test.DisplayName), test);
            }
        }

        // The framework names a case by its arguments, which it converts while it runs: 5 becomes 5.0, and the name another one.
        return cases.GetValueOrDefault(record.Id) ?? cases.GetValueOrDefault(record.Name);
    }
}
