using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>How the moments that a plan states follow each other: forecast, spraying, closure, set-up, laying.</summary>
internal static class TimeChain
{
    private static readonly Define Coat = new(ElementKind.BondCoat);
    private static readonly Define Shift = new(ElementKind.Shift);
    private static readonly Define Weather = new(ElementKind.Weather);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Coat.Flag("sprayed_stated", "Whether the plan states when the coat is sprayed.", (_, e) => Answers.Follows(
            e.Subject is BondCoat { Sprayed: not null }, new InputReference(e.Address, "sprayed"))),
        Coat.Number("time_before_laying", Shape.Minutes, "Time from spraying to the start of laying; below zero where laying begins first.", BeforeLaying, new Method(
            "Δt = start of laying − spraying", Sources.Definition, "needs date and start of the shift")),
        Shift.Flag("set_up_in_closure", "Whether the plan states both how long set-up takes and when the closure begins.", (c, _) => Answers.Follows(
            c.Plan is { Shift.SetUp: not null, Site.Closure.From: not null }, new InputReference("shift", "set_up"))),
        Shift.Number("closed_before_set_up", Shape.Minutes, "Time from the beginning of the closure to the start of set-up; below zero where set-up begins in traffic.", ClosedBefore, new Method(
            "Δt = start of laying − set-up − beginning of the closure", Sources.Definition, "needs date and start of the shift")),
        Shift.Flag("zone_at_place", "Whether the plan states the longitude of the place, against which its zone is held; not known without the zone.", (c, _) =>
            c.Plan.Location?.Longitude is null ? Answers.Follows(flag: false, new InputReference("location", "longitude"))
            : c.Plan.Shift?.Zone is null ? Answer.Missing(new InputReference("shift", "zone"))
            : Answers.Follows(flag: true, new InputReference("shift", "zone"))),
        Shift.Number("clock_off_sun", Shape.Hours, "How far the clock is from the mean sun of the place, ahead or behind.", ClockOffSun, new Method(
            "Δt = |zone − λ/15°|, by whole days the least", Sources.Definition, "λ: longitude, east positive")),
        Weather.Flag("last_look_stated", "Whether the plan states when the forecast was last looked at.", (_, e) => Answers.Follows(
            e.Subject is Weather { LastLook: not null }, new InputReference(e.Address, "last_look"))),
        Weather.Number("forecast_age", Shape.Hours, "Age of the forecast when laying starts.", ForecastAge, new Method(
            "Δt = start of laying − last look", Sources.Definition, "needs date and start of the shift")),
    ];

    private static Answer BeforeLaying(QuantityContext context, Element element) => SinceThen(
        context, ((BondCoat)element.Subject!).Sprayed, new InputReference(element.Address, "sprayed"), "bond-coat.time_before_laying", "Δt = start of laying − spraying");

    private static Answer ForecastAge(QuantityContext context, Element element) => SinceThen(
        context, context.Plan.Weather?.LastLook, new InputReference(element.Address, "last_look"), "weather.forecast_age", "Δt = start of laying − last look");

    private static Answer ClosedBefore(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var setUp = calculation.Stated("Ts", context.Plan.Shift?.SetUp, "shift", "set_up");
        return SinceThen(
            context, context.Plan.Site?.Closure?.From, new InputReference("site", "closure.from"),
            "shift.closed_before_set_up", "Δt = start of laying − set-up − beginning of the closure", calculation, setUp);
    }

    private static Answer SinceThen(
        QuantityContext context, Moment? then, InputReference input, string quantity, string expression, Calculation? under = null, double less = 0)
    {
        var calculation = under ?? new Calculation(context);
        calculation.Miss(ShiftTimes.Missing(context.Plan.Shift, end: false));
        if (then is null)
        {
            calculation.Miss([input]);
        }

        var clock = PlanView.Of(context).Clock;
        return calculation.Result(quantity, "Δt", expression, then is { } at && clock.Start is { } start ? (start - clock.At(at)).TotalSeconds - less : null) with { Input = input };
    }

    private static Answer ClockOffSun(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var longitude = calculation.Stated("λ", context.Plan.Location?.Longitude, "location", "longitude");
        if (context.Plan.Shift?.Zone is not { } zone)
        {
            calculation.Miss("shift", "zone");
            return calculation.Stopped!;
        }

        var hours = Math.IEEERemainder(zone.TotalHours - (longitude / 15), 24);
        return calculation.Result("shift.clock_off_sun", "Δt", "Δt = |zone − λ/15°|", Math.Abs(hours) * 3600) with { Input = new InputReference("shift", "zone") };
    }
}
