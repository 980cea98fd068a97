using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Smallest and largest thickness of a course, stations counted.</summary>
internal static class ThicknessExtremes
{
    /// <summary>Smallest thickness at any point: stated, else nominal minus tolerance.</summary>
    public static Answer Lowest(QuantityContext context, Element element) =>
        Extreme(context, element, "course.thickness_lowest", "thickness_lowest", course => course.ThicknessLowest, station => station.Lowest, -1);

    /// <summary>Largest thickness at any point: stated, else nominal plus tolerance.</summary>
    public static Answer Highest(QuantityContext context, Element element) =>
        Extreme(context, element, "course.thickness_highest", "thickness_highest", course => course.ThicknessHighest, station => station.Highest, 1);

    /// <summary>Nominal minus tolerance minus the stated smallest thickness; the smallest over the stations.</summary>
    public static Answer Margin(QuantityContext context, Element element)
    {
        var course = (Course)element.Subject!;
        var calculation = new Calculation(context);
        var nominal = calculation.Stated("t", course.Thickness, element.Address, "thickness");
        var tolerance = calculation.Stated("Δ", course.Tolerance, element.Address, "tolerance");
        var lowest = calculation.Stated("tmin", course.ThicknessLowest, element.Address, "thickness_lowest");
        var margin = nominal - tolerance - lowest;
        foreach (var station in Stations(context, course))
        {
            margin = Math.Min(margin, (station.Nominal?.Si ?? nominal) - tolerance - (station.Lowest?.Si ?? lowest));
        }

        return calculation.Result("course.tolerance_margin", "m", "m = t − Δ − tmin", margin);
    }

    private static Answer Extreme(
        QuantityContext context,
        Element element,
        string quantity,
        string key,
        Func<Course, Measure<Length>?> read,
        Func<ThicknessAt, Measure<Length>?> readStation,
        int sign)
    {
        var course = (Course)element.Subject!;
        var stations = Stations(context, course).ToList();
        var input = new InputReference(element.Address, key);
        if (read(course) is { } stated && stations.TrueForAll(station => Lies(stated.Si, AtStation(station, course, readStation, sign), sign)))
        {
            return Answers.Measure(stated, input);
        }

        var calculation = new Calculation(context);
        var value = read(course) is { } own ? calculation.Stated("t", own, element.Address, key) : FromTolerance(calculation, course, element, key, sign);
        foreach (var station in stations)
        {
            var at = AtStation(station, course, readStation, sign);
            value = at is { } number && Lies(number, value, sign) ? number : value;
        }

        var expression = sign < 0 ? "tmin = least of t − Δ and the stations" : "tmax = largest of t + Δ and the stations";
        return calculation.Result(quantity, sign < 0 ? "tmin" : "tmax", expression, value) with { Unit = course.Thickness.Unit, Input = input };
    }

    private static double FromTolerance(Calculation calculation, Course course, Element element, string key, int sign)
    {
        if (course.Tolerance is not { } tolerance)
        {
            calculation.Miss(element.Address, key);
            return double.NaN;
        }

        return calculation.Stated("t", course.Thickness, element.Address, "thickness")
            + (sign * calculation.Stated("Δ", tolerance, element.Address, "tolerance"));
    }

    /// <summary>The station's own extreme; else its nominal thickness with the tolerance.</summary>
    private static double? AtStation(ThicknessAt station, Course course, Func<ThicknessAt, Measure<Length>?> read, int sign) =>
        read(station)?.Si ?? (station.Nominal?.Si + (sign * (course.Tolerance?.Si ?? 0)));

    /// <summary>Whether a is at least as extreme as b, or there is no b.</summary>
    private static bool Lies(double a, double? b, int sign) => b is not { } other || (sign < 0 ? a <= other : a >= other);

    private static IEnumerable<ThicknessAt> Stations(QuantityContext context, Course course) => context.Plan.Runs
        .SelectMany(run => run.Thickness)
        .Where(station => string.Equals(station.Course, course.Id, StringComparison.Ordinal));
}
