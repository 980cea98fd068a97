using Laygate.Engineering.Supply.Simulation;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>Shift models for tests.</summary>
internal static class Shifts
{
    public const double Tonne = 1000;
    public const double Minute = 60;

    /// <summary>
    /// Scenario A: two courses hot-on-hot, 8 m, 85 and 25 mm, 2.6 m/min, 15 trucks of 25 t and 9 of 16 t,
    /// feeder 900 t/h, exchange 1 min, changeover 0.75 min, buffers 50 and 28 t.
    /// </summary>
    public static ShiftModel A(int big = 15, int small = 9, double lowerBuffer = 50, double call = 12, double haulSpread = 0.15, double serviceSpread = 0) => new()
    {
        Duration = 410 * Minute,
        Speed = 2.6 / Minute,
        Stretches = [new ShiftStretch(1050, [8 * 0.085 * 2460, 8 * 0.025 * 2380])],
        Buffers =
        [
            new ShiftBuffer("lower", "binder", lowerBuffer * Tonne, 8 * Tonne, (8 + (0.25 * (lowerBuffer - 8))) * Tonne, null),
            new ShiftBuffer("upper", "surface", 28 * Tonne, 5 * Tonne, 10.75 * Tonne, call * Tonne),
        ],
        Lines =
        [
            new ShiftLine("a", "binder", 270 / 3.6, 300 * Tonne, 400 * Tonne), new ShiftLine("b", "surface", 90 / 3.6, 80 * Tonne, 120 * Tonne),
        ],
        Trucks =
        [
            Group("big", 0, big, 25, 5, 27, 24, haulSpread, serviceSpread, 5), Group("small", 1, small, 16, 4, 38, 35, haulSpread, serviceSpread, 2),
        ],
        Unloading = new ShiftUnloading(true, 900 / 3.6, TimeSpread.Lognormal(Minute, serviceSpread), 0.75 * Minute, InParts: false),
    };

    /// <summary>One course of 40 mm over 3.70 m at 4 m/min, straight from truck to paver: 85.2 t/h.</summary>
    public static ShiftModel Single(int trucks = 8, double haulSpread = 0.15, double serviceSpread = 0) => new()
    {
        Duration = 360 * Minute,
        Speed = 4.0 / Minute,
        Stretches = [new ShiftStretch(1400, [3.7 * 0.040 * 2400])],
        Buffers = [new ShiftBuffer("surface", "mix", 12 * Tonne, 2 * Tonne, 4.5 * Tonne, null)],
        Lines = [new ShiftLine("p", "mix", 110 / 3.6, 0, 0)],
        Trucks = [Group("t", 0, trucks, 18, 6, 30, 26, haulSpread, serviceSpread, 2)],
        Unloading = new ShiftUnloading(false, 600 / 3.6, TimeSpread.Lognormal(1.5 * Minute, serviceSpread), 0, InParts: false),
    };

    public static ShiftResult Run(ShiftModel model, int replications = 500, ulong seed = 1)
    {
        Assert.Equal(ShiftProblem.None, ShiftSimulator.Problem(model));
        var result = ShiftSimulator.Run(model, seed, replications);
        Assert.NotNull(result);
        return result;
    }

    private static ShiftTrucks Group(
        string id, int line, int count, double payload, double loading, double outward, double back, double haulSpread, double serviceSpread, int before) => new(
        id,
        line,
        count,
        payload * Tonne,
        TimeSpread.Lognormal(loading * Minute, serviceSpread),
        TimeSpread.Lognormal(outward * Minute, haulSpread).Plus(4 * Minute),
        TimeSpread.Lognormal(back * Minute, haulSpread).Plus(5 * Minute),
        before);
}
