using Laygate.Engineering.SheetData;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Rules.Results;

namespace Laygate.Checking.Sheets;

/// <summary>Pavers, feeder and rollers on the sheet.</summary>
internal sealed class SheetMachines(Plan plan, SheetQuantities quantities, SheetFigures figures)
{
    public IReadOnlyList<SheetSpeed> Speeds() => [.. plan.Pavers.Select(paver =>
    {
        var address = $"paver:{paver.Id}";
        return new SheetSpeed(
            paver.Id,
            SheetFigures.Stated(paver.Speed),
            figures.Limit("paver.speed", address, low: true),
            figures.Limit("paver.speed", address, low: false),
            figures.Of("paver.speed_rollers_allow", address),
            figures.Computed(BySupply(paver), paver.Speed?.Unit, ("m/min", "ft/min")),
            SheetFigures.Stated(paver.StopLimit));
    })];

    public IReadOnlyList<SheetBuffer> Buffers() => [.. plan.Pavers.SelectMany(paver => paver.Buffers.Select(buffer =>
    {
        var calls = buffer.Call is not null;
        return new SheetBuffer(
            paver.Id,
            buffer.Course,
            SheetFigures.Stated(buffer.Capacity),
            SheetFigures.Stated(buffer.Lowest),
            SheetFigures.Stated(buffer.Call),
            calls ? figures.Of("paver.upper_call_lowest", $"paver:{paver.Id}") : SheetFigures.None,
            calls ? figures.Of("paver.upper_call_highest", $"paver:{paver.Id}") : SheetFigures.None);
    }))];

    public SheetFeeder? Feeder() => plan.Supply?.Feeder is { } feeder
        ? new SheetFeeder(
            feeder.Id, SheetFigures.Stated(feeder.Exchange), SheetFigures.Stated(feeder.Changeover),
            feeder.EmptiedBeforeChange, feeder.RestGoesTo, plan.Supply.Identification)
        : null;

    public IReadOnlyList<SheetRoller> Rollers() => [.. (plan.Rolling?.Rollers ?? []).Select(roller =>
    {
        var phase = plan.Rolling!.Phases.FirstOrDefault(phase => string.Equals(phase.Id, roller.Phase, StringComparison.Ordinal));
        return new SheetRoller(
            roller.Id,
            roller.Spare == true,
            phase?.Id,
            phase?.Passes,
            SheetFigures.Stated(phase?.ZoneFrom),
            SheetFigures.Stated(phase?.ZoneTo),
            figures.Computed(FromSeconds(phase), null, ("min", "min")),
            phase is null ? SheetFigures.None : figures.Of("phase.done_by", $"phase:{phase.Id}"),
            roller.Mode,
            roller.PassesInMode,
            SheetFigures.Stated(roller.Frequency),
            SheetFigures.Stated(roller.Amplitude),
            SheetFigures.Stated(roller.Speed),
            [.. quantities.StripsOf(roller).Select(strip => new SheetStrip(Across(strip.From), Across(strip.To)))],
            figures.Of("roller.impact_spacing", $"roller:{roller.Id}"),
            roller.WaterAndFuel,
            roller.Parking,
            roller.Breaks)
        {
            Kind = phase?.Kind,
        };
    })];

    /// <summary>Groups of trucks, with the queue that the plan aims at.</summary>
    public IReadOnlyList<SheetTrucks> Trucks() => [.. (plan.Supply?.Trucks ?? []).Select(trucks =>
    {
        var interval = figures.Of("trucks.interval", $"trucks:{trucks.Id}");
        var seconds = interval.Value is { Number: { } number } value ? UnitTable.Find(value.Unit)?.ToSi(number) : null;
        return new SheetTrucks(
            trucks.Id,
            plan.Mixes.FirstOrDefault(mix => string.Equals(mix.Id, trucks.Mix, StringComparison.Ordinal))?.Name ?? trucks.Mix ?? trucks.Id,
            trucks.Plant,
            interval,
            SheetFigures.Stated(trucks.Wait),
            new SheetFigure(trucks.Wait is { } wait && seconds is > 0 ? new ShownValue(wait.Si / seconds, string.Empty) : null, FigureKind.Computed),
            trucks.LoadsBeforeStart);
    })];

    private ShownValue Across(double metres) => SheetFigures.Shown(metres, figures.UnitOf(("m", "ft")));

    // The slowest paver counts: behind it a distance takes longest.
    private double? FromSeconds(Phase? phase) =>
        phase?.ZoneFrom is { } from && plan.Pavers.Select(paver => paver.Speed?.Si).Min() is { } speed and > 0 ? from.Si / speed : null;

    private double? BySupply(Paver paver)
    {
        var speeds = plan.Courses
            .Where(course => paver.Courses.Count == 0 || paver.Courses.Contains(course.Id, StringComparer.Ordinal))
            .Select(course => quantities.SpeedOfSupply(course, paver))
            .ToList();
        return speeds.Count == 0 || speeds.Contains(null) ? null : speeds.Min();
    }
}
