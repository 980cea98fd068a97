namespace Laygate.Engineering.Supply.Simulation;

/// <summary>
/// Keeps account of what a standing paver waits for. With trucks of the missing mix on site it is feeder or buffer; without, it is
/// what held up the next load that comes. Exact for each single stop; which change would mend the shift is a question of its own.
/// </summary>
internal sealed partial class PavingSite
{
    private double blamedUntil;
    private int wanted;
    private StopCause? blamed;

    /// <summary>A stop begins.</summary>
    private void BeginBlame(int lacking)
    {
        var mix = held[lacking].Mix;
        (wanted, blamedUntil) = (mix, now);
        blamed = mixes[mix].Arrived - mixes[mix].Fed <= Tiny ? null
            : plan.IsOverloaded(held[lacking].Dock) ? StopCause.Feeder
            : StopCause.Buffer;
    }

    /// <summary>A load comes: the time since the last one was lost to what held it up.</summary>
    private void Blame(int truck, int mix)
    {
        if (motion == PaverMotion.Wanting && mix == wanted && blamed is not (StopCause.Feeder or StopCause.Buffer))
        {
            blamed = cause[truck];
            EndBlame();
        }
    }

    /// <summary>The time since the last account goes to the known cause; where no load ever came, to the trucks.</summary>
    private void EndBlame()
    {
        record.Stands(blamed ?? StopCause.Trucks, now - blamedUntil);
        blamedUntil = now;
    }
}
