using System.Globalization;
using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using PlanOpening = Laygate.Model.Plans.Opening;

namespace Laygate.Engineering.Quantities;

/// <summary>Skid resistance of the fresh surface, and opening to traffic.</summary>
internal static class FrictionAndOpeningQuantities
{
    private static readonly Define Friction = new(ElementKind.EarlyFriction);
    private static readonly Define Opening = new(ElementKind.Opening);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Friction.StatedFlag<EarlyFriction>("grit", "grit", "Whether grit is spread.", friction => friction.Grit),
        Friction.Flag("temporary_limit_stated", "Whether a temporary speed limit is stated.", (_, e) => Answers.Follows(
            e.Subject is EarlyFriction { TemporaryLimit: not null }, new InputReference(e.Address, "temporary_limit"))),
        Friction.Stated<EarlyFriction>("temporary_limit", Shape.RoadSpeed, "temporary_limit", "Temporary speed limit on the fresh surface.", friction => friction.TemporaryLimit),
        Friction.Presence("action", "What is done for the skid resistance of the fresh surface: grit with a rate, signs, or a temporary speed limit.", Action),
        Friction.Stated<EarlyFriction>("rate", Shape.Spread, "rate", "Mass of grit per area.", friction => friction.Rate),
        Friction.Flag("rate_stated", "Whether the plan states how much grit is spread.", (_, e) => Answers.Follows(
            e.Subject is EarlyFriction { Rate: not null }, new InputReference(e.Address, "rate"))),
        Friction.Flag("on_mastic_asphalt", "Whether the uppermost course is mastic asphalt, which takes several times as much grit.", (c, _) =>
            Answers.Follows(PlanView.Of(c).Passes is [.., var pass] && PlanView.Of(c).MixOf(pass.Top)?.Kind == MixKind.MasticAsphalt)),
        Friction.Category("grit_size", [], "Size of the grit, as its specification writes it.", (_, e) =>
            Answers.Word((e.Subject as EarlyFriction)?.GritSize, new InputReference(e.Address, "grit_size"))),
        Friction.Stated<EarlyFriction>("grit_by", Shape.Minutes, "grit_by", "Minutes behind the last screed at which the last grit is spread.", friction => friction.GritBy),
        Friction.Number("grit_window", Shape.Minutes, "Minutes behind the last screed until the skin is too cold to take grit.", GritAndOpeningCooling.GritWindow, CoolingMethods.GritWindow),
        Opening.Presence("stated", "When the surface is opened: a time, or a temperature with its place.", Stated),
        Opening.Number("time_after_laying", Shape.Hours, "Time from the last metre laid to opening.", TimeAfterLaying, new Method(
            "stated, else T = opening − end of laying", Sources.Definition, "needs the end of the shift where a moment is stated; the end of laying is that of the shift, or the last metre where the plan lays it later")),
        Opening.Number("soft_until", Shape.Minutes, "Minutes from the last metre laid until the whole hot body is below the opening temperature; its upper end is the slow one.", GritAndOpeningCooling.SoftUntil, CoolingMethods.SoftUntil),
        Opening.Number("air_lowest_before", Shape.Temperature, "Lowest stated air temperature between the last metre laid and the opening.", GritAndOpeningCooling.AirLowestBefore, new Method(
            "least of the stated hours", Sources.Definition, "from the hour of the last metre to the opening, as far as hours are stated: hours that are not stated can only lower it")),
        Opening.StatedFields<PlanOpening>("released_by", "released_by", "Who opens the surface.", opening =>
            [("released_by", Answers.Given(opening?.ReleasedBy))]),
        Opening.Moment("at", "Planned moment of opening.", At),
        Opening.StatedTemperature<PlanOpening>("temperature", "below.value", "Temperature below which the surface is opened.", opening => (opening.Below?.Value, opening.Below?.Place)),
    ];

    private static Answer Action(QuantityContext context, Element element)
    {
        var friction = element.Subject as EarlyFriction;
        var input = new InputReference(element.Address, string.Empty);
        if (friction is { Grit: true, Rate: not null } or { Signs: true } or { TemporaryLimit: not null })
        {
            return new() { Value = new PresenceValue(PresenceLevel.Stated, []), Input = input };
        }

        return friction?.Grit == true
            ? new() { Value = new PresenceValue(PresenceLevel.Thin, ["rate"]), Input = new InputReference(element.Address, "grit") }
            : new() { Value = new PresenceValue(PresenceLevel.Absent, ["grit", "signs", "temporary_limit"]), Input = input };
    }

    private static Answer Stated(QuantityContext context, Element element)
    {
        var opening = element.Subject as PlanOpening;
        var input = new InputReference(element.Address, string.Empty);
        if (opening is { At: not null } or { After: not null } or { Below: { Value: not null, Place: not null } })
        {
            return new() { Value = new PresenceValue(PresenceLevel.Stated, []), Input = input };
        }

        return opening?.Below?.Value is not null
            ? new() { Value = new PresenceValue(PresenceLevel.Thin, ["below.place"]), Input = new InputReference(element.Address, "below") }
            : new() { Value = new PresenceValue(PresenceLevel.Absent, ["at", "after", "below"]), Input = input };
    }

    private static Answer TimeAfterLaying(QuantityContext context, Element element)
    {
        var opening = context.Plan.Opening;
        if (opening?.After is { } after)
        {
            return Answers.Measure(after, new InputReference(element.Address, "after"));
        }

        var calculation = new Calculation(context);
        if (opening?.At is null)
        {
            calculation.Miss(element.Address, "after");
        }

        var clock = PlanView.Of(context).Clock;
        calculation.Miss(opening?.At is null ? [] : ShiftTimes.Missing(context.Plan.Shift));
        var seconds = opening?.At is { } at && LayingEnd.Of(context) is { } end ? (clock.At(at) - end).TotalSeconds : double.NaN;
        return calculation.Result("opening.time_after_laying", "T", "T = opening − end of laying", seconds);
    }

    private static Answer At(QuantityContext context, Element element)
    {
        var clock = PlanView.Of(context).Clock;
        if (context.Plan.Opening?.At is { } at)
        {
            return Answers.At(clock.At(at), new InputReference(element.Address, "at"));
        }

        if (context.Plan.Opening?.After is not { } after)
        {
            return Answer.Missing(new InputReference(element.Address, "at"));
        }

        var input = new InputReference(element.Address, "after");
        return LayingEnd.Of(context) is not { } end ? Answer.Missing(ShiftTimes.Missing(context.Plan.Shift))
            : end.Year < 9000 && double.IsFinite(after.Si) && Math.Abs(after.Si) < 1e9 ? Answers.At(end.AddSeconds(Math.Round(after.Si, 3)), input, Origin.Computed)
            : Answer.None(AbsenceReason.OutsideRange, Outside(after), input);
    }

    private static Note Outside(IMeasure after) => Note.Of(
        NoteIds.OutsideFormula, ("quantity", "opening.at"), ("numbers", string.Create(CultureInfo.InvariantCulture, $"after {after.Number:G6} {after.Unit.Spelling}")), ("range", "an opening within thirty years"));
}
