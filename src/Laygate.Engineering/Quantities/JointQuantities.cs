using Laygate.Engineering.Mat;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Joints.</summary>
internal static class JointQuantities
{
    private static readonly Define Joint = new(ElementKind.Joint);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Joint.StatedWord<Joint, JointKind>("kind", "kind", "Direction of the joint.", joint => joint.Kind),
        Joint.StatedWord<Joint, JointForm>("form", "form", "How the face is made.", joint => joint.Form),
        Joint.Flag("is_hot", "Whether both sides are laid hot, as its form says; a joint whose form is not stated is taken as a cold one, which asks for more. The form itself is asked for once, where its face is judged.", (_, e) =>
            Answers.Follows(e.Subject is Joint { Form: JointForm.HotEchelon }, new InputReference(e.Address, "form"))),
        Joint.StatedWord<Joint, JointHeight>("height", "height", "Over what height the joint is treated.", joint => joint.Height),
        Joint.StatedWord<Joint, JointLine>("line", "line", "Where a longitudinal joint lies in the finished surface.", joint => joint.Line),
        Joint.Presence("removed", "How much of the thin end is cut off before laying goes on.", (_, e) => Answers.Fields(
            new InputReference(e.Address, "removed"), ("removed", ((Joint)e.Subject!).Removed is not null))),
        Joint.StatedFlag<Joint>("coated", "coated", "Whether the face is cleaned and coated.", joint => joint.Coated),
        Joint.Stated<Joint>("offset_below", Shape.Thickness, "offset_below", "Distance to the nearest parallel joint of the course below.", joint => joint.OffsetBelow),
        Joint.Category("offset_units", Words.Of<UnitSystem>(), "Units in which the distance to the joint of the course below is stated.", (_, e) => Answers.Word(
            ((Joint)e.Subject!).OffsetBelow is { } offset ? Words.Of(offset.Unit.System == UnitSystem.UnitedStates ? UnitSystem.UnitedStates : UnitSystem.Metric) : null, new InputReference(e.Address, "offset_below"))),
        Joint.Flag("offset_stated", "Whether the distance to the joint of the course below is stated; the rule on the least distance asks for it.", (_, e) =>
            Answers.Follows(((Joint)e.Subject!).OffsetBelow is not null, new InputReference(e.Address, "offset_below"))),
        Joint.Stated<Joint>("delay", Shape.Minutes, "delay", "Time at one point between the paver that makes the edge and the one that lays against it.", joint => joint.Delay),
        Joint.Flag("has_computed_delay", "Whether the delay of the joint is stated and also follows from order, speed and moves of the runs on both sides.", JointTimes.IsCompared),
        Joint.Number("delay_shortest", Shape.Minutes, "Shortest time at one point between the runs on both sides of the joint, from their order, speed, stops and moves.", JointTimes.Shortest, JointTimes.Method("least")),
        Joint.Number("delay_longest", Shape.Minutes, "Longest time at one point between the runs on both sides of the joint, from their order, speed, stops and moves.", JointTimes.Longest, JointTimes.Method("greatest")),
        Joint.Number("edge_temperature", Shape.Temperature, "Mean temperature of the course at its edge when the neighbouring strip arrives.", EdgeTemperature, CoolingMethods.Edge, Place.CourseMean),
        Joint.Flag("in_pair", "Whether it is a longitudinal joint through two courses laid hot-on-hot.", InPair),
    ];

    private static Answer EdgeTemperature(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var joint = (Joint)element.Subject!;
        var delay = JointTimes.DelayOf(calculation, joint);
        if (context.Elements.Related(element, ElementKind.Course)?.Subject is not Course course)
        {
            return Answer.Missing(new InputReference(element.Address, "course"));
        }

        var pass = PlanView.Of(context).PassOf(course);
        if (CoolingInputs.Gather(calculation, pass, MatQuestion.Fast) is { } stopped)
        {
            return stopped;
        }

        if (delay is < 0 or > MatCooling.LongestRolling / 2)
        {
            return calculation.Outside("joint.edge_temperature");
        }

        var cooling = MatCooling.Of(context).While(pass);
        return CoolingInputs.Result(
            calculation, "joint.edge_temperature", "Te", "Te = mean T(Δt)", cooling.Find($"edge {joint.Id}"), MatCooling.LongestRolling);
    }

    private static Answer InPair(QuantityContext context, Element element)
    {
        var joint = (Joint)element.Subject!;
        if (!CourseQuantities.Pairs(context).Any())
        {
            return Answers.Follows(flag: false);
        }

        InputReference[] missing =
        [
            .. joint.Kind is null ? [new InputReference(element.Address, "kind")] : Array.Empty<InputReference>(),
            .. joint.Course is null ? [new InputReference(element.Address, "course")] : Array.Empty<InputReference>(),
        ];
        return missing.Length > 0
            ? Answer.Missing(missing)
            : Answers.Follows(joint.Kind == JointKind.Longitudinal
                && CourseQuantities.Pairs(context).Any(pair => PlanView.Same(pair.Upper.Id, joint.Course)), new InputReference(element.Address, "course"));
    }
}
