using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Records.Happened;

/// <summary>Bond coat and opening.</summary>
internal static class HappenedBond
{
    public static IEnumerable<HappenedQuantity> All() =>
    [
        .. new[] { "sprayed_rate", "residual_rate", "sprayed_volume", "residual_volume" }.Select(name => new HappenedQuantity(
            $"bond-coat.{name}", name.StartsWith("sprayed", StringComparison.Ordinal) ? "bond coat as sprayed" : "binder of the bond coat that stays", RowsOf.BondCoat, "mass, or a volume with its temperature", "mass or volume, width, length", (shift, element) => SprayedRates.Of(shift, element, $"bond-coat.{name}", Of(shift, element)))),
        new("bond-coat.time_before_laying", "time from spraying to laying", RowsOf.BondCoat, "at", "time", BeforeLaying),
        new("opening.time_after_laying", "time from the end of laying to the opening", RowsOf.HoldPoints, "at, for the hold point before opening", "time", AfterLaying),
    ];

    private static IEnumerable<BondCoatReading> Of(HappenedShift shift, Element element) => shift.Record.BondCoats
        .Where(reading => reading.Below is null ? shift.Plan.BondCoats.Count == 1 : PlanView.Same(reading.Below, (element.Subject as BondCoat)?.Below));

    private static HappenedSet BeforeLaying(HappenedShift shift, Element element)
    {
        var course = shift.Plan.Courses.FirstOrDefault(one => PlanView.Same(one.Id, (element.Subject as BondCoat)?.Below));
        return course is null ? HappenedSet.Nothing : HappenedSet.Of(
            from reading in Of(shift, element)
            where reading.At is not null
            from end in new[] { reading.From, reading.To }
            let laid = shift.Screed(course).At(end)
            where laid is not null
            select new HappenedValue((laid.Value - reading.At!.Value).TotalSeconds, shift.OfDuration, [reading.Place]) { At = laid, Station = end });
    }

    private static HappenedSet AfterLaying(HappenedShift shift, Element element)
    {
        var points = shift.Plan.HoldPoints.Where(point => HoldSteps.StepOf(point) == HoldStep.BeforeOpening).Select(point => point.Id).ToList();
        var last = shift.Plan.Courses.Select(course => shift.Screed(course).Last).OfType<StationReading>().MaxBy(reading => reading.At);
        return last is null ? HappenedSet.Nothing : HappenedSet.Of(shift.Record.HoldPoints
            .Where(release => release.At is not null && points.Contains(release.HoldPoint, StringComparer.Ordinal))
            .Select(release => new HappenedValue((release.At!.Value - last.At).TotalSeconds, shift.OfDuration, [release.Place, last.Place]) { At = release.At, Of = "opening" }));
    }
}
