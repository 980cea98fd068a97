using Laygate.Engineering.Supply.Simulation;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>The order of loads by running balance.</summary>
public class LoadOrderTests
{
    [Theory]
    [InlineData(1.3, 12, "BBSBSBSBBSBSBSBBSBSBS")]
    [InlineData(4.083, 21, "BBBBBSBBBBSBBBBSBBBBSBBBBS")] // derived: the k-th upper load is due after ⌈4.083 k⌉ lower ones: five, then mostly four
    [InlineData(5.1, 26, "BBBBBBSBBBBBSBBBBBSBBBBBSBBBBBS")] // common practice, no published source: groups of five, the first of six
    public void Equal_payloads(double ratio, int lower, string start) =>
        Assert.StartsWith(start, Word(LoadOrder.ByBalance(Equal(25, lower), Equal(25, 100), ratio)!), StringComparison.Ordinal);

    [Fact]
    public void Ratio_4_083_comes_to_a_group_of_five_again_after_twelve_of_four()
    {
        // After n lower loads n / 4.083 upper ones are due: 49 give 12.001, 53 give 12.98, so the thirteenth waits for the 54th.
        var groups = Groups(4.083, 120);
        Assert.Equal([5, .. Enumerable.Repeat(4, 11), 5, 4], groups.Take(14));
    }

    [Fact]
    public void Ratio_5_1_makes_groups_of_five_and_now_and_then_six()
    {
        // Common practice, no published source. 5.1 · k lower loads for k upper ones: the k-th follows load ⌈5.1 · k⌉.
        var groups = Groups(5.1, 120);
        Assert.Equal([6, .. Enumerable.Repeat(5, 9), 6, 5], groups.Take(12));
    }

    [Fact]
    public void Unequal_payloads_of_scenario_a()
    {
        // 261 t/h in 25 t and 74.3 t/h in 16 t: 2.25 lower loads for one upper (derived: 261/25 over 74.3/16).
        var lower = LoadOrder.Loads(1_756_000, 25_000, 1000);
        var upper = LoadOrder.Loads(500_000, 16_000, 1000);
        // 70 full loads and 6 t, 31 full loads and 4 t: less than half a load is shared with the load before it.
        Assert.Equal((71, 16_000.0, 15_000.0), (lower.Count, lower[^2], lower[^1]));
        Assert.Equal((32, 10_000.0, 10_000.0), (upper.Count, upper[^2], upper[^1]));
        var order = LoadOrder.ByBalance(lower, upper, 1756.0 / 500)!;
        Assert.Equal((103, 32), (order.Count, order.Count(isUpper => isUpper)));
        Assert.StartsWith("BBBSBBSBBSBB", Word(order), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(181, 18)] // one tonne over
    [InlineData(189, 18)]
    [InlineData(180, 18)]
    [InlineData(19, 18)]
    [InlineData(7, 18)]
    [InlineData(1756, 25)]
    public void No_truck_is_sent_with_a_tonne(double tonnes, double payload)
    {
        var loads = LoadOrder.Loads(tonnes * 1000, payload * 1000, 1000);
        Assert.Equal((int)Math.Ceiling(tonnes / payload), loads.Count); // derived by mass balance: no load more than full ones need
        Assert.InRange(loads.Sum(), tonnes * 1000, (tonnes * 1000) + 1000);
        Assert.All(loads, load => Assert.InRange(load, Math.Min(tonnes, payload / 2) * 1000, payload * 1000));
        Assert.All(loads, load => Assert.Equal(0, load % 1000, 1e-6));
    }

    [Theory]
    [InlineData(1.3)]
    [InlineData(4.083)]
    [InlineData(5.1)]
    [InlineData(0.4)]
    public void The_upper_mix_never_comes_early_and_never_late_by_a_load_of_either(double ratio)
    {
        var (lower, upper) = (0.0, 0.0);
        foreach (var isUpper in LoadOrder.ByBalance(Equal(25, 200), Equal(16, 200), ratio)!.Take(150))
        {
            lower += isUpper ? 0 : 25;
            upper += isUpper ? 16 : 0;
            Assert.InRange(upper, (lower / ratio) - 16 - (25 / ratio), (lower / ratio) + 1e-6);
        }
    }

    [Fact]
    public void Unusable_inputs_give_no_list()
    {
        Assert.Null(LoadOrder.ByBalance(Equal(25, 3), Equal(25, 3), 0));
        Assert.Null(LoadOrder.ByBalance(Equal(0, 3), Equal(25, 3), 2));
        Assert.Null(LoadOrder.ByBalance(Equal(25, 4000), [], 2));
        Assert.Empty(LoadOrder.Loads(1e12, 1, 1));
        Assert.Empty(LoadOrder.Loads(100, 0, 1));
        // By hand: two loads of 50 make 100.
        Assert.Equal([50.0, 50.0], LoadOrder.Loads(100, 50, 7));
    }

    // Each figure alone: below zero, zero, and no number.
    [Theory]
    [InlineData(-100.0, 20.0, 1.0, 0.5)]
    [InlineData(0.0, 20.0, 1.0, 0.5)]
    [InlineData(100.0, -20.0, 1.0, 0.5)]
    [InlineData(100.0, 20.0, 0.0, 0.5)]
    [InlineData(100.0, 20.0, -1.0, 0.5)]
    [InlineData(100.0, 20.0, 1.0, -0.1)]
    [InlineData(double.NaN, 20.0, 1.0, 0.5)]
    [InlineData(100.0, double.NaN, 1.0, 0.5)]
    [InlineData(100.0, 20.0, double.NaN, 0.5)]
    public void A_mass_that_cannot_be_loaded_gives_no_loads(double mass, double payload, double step, double smallest) =>
        Assert.Empty(LoadOrder.Loads(mass, payload, step, smallest));

    private static double[] Equal(double load, int count) => [.. Enumerable.Repeat(load, count)];

    private static string Word(IReadOnlyList<bool> order) => string.Concat(order.Select(isUpper => isUpper ? 'S' : 'B'));

    private static List<int> Groups(double ratio, int lower) =>
        [.. Word(LoadOrder.ByBalance(Equal(25, lower), Equal(25, 1000), ratio)!).TrimEnd('S').Split('S').Select(group => group.Length)];
}
