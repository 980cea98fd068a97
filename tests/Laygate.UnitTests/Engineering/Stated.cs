using Laygate.Model.Measures;
using Laygate.Model.Plans;
using UnitsNet;

namespace Laygate.UnitTests.Engineering;

/// <summary>Stated measures for plans in tests.</summary>
internal static class Stated
{
    public static Measure<T> M<T>(double number, string unit)
        where T : struct => new(number, UnitTable.Find(unit)!);

    public static Measure<Length> Mm(double number) => M<Length>(number, "mm");

    public static Measure<Length> Metres(double number) => M<Length>(number, "m");

    public static Measure<Duration> Min(double number) => M<Duration>(number, "min");

    public static Measure<Temperature> C(double number) => M<Temperature>(number, "°C");

    public static Measure<Mass> T(double number) => M<Mass>(number, "t");

    public static Measure<MassFlow> TPerH(double number) => M<MassFlow>(number, "t/h");

    public static TemperatureBand Band(double expected, Place place = Place.CourseMean) => new() { Expected = C(expected), Place = place };

    public static WidthAt Width(double metres, double at) => new() { At = Metres(at), Value = Metres(metres) };
}
