using Laygate.Engineering.Supply;
using UnitsNet;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>
/// Two mixes through one feeder: cases C5-1 and C5-2 of the production sheet with the corrected figures of the practice
/// sheet, M1 (derived there): 25 t loads, 600 t/h, 1 min each way, 1 min exchange.
/// </summary>
public class TwoMixFeedingTests
{
    private static readonly FeederTiming Feeder = new(MassFlow.FromTonnesPerHour(600), Duration.FromMinutes(1), Duration.FromMinutes(1));

    [Theory]
    [InlineData(264.6, 64.8, 0.855, 38.2)]
    [InlineData(330.75, 81.0, 1.069, 41.5)]
    public void Corrected_cases(double lower, double upper, double occupation, double buffer)
    {
        var b = new FedMix(MassFlow.FromTonnesPerHour(lower), Mass.FromTonnes(25));
        var s = new FedMix(MassFlow.FromTonnesPerHour(upper), Mass.FromTonnes(25));
        Assert.Equal(occupation, TwoMixFeeding.Occupation(b, s, Feeder)!.Value, 0.0006);
        Assert.Equal(buffer, TwoMixFeeding.LowerBufferNeeded(b, s, Feeder, Mass.Zero)!.Value.Tonnes, 0.06);
    }

    [Fact]
    public void Without_exchange_and_load_the_first_relation_of_the_sheet_remains()
    {
        // C5-1 as first printed in the production sheet: occupation 0.635, 19.85 t of the lower mix used while the feeder is away 4.5 min.
        var b = new FedMix(MassFlow.FromTonnesPerHour(264.6), Mass.FromTonnes(25));
        var s = new FedMix(MassFlow.FromTonnesPerHour(64.8), Mass.FromTonnes(25));
        var still = Feeder with { Exchange = Duration.Zero };
        Assert.Equal(0.635, TwoMixFeeding.Occupation(b, s, still)!.Value, 0.0005);
        var away = TwoMixFeeding.LowerBufferNeeded(b, s, still, Mass.Zero)!.Value.Tonnes - 25 + (264.6 * 2.5 / 60);
        Assert.Equal(19.85, away, 0.01);
    }

    [Fact]
    public void Run_per_load_and_intervals_of_case_one()
    {
        // C5-1: 7.5 m, 3.0 m/min, 80 + 20 mm: every 5.67 and 23.15 min (own figures of the sheet).
        Assert.Equal(5.67, Fleet.Interval(Mass.FromTonnes(25), MassFlow.FromTonnesPerHour(264.6))!.Value.Minutes, 0.005);
        Assert.Equal(23.15, Fleet.Interval(Mass.FromTonnes(25), MassFlow.FromTonnesPerHour(64.8))!.Value.Minutes, 0.005);
    }

    [Fact]
    public void Unusable_inputs_give_no_result()
    {
        var mix = new FedMix(MassFlow.FromTonnesPerHour(100), Mass.FromTonnes(20));
        Assert.Null(TwoMixFeeding.Occupation(mix, Feeder with { Rate = MassFlow.Zero }));
        Assert.Null(TwoMixFeeding.CallHighest(mix, Feeder, Mass.Zero));
    }
}
