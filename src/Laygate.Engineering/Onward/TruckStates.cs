using Laygate.Engineering.Records;
using Laygate.Engineering.Supply.Simulation;

namespace Laygate.Engineering.Onward;

/// <summary>A truck of a group and its last load.</summary>
/// <param name="Group">Position of the group.</param>
/// <param name="Last">Its last load; null where it was not seen.</param>
/// <param name="Leaves">Whether it is not sent again.</param>
internal sealed record DrivenTruck(int Group, TimedLoad? Last, bool Leaves = false)
{
    /// <summary>When it comes to its plant; null: as its last load says, or with the opening.</summary>
    public DateTimeOffset? At { get; init; }
}

/// <summary>
/// Which trucks drive. Those that were seen and those of the plan, less those that have not loaded while their group was sent twice with all its trucks: they
/// have left. What is said with the call beats both.
/// </summary>
internal sealed class TruckStates
{
    private readonly OnwardKnown known;
    private readonly ShiftModel model;
    private readonly DateTimeOffset from;
    private readonly List<(OnwardNoteKind Kind, string Group, int Count)> notes = [];
    private readonly bool[] open;

    public TruckStates(ShiftModel model, RecordedLoads loads, OnwardKnown known, DateTimeOffset from)
    {
        (this.model, this.known, this.from, open) = (model, known, from, new bool[model.Trucks.Count]);
        var groups = new List<ShiftTrucks>();
        for (var g = 0; g < model.Trucks.Count; g++)
        {
            var own = Said(g, Seen(g, loads));
            open[g] = own.Exists(truck => !truck.Leaves);
            Trucks.AddRange(own);
            groups.Add(model.Trucks[g] with { Count = own.Count });
        }

        Groups = groups;
    }

    /// <summary>Trucks, group by group.</summary>
    public List<DrivenTruck> Trucks { get; } = [];

    /// <summary>The groups with as many trucks as there are.</summary>
    public IReadOnlyList<ShiftTrucks> Groups { get; }

    /// <summary>Whether a group may still be sent.</summary>
    public bool IsOpen(int group) => open[group];

    /// <summary>Adds what a reader must know.</summary>
    public void Note() => known.Notes.AddRange(notes.Select(note => new OnwardNote(note.Kind, note.Group, note.Count)));

    private List<DrivenTruck> Seen(int g, RecordedLoads loads)
    {
        var (planned, seen, sent) = (model.Trucks[g].Count, loads.Trucks.Seen(g), loads.Trucks.Sent(g));
        var last = loads.Loads.Where(load => load.Carried.Group == g).GroupBy(load => load.Carried.Truck).ToDictionary(own => own.Key, own => own.Last());
        var all = Enumerable.Range(0, Math.Max(planned, seen)).Select(truck => new DrivenTruck(g, last.GetValueOrDefault(truck))).ToList();
        var two = 2 * all.Count;
        var isNamed = loads.Loads.TrueForAll(load => load.Carried.Group != g || load.Load.Vehicle is not null);
        var there = !isNamed ? all : all.FindAll(truck => truck.Last is { } load ? sent - load.Carried.Number <= two || IsWithMix(load) : sent <= two);
        if (all.Count > there.Count)
        {
            notes.Add((OnwardNoteKind.TrucksGone, model.Trucks[g].Id, all.Count - there.Count));
        }
        else if (there.Count > planned)
        {
            notes.Add((OnwardNoteKind.MoreTrucks, model.Trucks[g].Id, there.Count - planned));
        }

        var isSeen = seen > 0 && (there.Count != planned || seen >= planned);
        known.Facts.Add(new OnwardFact(FactKind.Trucks, model.Trucks[g].Id, known.Events.Trucks.ContainsKey(model.Trucks[g].Id) ? FactBasis.Said : isSeen ? FactBasis.Record : FactBasis.Plan,
            new LedgerFigure(known.Events.Trucks.TryGetValue(model.Trucks[g].Id, out var said) ? said : there.Count, OnwardUnits.Count) { PlanSi = planned }));
        return there;
    }

    private bool IsWithMix(TimedLoad load) => load is { Counts: true } && !(load.Emptied <= from);

    // Empty trucks go first, those that have been empty longest before the others; one with mix brings it before it goes.
    private List<DrivenTruck> Said(int g, List<DrivenTruck> there)
    {
        if (!known.Events.Trucks.TryGetValue(model.Trucks[g].Id, out var said) || said == there.Count)
        {
            return there;
        }

        if (said > there.Count)
        {
            return [.. there, .. Enumerable.Range(0, said - there.Count).Select(_ => new DrivenTruck(g, null) { At = known.Clock.Now })];
        }

        var going = there.OrderBy(truck => truck.Last is { } load && IsWithMix(load)).ThenBy(truck => truck.Last?.Left ?? DateTimeOffset.MinValue).Take(there.Count - Math.Max(0, said)).ToHashSet();
        return [.. there.Where(truck => !going.Contains(truck) || (truck.Last is { } load && IsWithMix(load))).Select(truck => truck with { Leaves = going.Contains(truck) })];
    }
}
