using Laygate.Engineering.Supply;
using UnitsNet;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>
/// Two mixes through one feeder: 25 t loads, 600 t/h, 1 min each way, 1 min exchange. Source: derived by hand from the time balance between two upper loads, P/Rs:
/// one upper and Rb/Rs lower loads of (exchange + P/Q) each, two changes; while the feeder serves the upper mix the lower buffer feeds the paver.
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
    public void Without_exchange_and_load_a_simpler_relation_remains()
    {
        // By hand: (5.083 · 2.5 + 2)/23.15 = 0.635; 4.41 t/min · 4.5 min = 19.85 t of the lower mix used while the feeder is away.
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
        // By hand: 25 t/264.6 t/h and 25 t/64.8 t/h.
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
