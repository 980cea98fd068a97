using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Faults;

/// <summary>A harmless change adds no warning and no failure. Trucks are judged with the simulated shifts, all else without.</summary>
public sealed class HarmlessTests
{
    public static TheoryData<string> All => [.. FaultLists.Harmless.Select(change => change.Id)];

    [Theory]
    [MemberData(nameof(All))]
    public void A_harmless_change_adds_nothing(string id) => Assert.Empty(Added(FaultLists.Harmless.Single(change => change.Id == id)));

    [Fact]
    public void There_are_ten_kinds_of_six() =>
        Assert.Equal(Enumerable.Repeat(6, 10), FaultLists.Harmless.GroupBy(change => change.Family, StringComparer.Ordinal).Select(kind => kind.Count()));

    // Ids may be other ones, so that findings are counted by rule and status and not held by address.
    internal static IReadOnlyList<string> Added(Fault change)
    {
        var whole = change.Family == "truck";
        var verdict = FaultCheck.Of(change, whole);
        var before = Count(FaultCheck.OfPlan(change.Plan, whole));
        return [.. verdict.Refusals, .. Count(verdict.All).Where(pair => pair.Value > before.GetValueOrDefault(pair.Key)).Select(pair => $"{pair.Key.Rule} {pair.Key.Status}: {verdict.All.First(said => (said.Rule, said.Status) == pair.Key).Text}")];
    }

    private static Dictionary<(string Rule, Status Status), int> Count(IReadOnlyList<Said> said) =>
        said.Where(one => one.Status is Status.Warn or Status.Fail).GroupBy(one => (one.Rule, one.Status)).ToDictionary(group => group.Key, group => group.Count());
}
