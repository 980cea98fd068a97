using Laygate.Engineering.Formulas;
using Laygate.Engineering.Mat;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Order of the zones behind the screed, and vibration within the range in which the mix is tender.</summary>
internal static class RollingOrder
{
    private static readonly Define Phase = new(ElementKind.Phase);
    private static readonly Define Roller = new(ElementKind.Roller);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Phase.Flag("follows_another", "Whether a phase of an earlier kind is planned and both zones begin where the plan says.", (c, e) => Answers.Follows(
            Earlier(c, (Phase)e.Subject!).Any() && ((Phase)e.Subject!).ZoneFrom is not null, new InputReference(e.Address, "zone_from"))),
        Phase.Number("behind_earlier_phase", Shape.Length, "Distance by which its zone begins behind that of the last phase of an earlier kind; below zero where it begins in front of it.", Behind, new Method(
            "Δx = start of the zone − latest start of the earlier ones", Sources.Definition, "initial before main before finish")),
        Roller.Flag("tender_range_stated", "Whether the mix of the top course states both ends of the range of skin temperature in which it is tender.", TenderStated),
        Roller.Number("vibration_while_tender", Shape.Share, "Share of its vibration at a point while the skin is within the tender range that the mix states.", WhileTender, new Method(
            "time with T1 ≤ T(skin) < T2 / time of vibration", CoolingMethods.UnderVibration.Source, "vibrated passes are taken as the first ones of the phase, evenly spread over its zone; moment of laying at which it is most")),
    ];

    private static IEnumerable<Phase> Earlier(QuantityContext context, Phase phase) => (context.Plan.Rolling?.Phases ?? [])
        .Where(other => other is { Kind: not null, ZoneFrom: not null } && other.Kind < phase.Kind);

    private static Answer Behind(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var phase = (Phase)element.Subject!;
        var own = calculation.Stated("x", phase.ZoneFrom, element.Address, "zone_from");
        var latest = Earlier(context, phase).Select(other => calculation.Stated("x0", other.ZoneFrom, $"phase:{other.Id}", "zone_from")).DefaultIfEmpty(double.NaN).Max();
        return calculation.Result("phase.behind_earlier_phase", "Δx", "Δx = start of the zone − latest start of the earlier ones", own - latest);
    }

    private static Answer TenderStated(QuantityContext context, Element element)
    {
        var top = PlanView.Of(context).Passes is [.., var pass] ? pass.Top : null;
        var tender = top is null ? null : PlanView.Of(context).MixOf(top)?.Tender;
        return Answers.Follows(
            tender is { Lowest: not null, Highest: not null, Place: null or Place.Skin }, tender is null ? null : new InputReference($"mix:{top!.Mix}", "tender"));
    }

    private static Answer WhileTender(QuantityContext context, Element element) => RollerCooling.WhileVibrating(context, element, (calculation, pass, roller) =>
    {
        MatLimits.TenderRange(calculation, pass.Top);
        return CoolingInputs.Gather(calculation, pass, MatQuestion.Fast) ?? CoolingInputs.Result(
            calculation, "roller.vibration_while_tender", "p", "p = time with T1 ≤ T(skin) < T2 / time of vibration",
            MatCooling.Of(context).While(pass).Find($"tender {roller.Id}"), MatCooling.LongestRolling);
    });
}
