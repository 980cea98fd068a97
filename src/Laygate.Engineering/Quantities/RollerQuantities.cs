using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Rolling;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Rollers.</summary>
internal static class RollerQuantities
{
    private static readonly Define Roller = new(ElementKind.Roller);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Roller.StatedWord<Roller, RollerKind>("kind", "kind", "Kind of roller.", roller => roller.Kind),
        Roller.StatedWord<Roller, RollingMode>("mode", "mode", "How it compacts.", roller => roller.Mode),
        Roller.Stated<Roller>("mass", Shape.Mass, "mass", "Mass.", roller => roller.Mass),
        Roller.Stated<Roller>("drum_width", Shape.Length, "drum_width", "Width of the drum, or over the tyres.", roller => roller.DrumWidth),
        Roller.Stated<Roller>("drum_diameter", Shape.Length, "drum_diameter", "Diameter of the drum.", roller => roller.DrumDiameter),
        Roller.Stated<Roller>("speed", Shape.RoadSpeed, "speed", "Speed while rolling.", roller => roller.Speed),
        Roller.Number("impact_spacing", Shape.Thickness, "Distance between two impacts of the vibrating drum.", ImpactSpacing, new Method(
            "s = vr / f", Sources.Definition, "speed and frequency above zero")),
        Roller.Number("strips", Shape.None, "Side-by-side strips that it needs on the widest mat.", RollerTrain.Strips, new Method(
            "k = ⌈(W + hl + hr − o) / (b − o)⌉", Sources.Strips, "near a whole number sensitive to overlap and edges")),
        Roller.Number("efficiency", Shape.Share, "Share of its time in which it rolls, when it reverses at both ends of its zone.", RollerTrain.EfficiencyOf, new Method(
            "E = (L/vr) / (L/vr + tr)", Sources.Balance, "zone and speed above zero; waiting and breaks do not count")),
        Roller.Number("effective_speed", Shape.RoadSpeed, "Speed at which it gets on, reversals counted.", RollerTrain.EffectiveSpeed, new Method(
            "ve = E · vr", Sources.Balance, "as efficiency")),
        Roller.Number("speed_it_follows", Shape.PaverSpeed, "Paver speed that it could follow alone.", RollerTrain.Follows, new Method(
            "v = E · vr / (k · n)", Sources.Balance, "in the long run")),
        Roller.Number("linear_load", Shape.LineLoad, "Static load of the heavier drum per width.", RollerTrain.LinearLoad, new Method(
            "stated, else p = s · m · g / b", Sources.Definition, "computed for tandem rollers only, with the share of one drum; others must state it")),
        Roller.Number("passes_vibrated", Shape.None, "Passes that it vibrates over a point.", RollerTrain.PassesVibrated, new Method(
            "n = passes in this mode, else those of the phase", Sources.Definition, "0 in another mode and on rubber tyres")),
        Roller.Number("mid_depth_while_vibrating", Shape.Temperature, "Lowest temperature in the middle of a course by the time its last vibrated pass has been made everywhere.", RollerCooling.MidDepth, CoolingMethods.AtPass, Place.MidDepth),
        Roller.Number("core_skin_difference", Shape.Difference, "Largest difference between core and skin while it vibrates on a tender skin.", RollerCooling.CoreSkin, CoolingMethods.UnderVibration),
        Roller.Number("thinnest_course", Shape.Thickness, "Smallest thickness of a course under its drum: the top course of each hot body.", ThinnestCourse, new Method(
            "least of the smallest thicknesses", Sources.Definition, "as the smallest thickness of a course")),
        Roller.Flag("on_pair", "Whether it rolls two courses laid hot-on-hot.", (c, _) => Answers.Follows(CourseQuantities.Pairs(c).Any())),
        Roller.Flag("binder_modified", "Whether any course that it rolls has a modified binder.", BinderModified),
        Roller.Flag("on_bridge", "Whether it rolls on a bridge deck.", OnBridge),
        Roller.Flag("is_spare", "Whether it stands by as a spare: stated, or in no phase.", IsSpare),
        Roller.StatedFields<Roller>("supplies", "water_and_fuel", "Water and fuel, parking off the hot mat, and breaks.", roller =>
        [
            ("water_and_fuel", Answers.Given(roller?.WaterAndFuel)),
            ("parking", Answers.Given(roller?.Parking)),
            ("breaks", Answers.Given(roller?.Breaks)),
        ]),
    ];

    private static Answer ImpactSpacing(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var roller = (Roller)element.Subject!;
        var speed = calculation.Stated("vr", roller.Speed, element.Address, "speed");
        var frequency = calculation.Stated("f", roller.Frequency, element.Address, "frequency");
        return calculation.Result("roller.impact_spacing", "s", "s = vr / f", RollerOutput.ImpactSpacing(
            speed, frequency));
    }

    private static Answer ThinnestCourse(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var view = PlanView.Of(context);
        var tops = view.Passes.Select(pass => calculation.Quantity(
            "t", "course.thickness_lowest", view.Of(ElementKind.Course, pass.Top.Id)));
        return calculation.Result("roller.thinnest_course", "t", "t = least of the top courses", tops.DefaultIfEmpty(double.NaN).Min());
    }

    private static Answer BinderModified(QuantityContext context, Element element)
    {
        var view = PlanView.Of(context);
        var modified = context.Plan.Courses
            .DistinctBy(course => course.Mix, StringComparer.Ordinal)
            .Select(course => (Modified: view.MixOf(course)?.Binder?.Modified, Input: new InputReference($"mix:{course.Mix}", "binder.modified")))
            .ToList();
        return modified.Exists(mix => mix.Modified == true) || modified.TrueForAll(mix => mix.Modified == false)
            ? Answers.Follows(modified.Exists(mix => mix.Modified == true), modified.Find(mix => mix.Modified == true).Input)
            : Answer.Missing([.. modified.Where(mix => mix.Modified is null).Select(mix => mix.Input)]);
    }

    private static Answer OnBridge(QuantityContext context, Element element)
    {
        var surface = context.Plan.Existing?.Surface;
        var deck = context.Plan.Site?.Conditions?.BridgeDeck;
        var input = new InputReference("site", "conditions.bridge_deck");
        return (surface, deck) switch
        {
            (ExistingSurface.BridgeDeck, _) => Answers.Follows(flag: true, new InputReference("existing", "surface")),
            (_, true) => Answers.Follows(flag: true, input),
            (_, false) => Answers.Follows(flag: false, input),
            (null, null) => Answer.Missing(new InputReference("existing", "surface"), input),
            _ => Answers.Follows(flag: false, new InputReference("existing", "surface")),
        };
    }

    private static Answer IsSpare(QuantityContext context, Element element)
    {
        var roller = (Roller)element.Subject!;
        return roller.Spare is { } stated
            ? Answers.Flag(stated, new InputReference(element.Address, "spare"))
            : Answers.Follows(roller.Phase is null, new InputReference(element.Address, "phase"));
    }
}
