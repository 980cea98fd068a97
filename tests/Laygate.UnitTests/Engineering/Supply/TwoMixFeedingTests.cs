using Laygate.Engineering.Supply;
using Laygate.Model.Measures;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>
/// Two mixes through one feeder: 25 t loads, 600 t/h, 1 min each way, 1 min exchange. Source: derived by hand from the time balance between two upper loads, P/Rs:
/// one upper and Rb/Rs lower loads of (exchange + P/Q) each, two changes; while the feeder serves the upper mix the lower buffer feeds the paver.
/// </summary>
public class TwoMixFeedingTests
{
    private static readonly FeederTiming Feeder = new(Si(600, "t/h"), Si(1, "min"), Si(1, "min"));

    [Theory]
    [InlineData(264.6, 64.8, 0.855, 38.2)]
    [InlineData(330.75, 81.0, 1.069, 41.5)]
    public void Corrected_cases(double lower, double upper, double occupation, double buffer)
    {
        var b = new FedMix(Si(lower, "t/h"), Si(25, "t"));
        var s = new FedMix(Si(upper, "t/h"), Si(25, "t"));
        Assert.Equal(occupation, TwoMixFeeding.Occupation(b, s, Feeder)!.Value, 0.0006);
        Assert.Equal(buffer, TwoMixFeeding.LowerBufferNeeded(b, s, Feeder, 0)!.Value.In("t"), 0.06);
    }

    [Fact]
    public void Without_exchange_and_load_a_simpler_relation_remains()
    {
        // By hand: (5.083 · 2.5 + 2)/23.15 = 0.635; 4.41 t/min · 4.5 min = 19.85 t of the lower mix used while the feeder is away.
        var b = new FedMix(Si(264.6, "t/h"), Si(25, "t"));
        var s = new FedMix(Si(64.8, "t/h"), Si(25, "t"));
        var still = Feeder with { Exchange = 0 };
        Assert.Equal(0.635, TwoMixFeeding.Occupation(b, s, still)!.Value, 0.0005);
        var away = TwoMixFeeding.LowerBufferNeeded(b, s, still, 0)!.Value.In("t") - 25 + (264.6 * 2.5 / 60);
        Assert.Equal(19.85, away, 0.01);
    }

    [Fact]
    public void Run_per_load_and_intervals_of_case_one()
    {
        // By hand: 25 t/264.6 t/h and 25 t/64.8 t/h.
        Assert.Equal(5.67, Fleet.Interval(Si(25, "t"), Si(264.6, "t/h"))!.Value.In("min"), 0.005);
        Assert.Equal(23.15, Fleet.Interval(Si(25, "t"), Si(64.8, "t/h"))!.Value.In("min"), 0.005);
    }

    [Fact]
    public void Unusable_inputs_give_no_result()
    {
        var mix = new FedMix(Si(100, "t/h"), Si(20, "t"));
        Assert.Null(TwoMixFeeding.Occupation(mix, Feeder with { Rate = 0 }));
        Assert.Null(TwoMixFeeding.CallHighest(mix, Feeder, 0));
    }
}
