using System.Globalization;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;

namespace Laygate.Engineering.Mat;

/// <summary>
/// Builds the question to the conduction solver for one hot body from a share between 0 and 1 in each dimension of
/// <see cref="MatRanges"/>; a share that is not a number stands for the central value.
/// </summary>
internal sealed class MatModel(MatInputs inputs, AssumptionSet assumptions)
{
    /// <summary>Temperature at which an assumed specific heat holds, °C: half way between cold (20 °C) and laid (150 °C).</summary>
    private const double HeatStatedAt = 85;

    /// <summary>Long-wave free convection forms with a still-air term, so that none counts long-wave twice. The first is the central one.</summary>
    private static readonly ConvectionForm[] Forms =
    [
        ConvectionForms.Iso6946, ConvectionForms.NusseltJuerges, ConvectionForms.McAdams, ConvectionForms.Vehrencamp, ConvectionForms.RyanHerb,
    ];

    private static readonly SkyForm[] Skies = [SkyForms.ClarkAllen, SkyForms.BruntRecalibrated, SkyForms.IdsoRecalibrated];

    /// <summary>Builds a question.</summary>
    /// <param name="weather">Weather from the moment at which the first course is laid.</param>
    /// <param name="sample">Share in each dimension.</param>
    /// <param name="duration">Time to solve for, s.</param>
    /// <param name="stop">Where to end early.</param>
    /// <param name="settings">Cells and steps; null for those of expected values.</param>
    public CoolingProblem Build(MatWeather weather, double[] sample, double duration, CoolingStop? stop, CoolingSettings? settings = null)
    {
        var layers = new List<StackLayer>(inputs.Courses.Count + inputs.Below.Count);
        for (var i = inputs.Courses.Count - 1; i >= 0; i--)
        {
            layers.Add(Course(inputs.Courses[i], i, weather, sample));
        }

        AddBelow(layers, weather, sample);
        BottomBoundary bottom = inputs.OnDeck
            ? new BottomBoundary.ConstantCoefficient(Pick(AssumptionIds.DeckUnderside, sample, MatRanges.Ground), weather.AirAtStart + AirShift(sample))
            : new BottomBoundary.HalfSpace();
        return new CoolingProblem(layers, new TopBoundary.Weather(Series(weather, sample), Choose(Forms, AssumptionIds.ConvectionForm, sample, MatRanges.Form)), bottom, duration)
        {
            StopAt = stop,
            Settings = settings ?? CoolingSettings.Default,
        };
    }

    /// <summary>The base with its temperatures at depth; a frozen layer is below freezing.</summary>
    private void AddBelow(List<StackLayer> layers, MatWeather weather, double[] sample)
    {
        var profile = inputs.Base.At(weather);
        var surface = weather.Base + Pick(AssumptionIds.BaseSpread, sample, MatRanges.Base);
        var scale = profile.Source switch
        {
            BaseSource.Assumed => Pick(AssumptionIds.BaseDepthDifference, sample, MatRanges.Depth),
            BaseSource.Computed => Pick(AssumptionIds.BaseDepthShare, sample, MatRanges.Depth) / 100,
            _ => 1,
        };
        var top = 0.0;
        for (var i = 0; i < inputs.Below.Count; i++)
        {
            var layer = inputs.Below[i];
            var thickness = Thickness(layer, sample);
            var initial = profile.Layer(surface, scale, top, thickness, layer.IsFrozen ? -1 : double.PositiveInfinity, i == inputs.Below.Count - 1);
            layers.Add(new StackLayer(i.ToString(CultureInfo.InvariantCulture), LayerRole.Existing, thickness, Material(layer, sample), initial));
            top += thickness;
        }
    }

    private double AirShift(double[] sample) => Pick(AssumptionIds.AirSpread, sample, MatRanges.Air);

    /// <summary>A course as it lies: between compacted and as loose as behind the screed, with the same mass and heat; less what water below it takes.</summary>
    private StackLayer Course(MatCourse course, int index, MatWeather weather, double[] sample)
    {
        var layer = StackLayer.Course(course.Id, course.Thickness, Material(course, sample), LaidAtCelsius(course, sample), course.LaidAt);
        if (double.IsFinite(sample[MatRanges.Loose]) && course.Looseness is > 0 and < 1)
        {
            var share = sample[MatRanges.Loose];
            var loose = Pick(AssumptionIds.LooseConductivity, sample, MatRanges.Mix);
            layer = LaidThickness.AsLaid(layer, 1 - (share * (1 - course.Looseness)), 1 - (share * (1 - loose)));
        }

        if (index > 0 || inputs.Film is not { } film)
        {
            return layer;
        }

        var water = Math.Max(0, weather.Base);
        var melting = film.IsIce ? 1 + (HeatLaws.MeltingHeat / WetBase.Heat(1, water)) : 1;
        return WetBase.Lay(layer, melting * Pick(film.Assumption, sample, MatRanges.Film), water).Course;
    }

    private LayerMaterial Material(MatCourse course, double[] sample)
    {
        var heat = Pick(AssumptionIds.SpecificHeatOf(course.Material), sample, MatRanges.Heat);
        var material = new LayerMaterial(
            course.Conductivity?.At(sample, MatRanges.Mix) ?? Pick(AssumptionIds.ConductivityOf(course.Material), sample, MatRanges.Mix),
            course.Density,
            heat,
            Pick(AssumptionIds.EmissivityOf(course.Material), sample, MatRanges.Emissive),
            Pick(AssumptionIds.AbsorptivityOf(course.Material), sample, MatRanges.Absorptive));
        var rise = Pick(AssumptionIds.HeatRise, sample, MatRanges.Rise);
        return rise > 0 ? material.WithHeatLaw(SpecificHeatLaw.Linear(heat - (rise * HeatStatedAt), rise), HeatStatedAt) : material;
    }

    private LayerMaterial Material(MatLayer layer, double[] sample)
    {
        var conductivity = Pick(AssumptionIds.ConductivityOf(layer.Material), sample, MatRanges.Ground);
        if (layer is { IsAssumed: true, IsUnbound: true, IsFrozen: false } && double.IsFinite(sample[MatRanges.Ground]))
        {
            var dry = assumptions[AssumptionIds.ConductivityOf(MaterialClass.CrushedRockDry)].Low;
            var moist = assumptions[AssumptionIds.ConductivityOf(MaterialClass.CrushedRockMoist)].High;
            conductivity = dry + (sample[MatRanges.Ground] * (moist - dry));
        }

        var density = assumptions[AssumptionIds.DensityOfMaterial(layer.Material)].Number;
        var material = new LayerMaterial(conductivity, density, assumptions[AssumptionIds.SpecificHeatOf(layer.Material)].Number);
        if (!layer.IsFrozen)
        {
            return material;
        }

        var water = Pick(AssumptionIds.FrozenMoisture, sample, MatRanges.Film) / 100;
        return (material with { Density = density / (1 + water) }).WithHeatLaw(HeatLaws.ThawingGround(water), 20);
    }

    private double Thickness(MatLayer layer, double[] sample) => layer is { IsAssumed: true, IsUnbound: false }
        ? Pick(AssumptionIds.BuildUpThickness, sample, MatRanges.BuildUp)
        : layer.Thickness;

    private static double LaidAtCelsius(MatCourse course, double[] sample) => double.IsNaN(sample[MatRanges.Laying])
        ? course.Celsius
        : course.Coldest + (sample[MatRanges.Laying] * (course.Hottest - course.Coldest));

    private WeatherSeries Series(MatWeather weather, double[] sample)
    {
        var gust = 1 + (Pick(AssumptionIds.WindSpread, sample, MatRanges.Wind) / 100);
        var depression = Pick(AssumptionIds.SkyBelowAir, sample, MatRanges.Sky);
        var sun = Pick(AssumptionIds.SunShare, sample, MatRanges.Sun) / 100;
        var warmer = AirShift(sample);
        var builder = new WeatherBuilder(weather.Site, Choose(Skies, AssumptionIds.SkyForm, sample, MatRanges.Sky));
        var points = new WeatherPoint[weather.Points.Count];
        for (var i = 0; i < points.Length; i++)
        {
            var planned = weather.Points[i];
            var point = builder.Point(planned.Hour, planned.Time);
            points[i] = point with
            {
                Air = point.Air + warmer,
                Wind = Math.Max(0, point.Wind * gust),
                Sky = warmer + (planned.HasSky ? point.Sky : point.Air - depression),
                Sun = Math.Max(0, planned.Hour.Sun is null ? point.Sun * sun : point.Sun),
            };
        }

        return new WeatherSeries(points);
    }

    private T Choose<T>(T[] forms, string id, double[] sample, int dimension)
    {
        var assumption = assumptions[id];
        var number = double.IsNaN(sample[dimension])
            ? assumption.Number
            : Math.Min(assumption.High, Math.Floor(assumption.Low + (sample[dimension] * (assumption.High - assumption.Low + 1))));
        return forms[Math.Clamp((int)number, 1, forms.Length) - 1];
    }

    private double Pick(string id, double[] sample, int dimension)
    {
        var assumption = assumptions[id];
        return double.IsNaN(sample[dimension]) ? assumption.Number : assumption.Low + (sample[dimension] * (assumption.High - assumption.Low));
    }
}
