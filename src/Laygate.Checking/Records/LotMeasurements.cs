using Laygate.Engineering.Acceptance;
using Laygate.Model.Plans;
using Laygate.Model.Records;
using Laygate.Rules.Acceptance;
using Laygate.Rules.Results;

namespace Laygate.Checking.Records;

/// <summary>Results of a characteristic from the rows of a record. Joint and mat are two populations and never pooled.</summary>
/// <param name="record">The record.</param>
/// <param name="plan">The plan.</param>
/// <param name="course">The course.</param>
/// <param name="laboratory">Laboratory whose results count; null: those of all.</param>
internal sealed class LotMeasurements(ShiftRecord record, Plan plan, Course course, string? laboratory)
{
    /// <summary>The results in the unit of the characteristic, in the order of the rows.</summary>
    public IReadOnlyList<LotValue> Of(SchemeCharacteristic one) => one.Measures switch
    {
        MeasuredProperty.DensityOfMaximum => Cores(one, atJoint: false, core => Ratio(core, core.Maximum)),
        MeasuredProperty.JointDensity => Cores(one, atJoint: true, core => Ratio(core, MeanMaximum())),
        MeasuredProperty.DensityOfReference => Cores(one, atJoint: false, core => Ratio(core, core.Reference)),
        MeasuredProperty.AirVoids => Cores(one, atJoint: false, core => core is { Bulk: { } bulk, Maximum: { } maximum } ? CoreFormulas.Voids(bulk, maximum) : null),
        MeasuredProperty.Thickness => Cores(one, atJoint: false, core => core.Thickness.Count > 0 ? core.Thickness.Average() : null),
        _ => Profiles(one),
    };

    private static double? Ratio(Core core, double? reference) => core.Bulk is { } bulk && reference is > 0 ? bulk / reference : null;

    // A joint has no mix of its own: it is judged against the mean maximum density of the lot.
    private double? MeanMaximum() => record.Cores.Where(IsOfCourse).Select(core => core.Maximum).OfType<double>().ToList() is { Count: > 0 } all ? all.Average() : null;

    private bool IsOfCourse(Core core) => core.Course is null ? plan.Courses.Count == 1 : string.Equals(core.Course, course.Id, StringComparison.Ordinal);

    private IReadOnlyList<LotValue> Cores(SchemeCharacteristic one, bool atJoint, Func<Core, double?> value) =>
        [.. record.Cores.Where(core => IsOfCourse(core) && core.AtJoint == atJoint && (laboratory is null || string.Equals(core.Laboratory, laboratory, StringComparison.Ordinal)))
            .Select(core => (core, Value: value(core))).Where(pair => pair.Value is not null)
            .Select(pair => new LotValue(pair.core.Number, one.Unit.FromSi(pair.Value!.Value), pair.core.Station, 0, pair.core.Place, IsMarked: false))];

    private List<LotValue> Profiles(SchemeCharacteristic one)
    {
        if (one.Thermal is not { } settings || record.Thermal.Count == 0)
        {
            return [];
        }

        var start = record.Thermal.Min(line => line.Station);
        return [.. record.Thermal.GroupBy(line => (int)Math.Floor((line.Station - start) / settings.Length)).OrderBy(group => group.Key)
            .Select(group => (Lines: group.ToList(), Range: ThermalRange.Of(group.Min(line => line.Station), group.Max(line => line.Station), group.SelectMany(line => Readings(line, settings)), settings.Low, settings.High)))
            .Where(profile => profile.Range is not null)
            .Select(profile => new LotValue(
                FormattableString.Invariant($"{(profile.Range!.To - profile.Range.From < Whole * settings.Length && double.IsFinite(settings.Length) ? "short profile" : "profile")} from {profile.Range!.From:0.#} m to {profile.Range.To:0.#} m"), profile.Range.Range / one.Unit.Factor, profile.Range.From, 0, profile.Lines[0].Place, IsMarked: false))];
    }

    // Lines lie some metres apart, so that a whole profile may look a little shorter; judgement.
    private const double Whole = 0.9;

    private static IEnumerable<double> Readings(ThermalLine line, ThermalSettings settings)
    {
        var right = line.Offsets.Count > 0 ? line.Offsets.Max() : 0;
        var left = line.Offsets.Count > 0 ? line.Offsets.Min() : 0;
        return line.Skin.Where((value, i) => value >= settings.DropBelow && value <= settings.DropAbove
            && (i >= line.Offsets.Count || (line.Offsets[i] >= left + settings.Edge - 1e-9 && line.Offsets[i] <= right - settings.Edge + 1e-9)));
    }
}
