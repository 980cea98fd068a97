using System.Collections.Concurrent;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Examples;

/// <summary>The examples, the rules each is judged by, and their reports, computed once for all tests.</summary>
internal static class ExampleReports
{
    private static readonly ConcurrentDictionary<(string Plan, string Rules), Lazy<Report>> Computed = new();

    /// <summary>Each example with the rules that its page names.</summary>
    public static TheoryData<string, string> All => new()
    {
        { "quay-road-hot-on-hot", "examples/particular/port-of-tamarel.yaml" },
        { "moor-road-thin-overlay", "us-wa" },
        { "moor-road-thin-overlay", "de" },
        { "county-route-us", "us-wa" },
        { "concept-fifteen-lines", "" },
    };

    public static string File(string example) => $"examples/{example}.yaml";

    public static Report Of(string example, string rules) =>
        Computed.GetOrAdd((example, rules), key => new Lazy<Report>(() => Checked(key.Plan, key.Rules))).Value;

    private static Report Checked(string example, string rules)
    {
        var result = Repository.Check(File(example), rules.Length == 0 ? [] : [rules]);
        Assert.Empty(result.Problems);
        return Assert.Single(result.Reports);
    }
}
