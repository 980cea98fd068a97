namespace Laygate.Engineering.Supply.Simulation;

/// <summary>What happened in many simulated shifts, over all trains.</summary>
/// <param name="outcomes">Every simulated shift, by the number of its replication.</param>
public class ShiftStatistics(IReadOnlyList<ShiftOutcome> outcomes)
{
    /// <summary>Every simulated shift, by the number of its replication.</summary>
    public IReadOnlyList<ShiftOutcome> Outcomes { get; } = outcomes;

    /// <summary>Chance of at least one stop for want of mix, 0 to 1, with its exact 90 % confidence limits.</summary>
    public Band StopChance => Statistics.Share(Outcomes.Count(shift => shift.Stops > 0), Outcomes.Count);

    /// <summary>Chance that all is laid by the end of the shift, with its exact 90 % confidence limits.</summary>
    public Band FinishChance => Statistics.Share(Outcomes.Count(shift => shift.Finished), Outcomes.Count);

    /// <summary>Mean number of stops for want of mix in a shift, with the 90 % confidence limits of the mean.</summary>
    public Band Stops => Statistics.MeanOf([.. Outcomes.Select(shift => (double)shift.Stops)]);

    /// <summary>Length of one stop for want of mix, s: mean over all stops; low and high are the 5 % and 95 % points of the longest stop in the shifts that have one. Null where there is none.</summary>
    public Band? StopLength
    {
        get
        {
            var stopped = Outcomes.Where(shift => shift.Stops > 0).ToList();
            if (stopped.Count == 0)
            {
                return null;
            }

            var longest = Statistics.Spread([.. stopped.Select(shift => shift.LongestStop)]);
            var mean = stopped.Sum(shift => shift.Stopped) / stopped.Sum(shift => shift.Stops);
            return new Band(mean, Math.Min(mean, longest.Low), Math.Max(mean, longest.High));
        }
    }

    /// <summary>Length laid, m: mean, 5 % and 95 % point of the shifts.</summary>
    public Band Metres => Statistics.Spread([.. Outcomes.Select(shift => shift.Metres)]);

    /// <summary>Delay of the first metre after the planned start, s: mean, 5 % and 95 % point of the shifts.</summary>
    public Band StartDelay => Statistics.Spread([.. Outcomes.Select(shift => shift.Late)]);

    /// <summary>Share of the time of laying in which the feeder is busy, or the busier of two tipping places.</summary>
    public Band FeederUse => Statistics.Spread([.. Outcomes.Select(shift => shift.FeederUse)]);

    /// <summary>Most mix on the road, waiting and in buffers at one time, kg.</summary>
    public Band CommittedHighest => Statistics.Spread([.. Outcomes.Select(shift => shift.CommittedHighest)]);

    /// <summary>Most trucks waiting on site at one time.</summary>
    public Band QueueHighest => Statistics.Spread([.. Outcomes.Select(shift => (double)shift.QueueHighest)]);
}
