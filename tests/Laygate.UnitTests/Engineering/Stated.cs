using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.UnitTests.Engineering;

/// <summary>Stated measures for plans in tests, and numbers for formulas; the table of units has an outside reference (UnitTableTests).</summary>
internal static class Stated
{
    public static Measure<T> M<T>(double number, string unit)
        where T : IDimension => new(number, UnitTable.Find(unit)!);

    /// <summary>A number in a unit, in SI.</summary>
    public static double Si(double number, string unit) => UnitTable.Find(unit)!.ToSi(number);

    /// <summary>An SI value in a unit.</summary>
    public static double In(this double si, string unit) => UnitTable.Find(unit)!.FromSi(si);

    public static Measure<Length> Mm(double number) => M<Length>(number, "mm");

    public static Measure<Length> Metres(double number) => M<Length>(number, "m");

    public static Measure<Duration> Min(double number) => M<Duration>(number, "min");

    public static Measure<Temperature> C(double number) => M<Temperature>(number, "°C");

    public static Measure<Mass> T(double number) => M<Mass>(number, "t");

    public static Measure<MassFlow> TPerH(double number) => M<MassFlow>(number, "t/h");

    public static TemperatureBand Band(double expected, Place place = Place.CourseMean) => new() { Expected = C(expected), Place = place };

    public static WidthAt Width(double metres, double at) => new() { At = Metres(at), Value = Metres(metres) };
}
