using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Rolling;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Phases of the rolling: strips, output and time.</summary>
internal static class PhaseQuantities
{
    private static readonly Define Phase = new(ElementKind.Phase);

    /// <summary>Words for how the rollers of a phase compact.</summary>
    internal static IReadOnlyList<string> Modes { get; } = [.. Words.Of<RollingMode>(), "mixed"];

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Phase.StatedWord<Phase, PhaseKind>("kind", "kind", "Part of the rolling.", phase => phase.Kind),
        Phase.StatedCount<Phase>("passes", "passes", "How often every point of the mat is rolled in this phase.", phase => phase.Passes),
        Phase.Number("strips", Shape.None, "Side-by-side strips on the widest mat: the most over the rollers of the phase.", StripsOf, new Method(
            "k = ⌈(W + hl + hr − o) / (b − o)⌉", Sources.Strips, "near a whole number sensitive to overlap and edges")),
        Phase.Number("speed_it_follows", Shape.PaverSpeed, "Paver speed that the rollers of the phase can follow together.", Follows, new Method(
            "v = Σ E · vr / (k · n)", Sources.Balance, "in the long run; spares and plates do not count")),
        Phase.Number("zone_length", Shape.Length, "Length of the zone behind the screed.", ZoneLength, new Method(
            "L = to − from", Sources.Definition, "needs both distances")),
        Phase.Number("done_by", Shape.Minutes, "Minutes after the last screed by which the phase is done.", DoneBy, new Method(
            "stated, else t = x / v", Sources.Balance, "the slowest paver counts")),
        Phase.Number("zone_passed", Shape.Minutes, "Minutes after the last screed at which the end of the zone passes a point.", ZonePassed, new Method(
            "t = x / v", Sources.Balance, "the slowest paver counts")),
        Phase.Number("last_pass_from", Shape.Minutes, "Minutes after the last screed before which the last pass cannot come where the zone ends.", LastPassFrom, new Method(
            "t = ts + (n − 1) · (te − ts) / n, with te = x / v", Sources.Balance, "the passes share the time of the zone evenly; the slowest paver counts")),
        Phase.Number("window_length", Shape.Length, "Length that is laid while the shortest densification window of the courses lasts.", PhaseCooling.WindowLength, new Method(
            "L = v · tw", Sources.Balance, "the slowest paver counts; low and high by those of the window")),
        Phase.Number("skin_at_first_pass", Shape.Temperature, "Skin at the earliest moment of the first pass of the phase.", PhaseCooling.SkinAtFirst, CoolingMethods.AtPass, Place.Skin),
        Phase.Number("skin_at_last_pass", Shape.Temperature, "Skin by the time the last pass of the phase has been made everywhere.", PhaseCooling.SkinAtLast, CoolingMethods.AtPass, Place.Skin),
        Phase.Category("mode", Modes, "How the rollers of the phase compact; mixed where they differ or change.", Mode),
    ];

    /// <summary>Minutes after the last screed by which a phase is done, s.</summary>
    internal static double DoneBySeconds(Calculation calculation, Phase phase)
    {
        var address = $"phase:{phase.Id}";
        return phase.DoneWithin is { } stated
            ? calculation.Stated("t", stated, address, "done_within")
            : ZoneTime(calculation, calculation.Stated("x", phase.ZoneTo, address, "zone_to"));
    }

    /// <summary>Time after the last screed at which a distance behind it is reached, s.</summary>
    internal static double ZoneTime(Calculation calculation, double distance)
    {
        var slowest = SlowestPaver(calculation);
        return RollerOutput.ZoneTime(distance, slowest) ?? double.NaN;
    }

    /// <summary>Speed of the slowest paver, m/s.</summary>
    internal static double SlowestPaver(Calculation calculation)
    {
        var pavers = calculation.Context.Plan.Pavers;
        return pavers.Count == 0
            ? PaverQuantities.SpeedOf(calculation, null)
            : pavers.Min(paver => PaverQuantities.SpeedOf(calculation, paver));
    }

    /// <summary>Rollers of a phase that count for its output.</summary>
    internal static IEnumerable<Roller> Working(QuantityContext context, string phase) => (context.Plan.Rolling?.Rollers ?? [])
        .Where(roller => PlanView.Same(roller.Phase, phase) && roller.Spare != true && roller.Kind != RollerKind.Plate);

    private static List<Roller> Rollers(Calculation calculation, Element element)
    {
        var rollers = Working(calculation.Context, element.Id).ToList();
        if (rollers.Count == 0)
        {
            calculation.Miss("plan", "rolling.rollers");
        }

        return rollers;
    }

    private static Answer StripsOf(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        int? most = null;
        foreach (var roller in Rollers(calculation, element))
        {
            var strips = RollerStrips.Most(calculation, roller);
            most = most is null || strips > most ? strips : most;
        }

        return calculation.Result("phase.strips", "k", "k = ⌈(W + hl + hr − o) / (b − o)⌉", most);
    }

    private static Answer Follows(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var phase = (Phase)element.Subject!;
        var rollers = Rollers(calculation, element);
        var passes = calculation.Stated("n", phase.Passes, element.Address, "passes");
        var zone = Zone(calculation, phase);
        var reversal = RollerTrain.Reversal(calculation);
        var sum = rollers.Sum(roller => Follows(calculation, roller, zone, reversal, passes));
        return calculation.Result("phase.speed_it_follows", "v", "v = Σ E · vr / (k · n)", sum);
    }

    /// <summary>Paver speed that one roller can follow, m/s.</summary>
    internal static double Follows(Calculation calculation, Roller roller, double zone, double reversal, int passes)
    {
        var address = $"roller:{roller.Id}";
        var speed = calculation.Stated("vr", roller.Speed, address, "speed");
        var strips = RollerStrips.Most(calculation, roller);
        var efficiency = RollerTrain.Efficiency(calculation, roller, zone, reversal);
        if (strips is not { } k || efficiency is not { } share)
        {
            return double.NaN;
        }

        calculation.Step($"k({roller.Id})", "k = ⌈(W + hl + hr − o) / (b − o)⌉", k, string.Empty, string.Empty);
        calculation.Step($"E({roller.Id})", "E = (L/vr) / (L/vr + tr)", share, string.Empty, string.Empty);
        return RollerOutput.SpeedItFollows(share, speed, k, passes) ?? double.NaN;
    }

    /// <summary>Length of the zone of a phase, m.</summary>
    internal static double Zone(Calculation calculation, Phase phase) =>
        calculation.Stated("to", phase.ZoneTo, $"phase:{phase.Id}", "zone_to") - calculation.Stated("from", phase.ZoneFrom, $"phase:{phase.Id}", "zone_from");

    private static Answer ZonePassed(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var distance = calculation.Stated("x", ((Phase)element.Subject!).ZoneTo, element.Address, "zone_to");
        return calculation.Result("phase.zone_passed", "t", "t = x / v", ZoneTime(calculation, distance));
    }

    private static Answer LastPassFrom(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var phase = (Phase)element.Subject!;
        var passes = calculation.Stated("n", phase.Passes, element.Address, "passes");
        var start = ZoneTime(calculation, calculation.Stated("from", phase.ZoneFrom, element.Address, "zone_from"));
        var end = ZoneTime(calculation, calculation.Stated("to", phase.ZoneTo, element.Address, "zone_to"));
        return calculation.Result("phase.last_pass_from", "t", "t = ts + (n − 1) · (te − ts) / n", PassTimes.LatestOf(
            start, end, passes, passes - 1));
    }

    private static Answer ZoneLength(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var zone = Zone(calculation, (Phase)element.Subject!);
        return calculation.Result("phase.zone_length", "L", "L = to − from", zone > 0 ? zone : null);
    }

    private static Answer DoneBy(QuantityContext context, Element element)
    {
        var phase = (Phase)element.Subject!;
        if (phase.DoneWithin is { } stated)
        {
            return Answers.Measure(stated, new InputReference(element.Address, "done_within"));
        }

        var calculation = new Calculation(context);
        return calculation.Result("phase.done_by", "t", "t = x / v", DoneBySeconds(calculation, phase));
    }

    private static Answer Mode(QuantityContext context, Element element)
    {
        var rollers = Working(context, element.Id).ToList();
        if (rollers.Count == 0)
        {
            return Answer.Missing(new InputReference("plan", "rolling.rollers"));
        }

        var silent = rollers.Where(roller => roller.Mode is null).Select(roller => new InputReference($"roller:{roller.Id}", "mode")).ToArray();
        if (silent.Length > 0)
        {
            return Answer.Missing(silent);
        }

        var passes = ((Phase)element.Subject!).Passes;
        var first = rollers[0].Mode;
        var mixed = rollers.Exists(roller => roller.Mode != first || (roller.Mode != RollingMode.Static && roller.PassesInMode < passes));
        return Answers.Follows(mixed ? "mixed" : Words.Of(first!.Value), new InputReference($"roller:{rollers[0].Id}", "mode"));
    }
}
