using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>
/// What the simulated shift says. All values come from the same replications, which are run when the first of them is asked
/// for. Low and high are 90 % confidence limits for chances and counts of stops, else the 5 % and 95 % points of the shifts.
/// </summary>
internal static class SimulationQuantities
{
    /// <summary>Name of the chance of a stop: the last word where a worst-case relation of feeder and buffers says otherwise.</summary>
    public const string StopChance = "shift.stop_chance";

    private const string Source = "simulation of the haul by discrete events, derived here; its engine is checked against queueing theory";
    private const string Range =
        "runs of a paving train in their order with the moves between, also of two trains that share neither mix nor feeder, or lay one mix in echelon; availability as a slower paver; no breakdowns, no hand work, no traffic jams beyond the spread of the journeys; 500 shifts, above 400 loads and trucks fewer in proportion, at least 100; fixed seed";

    private static readonly Define Shift = new(ElementKind.Shift);
    private static readonly Define Course = new(ElementKind.Course);
    private static readonly Define Supply = new(ElementKind.Supply);
    private static readonly Define Plant = new(ElementKind.Plant);
    private static readonly Define Trucks = new(ElementKind.Trucks);
    private static readonly Define Feeder = new(ElementKind.Feeder);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Of(Shift, "stop_chance", Shape.Share, "Chance that the paver stops at least once in the shift for want of mix.", "p = shifts with a stop / shifts", result => result.StopChance, withCause: true),
        Of(Shift, "stops_expected", Shape.None, "Stops of the paver in a shift for want of mix, on average.", "n = mean over the shifts", result => result.Stops, withCause: true),
        Of(Shift, "stop_length", Shape.Minutes, "Length of one stop for want of mix, on average; 0 where none was seen. The high end is the longest stop of a bad shift.", "t = time stopped / stops", result => result.StopLength ?? default),
        Of(Shift, "finish_chance", Shape.Share, "Chance that all is laid by the end of the shift.", "p = shifts that finish / shifts", result => result.FinishChance),
        Of(Shift, "metres_laid", Shape.Length, "Length laid in the shift.", "L = mean over the shifts", result => result.Metres),
        Of(Shift, "start_delay", Shape.Minutes, "Delay of the first metre because the loads for the start are late.", "t = mean over the shifts", result => result.StartDelay),
        Of(Supply, "committed_highest", Shape.Mass, "Most mix on the road, waiting and in buffers at one time: what may be lost when the work must stop.", "M = highest of road + waiting + buffers, looked at 121 times a shift", result => result.CommittedHighest),
        Of(Supply, "waiting_highest", Shape.None, "Most trucks that wait on site at one time.", "n = highest of each shift, mean over the shifts", result => result.QueueHighest),
        Feeder.Number("use", Shape.None, "Share of the time of laying in which the feeder is busy, as simulated.", (c, e) =>
            Answer(c, "feeder.use", "u", "u = (exchange + turning + mass / rate) / time", simulation => Widened(simulation, result => result.FeederUse)), new Method("u = (exchange + turning + mass / rate) / time", Source, Range)),
        Trucks.Number("wait_mean", Shape.Minutes, "Wait of a truck on site before it docks, on average; low and high are the 5 % and 95 % points of single waits.", (c, e) =>
            Answer(c, "trucks.wait_mean", "w", "w = mean over the trucks", simulation => OfGroup(simulation, e)), new Method("w = mean over the trucks", Source, Range)),
        Trucks.Number("wait_high", Shape.Minutes, "Wait of a truck on site that one truck in twenty exceeds.", (c, e) =>
            Answer(c, "trucks.wait_high", "w95", "w95 = 95 % point of the waits", simulation => OfGroup(simulation, e) is { } wait ? new Band(wait.High, wait.High, wait.High) : null), new Method("w95 = 95 % point of the waits", Source, Range)),
        Course.Number("left_over", Shape.Mass, "Mix of the course left over at the end, in its buffer and on trucks.", (c, e) =>
            Answer(c, "course.left_over", "M", "M = buffer + trucks", simulation => OfCourse(simulation, e)), new Method("M = buffer + trucks", Source, Range)),
        Plant.Number("stop_survived", Shape.Minutes, "Time for which the paver goes on when the plant stops in the middle of the shift and loads no more trucks.", (c, e) =>
            Answer(c, "plant.stop_survived", "t", "t = first stop for want of a mix of the plant − stop of the plant", simulation => simulation.Survived(e.Id, fromSilo: false)), new Method("t = first stop for want of a mix of the plant − stop of the plant", Source, Range)),
    ];

    private static QuantityDefinition Of(Define define, string name, Shape shape, string meaning, string expression, Func<ShiftTrains, Band> read, bool withCause = false) =>
        define.Number(name, shape, meaning, (c, e) =>
        {
            var symbol = expression[..expression.IndexOf(' ', StringComparison.Ordinal)];
            var answer = Answer(c, $"{Words.Of(e.Kind)}.{name}", symbol, expression, simulation => Widened(simulation, result => read(result)));
            return withCause && answer.Value is not null ? answer with { Note = StopNote(ShiftSimulation.Of(c)) } : answer;
        }, new Method(expression, Source, Range));

    /// <summary>What the paver waits for most when it stands; null where it never stands.</summary>
    private static Note? StopNote(ShiftSimulation simulation)
    {
        if (simulation.Result is not { } result || result.StopCauses() is not [var first, ..])
        {
            return null;
        }

        NoteArgument[] share = [new NoteArgument("share", null, Math.Round(100 * first.Share), "%")];
        if (first.Cause != StopCause.Dispatch || simulation.SentOtherwise is not { } other)
        {
            return new Note(SimulationNotes.Of(first.Cause), share);
        }

        // Only what is assumed to leave by timetable is held back: the other way is as loaded.
        return new Note(SimulationNotes.Of(first.Cause) + SimulationNotes.Assumed,
            [.. share, Chance("timetable", result), Chance("as_loaded", other)]);
    }

    private static NoteArgument Chance(string name, ShiftTrains result) => new(name, null, Math.Round(1000 * result.StopChance.Expected) / 10, "%");

    /// <summary>The band, widened to that of the shift sent the other way where the plan does not say how loads are sent.</summary>
    private static Band? Widened(ShiftSimulation simulation, Func<ShiftTrains, Band?> read)
    {
        if (simulation.Result is not { } result || read(result) is not { } band)
        {
            return null;
        }

        return simulation.SentOtherwise is { } other && read(other) is { } wide
            ? new Band(band.Expected, Math.Min(band.Low, wide.Low), Math.Max(band.High, wide.High))
            : band;
    }

    private static Answer Answer(
        QuantityContext context, string quantity, string symbol, string expression, Func<ShiftSimulation, Band?> read)
    {
        var calculation = new Calculation(context);
        if (new ShiftReader(calculation).Read() is null)
        {
            return calculation.Result(quantity, symbol, expression, null);
        }

        if (context.IsQuick)
        {
            return Quantities.Answer.None(AbsenceReason.NotComputable, Note.Of(NoteIds.QuickCheck));
        }

        var simulation = ShiftSimulation.Of(context);
        calculation.Show("shifts", "replications", "shift", simulation.Replications, null);
        if (simulation.Result is null)
        {
            ShiftReader.IsTooLarge(calculation);
        }

        var band = read(simulation);
        return calculation.Result(quantity, symbol, expression, band?.Expected, band?.Low, band?.High);
    }

    private static Band? OfGroup(ShiftSimulation simulation, Element element) => Widened(simulation, result => result.Wait(element.Id));

    private static Band? OfCourse(ShiftSimulation simulation, Element element) => Widened(simulation, result => result.LeftOver(element.Id));
}
