using Laygate.Engineering.Records;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Records;

namespace Laygate.Engineering.Onward;

/// <summary>What one train has under way and has still to call, course by course.</summary>
internal sealed class OnwardCourses(OnwardWindows windows, OnwardClock clock, DateTimeOffset? end, LedgerUnits units, OnwardStart start, IReadOnlyList<FedLoad> steady)
{
    private readonly ShiftPlan plan = new(start.Model);

    public IEnumerable<OnwardCourse> All() => start.Model.Buffers.Select((buffer, i) => Of(buffer, i));

    private OnwardCourse Of(ShiftBuffer buffer, int i)
    {
        var own = start.UnderWay.Where(one => one.Buffer == i).Select(one => one.Load).ToList();
        IReadOnlyList<WindowAt> found = start.State.Buffers[i].Laid < start.Model.Tonnage(i) - PavingSite.Tiny ? windows.Of(buffer.Course, [clock.Now, .. end is { } last && last > clock.Now ? [last] : Array.Empty<DateTimeOffset>()]) : [];
        return new OnwardCourse(
            buffer.Course, buffer.Mix, new LedgerFigure(start.State.Buffers[i].Level, units.Mass),
            Out(own.FindAll(load => load.Arrived is not null), i), Out(own.FindAll(load => load.Arrived is null), i), Lasts(i), ToCall(i))
        {
            Windows = found,
            Passes = found.Count > 0 ? windows.Passes(buffer.Course, found[0]) : [],
            RolledWithin = windows.RolledWithin(buffer.Course),
        };
    }

    private LoadsOut Out(List<Load> loads, int i)
    {
        var oldest = loads.Where(load => load.Loaded is not null).MinBy(load => load.Loaded);
        var rest = loads.Sum(load => load.Laid);
        var docked = start.State.Docks.Where(dock => dock.Does == UnloadingStep.Feeding && dock.Buffer == i).Sum(dock => start.State.Trucks[dock.Truck] is var truck ? truck.Carried - truck.Load : 0);
        return new LoadsOut(loads.Count, new LedgerFigure(Math.Max(0, rest - (loads.Exists(load => load.Started is not null) ? docked : 0)), units.Mass), oldest is null ? null : (clock.Now - oldest.Loaded!.Value).TotalSeconds, oldest?.Ticket);
    }

    // Mix on the machine above its lowest level, and on the trucks that wait, at the speed of the paver.
    private DateTimeOffset? Lasts(int i)
    {
        var (state, model, mix) = (start.State, start.Model, plan.Held(i).Mix);
        var rate = model.Stretches[state.Paver.Stretch].PerMetre[i] * model.Speed;
        var waiting = state.Trucks.Where((truck, t) => truck is { HasMix: true, Due: null, LeftAt: null } && plan.MixOfGroup[plan.GroupOf[t]] == mix).Sum(truck => truck.Load);
        var held = Math.Max(0, state.Buffers[i].Level - model.Buffers[i].Lowest) + waiting;
        return start.Place is null || rate <= 0 || held >= model.Tonnage(i) - state.Buffers[i].Laid ? null : start.From.AddSeconds(held / rate);
    }

    private LoadsToCall ToCall(int i)
    {
        var mix = plan.Held(i).Mix;
        var later = steady.Where(load => load.Buffer == i && load.Mix == mix && load.Loaded >= clock.Of(clock.Now)).OrderBy(load => load.Loaded).ToList();
        return new LoadsToCall(
            later.Count, new LedgerFigure(later.Sum(load => load.Mass), units.Mass), later.Count > 0 ? clock.At(later[0].Loaded) : null, later.Count > 0 ? clock.At(later[^1].Loaded) : null,
            later.Count > 0 ? new LedgerFigure(later[^1].Mass, units.Mass) : null);
    }
}
