using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Records;

namespace Laygate.Engineering.Onward;

/// <summary>
/// When each load was on site and when it was empty. What the site wrote counts. A load of which it wrote nothing although later ones of its mix are
/// empty is taken as empty with them; where it wrote nothing of any load, the journey of the plan says when they came.
/// </summary>
internal sealed class RecordedLoads
{
    /// <summary>Loads that were fed after one before it is taken as empty: judgement, trucks overtake each other by one or two.</summary>
    private const int Later = 3;

    public RecordedLoads(ShiftModel model, OnwardKnown known)
    {
        Trucks = new TruckPlaces(model, known.Record.Loads);
        HasDeliveries = Trucks.Loads.Count == 0 || known.Record.Files.Any(file => file.Holds is "deliveries") || Trucks.Loads.Exists(one => (one.Load.Arrived ?? one.Load.Started ?? one.Load.Emptied) is not null);
        foreach (var group in Trucks.Loads.GroupBy(one => model.Lines[model.Trucks[one.Group].Line].Mix, StringComparer.Ordinal))
        {
            Take([.. group], model, known);
        }
    }

    /// <summary>Which truck carried which load.</summary>
    public TruckPlaces Trucks { get; }

    /// <summary>Whether the site wrote down any arrival or discharge.</summary>
    public bool HasDeliveries { get; }

    /// <summary>Loads that count, with the times that are known or taken.</summary>
    public List<TimedLoad> Loads { get; } = [];

    private void Take(List<CarriedLoad> loads, ShiftModel model, OnwardKnown known)
    {
        var taken = 0;
        var (count, first) = (new int[loads.Count + 1], new DateTimeOffset?[loads.Count + 1]); // Later loads that are empty, and when the first of them was.
        for (var i = loads.Count - 1; i >= 0; i--)
        {
            var empty = loads[i].Load.Emptied;
            (count[i], first[i]) = (count[i + 1] + (empty is null ? 0 : 1), empty is null || first[i + 1] < empty ? first[i + 1] : empty);
        }

        for (var i = 0; i < loads.Count; i++)
        {
            var one = loads[i];
            var load = one.Load;
            var arrived = load.Arrived ?? load.Started ?? load.Emptied;
            if (!HasDeliveries && load.Loaded!.Value.AddSeconds(model.Trucks[one.Group].Out.Expected) is var there && there <= known.Clock.Now)
            {
                arrived = there;
            }

            var isTaken = load is { Emptied: null, State: LoadState.Valid } && count[i + 1] >= (load.Started is not null ? 1 : Later);
            taken += isTaken ? 1 : 0;
            Loads.Add(new TimedLoad(one, arrived ?? (isTaken ? first[i + 1] : null), isTaken ? first[i + 1] : load.Emptied));
        }

        if (taken > 0)
        {
            known.Notes.Add(new OnwardNote(OnwardNoteKind.TakenAsEmpty, null, taken));
        }
    }
}

/// <summary>A load with its times.</summary>
/// <param name="Carried">The load and its truck.</param>
/// <param name="Arrived">When it was on site; null before.</param>
/// <param name="Emptied">When it was empty; null before.</param>
internal sealed record TimedLoad(CarriedLoad Carried, DateTimeOffset? Arrived, DateTimeOffset? Emptied)
{
    /// <summary>The load.</summary>
    public Load Load => Carried.Load;

    /// <summary>When it left.</summary>
    public DateTimeOffset Left => Carried.Load.Loaded!.Value;

    /// <summary>Whether it brings mix to be laid.</summary>
    public bool Counts => Load.State == LoadState.Valid;
}
