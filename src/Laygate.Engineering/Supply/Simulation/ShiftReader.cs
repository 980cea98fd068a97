using Laygate.Engineering.Assumptions;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>
/// Reads the shift of each paving train out of a plan; what is missing or cannot be simulated is noted in the calculation.
/// Trains that lay side by side at one speed with one mix are one: both stand when one of them lacks mix.
/// </summary>
internal sealed class ShiftReader(Calculation calculation)
{
    private readonly QuantityContext context = calculation.Context;
    private readonly PlanView view = PlanView.Of(calculation.Context);

    /// <summary>Reads the shift.</summary>
    /// <returns>One model for each train; null where the calculation says why there is none.</returns>
    public IReadOnlyList<ShiftModel>? Read()
    {
        if (view.Passes.FirstOrDefault(pass => pass.Courses.Count > 2) is { } many)
        {
            calculation.Block(AbsenceReason.NotComputable, Counted(NoteIds.TooManyMixes, many.Courses.Count));
            return null;
        }

        var timeline = new TimelineReader(calculation).Read();
        calculation.Quantity("T", "shift.duration", context.Elements.Find("shift"));
        IReadOnlyList<PavingTrain> trains = timeline is null ? [] : TrainReader.Of(timeline, calculation);
        if (timeline is null)
        {
            NoteSupply();
        }

        var demands = trains.Select(train => new TrainDemand(train, new StretchReader(calculation).Read(train))).ToList();
        var models = demands.Select(demand => Read(demand, demands)).ToList();
        return calculation.Stopped is null && models.Count > 0 && models.TrueForAll(IsPossible) ? models : null;
    }

    /// <summary>Notes that the shift is too large to be simulated.</summary>
    public static void IsTooLarge(Calculation calculation) => calculation.Block(AbsenceReason.OutsideRange, new Note(SimulationNotes.TooLarge,
    [
        new NoteArgument("hours", null, ShiftSimulator.LongestTime / 3600, "h"), new NoteArgument("loads", null, ShiftSimulator.MostLoads, string.Empty),
    ]));

    // Whoever states what is missing on one side is told at once what is missing on the other.
    private void NoteSupply() => new HaulReader(calculation).Read(
        context.Plan.Courses.Select(course => course.Mix).Distinct(StringComparer.Ordinal).ToDictionary(mix => mix, _ => 0.0, StringComparer.Ordinal), 0);

    private ShiftModel Read(TrainDemand demand, IReadOnlyList<TrainDemand> all)
    {
        var train = demand.Train;
        var spread = calculation.Assumed(SimulationAssumptions.ServiceSpread, "cv", "supply", null);
        var haul = new HaulReader(calculation, new TruckDeal(demand, all, context.Plan.Supply?.Trucks ?? []));
        var trucks = haul.Read(demand.Tonnages, spread);
        var unloading = Unloading(train, spread);
        return new ShiftModel
        {
            Duration = calculation.Quantity("T", "shift.duration", context.Elements.Find("shift")),
            Begins = train.Begins,
            Speed = train.Speed,
            Stretches = demand.Stretches,
            Buffers = [.. Buffers(train, unloading).Select((buffer, i) => buffer with { Train = train.Lanes[i].Train })],
            Lines = haul.Lines,
            Trucks = trucks,
            Unloading = unloading,
            Pauses = [.. train.Stops.Select(stop => new ShiftPause(Math.Max(0, stop.At - train.Begins), stop.Length))],
            Dispatch = Sending(),
            SmallestLoad = calculation.Assumed(SimulationAssumptions.SmallestLoad, "q", "supply", null),
            LoadStep = calculation.Assumed(SimulationAssumptions.LoadStep, "step", "supply", null),
            BadDay = calculation.Assumed(SimulationAssumptions.BadDayPoint, "p", "supply", null),
        };
    }

    /// <summary>How loads are sent; assumed, and listed so, where the plan does not say it.</summary>
    private Dispatch Sending()
    {
        if (context.Plan.Supply?.Dispatch is { } stated)
        {
            calculation.Show("dispatch", "dispatch", "supply", Words.Of(stated));
            return stated;
        }

        return calculation.Assumed(SimulationAssumptions.ByTimetable, "dispatch", "supply", new InputReference("supply", "dispatch")) >= 0.5
            ? Dispatch.Timetable
            : Dispatch.AsLoaded;
    }

    private List<ShiftBuffer> Buffers(PavingTrain train, ShiftUnloading unloading)
    {
        var reader = new BufferReader(calculation, unloading);
        return train.IsEchelon
            ? [.. train.Lanes.SelectMany(lane => reader.Read([lane.Course], [lane.Paver]))]
            : [.. train.Lanes.GroupBy(lane => train.Strips.First(strip => strip.Courses.Contains(lane.Course)).Pass).SelectMany(pass =>
                reader.Read([.. pass.Select(lane => lane.Course)], [.. pass.Select(lane => lane.Paver)]))];
    }

    private ShiftUnloading Unloading(PavingTrain train, double spread)
    {
        if (context.Plan.Supply?.Feeder is { } feeder)
        {
            var address = $"feeder:{feeder.Id}";
            var rate = calculation.Stated("Q", feeder.Rate, address, "rate");
            var exchange = calculation.StatedOr(AssumptionIds.Exchange, "e", feeder.Exchange, address, "exchange");
            var changes = train.Lanes.GroupBy(lane => view.PassOf(lane.Course)).Any(pass => pass.Select(lane => lane.Course.Mix).Distinct(StringComparer.Ordinal).Count() > 1);
            var changeover = changes ? calculation.Stated("c", feeder.Changeover, address, "changeover") : 0;
            return new ShiftUnloading(true, rate, TimeSpread.Lognormal(exchange, spread), changeover, feeder.UnloadingInParts == true);
        }

        var paver = $"paver:{train.Lanes[0].Paver.Id}";
        return new ShiftUnloading(
            false,
            calculation.Assumed(SimulationAssumptions.TippingRate, "Q", paver, null),
            TimeSpread.Lognormal(calculation.Assumed(AssumptionIds.Exchange, "e", paver, null), spread),
            0,
            InParts: false);
    }

    private bool IsPossible(ShiftModel model)
    {
        switch (ShiftSimulator.Problem(model))
        {
            case ShiftProblem.None:
                return true;
            case ShiftProblem.TooLarge:
                IsTooLarge(calculation);
                return false;
            default:
                calculation.BlockOutside("shift.stop_chance");
                return false;
        }
    }

    private static Note Counted(string id, int count) => new(id, [new NoteArgument("count", null, count, string.Empty)]);
}
