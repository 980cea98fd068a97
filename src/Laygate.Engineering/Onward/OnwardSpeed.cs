using Laygate.Engineering.Records;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Records;

namespace Laygate.Engineering.Onward;

/// <summary>
/// The speed with which the paver goes on: what is said, else what was measured between the stops of the last hour, where that differs from the plan by
/// more than stations and clocks are read to, else that of the plan.
/// </summary>
internal sealed class OnwardSpeed(IReadOnlyList<ReachedPlace> reached, OnwardKnown known, Func<PaverStop, bool> isOwn)
{
    /// <summary>Time over which speed is measured: judgement, long enough for five loads and short enough for tonight.</summary>
    private static readonly TimeSpan Window = TimeSpan.FromMinutes(60);

    /// <summary>Least time for a speed: judgement, half the window of the ledger's present rate.</summary>
    private static readonly TimeSpan Least = TimeSpan.FromMinutes(15);

    /// <summary>To what a station is read, m, and a clock, s: judgement, the nearest metre and the nearest minute.</summary>
    private const double Metre = 1, Minute = 60;

    /// <summary>The model with that speed.</summary>
    public ShiftModel Into(ShiftModel model)
    {
        if (known.Events.Speed is { } said)
        {
            return With(model, said, FactBasis.Said);
        }

        return Measured() is { Speed: var measured, Uncertainty: var u } && Math.Abs(measured - model.Speed) > u
            ? With(model, measured, FactBasis.Record)
            : With(model, model.Speed, FactBasis.Plan);
    }

    private ShiftModel With(ShiftModel model, double speed, FactBasis basis)
    {
        known.Facts.Add(new OnwardFact(FactKind.Speed, null, basis, new LedgerFigure(speed, OnwardUnits.Speed(known.Units)) { PlanSi = model.Speed }));
        return model with { Speed = speed };
    }

    // Only within one strip: a move to the next run is no laying.
    private (double Speed, double Uncertainty)? Measured()
    {
        if (reached.Count < 2)
        {
            return null;
        }

        var last = reached[^1];
        var first = reached.First(place => place.Strip == last.Strip && place.Position > 0 && place.At >= last.At - Window);
        var stood = Stood(first.At, last.At);
        var (length, time) = (last.Position - first.Position, (last.At - first.At).TotalSeconds - stood);
        return time >= Least.TotalSeconds && length > 10 * Metre
            ? (length / time, 2 * length / time * Math.Sqrt(Math.Pow(Metre / length, 2) + Math.Pow(Minute / time, 2)))
            : null;
    }

    private double Stood(DateTimeOffset from, DateTimeOffset to) => PaverStops.Union(known.Record.Stops.Where(isOwn))
        .Sum(stop => Math.Max(0, ((stop.To < to ? stop.To.Value : to) - (stop.From > from ? stop.From : from)).TotalSeconds));
}
