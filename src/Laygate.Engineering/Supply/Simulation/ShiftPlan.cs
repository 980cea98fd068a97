using Laygate.Model.Plans;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>What follows from a shift model before anything happens; shared by all replications and never changed.</summary>
internal sealed class ShiftPlan
{
    private readonly ShiftModel model;
    private readonly double[][] laidAtEnd;
    private readonly HeldMix[] held;
    private readonly ShiftPause[] pauses;
    private readonly bool[] stopped;
    private readonly bool[] overloaded;

    public ShiftPlan(ShiftModel model)
    {
        this.model = model;
        Mixes = [.. model.Buffers.Select(buffer => buffer.Mix).Distinct(StringComparer.Ordinal)];
        MixOfGroup = [.. model.Trucks.Select(trucks => MixOf(model.Lines[trucks.Line].Mix))];
        GroupOf = [.. model.Trucks.SelectMany((trucks, g) => Enumerable.Repeat(g, trucks.Count))];
        Lowest = [.. Mixes.Select(mix => OfMix(mix).Sum(i => model.Buffers[i].Lowest))];
        Needed = [.. Mixes.Select((mix, m) => OfMix(mix).Sum(model.Tonnage) + Lowest[m])];
        Groups = [.. Mixes.Select((_, m) => MixOfGroup.Count(other => other == m))];
        var (active, moved) = (new bool[model.Stretches.Count][], model.Begins);
        End = new double[model.Stretches.Count];
        laidAtEnd = [.. Mixes.Select(_ => new double[End.Length])];
        AddUp();
        Active = active;
        Starts = new double[End.Length];
        for (var k = 0; k < End.Length; k++)
        {
            active[k] = k > 0 && model.Stretches[k].Pass == model.Stretches[k - 1].Pass ? active[k - 1] : [.. model.Buffers.Select((_, i) => model.IsActive(k, i))];
            Starts[k] = (moved += model.Stretches[k].Move) + ((k == 0 ? 0 : End[k - 1]) / model.Speed);
        }

        var opening = model.Trucks.Select(trucks => model.Opening(trucks) + Starts[model.FirstStretch(model.Lines[trucks.Line].Mix)]).ToArray();
        NotBefore = [.. model.Trucks.Select((trucks, g) => model.FirstStretch(model.Lines[trucks.Line].Mix) == 0 ? double.NegativeInfinity : opening[g])];
        LineOpening = [.. model.Lines.Select((_, i) => opening.Where((_, g) => model.Trucks[g].Line == i).DefaultIfEmpty(0).Min())];
        Opening = opening.DefaultIfEmpty(0).Min();
        held = [.. model.Buffers.Select((_, i) => BuildHeld(i))];
        pauses = [.. model.Pauses];
        stopped = [.. Mixes.Select(mix => model.Lines.Any(line => Same(line.Mix, mix) && Same(line.Plant, model.Stop?.Plant)))];
        overloaded = model.Unloading.OneForAll
            ? [model.Stretches.GroupBy(stretch => stretch.Pass).Any(pass => model.Buffers.Select((_, i) => DockUse(i, [.. pass])).Sum() >= 1)]
            : [.. model.Buffers.Select((_, i) => DockUse(i, model.Stretches) >= 1)];
        Network = BuildNetwork(opening);
        First = [.. Mixes.Select((_, m) => model.Trucks.Where((_, g) => MixOfGroup[g] == m).Sum(trucks => Math.Min(trucks.BeforeStart, trucks.Count) * trucks.Payload))];
    }

    /// <summary>Ids of the mixes.</summary>
    public IReadOnlyList<string> Mixes { get; }

    /// <summary>Mix of each group.</summary>
    public int[] MixOfGroup { get; }

    /// <summary>Group of each truck.</summary>
    public int[] GroupOf { get; }

    /// <summary>Mix that stays in the buffers, kg.</summary>
    public double[] Lowest { get; }

    /// <summary>Mix to be sent, kg.</summary>
    public double[] Needed { get; }

    /// <summary>Groups that carry each mix.</summary>
    public int[] Groups { get; }

    /// <summary>Mix that is on site before it is laid first, kg.</summary>
    public double[] First { get; }

    /// <summary>When each line opens, s.</summary>
    public double[] LineOpening { get; }

    /// <summary>When the first plant opens, s.</summary>
    public double Opening { get; }

    /// <summary>When each stretch begins if nothing is late and no stop is planned, s.</summary>
    public double[] Starts { get; }

    /// <summary>Buffers of the pass of each stretch.</summary>
    public bool[][] Active { get; }

    /// <summary>When the first loads of each group leave at the earliest, s: mix of a later pass is not loaded hours before it is laid.</summary>
    public double[] NotBefore { get; }

    /// <summary>Where each stretch ends, m.</summary>
    public double[] End { get; }

    /// <summary>Loading places and rounds.</summary>
    public HaulNetwork Network { get; }

    /// <summary>A buffer at the beginning.</summary>
    public HeldMix Held(int i) => held[i];

    /// <summary>Largest load of a line, kg.</summary>
    public double LargestLoad(int line) => model.Trucks.Where(trucks => trucks.Line == line).Select(trucks => trucks.Payload).DefaultIfEmpty(0).Max();

    /// <summary>Whether a mix comes from the plant that stops.</summary>
    public bool IsStopped(int mix) => stopped[mix];

    /// <summary>Mix that can be laid by the end of the shift when the paver does not stop any more, from the first metre on, kg.</summary>
    public double Reachable(int mix, double position, double now)
    {
        // Where the paver would be at the end of the shift if it went on without a stop; a move takes time and no mix.
        var late = Math.Max(0, Math.Max(model.Begins, now) - TimeAt(position));
        var left = model.Duration - late;
        var reached = UpTo(Starts, left);
        var end = reached < 0 ? position : Math.Max(position, From(reached) + (model.Speed * (left - Starts[reached])));
        end = reached >= 0 && reached + 1 < End.Length ? Math.Min(end, End[reached]) : end;
        var i = Array.BinarySearch(End, end);
        i = i < 0 ? ~i : i;
        if (i >= End.Length)
        {
            return laidAtEnd[mix][^1];
        }

        var from = i == 0 ? 0 : End[i - 1];
        var before = i == 0 ? 0 : laidAtEnd[mix][i - 1];
        return End[i] > from ? before + ((laidAtEnd[mix][i] - before) * (end - from) / (End[i] - from)) : laidAtEnd[mix][i];
    }

    /// <summary>When a load is to leave by the timetable, s.</summary>
    /// <param name="mix">Its mix.</param>
    /// <param name="sent">Mix sent before, kg.</param>
    /// <param name="journey">Usual journey, s.</param>
    public double LeaveAt(int mix, double sent, double journey)
    {
        var used = sent - First[mix];
        if (model.Dispatch == Dispatch.AsLoaded || used < 0)
        {
            return double.NegativeInfinity;
        }

        var time = TimeAt(PositionAt(mix, used)) - model.Begins;
        foreach (var pause in pauses)
        {
            time += pause.IsPlanned && time > pause.After ? pause.Length : 0;
        }

        return model.Begins + time - journey + model.TimetableLate;
    }

    /// <summary>When a place is laid if nothing is late and no stop is planned, s; at the beginning of a run, after the move.</summary>
    private double TimeAt(double position)
    {
        var i = Math.Min(UpTo(End, position + 1e-9) + 1, End.Length - 1);
        return TimeAt(i, position);
    }

    /// <summary>When a place of a stretch is laid if nothing is late and no stop is planned, s.</summary>
    /// <param name="stretch">Number of the stretch.</param>
    /// <param name="position">Place, m.</param>
    public double TimeAt(int stretch, double position) => Starts[stretch] + ((position - From(stretch)) / model.Speed);

    private double From(int stretch) => stretch == 0 ? 0 : End[stretch - 1];

    /// <summary>The last of rising numbers that is not above a limit; −1 for none.</summary>
    private static int UpTo(double[] rising, double limit)
    {
        var i = Array.BinarySearch(rising, limit);
        i = i < 0 ? ~i - 1 : i;
        while (i >= 0 && i + 1 < rising.Length && rising[i + 1] <= limit)
        {
            i++;
        }

        return i;
    }

    /// <summary>How far the paver must be for the next load of a mix to be called, as the time at which it is there if nothing is late, s; at most the begin where it is sent before the start.</summary>
    /// <param name="mix">Its mix.</param>
    /// <param name="sent">Mix sent before, kg.</param>
    /// <param name="lead">Usual time from the call to the arrival, s.</param>
    public double CallAt(int mix, double sent, double lead) => sent < First[mix]
        ? double.NegativeInfinity
        : TimeAt(PositionAt(mix, sent - First[mix])) - lead;

    /// <summary>The next load of a mix: a full one, or what is left; a rest too small to be useful is shared with the load before it.</summary>
    /// <param name="rest">What is still to be sent, kg; above zero.</param>
    /// <param name="payload">A full load, kg.</param>
    public double NextLoad(double rest, double payload) => LoadOrder.Next(rest, payload, model.LoadStep, model.SmallestLoad);

    /// <summary>Whether feeder or tipping place needs all of the time for the mix that the paver takes where it takes most.</summary>
    /// <param name="dock">Position of the feeder or tipping place.</param>
    public bool IsOverloaded(int dock) => overloaded[dock];

    /// <summary>Where the paver has used some of a mix, m.</summary>
    private double PositionAt(int mix, double used)
    {
        var laid = laidAtEnd[mix];
        var i = Array.BinarySearch(laid, used);
        i = i < 0 ? ~i : i;
        if (i >= laid.Length)
        {
            return End[^1];
        }

        var from = i == 0 ? 0 : End[i - 1];
        var before = i == 0 ? 0 : laid[i - 1];
        return laid[i] > before ? from + ((End[i] - from) * (used - before) / (laid[i] - before)) : End[i];
    }

    /// <summary>Share of the time that the loads of one buffer take, with the turns to it and back, where most of its mix is laid.</summary>
    private double DockUse(int i, IReadOnlyList<ShiftStretch> stretches)
    {
        var payload = model.Trucks.Where((_, g) => MixOfGroup[g] == MixOf(model.Buffers[i].Mix)).Select(trucks => trucks.Payload).Max();
        var taken = model.Speed * stretches.Max(stretch => stretch.PerMetre[i]);
        var turns = model.Unloading.OneForAll && i > 0 ? 2 * model.Unloading.Changeover : 0;
        return taken / payload * (model.Unloading.Exchange.Expected + turns + (payload / model.Unloading.Rate));
    }

    private static bool Same(string a, string? b) => string.Equals(a, b, StringComparison.Ordinal);

    private HeldMix BuildHeld(int i)
    {
        var buffer = model.Buffers[i];
        return new HeldMix
        {
            Capacity = buffer.Capacity,
            Lowest = buffer.Lowest,
            Restart = Math.Clamp(buffer.Restart, buffer.Lowest, buffer.Capacity),
            Call = buffer.Call ?? double.NaN,
            Total = model.Tonnage(i),
            Mix = MixOf(buffer.Mix),
            Dock = model.Unloading.OneForAll ? 0 : i,
        };
    }

    private int MixOf(string mix) => Mixes.TakeWhile(other => !string.Equals(other, mix, StringComparison.Ordinal)).Count();

    private IEnumerable<int> OfMix(string mix) => Enumerable.Range(0, model.Buffers.Count).Where(i => string.Equals(model.Buffers[i].Mix, mix, StringComparison.Ordinal));

    private void AddUp()
    {
        for (var k = 0; k < End.Length; k++)
        {
            var stretch = model.Stretches[k];
            End[k] = (k == 0 ? 0 : End[k - 1]) + stretch.Length;
            for (var m = 0; m < Mixes.Count; m++)
            {
                laidAtEnd[m][k] = (k == 0 ? 0 : laidAtEnd[m][k - 1]) + OfMix(Mixes[m]).Sum(i => stretch.PerMetre[i] * stretch.Length);
            }
        }
    }

    /// <summary>Loading places for each mix at each plant.</summary>
    private HaulNetwork BuildNetwork(double[] opening) => new(
        [.. model.Lines.Select(line => new HaulStation(line.Places))],
        [.. model.Trucks.Select((trucks, g) => new HaulGroup(
            trucks.Count,
            [new HaulStop(trucks.Line, trucks.Loading, trucks.Out), new HaulStop(-1, TimeSpread.Constant(0), trucks.Back)],
            opening[g]))]);
}
