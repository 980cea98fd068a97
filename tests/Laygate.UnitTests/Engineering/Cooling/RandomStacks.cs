using System.Globalization;
using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

/// <summary>A stack drawn at random: one course or a pair on ground that is colder than the mix.</summary>
/// <remarks>Lower is the thickness of the lower course in m, zero for a single course; Gap the time in s between the two.</remarks>
internal sealed record RandomStack(
    double Thickness, LayerMaterial Mix, double Laid, double Lower, LayerMaterial LowerMix, double LowerLaid, double Gap,
    LayerMaterial Ground, double Base, double Air, double SkyBelow, double Wind, double Sun, ConvectionForm Form)
{
    public bool IsPair => Lower > 0;

    public CoolingProblem Problem()
    {
        var top = new TopBoundary.Weather(WeatherSeries.Constant(Air, Wind, Air - SkyBelow, Sun), Form);
        var upper = StackLayer.Course("upper", Thickness, Mix, Laid, IsPair ? Gap : 0);
        StackLayer[] below = [StackLayer.Existing("ground", 0.12, Ground, Base), StackLayer.Existing("granular", 0.2, Gran, Base)];
        return new(
            IsPair ? [upper, StackLayer.Course("lower", Lower, LowerMix, LowerLaid), .. below] : [upper, .. below], top, HalfSpace, 6 * 3600);
    }
}

/// <summary>
/// Runs a property over random stacks of one seed, on two threads. How many is set by the environment variable
/// LAYGATE_STACKS; without it as many as fit a quick test run. All 10,000 by hand:
/// <c>LAYGATE_STACKS=10000 dotnet test tests/Laygate.UnitTests -c Release --filter FullyQualifiedName~CoolingPropertyTests</c>.
/// </summary>
internal static class RandomStacks
{
    private static readonly ConvectionForm[] Forms =
        [ConvectionForms.Iso6946, ConvectionForms.NusseltJuerges, ConvectionForms.Barber, ConvectionForms.Vehrencamp, ConvectionForms.RyanHerb];

    /// <param name="quick">Number of stacks in a quick run.</param>
    /// <param name="check">Gets a solver of its own, the stack and its number.</param>
    public static void ForEach(int quick, Action<CoolingSolver, RandomStack, int> check)
    {
        var text = Environment.GetEnvironmentVariable("LAYGATE_STACKS");
        var count = text is null ? quick : int.Parse(text, CultureInfo.InvariantCulture);
        var random = new Random(3);
        var stacks = Enumerable.Range(0, count).Select(_ => Draw(random)).ToArray();
        Parallel.For(0, 2, worker =>
        {
            var solver = new CoolingSolver();
            for (var i = worker; i < count; i += 2)
            {
                check(solver, stacks[i], i);
            }
        });
    }

    private static RandomStack Draw(Random random)
    {
        double Between(double low, double high) => low + ((high - low) * random.NextDouble());
        LayerMaterial Mix()
        {
            var mix = new LayerMaterial(Between(0.8, 2), Between(1900, 2450), Between(850, 1100), Between(0.85, 0.95), Between(0.8, 0.95));
            return random.Next(2) == 0 ? mix : mix.WithHeatLaw(HeatLaws.Mix(Between(0.04, 0.08)).Scaled(Between(0.95, 1.15)), 100);
        }

        var isPair = random.Next(3) == 0;
        return new(
            Between(0.02, isPair ? 0.04 : 0.1), Mix(), Between(125, 175), isPair ? Between(0.05, 0.12) : 0, Mix(), Between(125, 175), Between(20, 900),
            new(Between(0.5, 3), Between(1800, 2400), Between(800, 1500)), Between(-5, 40),
            Between(-5, 30), Between(0, 20), Between(0, 10), Between(0, 700), Forms[random.Next(Forms.Length)]);
    }
}
