using System.Text;
using Laygate.Checking;
using Laygate.Reading;
using Laygate.Reporting.Json;

namespace Laygate.ConformanceTests.Plans;

/// <summary>A service shares schema, catalogue, consistency checks and rule book between all its checks, several at once.</summary>
public sealed class SharedToolsTests
{
    private static readonly string[] Plans = ["quay-road-hot-on-hot", "moor-road-thin-overlay", "county-route-us", "concept-fifteen-lines"];

    [Fact]
    public void Checks_at_once_give_what_each_gives_alone()
    {
        var files = Plans.Select(name => Repository.Bytes(Repository.Whole(name))).SelectMany(text => new[] { text, Broken(text) }).ToList();
        var alone = files.ConvertAll(text => Check(text, new PlanTools()));
        Assert.Equal(Plans.Length, alone.Count(report => report.Contains("\"reports\": []", StringComparison.Ordinal)));

        var shared = new PlanTools();
        var together = new string[4 * files.Count];
        Parallel.For(0, together.Length, new ParallelOptions { MaxDegreeOfParallelism = 8 }, i => together[i] = Check(files[i % files.Count], shared));
        for (var i = 0; i < together.Length; i++)
        {
            Assert.Equal(alone[i % files.Count], together[i]);
        }
    }

    // A key that no schema knows.
    private static byte[] Broken(byte[] text) => [.. text, .. Encoding.UTF8.GetBytes("\nno_such_key: 1\n")];

    private static string Check(byte[] text, PlanTools tools)
    {
        var check = new PlanCheck(Repository.Bound(), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true }, [], tools);
        using var bytes = new MemoryStream();
        JsonOutput.Write(bytes, Repository.Version, [check.Run("plan.yaml", text)], []);
        return Encoding.UTF8.GetString(bytes.ToArray());
    }
}
