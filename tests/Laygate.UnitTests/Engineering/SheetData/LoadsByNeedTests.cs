using Laygate.Engineering.SheetData;

namespace Laygate.UnitTests.Engineering.SheetData;

public class LoadsByNeedTests
{
    /// <summary>
    /// 10 cm binder and 2 cm surface course with equal payloads: groups of five loads of binder to one of surface mix, the
    /// first of six (common practice, no published source; the ratio is 5.1 with unlike densities). The first load of each
    /// mix fills the machine; the groups are counted between the loads of surface mix that follow.
    /// </summary>
    [Fact]
    public void Five_to_one_with_six_first()
    {
        var order = LoadsByNeed.By(Series("binder", 51_000, 5.1, 1000), Series("surface", 10_000, 1, 1000));
        Assert.Equal([6, 5, 5, 5, 5, 5, 5, 5, 5], Groups(order));
    }

    [Theory]
    [InlineData(1.3)]
    [InlineData(4.083)]
    [InlineData(5.1)]
    public void Before_load_k_of_the_upper_mix_stand_the_loads_that_reach_as_far(double ratio)
    {
        // By hand: upper load k+1 is needed at k load lengths; lower loads n with (n−1) / ratio ≤ k come before it: floor(k · ratio) + 1 of them.
        var order = LoadsByNeed.By(Series("binder", ratio * 20_000, ratio, 1000), Series("surface", 20_000, 1, 1000));
        var lower = 0;
        var upper = 0;
        foreach (var load in order)
        {
            if (string.Equals(load.Series.Name, "binder", StringComparison.Ordinal))
            {
                lower++;
                continue;
            }

            Assert.Equal((int)Math.Floor((upper * ratio) + 1e-9) + 1, lower);
            upper++;
        }

        Assert.Equal(20, upper);
    }

    [Fact]
    public void Unequal_payloads_by_hand()
    {
        // By hand: lower 100 kg/m in loads of 1000 kg: needed at 0, 10, 20, 30 m; 3500 kg make the last one 500 kg.
        // Upper 35 kg/m in loads of 600 kg: needed at 0, 17.14 m, 34.29 m; 1225 kg make the last one 25 kg.
        var order = LoadsByNeed.By(new LoadSeries("b", 3500, _ => 1000, mass => mass / 100, 1, 0), new LoadSeries("s", 1225, _ => 600, mass => mass / 35, 1, 0));
        Assert.Equal("b s b s b b s", string.Join(' ', order.Select(load => load.Series.Name)));
        Assert.Equal([1000.0, 600, 1000, 600, 1000, 500, 25], order.Select(load => Math.Round(load.Size, 6)));
        Assert.Equal(35, order[^1].EndsAt, 9);
        Assert.Equal([false, false, false, false, false, true, true], order.Select(load => load.IsLast));
    }

    [Fact]
    public void A_rest_below_half_a_load_is_shared_with_the_load_before_it_in_whole_tonnes()
    {
        // By hand: 37 t in loads of 18 t: 18 t, then 19 t in two loads, 9.5 t rounded up to 10 and the rest of 9.
        var order = LoadsByNeed.By(new LoadSeries("b", 37_000, _ => 18_000, mass => mass / 100));
        Assert.Equal([18_000.0, 10_000, 9_000], order.Select(load => load.Size));
        Assert.Equal([180.0, 280, 370], order.Select(load => load.EndsAt));
    }

    [Theory]
    [InlineData(0, 1000)]
    [InlineData(double.NaN, 1000)]
    [InlineData(1000, 0)]
    [InlineData(1000, double.NaN)]
    [InlineData(1e12, 1)]
    public void What_cannot_be_ordered_gives_nothing_and_ends(double total, double payload) =>
        Assert.Empty(LoadsByNeed.By(new LoadSeries("b", total, _ => payload, mass => mass)));

    private static LoadSeries Series(string name, double total, double perMetre, double payload) => new(name, total, _ => payload, mass => mass / perMetre, 1, 0);

    private static List<int> Groups(IReadOnlyList<OrderedLoad> order)
    {
        var groups = new List<int>();
        var count = 0;
        foreach (var load in order)
        {
            if (string.Equals(load.Series.Name, "binder", StringComparison.Ordinal))
            {
                count++;
            }
            else if (load.OfSeries > 0)
            {
                groups.Add(count);
                count = 0;
            }
        }

        return groups;
    }
}
