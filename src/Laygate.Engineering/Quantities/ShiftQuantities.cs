using Laygate.Engineering.Reading;

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

    private static Answer Duration(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var clock = PlanView.Of(context).Clock;
        calculation.Miss(ShiftTimes.Missing(context.Plan.Shift));
        var seconds = (clock.End - clock.Start)?.TotalSeconds;
        return calculation.Result("shift.duration", "T", "T = end − start", seconds > 0 ? seconds : null);
    }
}
