using Laygate.Engineering.Cooling;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Reading;

namespace Laygate.Engineering.Mat;

/// <summary>Cooling of the uppermost hot body from the last metre on, until it may be opened.</summary>
internal sealed class SlowCooling
{
    private readonly CoolingSolver solver;
    private readonly MatModel model;
    private readonly MatInputs inputs;
    private readonly double limit;
    private readonly MatMemory? memory;

    private SlowCooling(QuantityContext context, CoolingSolver solver, MatInputs inputs)
    {
        this.solver = solver;
        this.inputs = inputs;
        memory = context.Memory;
        model = new MatModel(inputs, context.Assumptions);
        limit = context.Plan.Opening?.Below?.Value?.Si ?? double.NaN;
    }

    /// <summary>Seconds after the last screed until the whole hot body is below the opening temperature, without an expected value where it stays above; null where nothing was solved.</summary>
    public MatBand? SoftUntil { get; private set; }

    /// <summary>Weather from the last metre on.</summary>
    public MatWeather? Weather { get; private set; }

    /// <summary>Why nothing could be solved.</summary>
    public CoolingFailure? Failure { get; private set; }

    /// <summary>Solves central values, then samples.</summary>
    public static SlowCooling Solve(QuantityContext context, CoolingSolver solver, PavingPass pass)
    {
        var calculation = new Calculation(context);
        var body = new MatReader(context, calculation).Read(pass)!;
        var cooling = new SlowCooling(context, solver, body);
        var weather = new MatWeatherReader(context, calculation).Read(CoolingQuestion.Slow)[0];
        cooling.Weather = weather;
        var expected = cooling.Read(weather, null, 3 * 3600);
        if (expected is null)
        {
            cooling.SoftUntil = cooling.Failure is null ? new MatBand(null, 0, 0) : null;
        }
        else
        {
            var duration = Math.Min(MatCooling.LongestOpening, (1.5 * expected.Value) + 1800);
            cooling.SoftUntil = MatBand.Of(
                expected,
                (context.WithSpread ? LatinHypercube.Draw(MatCooling.Samples, MatModel.Dimensions, context.Seed) : []).Select(sample => cooling.Read(weather, sample, duration)),
                MatCooling.LongestOpening);
        }

        return cooling;
    }

    /// <summary>Looks within a time, and within the longest one when that was too short.</summary>
    private double? Read(MatWeather weather, double[]? sample, double duration)
    {
        for (var within = duration; ; within = Math.Min(MatCooling.LongestOpening, 4 * within))
        {
            var problem = model.Build(weather, sample, within, null);
            var (cold, failure) = memory is null
                ? Solve(problem)
                : memory.Time(MatKey.Of(problem, [limit, inputs.LastScreed]), () => Solve(problem));
            Failure ??= failure;
            if (cold is not null || failure is not null || within >= MatCooling.LongestOpening)
            {
                return cold;
            }
        }
    }

    private (double? Cold, CoolingFailure? Failure) Solve(CoolingProblem problem)
    {
        var result = solver.Solve(problem);
        return (result.Curve?.FirstBelow(CoolingPlace.Core, limit, inputs.LastScreed) - inputs.LastScreed, result.Failure);
    }
}
