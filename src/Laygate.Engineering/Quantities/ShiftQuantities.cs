using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Engineering.Timeline;

namespace Laygate.Engineering.Quantities;

/// <summary>The working period.</summary>
internal static class ShiftQuantities
{
    private static readonly Define Shift = new(ElementKind.Shift);

    private static readonly string[] Months =
    [
        "january", "february", "march", "april", "may", "june",
        "july", "august", "september", "october", "november", "december",
    ];

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Shift.Category("month", Months, "Month in which the shift starts.", (c, e) =>
            Answers.Word(c.Plan.Shift?.Date is { } date ? Months[date.Month - 1] : null, new InputReference(e.Address, "date"))),
        Shift.Moment("laying_start", "Start of laying.", (c, e) => At(c, PlanView.Of(c).Clock.Start, "start", end: false)),
        Shift.Moment("laying_end", "End of laying.", (c, e) => At(c, PlanView.Of(c).Clock.End, "end", end: true)),
        Shift.Number("duration", Shape.Hours, "Time from start to end of laying.", Duration, new Method(
            "T = end − start", "definition of the quantity", "an end at or before the start counts as the next day; a clock change counts when its offset is stated")),
        Shift.Number("time_needed", Shape.Hours, "Time from the start of laying to the last metre, over all runs: order, speed, availability, planned stops and moves; nothing by chance.", TimeNeeded, new Method(
            "Tn = greatest over the trains of Σ (L / (v · a) + moves + stops)", Sources.Definition, "mix is always there: what is late is the matter of the simulated shift; an availability that is not stated counts as 100 %")),
        Shift.Moment("last_metre", "Moment at which the last metre is laid when nothing varies: the time needed, or later where mix comes too late for it.", LastMetre),
    ];

    private static Answer At(QuantityContext context, DateTimeOffset? at, string key, bool end)
    {
        if (at is not { } moment)
        {
            return Answer.Missing(ShiftTimes.Missing(context.Plan.Shift, end));
        }

        var answer = Answers.At(moment, new InputReference("shift", key));
        return PlanView.Of(context).Clock.HasZone ? answer : answer with { Note = Note.Of(NoteIds.NoZone) };
    }

    private static Answer TimeNeeded(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var timeline = new TimelineReader(calculation).Read();
        foreach (var strip in timeline?.Strips ?? [])
        {
            calculation.Show("L", "run.length", $"run:{strip.Run.Id}", strip.Length, strip.Run.From!.Unit);
            calculation.Step($"t {strip.Run.Id}", "t = start of the run", strip.Begins, "min", "min");
        }

        return calculation.Result("shift.time_needed", "Tn", "Tn = end of the last run − start", timeline?.Finish);
    }

    private static Answer LastMetre(QuantityContext context, Element element)
    {
        // Where mix comes too late even when nothing varies, the last metre waits for it.
        var answer = context.Get("shift.time_needed", element);
        return answer.Value is not NumberValue number ? answer
            : ShiftTimeline.Of(context)?.At(Math.Max(number.Si, ShiftSimulation.Of(context).LastMetre ?? 0)) is { } at ? Answers.At(at, new InputReference("shift", "start"), Origin.Computed)
            : Answer.Missing(new InputReference("shift", "start"));
    }

    private static Answer Duration(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var clock = PlanView.Of(context).Clock;
        calculation.Miss(ShiftTimes.Missing(context.Plan.Shift));
        var seconds = (clock.End - clock.Start)?.TotalSeconds;
        return calculation.Result("shift.duration", "T", "T = end − start", seconds > 0 ? seconds : null);
    }
}
