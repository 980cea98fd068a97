using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;

namespace Laygate.Engineering.Timeline;

/// <summary>Time between the last metre of one strip of a train and the first of the next: the way there and the set-up of the screed.</summary>
internal sealed class PaverMove(Calculation calculation)
{
    /// <summary>The time, s; none where the next strip begins where the one before it ends, with the same courses.</summary>
    public double Between(LaidStrip before, LaidStrip next)
    {
        var address = $"run:{next.Run.Id}";
        if (next.Run.Move is { } stated)
        {
            return calculation.Stated("tm", stated, address, "move");
        }

        var way = Math.Abs(next.First - before.Last);
        if (way <= LaidStrip.Touching && ReferenceEquals(before.Pass, next.Pass))
        {
            return 0;
        }

        var paver = next.Pavers[0];
        var machine = $"paver:{paver.Id}";
        var speed = calculation.StatedOr(AssumptionIds.PaverTravel, "vt", paver.TravelSpeed, machine, "travel_speed");
        var reset = calculation.StatedOr(AssumptionIds.PaverReset, "ts", paver.Reset, machine, "reset");
        var move = (way / speed) + reset;
        calculation.Step("tm", "tm = way / vt + ts", move, "min", "min");
        return move;
    }
}
