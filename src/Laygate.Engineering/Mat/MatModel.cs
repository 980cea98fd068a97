using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;

namespace Laygate.Engineering.Mat;

/// <summary>Builds the question to the conduction solver for one hot body: at central values, or at one sample of the ranges.</summary>
internal sealed class MatModel(MatInputs inputs, AssumptionSet assumptions)
{
    /// <summary>Ranges that a sample covers: conductivity and heat of the mixes, emissivity, ground, wind, laying temperature, convection form, sky, absorptivity,
    /// and cessation, embedment and build-up where they are assumed.</summary>
    public const int Dimensions = 12;

    /// <summary>Sample of an assumed cessation temperature.</summary>
    public const int Cessation = 9;

    /// <summary>Sample of an assumed embedment temperature.</summary>
    public const int Embedment = 10;

    private const int Mix = 0;
    private const int Heat = 1;
    private const int Emissive = 2;
    private const int Ground = 3;
    private const int Wind = 4;
    private const int Laying = 5;
    private const int Form = 6;
    private const int Sky = 7;
    private const int Absorptive = 8;
    private const int BuildUp = 11;

    /// <summary>
    /// Convection forms that a sample may take: all have a still-air term and hold no long-wave exchange, so that none
    /// counts it twice. The first is the central one.
    /// </summary>
    private static readonly ConvectionForm[] Forms =
    [
        ConvectionForms.Iso6946, ConvectionForms.NusseltJuerges, ConvectionForms.McAdams, ConvectionForms.Vehrencamp, ConvectionForms.RyanHerb,
    ];

    /// <summary>Builds a question.</summary>
    /// <param name="weather">Weather from the moment at which the first course is laid.</param>
    /// <param name="sample">Sample between 0 and 1 in each dimension; null for central values.</param>
    /// <param name="duration">Time to solve for, s.</param>
    /// <param name="stop">Where to end early.</param>
    public CoolingProblem Build(MatWeather weather, double[]? sample, double duration, CoolingStop? stop)
    {
        var layers = new List<StackLayer>(inputs.Courses.Count + inputs.Below.Count);
        for (var i = inputs.Courses.Count - 1; i >= 0; i--)
        {
            var course = inputs.Courses[i];
            layers.Add(StackLayer.Course(course.Id, course.Thickness, Material(course, sample), LaidAtCelsius(course, sample), course.LaidAt));
        }

        layers.AddRange(inputs.Below.Select((layer, i) =>
            StackLayer.Existing(i.ToString(System.Globalization.CultureInfo.InvariantCulture), Thickness(layer, sample), Material(layer, sample), weather.Base)));
        BottomBoundary bottom = inputs.OnDeck ? new BottomBoundary.GivenTemperature(weather.Base) : new BottomBoundary.HalfSpace();
        var form = sample is null ? Forms[0] : Forms[Math.Min(Forms.Length - 1, (int)(sample[Form] * Forms.Length))];
        return new CoolingProblem(layers, new TopBoundary.Weather(Series(weather, sample), form), bottom, duration) { StopAt = stop };
    }

    private LayerMaterial Material(MatCourse course, double[]? sample) => new(
        Pick(AssumptionIds.ConductivityOf(course.Material), sample, Mix),
        course.Density,
        Pick(AssumptionIds.SpecificHeatOf(course.Material), sample, Heat),
        Pick(AssumptionIds.EmissivityOf(course.Material), sample, Emissive),
        Pick(AssumptionIds.AbsorptivityOf(course.Material), sample, Absorptive));

    private LayerMaterial Material(MatLayer layer, double[]? sample)
    {
        var conductivity = Pick(AssumptionIds.ConductivityOf(layer.Material), sample, Ground);
        if (layer is { IsAssumed: true, IsUnbound: true } && sample is not null)
        {
            var dry = assumptions[AssumptionIds.ConductivityOf(MaterialClass.CrushedRockDry)].Low;
            var moist = assumptions[AssumptionIds.ConductivityOf(MaterialClass.CrushedRockMoist)].High;
            conductivity = dry + (sample[Ground] * (moist - dry));
        }

        return new LayerMaterial(
            conductivity,
            assumptions[AssumptionIds.DensityOfMaterial(layer.Material)].Number,
            assumptions[AssumptionIds.SpecificHeatOf(layer.Material)].Number);
    }

    private double Thickness(MatLayer layer, double[]? sample) => layer is { IsAssumed: true, IsUnbound: false }
        ? Pick(AssumptionIds.BuildUpThickness, sample, BuildUp)
        : layer.Thickness;

    private static double LaidAtCelsius(MatCourse course, double[]? sample) =>
        sample is null ? course.Celsius : course.Coldest + (sample[Laying] * (course.Hottest - course.Coldest));

    private WeatherSeries Series(MatWeather weather, double[]? sample)
    {
        var spread = assumptions[AssumptionIds.WindSpread];
        var gust = sample is null ? 1 : 1 + ((spread.Low + (sample[Wind] * (spread.High - spread.Low))) / 100);
        var sky = Pick(AssumptionIds.SkyBelowAir, sample, Sky);
        return new WeatherSeries([.. weather.Points.Select(point => new WeatherPoint(
            point.Time, point.Air, Math.Max(0, point.Wind * gust), point.Air - (point.SkyBelowAir ?? sky), Math.Max(0, point.Sun)))]);
    }

    private double Pick(string id, double[]? sample, int dimension)
    {
        var assumption = assumptions[id];
        return sample is null ? assumption.Number : assumption.Low + (sample[dimension] * (assumption.High - assumption.Low));
    }
}
