using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Supply;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Buffers of a paver that lays two courses hot-on-hot from one feeder.</summary>
internal static class BufferQuantities
{
    private static readonly Define Paver = new(ElementKind.Paver);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Paver.Number("lower_buffer_capacity", Shape.Mass, "Capacity of the buffer for the lower course.", (c, e) =>
            StatedOf(c, e, pair => pair.Lower, "capacity", buffer => buffer.Capacity)),
        Paver.Number("lower_buffer_needed", Shape.Mass, "Capacity that the buffer for the lower course needs while the upper mix is fed.", Needed, new Method(
            "Cb = B0 + Rb · (2c + 2e + Ps/Q) + Pb − Rb · (e + Pb/Q)", Sources.TwoMixes, "a worst-case bound; a simulation of the haul decides")) with { DecidedBy = SimulationQuantities.StopChance },
        Paver.Number("upper_call", Shape.Mass, "Level of the upper buffer at which its next load is called.", (c, e) =>
            StatedOf(c, e, pair => pair.Upper, "call", buffer => buffer.Call)),
        Paver.Number("upper_call_lowest", Shape.Mass, "Lowest level at which the call for the upper mix comes in time.", (c, e) =>
            CallEnd(c, e, highest: false), Call("Sl = S0 + Rs · (e + Pb/Q + c + e)")) with { DecidedBy = SimulationQuantities.StopChance },
        Paver.Number("upper_call_highest", Shape.Mass, "Highest level at which a called load of the upper mix fits when it arrives.", (c, e) =>
            CallEnd(c, e, highest: true), Call("Sh = Cs − Ps + Rs · (c + e + Ps/Q)")) with { DecidedBy = SimulationQuantities.StopChance },
        Paver.Number("call_band", Shape.Mass, "Width of the band of workable call levels; below zero the load of the upper mix is too large.", Band, Call("B = Sh − Sl")) with { DecidedBy = SimulationQuantities.StopChance },
        Paver.Number("upper_load", Shape.Mass, "Load of the upper mix.", UpperLoad, new Method(
            "Ps = largest payload of the trucks that carry the mix", Sources.Definition, "trucks that name the mix")),
        Paver.Number("room_for_upper_load", Shape.Mass, "Largest load of the upper mix that can be fed without a break: into the buffer at its lowest level while the paver lays.", UpperLoadFits, new Method(
            "P = (Cs − S0) / (1 − Rs / Q)", Sources.Balance, "a feeder that is slower than the course takes any load; where trucks may unload in parts, too")),
    ];

    private static Method Call(string expression) => new(expression, Sources.TwoMixes, "a worst-case bound; a simulation of the haul decides");

    private static Answer NoPair() => Answer.None(AbsenceReason.NotComputable, Note.Of(NoteIds.NoPair));

    private static Answer StatedOf(
        QuantityContext context,
        Element element,
        Func<(Course Lower, Course Upper), Course> pick,
        string key,
        Func<MixBuffer, Measure<Mass>?> read)
    {
        var paver = (Paver)element.Subject!;
        if (PlanView.Of(context).PairOf(paver) is not { } pair)
        {
            return NoPair();
        }

        var course = pick(pair).Id;
        var buffer = paver.Buffers.FirstOrDefault(buffer => PlanView.Same(buffer.Course, course));
        return Answers.Measure(buffer is null ? null : read(buffer), new InputReference(element.Address, $"buffers.{course}.{key}"));
    }

    /// <summary>A level or capacity of a buffer, kg; missing under its key.</summary>
    private static double Level(
        Calculation calculation, Paver paver, Course course, string symbol, string key, Func<MixBuffer, Measure<Mass>?> read)
    {
        var buffer = paver.Buffers.FirstOrDefault(buffer => PlanView.Same(buffer.Course, course.Id));
        return calculation.Stated(symbol, buffer is null ? null : read(buffer), $"paver:{paver.Id}", $"buffers.{course.Id}.{key}");
    }

    private static (FedMix Lower, FedMix Upper, FeederTiming Timing) Inputs(Calculation calculation, (Course Lower, Course Upper) pair)
    {
        var lower = FeederQuantities.Fed(calculation, pair.Lower, "Rb", "Pb");
        var upper = FeederQuantities.Fed(calculation, pair.Upper, "Rs", "Ps");
        if (calculation.Context.Plan.Supply?.Feeder is { } feeder)
        {
            return (lower, upper, FeederQuantities.Timing(calculation, feeder, changes: true));
        }

        calculation.Miss("supply", "feeder");
        return (lower, upper, new FeederTiming(0, 0, 0));
    }

    private static Answer Needed(QuantityContext context, Element element)
    {
        var paver = (Paver)element.Subject!;
        if (PlanView.Of(context).PairOf(paver) is not { } pair)
        {
            return NoPair();
        }

        var calculation = new Calculation(context);
        var (lower, upper, timing) = Inputs(calculation, pair);
        var lowest = Level(calculation, paver, pair.Lower, "B0", "lowest", buffer => buffer.Lowest);
        return calculation.Result(
            "paver.lower_buffer_needed", "Cb", "Cb = B0 + Rb · (2c + 2e + Ps/Q) + Pb − Rb · (e + Pb/Q)",
            TwoMixFeeding.LowerBufferNeeded(lower, upper, timing, lowest));
    }

    private static Answer CallEnd(QuantityContext context, Element element, bool highest)
    {
        var paver = (Paver)element.Subject!;
        if (PlanView.Of(context).PairOf(paver) is not { } pair)
        {
            return NoPair();
        }

        var calculation = new Calculation(context);
        var (lower, upper, timing) = Inputs(calculation, pair);
        if (highest)
        {
            var capacity = Level(calculation, paver, pair.Upper, "Cs", "capacity", buffer => buffer.Capacity);
            return calculation.Result("paver.upper_call_highest", "Sh", "Sh = Cs − Ps + Rs · (c + e + Ps/Q)",
                TwoMixFeeding.CallHighest(upper, timing, capacity));
        }

        var lowest = Level(calculation, paver, pair.Upper, "S0", "lowest", buffer => buffer.Lowest);
        return calculation.Result("paver.upper_call_lowest", "Sl", "Sl = S0 + Rs · (e + Pb/Q + c + e)",
            TwoMixFeeding.CallLowest(lower, upper, timing, lowest));
    }

    private static Answer UpperLoad(QuantityContext context, Element element)
    {
        if (PlanView.Of(context).PairOf((Paver)element.Subject!) is not { } pair)
        {
            return NoPair();
        }

        var calculation = new Calculation(context);
        return calculation.Result("paver.upper_load", "Ps", "Ps = largest payload", FeederQuantities.Fed(calculation, pair.Upper, "Rs", "Ps").Payload);
    }

    // S0 + P − Rs · P / Q ≤ Cs while the load is fed at the rate Q.
    private static Answer UpperLoadFits(QuantityContext context, Element element)
    {
        var paver = (Paver)element.Subject!;
        if (PlanView.Of(context).PairOf(paver) is not { } pair)
        {
            return NoPair();
        }

        var calculation = new Calculation(context);
        var (_, upper, timing) = Inputs(calculation, pair);
        var room = Level(calculation, paver, pair.Upper, "Cs", "capacity", buffer => buffer.Capacity)
            - Level(calculation, paver, pair.Upper, "S0", "lowest", buffer => buffer.Lowest);
        var kept = 1 - (upper.Demand / timing.Rate);
        var any = context.Plan.Supply?.Feeder?.UnloadingInParts == true || kept <= 0;
        return calculation.Result("paver.room_for_upper_load", "P", "P = (Cs − S0) / (1 − Rs / Q)", any ? Math.Max(room, upper.Payload) : room / kept);
    }

    private static Answer Band(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var highest = calculation.Quantity("Sh", "paver.upper_call_highest", element);
        var lowest = calculation.Quantity("Sl", "paver.upper_call_lowest", element);
        return calculation.Result("paver.call_band", "B", "B = Sh − Sl", highest - lowest);
    }
}
