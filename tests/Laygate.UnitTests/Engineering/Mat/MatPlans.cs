using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Mat;

/// <summary>Plans for questions about the cooling of a mat.</summary>
internal static class MatPlans
{
    public const string Window = "course.densification_window";

    /// <summary>40 mm at 160 °C on old asphalt, air and base 10 °C, wind 5 m/s at the mat, cessation 80 °C.</summary>
    public static Plan Forty { get; } = Small.Plan with
    {
        Mixes = [Small.Mix with { Density = new MixDensity { Compacted = M<Density>(2300, "kg/m3"), Degree = M<Ratio>(98, "%") }, Cessation = new PlacedTemperature { Value = C(80), Place = Place.CourseMean } }],
        Courses = [Small.Course with { LayingTemperature = Band(160) }],
        Existing = new Existing { Surface = ExistingSurface.OldAsphalt, Layers = [new ExistingLayer { Id = "a", Material = LayerMaterial.Asphalt }] },
        Weather = new Weather
        {
            WindAtMat = M<Ratio>(100, "%"),
            Envelope = new WeatherEnvelope { AirLowest = C(10), BaseLowest = C(10), WindHighest = M<Speed>(5, "m/s") },
        },
    };

    /// <summary>80 mm with 30 mm on it after some minutes.</summary>
    public static Plan Two(Laying laid, double minutes, double upper = 155) => Forty with
    {
        Courses =
        [
            Forty.Courses[0] with { Id = "low", Thickness = Mm(80), LayingTemperature = Band(155) },
            Forty.Courses[0] with { Id = "up", Thickness = Mm(30), LayingTemperature = Band(upper), Laid = laid, On = "low", Delay = Min(minutes) },
        ],
    };

    public static Plan On(Plan plan, Moisture condition) => plan with { Existing = plan.Existing! with { Condition = condition } };

    public static Plan With(Plan plan, Func<WeatherEnvelope, WeatherEnvelope> change) =>
        plan with { Weather = plan.Weather! with { Envelope = change(plan.Weather.Envelope!) } };

    /// <summary>A context whose assumptions are changed one by one.</summary>
    public static QuantityContext Context(Plan plan, Func<Assumption, Assumption> change, int samples = 64) =>
        new(plan, LaygateQuantities.Catalogue(), new AssumptionSet(LaygateAssumptions.All.Select(change)), 1) { Samples = samples };

    public static Assumption Exact(Assumption assumption) => assumption with { Low = assumption.Number, High = assumption.Number };

    public static bool Is(Assumption assumption, string id) => string.Equals(assumption.Id, id, StringComparison.Ordinal);

    public static NumberValue Ask(QuantityContext context, string quantity, string address) =>
        Assert.IsType<NumberValue>(context.Get(quantity, context.Elements.Find(address)!).Value);

    /// <summary>The expected value in SI, with as few samples as possible.</summary>
    public static double Expected(Plan plan, string quantity, string address) => Ask(Context(plan, assumption => assumption, 2), quantity, address).Si;
}
