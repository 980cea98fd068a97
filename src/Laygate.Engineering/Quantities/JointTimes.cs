using Laygate.Engineering.Formulas;
using Laygate.Engineering.Mat;
using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Time between the runs on both sides of a joint.</summary>
internal static class JointTimes
{
    /// <summary>How the times are found.</summary>
    public static Method Method(string which) => new(
        $"Δt = {which} of t2(s) − t1(s) over the stations s that both runs share", Sources.Definition,
        "both runs in the plan; t from order, speed · availability, planned stops and moves; nothing by chance");

    /// <summary>Whether a stated delay can be held against the runs.</summary>
    public static Answer IsCompared(QuantityContext context, Element element)
    {
        var joint = (Joint)element.Subject!;
        var input = new InputReference(element.Address, "delay");
        if (joint is not { Delay: not null, Run: not null } || joint.Kind is JointKind.Transverse || context.Plan.Runs.Count < 2)
        {
            return Answers.Follows(flag: false, input);
        }

        var calculation = new Calculation(context);
        return new TimelineReader(calculation).Read() is null ? calculation.Stopped! : Answers.Follows(Sides(context, joint) is not null, input);
    }

    /// <summary>The shortest time.</summary>
    public static Answer Shortest(QuantityContext context, Element element) => Of(context, element, "joint.delay_shortest", delay => delay.Shortest);

    /// <summary>The longest time.</summary>
    public static Answer Longest(QuantityContext context, Element element) => Of(context, element, "joint.delay_longest", delay => delay.Longest);

    /// <summary>Delay with which the neighbour arrives, s: the longest that follows from the runs, else as stated; missing where neither is known.</summary>
    public static double DelayOf(Calculation calculation, Joint joint)
    {
        var address = $"joint:{joint.Id}";
        return Sides(calculation.Context, joint) is null
            ? calculation.Stated("Δt", joint.Delay, address, "delay")
            : calculation.Quantity("Δt", "joint.delay_longest", calculation.Context.Elements.Find(address));
    }

    /// <summary>The same without a record, s; null where it is not known or longer than a mat is followed while it is rolled.</summary>
    public static double? Followed(QuantityContext context, Joint joint) =>
        DelayOf(new Calculation(context), joint) is var delay and >= 0 and <= MatCooling.LongestRolling / 2 ? delay : null;

    private static Answer Of(QuantityContext context, Element element, string quantity, Func<(double Shortest, double Longest), double> read)
    {
        var calculation = new Calculation(context);
        var joint = (Joint)element.Subject!;
        var timeline = new TimelineReader(calculation).Read();
        if (timeline is null)
        {
            return calculation.Result(quantity, "Δt", "Δt = t2 − t1", null);
        }

        if (Neighbours.Of(context, timeline, joint) is not { } sides || !sides.Second.IsPlaced)
        {
            return Answer.None(AbsenceReason.NotComputable, Note.Of(NoteIds.NoNeighbour, ("joint", joint.Id)), new InputReference(element.Address, "beside"));
        }

        calculation.Show("t1", "run", $"run:{sides.First.Run.Id}", sides.First.Run.Id);
        calculation.Show("t2", "run", $"run:{sides.Second.Run.Id}", sides.Second.Run.Id);
        return calculation.Result(quantity, "Δt", "Δt = t2 − t1", read(Neighbours.Delay(sides.First, sides.Second)));
    }

    private static (LaidStrip First, LaidStrip Second)? Sides(QuantityContext context, Joint joint) =>
        ShiftTimeline.Of(context) is { } timeline && Neighbours.Of(context, timeline, joint) is { Second.IsPlaced: true } sides ? sides : null;
}
