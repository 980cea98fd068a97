using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Records.Happened;

/// <summary>Loads: temperature, mass, age, and how many waited.</summary>
internal static class HappenedLoads
{
    public static IEnumerable<HappenedQuantity> All() =>
    [
        new("mix.delivery_lowest", "temperature in the load on site", RowsOf.Deliveries, "temperature", "temperature", (shift, element) =>
            Temperatures(shift, element, load => load.SiteTemperature, load => load.Arrived ?? load.Started ?? load.Emptied, load => load.Delivery ?? load.Place)),
        new("mix.loading_highest", "temperature in the load when it was loaded", RowsOf.Tickets, "temperature", "temperature", (shift, element) =>
            Temperatures(shift, element, load => load.LoadingTemperature, load => load.Loaded, load => load.Place)),
        new("trucks.payload", "mass of a load", RowsOf.Tickets, "gross, tare", "mass", (shift, element) =>
            HappenedSet.Of(Of(shift, element).Select(load => new HappenedValue(load.Net, load.Net * shift.Known.Mass, [load.Place]) { At = load.Loaded, Of = Named(load) }))),
        new("trucks.age_at_laying", "age of the mix when its truck was empty", RowsOf.Deliveries, "emptied", "time", Ages),
        new("trucks.loads_before_start", "loads on site when laying began", RowsOf.Deliveries, "arrived", "", BeforeStart),
        new("supply.waiting_highest", "trucks that waited at once", RowsOf.Deliveries, "arrived, started", "", Waiting),
        new("paver.upper_load", "mass of a load of the upper mix", RowsOf.Tickets, "gross, tare", "mass", UpperLoads),
    ];

    internal static string Named(Load load) => $"load {load.Ticket}";

    private static IEnumerable<Load> Of(HappenedShift shift, Element element) => element.Subject is TruckGroup group
        ? shift.LoadsOf(group.Mix).Where(load => group.Plant is null || load.Plant is null || PlanView.Same(group.Plant, load.Plant)) : [];

    private static HappenedSet Temperatures(HappenedShift shift, Element element, Func<Load, double?> value, Func<Load, DateTimeOffset?> at, Func<Load, RowPlace> row)
    {
        var loads = shift.LoadsOf(element.Id).ToList();
        var read = loads.Where(load => value(load) is not null)
            .Select(load => new HappenedValue(value(load)!.Value, shift.Known.Temperature, [row(load)]) { At = at(load), Station = load.StationAtEnd, Of = Named(load), Place = Place.InLoad }).ToList();
        return read.Count == 0 ? HappenedSet.Nothing
            : new HappenedSet(read, [.. loads.Where(load => value(load) is null).Select(load => new LackingRow($"temperature of {Named(load)}", row(load)))]);
    }

    private static HappenedSet Ages(HappenedShift shift, Element element)
    {
        var loads = Of(shift, element).ToList();
        var known = loads.Where(load => load is { Loaded: not null, Emptied: not null }).Select(load => new HappenedValue((load.Emptied! - load.Loaded!).Value.TotalSeconds, shift.OfDuration, [load.Delivery ?? load.Place, load.Place])
        {
            At = load.Emptied,
            Station = load.StationAtEnd,
            Of = Named(load),
        }).ToList();
        return known.Count == 0 ? HappenedSet.Nothing
            : new HappenedSet(known, [.. loads.Where(load => load is not { Loaded: not null, Emptied: not null }).Select(load => new LackingRow($"when {Named(load)} was empty", load.Delivery ?? load.Place))]);
    }

    private static HappenedSet BeforeStart(HappenedShift shift, Element element)
    {
        var loads = Of(shift, element).Where(load => load.Arrived is not null).ToList();
        var begun = shift.Plan.Courses.Where(course => PlanView.Same(course.Mix, (element.Subject as TruckGroup)?.Mix)).Select(course => shift.Screed(course).First).OfType<StationReading>().MinBy(reading => reading.At);
        if (begun is null || loads.Count == 0)
        {
            return HappenedSet.Nothing;
        }

        var there = loads.Where(load => load.Arrived <= begun.At).ToList();
        return HappenedSet.Of([new HappenedValue(there.Count, 0, [.. there.Select(load => load.Delivery ?? load.Place), begun.Place]) { At = begun.At }]);
    }

    private static HappenedSet Waiting(HappenedShift shift, Element element)
    {
        var loads = shift.Record.Loads.Where(load => load is { Arrived: not null, Started: not null }).OrderBy(load => load.Arrived).ToList();
        return HappenedSet.Of(loads.Select(load => (load, There: loads.Where(other => other.Arrived <= load.Arrived && other.Started > load.Arrived).ToList())).OrderByDescending(one => one.There.Count).Take(1)
            .Select(one => new HappenedValue(one.There.Count, 0, [.. one.There.Select(load => load.Delivery ?? load.Place)]) { At = one.load.Arrived }));
    }

    private static HappenedSet UpperLoads(HappenedShift shift, Element element) =>
        element.Subject is Paver paver && PlanView.Of(shift.Context).PairOf(paver) is var (_, upper)
            ? HappenedSet.Of(shift.LoadsOf(upper.Mix).Select(load => new HappenedValue(load.Net, load.Net * shift.Known.Mass, [load.Place]) { At = load.Loaded, Of = Named(load) }))
            : HappenedSet.Nothing;
}
