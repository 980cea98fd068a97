using Laygate.Engineering.Acceptance;

namespace Laygate.UnitTests.Engineering.Acceptance;

/// <summary>Outliers, cores, gauges, thermal profiles and places.</summary>
public sealed class CoreTests
{
    /// <summary>Critical values, one-sided: Grubbs 1950 and 1969, as a copy on a document site reproduces them *(second-hand)*, to their printed digits.</summary>
    [Theory]
    [InlineData(3, 1.15, 1.15, 1.15, 1.15)]
    [InlineData(4, 1.42, 1.46, 1.48, 1.49)]
    [InlineData(5, 1.60, 1.67, 1.71, 1.75)]
    [InlineData(6, 1.73, 1.82, 1.89, 1.94)]
    [InlineData(7, 1.83, 1.94, 2.02, 2.10)]
    [InlineData(8, 1.91, 2.03, 2.13, 2.22)]
    [InlineData(10, 2.03, 2.18, 2.29, 2.41)]
    [InlineData(12, 2.13, 2.29, 2.41, 2.55)]
    [InlineData(15, 2.25, 2.41, 2.55, 2.71)]
    [InlineData(20, 2.38, 2.56, 2.71, 2.88)]
    public void Critical_distances_are_the_printed_ones(int n, params double[] printed)
    {
        double[] levels = [0.10, 0.05, 0.025, 0.01];
        for (var i = 0; i < levels.Length; i++)
        {
            // Some of its digits are rounded, others cut.
            Assert.InRange(Grubbs.Critical(n, levels[i], isTwoSided: false)!.Value, printed[i] - 0.0055, printed[i] + 0.0099);
            // Two sides at twice the level are one side at the level.
            Assert.Equal(Grubbs.Critical(n, levels[i], isTwoSided: false)!.Value, Grubbs.Critical(n, 2 * levels[i], isTwoSided: true)!.Value, 1e-9);
        }
    }

    // Derived: no distance exceeds (n − 1)/√n, which is 1.1547 for three results against a critical 1.1543.
    [Fact]
    public void With_three_results_the_test_can_hardly_fire()
    {
        Assert.False(Grubbs.Of([1, 2, 9], 0.05)!.IsMarked);
        Assert.Null(Grubbs.Critical(2, 0.05, isTwoSided: true));
        Assert.Null(Grubbs.Critical(5, 0.5, isTwoSided: true));
        Assert.Null(Grubbs.Critical(5, 0, isTwoSided: true));
        Assert.True(Grubbs.Of([92.1, 92.3, 92.0, 92.2, 92.4, 92.1, 86.0], 0.05)!.IsMarked);
    }

    // Source: AASHTO T 166, field procedure, example (recalled): 4833.6, 4842.4 and 2881.3 g give 2.465 and 0.45 %. The denominator A − C would give 2.476.
    [Fact]
    public void Bulk_gravity_by_water_displacement()
    {
        Assert.Equal(2.465, CoreFormulas.Bulk(4833.6, 4842.4, 2881.3)!.Value, 5e-4);
        Assert.Equal(0.0045, CoreFormulas.Absorbed(4833.6, 4842.4, 2881.3)!.Value, 5e-5);
        Assert.Null(CoreFormulas.Bulk(4842.4, 4833.6, 2881.3));
    }

    // By hand: 1 − 2.318/2.489 = 6.8702 %. Bulk above maximum is a fault of the data, not of the road.
    [Fact]
    public void Voids_and_density_make_a_hundred()
    {
        Assert.Equal(0.068702, CoreFormulas.Voids(2.318, 2.489)!.Value, 5e-7);
        Assert.Null(CoreFormulas.Voids(2.6, 2.489));
        Assert.Null(CoreFormulas.Voids(1.5, 2.489));
    }

    // Source: a regional field procedure's example of ten pairs in lb/ft³ (recalled), used as arithmetic: mean difference 2.1, deviation about 0.5; u = s √(1 + 1/10) = 0.5523 (derived).
    [Fact]
    public void A_gauge_is_offset_by_its_pairs()
    {
        double[] cores = [144.9, 142.8, 143.1, 140.7, 145.1, 144.2, 143.8, 142.8, 144.8, 143.0];
        double[] readings = [142.1, 140.9, 140.7, 138.9, 143.6, 142.4, 141.3, 139.8, 143.3, 141.0];
        var offset = GaugeOffset.Of([.. readings.Zip(cores)])!;
        Assert.Equal((10, 2.12), (offset.Pairs, Math.Round(offset.Offset, 4)));
        Assert.Equal(0.5266, offset.Deviation, 5e-5);
        Assert.Equal(0.5523, offset.Uncertainty(0), 5e-5);
        Assert.Equal((138.9, 143.6), (offset.Low, offset.High));
        Assert.Null(GaugeOffset.Of([]));
    }

    // By hand: 20 readings; rank 1 + 19 · 0.985 and 1 + 19 · 0.01, straight between neighbours.
    [Fact]
    public void The_range_of_a_profile_is_that_between_its_percentiles()
    {
        double[] readings = [148, 151, 152, 149, 150, 147, 146, 152, 153, 150, 149, 148, 120, 118, 125, 151, 150, 149, 152, 151];
        var range = ThermalRange.Of(0, 45.7, readings, 0.01, 0.985)!;
        Assert.Equal((152.715, 118.380, 34.335), (Math.Round(range.High, 3), Math.Round(range.Low, 3), Math.Round(range.Range, 3)));
        Assert.Equal(35, ThermalRange.Of(0, 45.7, readings, 0, 1)!.Range);
    }

    // Source: UFC 3-250-03, 15 May 2001: 750 m by 3 m on a grid of 0.5 m has 7495 places; number 3108 is the place at 311 m, 2.0 m across (read).
    [Fact]
    public void A_number_names_a_place_on_a_grid()
    {
        Assert.Equal((311.0, 2.0), (SamplingPlaces.GridAlong(3108, 750, 3, 0.5), SamplingPlaces.GridAcross(3108, 3, 0.5)));
        // By hand: number 7494 is the last place inside, 749.5 m; 7495 would be the end itself.
        Assert.Equal((749.5, 2.5), (SamplingPlaces.GridAlong(7494, 750, 3, 0.5), SamplingPlaces.GridAcross(7494, 3, 0.5)));
    }

    /// <summary>The same seed gives the same places; what comes later moves none of them, and every place lies inside (derived: bounds of the draw).</summary>
    [Fact]
    public void Places_belong_to_seed_and_sublot()
    {
        IReadOnlyList<SamplingPlace> Draw(ulong seed, int sublot, int count) => SamplingPlaces.Of(seed, 0, sublot, 100 * (sublot - 1), 100, along => 8 - (along / 10000), 0.5, count);
        Assert.Equal(Draw(7, 3, 2), Draw(7, 3, 2));
        Assert.Equal(Draw(7, 3, 2), Draw(7, 3, 5).Take(2));
        Assert.NotEqual(Draw(7, 3, 2), Draw(8, 3, 2));
        Assert.NotEqual(Draw(7, 3, 1)[0].First, Draw(7, 4, 1)[0].First);
        Assert.All(Enumerable.Range(1, 200).SelectMany(sublot => Draw(11, sublot, 2)), place =>
        {
            Assert.InRange(place.Along, 100 * (place.Sublot - 1), 100 * place.Sublot);
            Assert.InRange(place.Across, 0.5, 8 - (place.Along / 10000) - 0.5);
        });
    }
}
