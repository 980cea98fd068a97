using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.Checking.Verification;

/// <summary>Turns a conduction case into a question to the solver, with the settings that every check uses.</summary>
internal static class ConductionMapper
{
    public static ConductionQuestion Map(CaseFields fields)
    {
        var materials = fields.Group("materials")!;
        var layers = fields.Groups("layers").ToList();
        var problem = new CoolingProblem(
            [.. layers.Select(layer => Layer(layer, materials))], Skin(fields), Bottom(fields), fields.Required("duration", CaseDimension.Duration));
        RefuseTwins(layers, fields.Problems);
        return new ConductionQuestion(problem, fields.Span, [.. layers.Select(layer => (layer.Text("id")!, layer.Span))]);
    }

    private static StackLayer Layer(CaseFields fields, CaseFields materials)
    {
        var layer = new StackLayer(
            fields.Text("id")!,
            fields.Text("role") is "course" ? LayerRole.Course : LayerRole.Existing,
            fields.Required("thickness", CaseDimension.Length),
            Material((ScalarToken)fields["material"]!, materials),
            Initial(fields),
            fields.Number("joins", CaseDimension.Duration) ?? 0)
        {
            ResistanceBelow = fields.Number("resistance_below", CaseDimension.Resistance) ?? 0,
        };
        return fields.Group("water_below") is { } water
            ? WetBase.Lay(layer, 1000 * water.Required("depth", CaseDimension.Length), water.Required("temperature", CaseDimension.Temperature)).Course
            : layer;
    }

    private static LayerMaterial Material(ScalarToken name, CaseFields materials)
    {
        if (materials.Group(name.Text) is { } found)
        {
            var bare = Heat(found, new LayerMaterial(found.Required("conductivity", CaseDimension.Conductivity), found.Required("density", CaseDimension.Density), 1));
            return bare with
            {
                Emissivity = found.Number("emissivity", CaseDimension.Plain) ?? bare.Emissivity,
                Absorptivity = found.Number("absorptivity", CaseDimension.Plain) ?? bare.Absorptivity,
            };
        }

        materials.Problems.Add(Unknown("material", name, materials.Map.Entries.Select(entry => entry.Key.Text)));
        return new LayerMaterial(1, 1, 1);
    }

    /// <summary>One specific heat, or a law; the law's value at its hottest point grades the grid.</summary>
    private static LayerMaterial Heat(CaseFields fields, LayerMaterial material)
    {
        if (fields["specific_heat"] is not ListToken)
        {
            return material with { SpecificHeat = fields.Required("specific_heat", CaseDimension.SpecificHeat) };
        }

        (double Celsius, double Heat)[] points =
            [.. fields.Groups("specific_heat").Select(point => (point.Required("temperature", CaseDimension.Temperature), point.Required("value", CaseDimension.SpecificHeat)))];
        return material.WithHeatLaw(SpecificHeatLaw.Through(points), points[^1].Celsius);
    }

    private static InitialTemperature Initial(CaseFields fields) => fields["initial"] is ListToken
        ? InitialTemperature.Profile([.. fields.Groups("initial").Select(point => (point.Required("depth", CaseDimension.Length), point.Required("temperature", CaseDimension.Temperature)))])
        : InitialTemperature.Constant(fields.Required("initial", CaseDimension.Temperature));

    private static TopBoundary Skin(CaseFields fields)
    {
        if (fields.Group("skin") is not { } skin)
        {
            return new TopBoundary.Insulated();
        }

        if (skin.NotOne("The skin") is { } wrong)
        {
            fields.Problems.Add(wrong);
            return new TopBoundary.Insulated();
        }

        if (skin.Group("temperature_wave") is { } wave)
        {
            return new TopBoundary.GivenTemperature(
                wave.Required("mean", CaseDimension.Temperature), wave.Required("amplitude", CaseDimension.TemperatureDifference), wave.Required("period", CaseDimension.Duration));
        }

        if (skin["flux"] is not null)
        {
            return new TopBoundary.GivenFlux(skin.Required("flux", CaseDimension.Irradiance));
        }

        if (skin.Group("convection") is { } convection)
        {
            return Convection(convection);
        }

        return skin.Group("weather") is { } weather ? Weather(weather) : new TopBoundary.GivenTemperature(skin.Required("temperature", CaseDimension.Temperature));
    }

    private static TopBoundary.ConstantCoefficient Convection(CaseFields fields)
    {
        var air = fields.Required("air", CaseDimension.Temperature);
        if (fields["emissivity"] is ScalarToken emissivity && fields["surroundings"] is null)
        {
            fields.Problems.Add(new ReadingProblem("Long-wave exchange needs the temperature of the surroundings.", emissivity.Span, "Add `surroundings`, such as `surroundings: 10 °C`."));
        }

        return new TopBoundary.ConstantCoefficient(
            fields.Required("coefficient", CaseDimension.Coefficient),
            air,
            fields.Number("emissivity", CaseDimension.Plain) ?? 0,
            fields.Number("surroundings", CaseDimension.Temperature) ?? air,
            fields.Number("absorbed", CaseDimension.Irradiance) ?? 0);
    }

    private static TopBoundary.Weather Weather(CaseFields fields) => new(
        new WeatherSeries([.. fields.Groups("points").Select(point => new WeatherPoint(
            point.Number("time", CaseDimension.Duration) ?? 0,
            point.Required("air", CaseDimension.Temperature),
            point.Required("wind", CaseDimension.Speed),
            point.Required("sky", CaseDimension.Temperature),
            point.Number("sun", CaseDimension.Irradiance) ?? 0))]),
        ConvectionForms.All.First(form => string.Equals(form.Id, fields.Text("form"), StringComparison.Ordinal)));

    private static BottomBoundary Bottom(CaseFields fields) => fields.Group("bottom") is { } bottom
        ? new BottomBoundary.GivenTemperature(bottom.Required("temperature", CaseDimension.Temperature))
        : fields.Text("bottom") is "half-space" ? new BottomBoundary.HalfSpace() : new BottomBoundary.Insulated();

    private static void RefuseTwins(List<CaseFields> layers, List<ReadingProblem> problems)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        problems.AddRange(layers
            .Where(layer => !seen.Add(layer.Text("id")!))
            .Select(layer => new ReadingProblem($"Two layers have the id {TokenNames.Quote(layer.Text("id")!)}.", layer["id"]!.Span, "Give each layer an id of its own.")));
    }

    /// <summary>The problem of a name that stands for nothing.</summary>
    internal static ReadingProblem Unknown(string what, ScalarToken name, IEnumerable<string> known)
    {
        var names = known.ToList();
        var near = NearestNames.Of(name.Text, names);
        var offered = near.Count > 0 ? near : names;
        var hint = offered.Count == 0 ? null : $"Known: {string.Join(", ", offered.Select(one => $"`{one}`"))}.";
        return new ReadingProblem($"There is no {what} {TokenNames.Quote(name.Text)}.", name.Span, hint);
    }
}
