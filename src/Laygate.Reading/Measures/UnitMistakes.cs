using System.Collections.Frozen;
using System.Globalization;
using Laygate.Model.Measures;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Measures;

/// <summary>Words what is wrong with the unit of a measure whose number is right.</summary>
internal static class UnitMistakes
{
    private const string Differs = "is refused, because it means 1000 kg to some and 2000 lb or 2240 lb to others";

    // Words and signs that people write for a unit; the table itself knows one spelling of each.
    private static readonly FrozenDictionary<string, string> OtherNames = new (string Spelling, string[] Others)[]
    {
        ("mm", ["millimetre", "millimetres", "millimeter", "millimeters"]),
        ("cm", ["centimetre", "centimetres", "centimeter", "centimeters"]),
        ("m", ["metre", "metres", "meter", "meters"]),
        ("in", ["inch", "inches", "\"", "″", "in."]),
        ("ft", ["foot", "feet", "'", "′", "ft."]),
        ("yd", ["yard", "yards"]),
        ("mi", ["mile", "miles"]),
        ("m2", ["sqm", "sq m", "m^2"]),
        ("ft2", ["sq ft", "sf", "ft^2"]),
        ("yd2", ["sq yd", "sy", "yd^2"]),
        ("°C", ["degC", "deg C", "celsius", "º C", "ºC", "° C", "℃"]),
        ("°F", ["degF", "deg F", "fahrenheit", "ºF", "° F", "℉"]),
        ("K", ["kelvin"]),
        ("s", ["sec", "secs", "second", "seconds"]),
        ("min", ["mins", "minute", "minutes"]),
        ("h", ["hr", "hrs", "hour", "hours"]),
        ("d", ["day", "days"]),
        ("km/h", ["kph", "kmh"]),
        ("m/s", ["mps"]),
        ("ft/min", ["fpm"]),
        ("mph", ["mi/h"]),
        ("kn", ["knot", "knots", "kt"]),
        ("g", ["gram", "grams"]),
        ("kg", ["kilogram", "kilograms"]),
        ("lb", ["lbs", "pound", "pounds"]),
        ("t", ["tonne", "tonnes", "metric ton", "metric tons"]),
        ("short ton", ["short tons"]),
        ("lb/ft3", ["pcf"]),
        ("lb/yd2", ["lb/sy"]),
        ("gal/yd2", ["gsy", "gal/sy"]),
        ("L/m2", ["l/m2", "l/m²"]),
        ("%", ["percent"]),
        ("Hz", ["hertz"]),
        ("V", ["volt", "volts"]),
        ("lx", ["lux"]),
        ("deg", ["degree", "degrees"]),
    }.SelectMany(unit => unit.Others.Select(other => KeyValuePair.Create(other, unit.Spelling))).ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    /// <summary>The mistake in a unit.</summary>
    public static MeasureProblem Explain(string number, string unit, Dimension dimension) =>
        UnitTable.Find(unit) is { } known
            ? OtherDimension(number, known, dimension)
            : Ton(number, unit, dimension) ?? LetterCase(number, unit, dimension) ?? OtherName(number, unit, dimension) ?? Unknown(number, unit, dimension);

    /// <summary>The units of a dimension as a clause: "the units are `mm`, `cm` and `m`".</summary>
    public static string Known(Dimension dimension)
    {
        var spellings = UnitTable.Of(dimension).Select(unit => $"`{unit.Spelling}`").ToList();
        return spellings.Count == 1
            ? $"the unit is {spellings[0]}"
            : $"the units are {string.Join(", ", spellings.SkipLast(1))} and {spellings[^1]}";
    }

    private static MeasureProblem OtherDimension(string number, Unit unit, Dimension dimension)
    {
        var text = $"{number} {unit.Spelling}";
        return (unit.Dimension, dimension) switch
        {
            (Dimension.Temperature, Dimension.TemperatureDifference) => new MeasureProblem(
                $"`{text}` is a temperature; a difference of two temperatures is written in K.", $"Write `{Difference(number, unit)} K`, if a difference of {text} is meant."),
            (Dimension.TemperatureDifference, Dimension.Temperature) => new MeasureProblem(
                $"`{text}` is a temperature difference; a temperature is needed here.", "Write it in °C or °F."),
            _ => new MeasureProblem(
                $"`{text}` is {MeasureDimensions.Noun(unit.Dimension)}; {MeasureDimensions.Noun(dimension)} is needed here.", $"Write for example `{MeasureDimensions.Example(dimension)}`; {Known(dimension)}."),
        };
    }

    private static string Difference(string number, Unit unit) =>
        (double.Parse(number, NumberStyles.Float, CultureInfo.InvariantCulture) * unit.Factor).ToString("0.##", CultureInfo.InvariantCulture);

    private static MeasureProblem? Ton(string number, string unit, Dimension dimension)
    {
        var parts = unit.Split('/', 2);
        if (parts[0].ToUpperInvariant() is not ("TON" or "TONS") && unit.ToUpperInvariant() is not "TPH")
        {
            return null;
        }

        var per = dimension == Dimension.MassFlow ? "/h" : string.Empty;
        return new MeasureProblem($"`{unit}` {Differs}.", $"Write `{number} t{per}` for tonnes of 1000 kg or `{number} short ton{per}` for tons of 2000 lb.");
    }

    private static MeasureProblem? LetterCase(string number, string unit, Dimension dimension)
    {
        var plain = unit.Replace('²', '2').Replace('³', '3');
        var meant = UnitTable.All.Where(known => string.Equals(known.Spelling, plain, StringComparison.OrdinalIgnoreCase)).OrderBy(known => known.Dimension == dimension ? 0 : 1).FirstOrDefault();
        return meant is null
            ? null
            : new MeasureProblem($"`{unit}` is not a unit: the letters must be `{meant.Spelling}`.", meant.Dimension == dimension ? $"Write `{number} {meant.Spelling}`." : Advice(dimension));
    }

    private static MeasureProblem? OtherName(string number, string unit, Dimension dimension) =>
        OtherNames.TryGetValue(unit, out var spelling)
            ? new MeasureProblem($"The unit `{unit}` is written `{spelling}`.", UnitTable.Find(spelling)!.Dimension == dimension ? $"Write `{number} {spelling}`." : Advice(dimension))
            : null;

    private static MeasureProblem Unknown(string number, string unit, Dimension dimension)
    {
        if (unit.EndsWith(' '))
        {
            return new MeasureProblem("A blank stands behind the unit.", $"Write `{number} {unit.Trim()}`.");
        }

        var near = NearestNames.Of(unit, UnitTable.Of(dimension).Select(known => known.Spelling));
        var hint = near.Count > 0 ? $"Did you mean {string.Join(" or ", near.Select(name => $"`{number} {name}`"))}?" : Advice(dimension);
        return new MeasureProblem($"{TokenNames.Quote(unit)} is not a unit that is known.", hint);
    }

    private static string Advice(Dimension dimension) =>
        $"For {MeasureDimensions.Noun(dimension)} {Known(dimension)}.";
}
