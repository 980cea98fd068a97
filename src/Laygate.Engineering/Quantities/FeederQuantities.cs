using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Supply;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>The machine that passes mix from truck to paver.</summary>
internal static class FeederQuantities
{
    private static readonly Define Feeder = new(ElementKind.Feeder);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Feeder.Stated<Feeder>("rate", Shape.Flow, "rate", "Rate while it feeds.", feeder => feeder.Rate),
        Feeder.Number("demand", Shape.Flow, "Mix of all courses laid together that passes through the feeder while the paver moves.", Demand, new Method(
            "R = largest over the passes of Σ R", Sources.Balance, "as the demand of the courses")),
        Feeder.Number("occupation", Shape.None, "Share of the time in which the feeder is busy.", Occupation, new Method(
            "u = Σ (R/P) · (e + P/Q) + 2c · Rs/Ps", Sources.TwoMixes, "one mix or two; at 1 or above the paver must wait. Each load docks once, also where trucks may unload in parts")),
        Feeder.StatedFlag<Feeder>("emptied_before_change", "emptied_before_change", "Whether it is emptied before it changes the mix.", feeder => feeder.EmptiedBeforeChange),
        Feeder.StatedFields<Feeder>("rest_goes_to", "rest_goes_to", "Where the rest of a mix goes when the mix changes.", feeder =>
            [("rest_goes_to", Answers.Given(feeder?.RestGoesTo))]),
    ];

    /// <summary>Timing of the feeder; what is missing is noted.</summary>
    /// <param name="calculation">Takes inputs and what is missing.</param>
    /// <param name="feeder">The feeder.</param>
    /// <param name="changes">Whether it feeds two mixes in turn.</param>
    /// <param name="worst">Whether each load of a feeder that lets trucks unload in parts docks twice: a worst case, no need.</param>
    internal static FeederTiming Timing(Calculation calculation, Feeder feeder, bool changes, bool worst = true)
    {
        var address = $"feeder:{feeder.Id}";
        var rate = calculation.Stated("Q", feeder.Rate, address, "rate");
        var exchange = calculation.StatedOr(AssumptionIds.Exchange, "e", feeder.Exchange, address, "exchange")
            * (worst && feeder.UnloadingInParts == true ? 2 : 1);
        var changeover = changes ? calculation.Stated("c", feeder.Changeover, address, "changeover") : 0;
        return new FeederTiming(rate, exchange, changeover);
    }

    /// <summary>One course's mix on its way through the feeder: its demand and its largest payload.</summary>
    internal static FedMix Fed(Calculation calculation, Course course, string rate, string payload)
    {
        var context = calculation.Context;
        var demand = calculation.Quantity(rate, "course.demand", PlanView.Of(context).Of(ElementKind.Course, course.Id));
        var groups = (context.Plan.Supply?.Trucks ?? []).Where(trucks => PlanView.Same(trucks.Mix, course.Mix)).ToList();
        if (groups.Count == 0)
        {
            calculation.Miss("supply", "trucks");
        }

        var load = groups.Select(trucks => calculation.Stated(payload, trucks.Payload, $"trucks:{trucks.Id}", "payload")).DefaultIfEmpty(double.NaN).Max();
        return new FedMix(demand, load);
    }

    private static Answer Demand(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        return calculation.Result("feeder.demand", "R", "R = Σ R", SupplyQuantities.LargestDemand(calculation, _ => true));
    }

    private static Answer Occupation(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var feeder = (Feeder)element.Subject!;
        double? highest = null;
        foreach (var pass in PlanView.Of(context).Passes)
        {
            var use = OfPass(calculation, feeder, pass.Courses);
            highest = highest is null || use > highest ? use : highest;
        }

        return calculation.Result("feeder.occupation", "u", "u = Σ (R/P) · (e + P/Q) + 2c · Rs/Ps", highest);
    }

    private static double? OfPass(Calculation calculation, Feeder feeder, IReadOnlyList<Course> courses)
    {
        if (courses.Count > 2)
        {
            calculation.Block(AbsenceReason.NotComputable, new Note(NoteIds.TooManyMixes, [new NoteArgument("count", null, courses.Count, string.Empty)]));
            return null;
        }

        var changes = courses.Count == 2 && !PlanView.Same(courses[0].Mix, courses[1].Mix);
        var timing = Timing(calculation, feeder, changes, worst: false);
        if (courses.Count == 1)
        {
            return TwoMixFeeding.Occupation(Fed(calculation, courses[0], "R", "P"), timing);
        }

        return TwoMixFeeding.Occupation(Fed(calculation, courses[0], "Rb", "Pb"), Fed(calculation, courses[1], "Rs", "Ps"), timing);
    }
}
