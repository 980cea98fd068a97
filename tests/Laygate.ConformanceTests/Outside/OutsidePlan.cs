using System.Globalization;
using System.Text;

namespace Laygate.ConformanceTests.Outside;

/// <summary>An hour of weather, or the envelope when it stands alone: hour of the day, air, base, wind at the mat, sun, and temperatures at depth (m, °C).</summary>
internal sealed record Hour(double At, double Air, double Base, double Wind, double Sun = 0)
{
    public (double Depth, double Celsius)[] Deep { get; init; } = [];

    /// <summary>Cloud in eighths and dew point in °C; without them the sky lies below the air by the assumed depression.</summary>
    public (int Cloud, double Dew)? Sky { get; init; }
}

/// <summary>A course of a plan: thickness in mm, laying and cessation temperature in °C, density in kg/m³.</summary>
internal sealed record Laid(double Thickness, double Celsius, double Cessation, double Density = 2350, string Kind = "asphalt-concrete");

/// <summary>A plan that is both written out for the check and put to the reference.</summary>
/// <param name="Name">What is special about it.</param>
/// <param name="Upper">The uppermost course, or the only one.</param>
/// <param name="Hours">Hours, or one entry as an envelope.</param>
internal sealed record OutsidePlan(string Name, Laid Upper, Hour[] Hours)
{
    /// <summary>The lower course of a pair, and the minutes after which the upper follows.</summary>
    public (Laid Course, double Delay)? Lower { get; init; }

    /// <summary>Layers below: material and thickness in mm; the last goes on.</summary>
    public (string Material, double Thickness)[] Below { get; init; } = [("asphalt", 120), ("crushed-rock-moist", 300)];

    /// <summary>Start and end of laying in hours of the day; the end may be past 24.</summary>
    public (double Start, double End) Shift { get; init; } = (8, 16);

    /// <summary>Degrees north where the day before is to be worked out; null leaves the place out.</summary>
    public double? Latitude { get; init; }

    /// <summary>Core temperature in °C below which it is opened, eight hours after the last metre; null where nothing is said of opening.</summary>
    public double? OpenedBelow { get; init; }

    public bool IsHourly => Hours.Length > 1;

    public override string ToString() => Name;

    public string Yaml()
    {
        var text = new StringBuilder();
        text.AppendLine("format: 1");
        text.AppendLine("plan: { id: outside, stage: submission, title: compared with a reference }");
        text.AppendLine(Latitude is { } latitude ? Text($"location: {{ jurisdiction: none, latitude: {latitude} °, longitude: 0 ° }}") : "location: { jurisdiction: none }");
        if (IsHourly)
        {
            text.AppendLine(Text($"shift: {{ date: 2027-06-21, start: {Clock(Shift.Start)}, end: {Clock(Shift.End)}, zone: \"+00:00\" }}"));
        }

        text.AppendLine("weather:").AppendLine("  wind_at_mat: 100 %");
        Weather(text);
        text.AppendLine("existing:").AppendLine("  surface: old-asphalt").AppendLine("  condition: dry").AppendLine("  layers:");
        for (var i = 0; i < Below.Length; i++)
        {
            text.AppendLine(Text($"    - {{ id: l{i}, material: {Below[i].Material}, thickness: {Below[i].Thickness} mm }}"));
        }

        text.AppendLine("mixes:");
        Mix(text, "m-up", Upper);
        if (Lower is { } pair)
        {
            Mix(text, "m-low", pair.Course);
        }

        text.AppendLine("courses:");
        if (Lower is { } lower)
        {
            text.AppendLine(Text($"  - {{ id: low, kind: binder, mix: m-low, thickness: {lower.Course.Thickness} mm, laid: separately, laying_temperature: {{ expected: {lower.Course.Celsius} °C, place: course-mean }} }}"));
            text.AppendLine(Text($"  - {{ id: up, kind: surface, mix: m-up, thickness: {Upper.Thickness} mm, laid: hot-on-hot, on: low, delay: {lower.Delay} min, laying_temperature: {{ expected: {Upper.Celsius} °C, place: course-mean }} }}"));
        }
        else
        {
            text.AppendLine(Text($"  - {{ id: up, kind: surface, mix: m-up, thickness: {Upper.Thickness} mm, laid: separately, laying_temperature: {{ expected: {Upper.Celsius} °C, place: course-mean }} }}"));
        }

        text.AppendLine("rolling:").AppendLine("  phases:").AppendLine("    - { id: main, kind: main, passes: 4, zone_from: 5 m, zone_to: 20 m, done_within: 8 min }");
        if (OpenedBelow is { } core)
        {
            text.AppendLine(Text($"opening: {{ after: 8 h, below: {{ value: {core} °C, place: core }} }}"));
        }

        return text.ToString();
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static string Clock(double hour) => Text($"{(int)hour % 24:00}:{(int)Math.Round(hour * 60) % 60:00}");

    private static void Mix(StringBuilder text, string id, Laid course) => text.AppendLine(Text(
        $"  - {{ id: {id}, kind: {course.Kind}, density: {{ compacted: {course.Density} kg/m3, reference: laboratory, degree: 98 % }}, cessation: {{ value: {course.Cessation} °C, place: course-mean }} }}"));

    private void Weather(StringBuilder text)
    {
        if (!IsHourly)
        {
            var only = Hours[0];
            text.AppendLine("  envelope:").AppendLine(Text($"    air_lowest: {only.Air} °C")).AppendLine(Text($"    base_lowest: {only.Base} °C")).AppendLine(Text($"    wind_highest: {only.Wind} m/s"));
            if (only.Deep.Length > 0)
            {
                text.AppendLine(Text($"    base_at_depth: {Depths(only)}"));
            }

            return;
        }

        text.AppendLine("  hours:");
        foreach (var hour in Hours)
        {
            var date = hour.At >= 24 ? "2027-06-22" : "2027-06-21";
            var sky = hour.Sky is { } known ? Text($", cloud_eighths: {known.Cloud}, dew_point: {known.Dew} °C") : string.Empty;
            var deep = hour.Deep.Length > 0 ? $", base_at_depth: {Depths(hour)}" : string.Empty;
            text.AppendLine(Text($"    - {{ at: {date}T{Clock(hour.At)}, air: {hour.Air} °C, base: {hour.Base} °C, wind: {hour.Wind} m/s, sun: {hour.Sun} W/m2{sky}{deep} }}"));
        }
    }

    private static string Depths(Hour hour) => $"[{string.Join(", ", hour.Deep.Select(point => Text($"{{ depth: {point.Depth * 1000} mm, temperature: {point.Celsius} °C }}")))}]";
}
