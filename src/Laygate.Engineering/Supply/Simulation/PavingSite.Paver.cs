namespace Laygate.Engineering.Supply.Simulation;

/// <summary>The paver.</summary>
internal sealed partial class PavingSite
{
    private const double NoLength = 1e-9;

    private PaverMotion motion;
    private int stretch;
    private double stretchEnd;
    private int pause;
    private double pauseUntil;
    private double wantSince;
    private ShiftOutcome outcome;

    /// <summary>Length laid, m.</summary>
    private double Position { get; set; }

    /// <summary>What happened; complete when laying has ended.</summary>
    public ShiftOutcome Outcome => outcome;

    private void ResetPaver()
    {
        motion = PaverMotion.Waiting;
        (stretch, pause, pauseUntil, Position) = (0, 0, double.NegativeInfinity, 0);
        outcome = new ShiftOutcome { Started = double.NaN, FirstStopAfterPlant = double.NaN };
    }

    private void EnterStretch(int number)
    {
        stretch = number;
        stretchEnd = plan.End[number];
        for (var i = 0; i < held.Length; i++)
        {
            held[i].PerMetre = model.Stretches[number].PerMetre[i];
            held[i].IsActive = plan.Active[number][i];
        }
    }

    private void Travel(double time)
    {
        if (motion == PaverMotion.Moving)
        {
            var length = model.Speed * time;
            Position += length;
            for (var i = 0; i < held.Length; i++)
            {
                held[i].Level -= held[i].PerMetre * length;
                held[i].Laid += held[i].PerMetre * length;
            }
        }
        else if (motion == PaverMotion.Wanting)
        {
            outcome.Stopped += time;
        }
    }

    /// <summary>Starts, stops and ends the paver.</summary>
    private bool Drive(HaulEngine engine)
    {
        if (now >= model.Duration - Instant)
        {
            return End(engine);
        }

        return motion switch
        {
            PaverMotion.Waiting => now >= model.Begins - Instant && gate && Start(engine),
            PaverMotion.Moving => Move(engine),
            PaverMotion.Wanting => GoOn(engine),
            PaverMotion.Shifting => SetDown(engine),
            _ => Resume(),
        };
    }

    private bool Start(HaulEngine engine)
    {
        if (!IsReady())
        {
            return IsExhausted() && End(engine);
        }

        outcome.Started = now;
        motion = PaverMotion.Moving;
        for (var d = 0; d < docks.Length; d++)
        {
            docks[d].Busy = docks[d].Ahead(now); // Filling before the start does not count.
        }

        return true;
    }

    private bool Move(HaulEngine engine)
    {
        if (Position >= stretchEnd - NoLength)
        {
            if (stretch + 1 == plan.End.Length)
            {
                outcome.Finished = true;
                return End(engine);
            }

            EnterStretch(stretch + 1);
            if (model.Stretches[stretch].Move > 0)
            {
                motion = PaverMotion.Shifting;
                pauseUntil = now + model.Stretches[stretch].Move;
            }

            return true;
        }

        if (pause < model.Pauses.Count && now >= outcome.Started + model.Pauses[pause].After - Instant)
        {
            motion = PaverMotion.Pausing;
            pauseUntil = now + model.Pauses[pause++].Length;
            return true;
        }

        var lacking = LackingWhileMoving();
        return lacking >= 0 && (IsExhausted() ? End(engine) : Want(lacking));
    }

    private int LackingWhileMoving()
    {
        for (var i = 0; i < held.Length; i++)
        {
            if (held[i].Level <= held[i].Lowest + Tiny && held[i].Net < 0)
            {
                return i;
            }
        }

        return -1;
    }

    private bool Want(int lacking)
    {
        motion = PaverMotion.Wanting;
        wantSince = now;
        outcome.Stops++;
        BeginBlame(lacking);
        if (model.Stop is { } stop && now >= stop.At && plan.IsStopped(held[lacking].Mix) && double.IsNaN(outcome.FirstStopAfterPlant))
        {
            outcome.FirstStopAfterPlant = now;
        }

        return true;
    }

    private bool GoOn(HaulEngine engine)
    {
        if (pause < model.Pauses.Count && now >= outcome.Started + model.Pauses[pause].After - Instant)
        {
            pauseUntil = now + model.Pauses[pause++].Length; // A planned stop that falls into a stop for want of mix runs with it.
        }

        if (!IsReady())
        {
            return IsExhausted() && End(engine);
        }

        if (now < pauseUntil - Instant)
        {
            return false;
        }

        EndBlame();
        outcome.LongestStop = Math.Max(outcome.LongestStop, now - wantSince);
        motion = PaverMotion.Moving;
        return true;
    }

    private bool Resume()
    {
        if (now < pauseUntil - Instant)
        {
            return false;
        }

        motion = PaverMotion.Moving;
        return true;
    }

    /// <summary>A run is begun when the screed is set up and mix is there; waiting for it leaves no mark in a mat, so it is no stop.</summary>
    private bool SetDown(HaulEngine engine)
    {
        if (now < pauseUntil - Instant)
        {
            return false;
        }

        if (!IsReady())
        {
            return IsExhausted() && End(engine);
        }

        motion = PaverMotion.Moving;
        return true;
    }

    private bool IsReady()
    {
        for (var i = 0; i < held.Length; i++)
        {
            if (held[i].IsActive && held[i].Level < RestartOf(i) - Tiny)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether a buffer is empty and its mix has come to an end.</summary>
    private bool IsExhausted()
    {
        for (var i = 0; i < held.Length; i++)
        {
            if (held[i].IsActive && held[i].Level <= held[i].Lowest + Tiny && held[i].Total - held[i].Laid > Tiny && mixes[held[i].Mix].NothingComes)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Level at which the paver goes on: never more than the rest of the job needs, nor more than what still comes.</summary>
    private double RestartOf(int buffer)
    {
        ref var mix = ref held[buffer];
        var level = Math.Min(mix.Restart, mix.Lowest + Math.Max(0, mix.Total - mix.Laid));
        return mixes[mix.Mix].NothingComes && mix.Level > mix.Lowest + Tiny ? Math.Min(level, mix.Level) : level;
    }

    private bool End(HaulEngine engine)
    {
        if (motion == PaverMotion.Wanting)
        {
            EndBlame();
            outcome.LongestStop = Math.Max(outcome.LongestStop, now - wantSince);
            outcome.FirstStopAfterPlant = double.IsNaN(outcome.FirstStopAfterPlant) && model.Stop is { } stop
                ? Math.Max(stop.At, wantSince)
                : outcome.FirstStopAfterPlant;
        }

        outcome.Metres = Position;
        outcome.Started = double.IsNaN(outcome.Started) ? now : outcome.Started;
        outcome.Late = Math.Max(0, outcome.Started - model.Begins);
        outcome.Ended = now;
        outcome.FirstStopAfterPlant = double.IsNaN(outcome.FirstStopAfterPlant) ? now : outcome.FirstStopAfterPlant;
        outcome.FeederUse = Use();
        outcome.Events = engine.Events;
        record.End(ref outcome, held, mixes);
        motion = PaverMotion.Over;
        return true;
    }

    private double Use()
    {
        var busy = 0.0;
        foreach (ref var dock in docks.AsSpan())
        {
            busy = Math.Max(busy, dock.Busy - dock.Ahead(now));
        }

        return now > outcome.Started ? busy / (now - outcome.Started) : 0;
    }
}
