using Laygate.Engineering.Acceptance;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Model.Records;
using MathNet.Numerics.Statistics;

namespace Laygate.Engineering.Records.Happened;

/// <summary>The finished course: thickness, spread, density.</summary>
internal static class HappenedCourse
{
    public static IEnumerable<HappenedQuantity> All() =>
    [
        new("course.thickness_lowest", "thickness at a point", RowsOf.Cores, "thickness_1 …", "thickness", (shift, element) => HappenedSet.Of(Points(shift, (Course)element.Subject!))) { Own = OwnLimit.AtLeast },
        new("course.thickness_highest", "thickness at a point", RowsOf.Cores, "thickness_1 …", "thickness", (shift, element) => HappenedSet.Of(Points(shift, (Course)element.Subject!))) { Own = OwnLimit.AtMost },
        new("course.thickness", "mean thickness", RowsOf.Cores, "thickness_1 …", "thickness", (shift, element) => Mean(shift, (Course)element.Subject!)),
        new("pair.upper_thickness", "mean thickness", RowsOf.Cores, "thickness_1 …", "thickness", (shift, element) => Mean(shift, ((Pair)element.Subject!).Upper)),
        new("pair.lower_thickness", "mean thickness", RowsOf.Cores, "thickness_1 …", "thickness", (shift, element) => Mean(shift, ((Pair)element.Subject!).Lower)),
        new("course.spread", "mass per area over the shift", RowsOf.Stations, "at, station", "mass, width, length", (shift, element) => Spread(shift, (Course)element.Subject!)),
        new("mix.degree", "density of a core", RowsOf.Cores, "bulk, reference or maximum", "density", Degrees) { Own = OwnLimit.AtLeast },
    ];

    /// <summary>Thicknesses of cores, the mean of the readings round each, and of dips into the rolled mat.</summary>
    internal static IEnumerable<HappenedValue> Points(HappenedShift shift, Course course) =>
    [
        .. shift.Record.Cores.Where(core => core is { AtJoint: false, Thickness.Count: > 0 } && shift.IsOf(core.Course, course))
            .Select(core => new HappenedValue(core.Thickness.Average(), shift.Known.Thickness, [core.Place]) { At = core.Cut, Station = core.Station, Of = $"core {core.Number}" }),
        .. shift.Record.Dips.Where(dip => !dip.Loose && shift.IsOf(dip.Course, course))
            .Select(dip => new HappenedValue(dip.Depth, shift.Known.Thickness, [dip.Place]) { Station = dip.Station, Of = "dip" }),
    ];

    private static HappenedSet Mean(HappenedShift shift, Course course)
    {
        var points = Points(shift, course).ToList();
        return points.Count < 2 ? HappenedSet.Nothing : HappenedSet.Of(
        [
            new HappenedValue(points.Average(point => point.Si), OfMean([.. points.Select(point => point.Si)], shift.Known.Thickness), [.. points.SelectMany(point => point.Rows)]) { Of = FormattableString.Invariant($"{points.Count} places") },
        ]);
    }

    /// <summary>
    /// Standard uncertainty of a mean of a few random places: half of the two-sided 95 % interval by Student's t, so that twice of it is that interval, and that of the
    /// instrument, which more places do not make less. JCGM 100:2008, G.3 (recalled).
    /// </summary>
    internal static double? OfMean(double[] values, double? standard)
    {
        if (standard is not { } instrument || values.Length < 2)
        {
            return null;
        }

        var half = Tails.T(values.Length - 1, 0.05)!.Value * values.StandardDeviation() / Math.Sqrt(values.Length);
        return Math.Sqrt((half * half / 4) + (instrument * instrument));
    }

    private static HappenedSet Spread(HappenedShift shift, Course course)
    {
        if (ShiftLedgers.Of(shift.Context, shift.Record, null)?.Courses.FirstOrDefault(one => PlanView.Same(one.Course, course.Id))?.Shift is not { } laid)
        {
            return HappenedSet.Nothing;
        }

        var relative = shift.Known is { Mass: { } mass, Width: { } width, Length: { } length } ? LedgerFormulas.Uncertainty(mass, 0, width, length) : null;
        return HappenedSet.Of([new HappenedValue(laid.PerArea.Si, relative * laid.PerArea.Si, [.. shift.LoadsOf(course.Mix).Select(load => load.Place)]) { At = laid.To, Of = FormattableString.Invariant($"{laid.Loads} loads") }]);
    }

    // Each core stands for itself; means and lots are the matter of an acceptance scheme.
    private static HappenedSet Degrees(HappenedShift shift, Element element)
    {
        var mix = (Mix)element.Subject!;
        var courses = shift.Plan.Courses.Where(course => PlanView.Same(course.Mix, mix.Id)).ToList();
        double? Reference(Core core) => mix.Density?.Reference switch { DensityReference.Laboratory => core.Reference, DensityReference.Maximum => core.Maximum, _ => null };
        return HappenedSet.Of(shift.Record.Cores
            .Where(core => !core.AtJoint && core.Bulk is not null && Reference(core) is > 0 && courses.Exists(course => shift.IsOf(core.Course, course)))
            .Select(core => (core, Degree: core.Bulk!.Value / Reference(core)!.Value))
            .Select(one => new HappenedValue(one.Degree, one.Degree * shift.Known.Density, [one.core.Place]) { At = one.core.Cut, Station = one.core.Station, Of = $"core {one.core.Number}" }));
    }
}
