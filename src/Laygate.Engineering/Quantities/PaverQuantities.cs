using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Supply;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Pavers: speed, stops and how long their buffers last.</summary>
internal static class PaverQuantities
{
    private static readonly Define Paver = new(ElementKind.Paver);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Paver.Stated<Paver>("speed", Shape.PaverSpeed, "speed", "Speed while it moves.", paver => paver.Speed),
        Paver.Stated<Paver>("availability", Shape.Share, "availability", "Share of the time in which it moves.", paver => paver.Availability),
        Paver.Number("speed_rollers_allow", Shape.PaverSpeed, "Paver speed that the rollers can follow: that of the weakest phase.", RollersAllow, new Method(
            "v = least over the phases of Σ E · vr / (k · n)", Sources.Balance, "in the long run; how far behind the last pass may be is another question")),
        Paver.Number("buffer_cover", Shape.Minutes, "Time for which the mix on the machine keeps it going at full demand: the shortest over its buffers.", BufferCover, new Method(
            "tb = (B − B0) / R", Sources.Balance, "full buffer; B0 counts where it is stated")),
        Paver.StatedFlag<Paver>("hopper_kept_filled", "hopper_kept_filled", "Whether the hopper is kept filled between trucks.", paver => paver.HopperKeptFilled),
        Paver.StatedFlag<Paver>("hopper_emptied_before_joint", "hopper_emptied_before_joint", "Whether the hopper is run empty before a transverse joint.", paver => paver.HopperEmptiedBeforeJoint),
        Paver.Stated<Paver>("stop_limit", Shape.Minutes, "stop_limit", "Longest stop before a joint is made.", paver => paver.StopLimit),
    ];

    /// <summary>Speed of a paver, m/s; missing where the plan has none.</summary>
    internal static double SpeedOf(Calculation calculation, Paver? paver)
    {
        if (paver is not null)
        {
            return calculation.Quantity("v", "paver.speed", PlanView.Of(calculation.Context).Of(ElementKind.Paver, paver.Id));
        }

        calculation.Miss("plan", "pavers");
        return double.NaN;
    }

    private static Answer RollersAllow(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        double? lowest = null;
        foreach (var phase in context.Elements.Of(ElementKind.Phase))
        {
            var speed = calculation.Quantity("v", "phase.speed_it_follows", phase);
            calculation.Quantity("k", "phase.strips", phase); // Shown, because one strip more costs the most.
            lowest = lowest < speed ? lowest : speed;
        }

        if (lowest is null)
        {
            calculation.Miss("plan", "rolling.phases");
        }

        return calculation.Result("paver.speed_rollers_allow", "v", "v = least of the phases", lowest);
    }

    private static Answer BufferCover(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var paver = (Paver)element.Subject!;
        var view = PlanView.Of(context);
        double? shortest = null;
        if (paver.Buffers.Count == 0)
        {
            calculation.Miss(element.Address, "buffers");
        }

        foreach (var buffer in paver.Buffers)
        {
            var key = $"buffers.{buffer.Course}";
            var held = calculation.Stated("B", buffer.Capacity, element.Address, $"{key}.capacity");
            held -= buffer.Lowest is { } lowest ? calculation.Stated("B0", lowest, element.Address, $"{key}.lowest") : 0;
            var course = view.Of(ElementKind.Course, buffer.Course);
            if (course is null)
            {
                calculation.Miss($"course:{buffer.Course}", string.Empty);
            }

            var demand = calculation.Quantity("R", "course.demand", course);
            var cover = Fleet.BufferCover(held, demand) ?? double.NaN;
            shortest = shortest < cover ? shortest : cover;
        }

        return calculation.Result("paver.buffer_cover", "tb", "tb = (B − B0) / R", shortest);
    }
}
