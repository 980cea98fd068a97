using System.Diagnostics;
using System.Reflection;
using Xunit.Sdk;

namespace Laygate.Mutation;

/// <summary>Runs every test once, one at a time, and notes which mutants each reaches and what it costs.</summary>
internal sealed class Coverage(TextWriter tests, TextWriter kept, TextWriter log)
{
    private string current = "";

    public void Run(IEnumerable<Assembly> assemblies, Func<string, bool> wanted)
    {
        LaygateMutation.Mutant.First = Note;

        // Looking for what tests keep makes static values of many of their classes, whichever of them is run.
        current = TestRecord.Anywhere;
        Watch(TestCaches.Drop);
        foreach (var assembly in assemblies)
        {
            var set = new TestSet(assembly);
            foreach (var type in set.Classes.Where(wanted))
            {
                current = $"{assembly.GetName().Name}\t{type}";
                IReadOnlyList<IXunitTestCase> cases = [];
                var (cost, hits) = Watch(() => cases = set.Find(type));
                Write(type, TestRecord.Discovery, TestRecord.Discovery, cost, failure: null, hits);
                foreach (var test in cases)
                {
                    string? failure = null;
                    TestCaches.Drop();
                    (cost, hits) = Watch(() => failure = TestSet.Run(test));
                    Write(type, test.UniqueID, test.DisplayName, cost, failure, hits);
                }
            }
        }

        void Write(string type, string id, string name, double cost, string? failure, IReadOnlyList<int> hits)
        {
            tests.WriteLine(new TestRecord(current.Split('\t')[0], type, id, TestRecord.OneLine(name), cost, failure is null, hits));
            tests.Flush();
            if (failure is not null || cost > 5000)
            {
                log.WriteLine($"{name}: {cost:F0} ms {TestRecord.OneLine(failure ?? "")}");
            }
        }
    }

    private static (double Cost, IReadOnlyList<int> Hits) Watch(Action run)
    {
        Array.Clear(LaygateMutation.Mutant.Hits);
        var before = Process.GetCurrentProcess().TotalProcessorTime;
        LaygateMutation.Mutant.Recording = true;
        run();
        LaygateMutation.Mutant.Recording = false;
        return ((Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds,
            [.. Enumerable.Range(0, LaygateMutation.Mutant.Hits.Length).Where(id => LaygateMutation.Mutant.Hits[id] != 0)]);
    }

    private readonly HashSet<int> seen = [];

    /// <summary>What is reached while a static value is made stays for the whole process: such a mutant needs a process of its own.</summary>
    private void Note(int id)
    {
        lock (seen)
        {
            if (!seen.Add(id))
            {
                return;
            }

            var callers = new StackTrace(2, fNeedFileInfo: false).GetFrames().Select(frame => frame.GetMethod()).OfType<MethodBase>().ToList();
            if (callers.Any(caller => caller is ConstructorInfo { IsStatic: true }) || InCacheOfTests(callers))
            {
                kept.WriteLine($"{id}\t{current}");
                kept.Flush();
            }
        }
    }

    private static bool InCacheOfTests(List<MethodBase> callers)
    {
        var cache = callers.FindIndex(caller => caller.DeclaringType?.FullName is { } name
            && (name.StartsWith("System.Lazy", StringComparison.Ordinal) || name.StartsWith("System.Collections.Concurrent", StringComparison.Ordinal)));
        return cache >= 0 && callers.Skip(cache).FirstOrDefault(caller => caller.DeclaringType?.Assembly.GetName().Name?.StartsWith("Laygate", StringComparison.Ordinal) == true)?
            .DeclaringType!.Assembly.GetName().Name!.EndsWith("Tests", StringComparison.Ordinal) == true;
    }
}
