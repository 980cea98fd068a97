using Laygate.Engineering.Acceptance;

namespace Laygate.UnitTests.Engineering.Acceptance;

/// <summary>
/// Percent within limits against a printed table, closed forms and worked examples. Table: FHWA Technical Advisory T 5080.12, 23 June 1989,
/// Table 1B, an excerpt *(read)*. Two cells of the web page are misprints and stand here as they must be: P 67, n 5 (printed 0.47) and
/// P 62, n 15 to 18 (printed .031).
/// </summary>
public sealed class QualityLevelTests
{
    private static readonly (int First, int Last)[] Groups = [(3, 3), (4, 4), (5, 5), (6, 6), (7, 7), (8, 8), (9, 9), (10, 11), (12, 14), (15, 18), (19, 25), (26, 37), (38, 69), (70, 200), (201, 2000)];

    private static readonly (int Percent, double[] Printed)[] Table =
    [
        (73, [0.76, 0.69, 0.66, 0.65, 0.64, 0.63, 0.63, 0.63, 0.62, 0.62, 0.62, 0.62, 0.62, 0.61, 0.61]),
        (71, [0.71, 0.63, 0.60, 0.59, 0.58, 0.57, 0.57, 0.57, 0.57, 0.56, 0.56, 0.56, 0.56, 0.55, 0.55]),
        (70, [0.68, 0.60, 0.57, 0.56, 0.55, 0.55, 0.54, 0.54, 0.54, 0.53, 0.53, 0.53, 0.53, 0.53, 0.52]),
        (68, [0.62, 0.54, 0.51, 0.50, 0.49, 0.49, 0.48, 0.48, 0.48, 0.48, 0.47, 0.47, 0.47, 0.47, 0.47]),
        (67, [0.59, 0.51, 0.48, 0.47, 0.46, 0.46, 0.46, 0.45, 0.45, 0.45, 0.45, 0.44, 0.44, 0.44, 0.44]),
        (66, [0.56, 0.48, 0.45, 0.44, 0.44, 0.43, 0.43, 0.43, 0.42, 0.42, 0.42, 0.42, 0.41, 0.41, 0.41]),
        (64, [0.49, 0.42, 0.40, 0.39, 0.38, 0.38, 0.37, 0.37, 0.37, 0.36, 0.36, 0.36, 0.36, 0.36, 0.36]),
        (62, [0.43, 0.36, 0.34, 0.33, 0.32, 0.32, 0.32, 0.32, 0.31, 0.31, 0.31, 0.31, 0.31, 0.31, 0.31]),
        (61, [0.39, 0.33, 0.31, 0.30, 0.30, 0.29, 0.29, 0.29, 0.29, 0.29, 0.28, 0.28, 0.28, 0.28, 0.28]),
        (59, [0.32, 0.27, 0.25, 0.25, 0.24, 0.24, 0.24, 0.24, 0.23, 0.23, 0.23, 0.23, 0.23, 0.23, 0.23]),
        (58, [0.29, 0.24, 0.23, 0.22, 0.21, 0.21, 0.21, 0.21, 0.21, 0.21, 0.20, 0.20, 0.20, 0.20, 0.20]),
    ];

    /// <summary>A cell of one n agrees when rounded; one of a group lies between the Q of its first and its last n, to half a digit.</summary>
    [Fact]
    public void Every_cell_of_the_table_follows_from_the_formula()
    {
        var seen = 0;
        foreach (var (percent, printed) in Table)
        {
            for (var i = 0; i < printed.Length; i++, seen++)
            {
                var (high, low) = (QualityLevel.Index(percent / 100.0, Groups[i].First)!.Value, QualityLevel.Index(percent / 100.0, Groups[i].Last)!.Value);
                Assert.True(printed[i] >= low - 0.0051 && printed[i] <= high + 0.0051, FormattableString.Invariant($"P {percent}, n {Groups[i].First}: {low} to {high}, printed {printed[i]}"));
            }
        }

        Assert.Equal(11 * 15, seen);
    }

    /// <summary>Derived: the closed forms of the distribution, P = 50 + (100/π) arcsin(Q √3 / 2) for n = 3 and P = 50 + 100 Q / 3 for n = 4.</summary>
    [Fact]
    public void The_closed_forms_of_three_and_four_agree()
    {
        for (var q = -1.1; q <= 1.1; q += 0.05)
        {
            Assert.Equal(0.5 + (Math.Asin(q * Math.Sqrt(3) / 2) / Math.PI), QualityLevel.Within(q, 3)!.Value, 1e-10);
            Assert.Equal(0.5 + (q / 3), QualityLevel.Within(q, 4)!.Value, 1e-10);
        }
    }

    // Derived: regularised incomplete beta function, with the closed form of n = 4 in its row; all is inside from Q = (n − 1)/√n on.
    [Theory]
    [InlineData(3, 56.9466, 64.2549, 72.5030, 83.3333, 100.0, 100.0, 100.0)]
    [InlineData(4, 58.3333, 66.6667, 75.0000, 83.3333, 91.6667, 100.0, 100.0)]
    [InlineData(5, 58.8680, 67.5596, 75.8871, 83.6362, 90.5381, 96.2012, 100.0)]
    [InlineData(7, 59.3007, 68.2633, 76.5626, 83.8995, 90.0165, 94.7175, 99.5686)]
    [InlineData(10, 59.5338, 68.6331, 76.9033, 84.0271, 89.7947, 94.1253, 98.8288)]
    [InlineData(15, 59.6738, 68.8504, 77.0954, 84.0893, 89.6614, 93.7981, 98.3802)]
    [InlineData(20, 59.7324, 68.9400, 77.1718, 84.1098, 89.6014, 93.6613, 98.1909)]
    [InlineData(50, 59.8215, 69.0740, 77.2815, 84.1307, 89.4999, 93.4461, 97.8958)]
    public void Values_of_the_formula(int n, params double[] expected)
    {
        double[] indices = [0.25, 0.50, 0.75, 1.00, 1.25, 1.50, 2.00];
        for (var i = 0; i < indices.Length; i++)
        {
            Assert.Equal(expected[i], 100 * QualityLevel.Within(indices[i], n)!.Value, 5e-5);
            Assert.Equal(100 - expected[i], 100 * QualityLevel.Within(-indices[i], n)!.Value, 5e-5);
        }
    }

    // Source: Florida Department of Transportation, Table 334-8, last rows: Q 2.00 gives 99.97 for n 6 and 100.00 for n 3 to 5 (read).
    [Theory]
    [InlineData(6, 99.97)]
    [InlineData(5, 100.00)]
    [InlineData(3, 100.00)]
    public void The_last_rows_of_a_table_by_Q_agree(int n, double printed) => Assert.Equal(printed, Math.Round(100 * QualityLevel.Within(2.00, n)!.Value, 2));

    // Source: an eastern region's slides on section 110 of FAA AC 150/5370-10 (recalled): 96.0, 97.0, 99.0, 100.0 against 96.3; x 98.0, Sn 1.8, QL 0.9444, PL 82 by the next higher row.
    [Fact]
    public void The_next_higher_row_of_a_table_is_not_the_formula()
    {
        double[] densities = [96.0, 97.0, 99.0, 100.0];
        var (mean, deviation) = (QualityLevel.Mean(densities), Decimals.Round(QualityLevel.Deviation(densities), 1, HalfRule.HalfEven));
        Assert.Equal((98.0, 1.8), (mean, deviation));
        var index = Decimals.Round((mean - 96.3) / deviation, 4, HalfRule.HalfEven);
        Assert.Equal(0.9444, index);
        Assert.Equal(82, QualityLevel.ByTable(index, 4, 4, interpolated: false));
        // Derived: 50 + 100 · 0.9444 / 3; ordinary rounding would give 81.
        Assert.Equal(81.48, 100 * QualityLevel.Within(index, 4)!.Value, 5e-3);
        Assert.Equal(81.48, QualityLevel.ByTable(index, 4, 4, interpolated: true)!.Value, 5e-3);
    }

    // Source: FAA AC 150/5370-10, section 110, examples (recalled): densities QL about 1.435, PL 98; voids PL 97, PU 93, PWL 90 by the table, 88.98 by the formula (derived).
    [Fact]
    public void Voids_by_table_and_by_formula_lie_on_both_sides_of_full_pay()
    {
        double[] voids = [5.00, 3.74, 2.30, 3.25];
        var (mean, deviation) = (QualityLevel.Mean(voids), QualityLevel.Deviation(voids));
        var (lower, upper) = ((mean - 2) / deviation, (5 - mean) / deviation);
        Assert.Equal((1.39922, 1.27019), (Math.Round(lower, 5), Math.Round(upper, 5)));
        Assert.Equal(90, QualityLevel.ByTable(lower, 4, 4, interpolated: false) + QualityLevel.ByTable(upper, 4, 4, interpolated: false) - 100);
        Assert.Equal(88.98, 100 * (QualityLevel.Within(lower, 4)!.Value + QualityLevel.Within(upper, 4)!.Value - 1), 5e-3);
        double[] densities = [96.60, 97.55, 99.30, 98.35];
        var index = (QualityLevel.Mean(densities) - 96.3) / QualityLevel.Deviation(densities);
        Assert.Equal(1.43523, index, 5e-6);
        Assert.Equal(98, QualityLevel.ByTable(index, 4, 4, interpolated: false));
    }

    // Source: the same slides (recalled): 2, 4, 6, 8 have x 5 and Sn 2.58; a dropped 5 goes to the even digit, 4.65 to 4.6 and 4.75 to 4.8.
    [Fact]
    public void Digits_are_dropped_in_decimal()
    {
        Assert.Equal((5, 2.58), (QualityLevel.Mean([2, 4, 6, 8]), Math.Round(QualityLevel.Deviation([2, 4, 6, 8]), 2)));
        Assert.Equal((4.6, 4.8), (Decimals.Round(4.65, 1, HalfRule.HalfEven), Decimals.Round(4.75, 1, HalfRule.HalfEven)));
        Assert.Equal((4.7, 4.8), (Decimals.Round(4.65, 1, HalfRule.HalfUp), Decimals.Round(4.75, 1, HalfRule.HalfUp)));
    }

    // By hand: the sums of each set, and the incomplete beta function for the last figure (derived).
    [Fact]
    public void Lots_by_hand()
    {
        double[] thickness = [41.2, 39.8, 40.5, 38.9, 42.0, 40.1, 39.4, 40.8];
        Assert.Equal((40.3375, 1.002764), (QualityLevel.Mean(thickness), Math.Round(QualityLevel.Deviation(thickness), 6)));
        Assert.Equal(99.977, 100 * QualityLevel.Within((40.3375 - 38) / QualityLevel.Deviation(thickness), 8)!.Value, 5e-4);
        // Derived: t(0.95; 7)/√8 = 0.670.
        Assert.Equal(39.6658, QualityLevel.LowerMean(40.3375, QualityLevel.Deviation(thickness), 8, 0.95)!.Value, 5e-5);
        double[] density = [92.1, 93.4, 94.0, 92.8, 93.2];
        Assert.Equal(97.230, 100 * QualityLevel.Within((93.1 - 92.0) / QualityLevel.Deviation(density), 5)!.Value, 5e-4);
        Assert.Equal(100, 100 * QualityLevel.Within((93.1 - 91.5) / QualityLevel.Deviation(density), 5)!.Value);
        double[] low = [91.2, 92.6, 90.8, 93.1, 91.9, 92.4, 91.0];
        Assert.Equal(43.959, 100 * QualityLevel.Within((QualityLevel.Mean(low) - 92.0) / QualityLevel.Deviation(low), 7)!.Value, 5e-4);
    }

    // Derived: t quantiles over √n at 95 % and 99 %.
    [Theory]
    [InlineData(3, 1.686, 4.021)]
    [InlineData(4, 1.177, 2.270)]
    [InlineData(5, 0.953, 1.676)]
    [InlineData(7, 0.734, 1.188)]
    [InlineData(10, 0.580, 0.892)]
    [InlineData(20, 0.387, 0.568)]
    [InlineData(30, 0.310, 0.450)]
    public void Coefficients_of_the_lower_end(int n, double at95, double at99)
    {
        Assert.Equal(at95, -QualityLevel.LowerMean(0, 1, n, 0.95)!.Value, 5.1e-4);
        Assert.Equal(at99, -QualityLevel.LowerMean(0, 1, n, 0.99)!.Value, 5.1e-4);
    }

    [Fact]
    public void Fewer_than_three_results_have_no_quality_level()
    {
        Assert.Null(QualityLevel.Within(1, 2));
        Assert.Null(QualityLevel.ByTable(1, 2, 2, interpolated: false));
        Assert.True(double.IsNaN(QualityLevel.Deviation([1])));
    }

    /// <summary>With the spread unchanged a lower mean never raises the percent above a lower limit; with a free spread it can, and no test says otherwise.</summary>
    [Fact]
    public void Less_density_at_the_same_spread_never_raises_the_percent()
    {
        var random = new Random(20275);
        for (var trial = 0; trial < 300; trial++)
        {
            var (n, mean, spread, less) = (random.Next(3, 30), 90 + (6 * random.NextDouble()), 0.2 + random.NextDouble(), random.NextDouble());
            Assert.True(QualityLevel.Within((mean - less - 92) / spread, n) <= QualityLevel.Within((mean - 92) / spread, n));
        }
    }

    // Derived: with 91, 93 and one more against 92, a result of 99 widens the spread and gives a lower percent than one of 94.
    [Fact]
    public void A_very_good_result_can_lower_the_percent()
    {
        double Percent(double last)
        {
            double[] lot = [91, 93, last];
            return QualityLevel.Within((QualityLevel.Mean(lot) - 90) / QualityLevel.Deviation(lot), 3)!.Value;
        }

        Assert.True(Percent(99) < Percent(94));
    }
}
