using Laygate.Engineering.Supply.Queueing;
using Laygate.Model.Measures;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>Closed forms of queueing theory against a published table and values worked out apart from the program.</summary>
public class QueueingTests
{
    [Theory]
    [InlineData(0.012, 1, 0.048, 0.999)] // Source: limited-population table of an operations-management text after Peck and Hazelwood, population 5 (read), to three decimals
    [InlineData(0.050, 1, 0.198, 0.989)]
    [InlineData(0.060, 2, 0.020, 0.999)]
    [InlineData(0.070, 1, 0.275, 0.977)]
    [InlineData(0.080, 2, 0.035, 0.998)]
    [InlineData(0.090, 1, 0.350, 0.960)]
    public void The_published_finite_queue_table_comes_out_to_three_decimals(double factor, int servers, double delay, double efficiency)
    {
        var row = FiniteSource.TableRow(factor, 5, servers)!.Value;
        Assert.Equal(delay, Math.Round(row.Delay, 3), 1e-9);
        Assert.Equal(efficiency, Math.Round(row.Efficiency, 3), 1e-9);
    }

    [Theory]
    [InlineData(2, .05, .0950, null)] // Source: derived: use = 1 - 1/Σ N!/(N - n)! rⁿ, wait in services = N/use - 1/r - 1
    [InlineData(2, .50, .6000, null)]
    [InlineData(4, .05, .1891, .156)]
    [InlineData(4, .20, .6017, .648)]
    [InlineData(6, .10, .5155, .640)] // also a textbook example of machine repair (An Introduction to Management Science, p. 497, inputs read): 6 machines, 20 h between calls, 2 h service
    [InlineData(6, .30, .9282, 2.131)]
    [InlineData(8, .25, .9696, 3.251)]
    [InlineData(10, .15, .9341, 3.038)]
    [InlineData(10, .40, .9998, 6.502)]
    [InlineData(12, .10, .8803, 2.632)]
    [InlineData(12, .20, .9966, 6.041)]
    public void One_server_and_trucks_that_come_back(int trucks, double ratio, double use, double? wait)
    {
        var state = FiniteSource.Of(Si(20, "h"), Si(20 * ratio, "h"), trucks, 1)!.Value;
        Assert.Equal(use, state.ServerUse, 0.00006);
        Assert.Equal(wait ?? state.Wait / (72_000 * ratio), state.Wait / (72_000 * ratio), 0.0006);
        Assert.Equal(trucks, state.AtServers + (state.Throughput * 72_000), 1e-9);
        Assert.Equal(1 - use, state.AllIdle, 0.00006);
    }

    [Theory]
    [InlineData(4, 4.7953, 0.3996, 1.160, 1.889, 50.049)] // Source: derived by mean value analysis (Reiser and Lavenberg, J. ACM 27(2), 1980, recalled), tests/Tools/closed_network.py
    [InlineData(6, 6.7964, 0.5664, 2.198, 3.771, 52.969)]
    [InlineData(9, 9.1201, 0.7600, 4.211, 7.999, 59.210)]
    [InlineData(10, 9.6975, 0.8081, 4.992, 9.880, 61.872)]
    [InlineData(14, 11.1356, 0.9280, 8.357, 20.077, 75.434)]
    public void Plant_paver_and_journeys_between(int trucks, double loads, double use, double atPlant, double atPaver, double cycle)
    {
        var state = ClosedNetwork.MeanValues(trucks, Si(38, "min"), [Si(4, "min"), Si(5, "min")])!.Value;
        Assert.Equal(loads, state.Throughput * 3600, 0.00006);
        Assert.Equal(use, state.Use[1], 0.00006);
        Assert.Equal(atPlant, state.Wait[0] / 60, 0.0006);
        Assert.Equal(atPaver, state.Wait[1] / 60, 0.0006);
        Assert.Equal(cycle, state.Cycle / 60, 0.0006);
    }

    [Theory]
    [InlineData(4, 5.106)] // Source: derived: min(N/47 min, 1/5 min) · 60
    [InlineData(6, 7.660)]
    [InlineData(9, 11.489)]
    [InlineData(10, 12.000)]
    [InlineData(14, 12.000)]
    public void Nothing_varies(int trucks, double loads) => Assert.Equal(
        loads, ClosedNetwork.DeterministicBound(trucks, Si(38, "min"), [Si(4, "min"), Si(5, "min")])!.Value * 3600, 0.0006);

    [Fact]
    public void Queue_of_one_server_is_the_closed_network_of_one_station()
    {
        var network = ClosedNetwork.MeanValues(7, Si(40, "min"), [Si(5, "min")])!.Value;
        var queue = FiniteSource.Of(Si(40, "min"), Si(5, "min"), 7, 1)!.Value;
        Assert.Equal(queue.Throughput, network.Throughput, 1e-12);
        Assert.Equal(queue.Wait, network.Wait[0], 1e-6);
    }

    [Fact]
    public void Very_many_customers_stay_finite()
    {
        var state = FiniteSource.Of(1, 50, 10_000, 3)!.Value;
        Assert.Equal(3 / 50.0, state.Throughput, 1e-6);
        Assert.Equal(1, state.ServerUse, 1e-6);
    }

    [Fact]
    public void Unusable_inputs_give_no_result()
    {
        var minute = Si(1, "min");
        Assert.Null(FiniteSource.Of(minute, minute, 0, 1));
        Assert.Null(FiniteSource.Of(minute, minute, 5, 0));
        Assert.Null(FiniteSource.Of(0, minute, 5, 1));
        Assert.Null(FiniteSource.TableRow(1, 5, 1));
        Assert.Null(ClosedNetwork.MeanValues(0, minute, [minute]));
        Assert.Null(ClosedNetwork.MeanValues(3, minute, []));
        Assert.Null(ClosedNetwork.DeterministicBound(3, minute, [0]));
    }
}
