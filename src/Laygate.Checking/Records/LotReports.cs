using Laygate.Engineering.Acceptance;
using Laygate.Engineering.Records;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Model.Records;
using Laygate.Rules.Acceptance;
using Laygate.Rules.Results;

namespace Laygate.Checking.Records;

/// <summary>Makes the lots of a shift from plan, record and scheme, and has each characteristic judged.</summary>
internal sealed class LotReports(RecordedShift shift, AcceptanceScheme scheme, ulong seed)
{
    private readonly Plan plan = shift.Context.Plan;
    private readonly ShiftRecord record = shift.Record;
    private readonly string? counts = scheme.Laboratory ?? shift.Record.Laboratory;

    public AcceptanceReport Make(string version) => new(
        shift.Identity.Id, shift.Identity.Title, shift.Identity.Revision, shift.Hash, version, scheme, seed, record,
        [.. plan.Courses.SelectMany(Lots)], [.. Gauges()], shift.Refused, shift.Remarks)
    {
        Laboratories = [.. plan.Courses.SelectMany(Laboratories)],
        Counts = counts,
        Length = plan.Runs.Select(run => run.From?.Unit).FirstOrDefault(unit => unit is { Spelling: not "km" and not "mi" }) ?? UnitTable.Find("m")!,
    };

    private IEnumerable<AcceptanceLot> Lots(Course course)
    {
        var way = new CourseWay(shift.Context, course);
        if (way.Length <= 0)
        {
            yield break;
        }

        var sublots = Sublots(course, way).ToList();
        var perLot = scheme.Sublots.PerLot ?? sublots.Count;
        for (var first = 0; first < sublots.Count; first += perLot)
        {
            IReadOnlyList<LotSublot> own = [.. sublots.Skip(first).Take(perLot)];
            IReadOnlyList<LotCharacteristic> characteristics = [.. scheme.Characteristics.Where(one => one.Measures != MeasuredProperty.ThermalRange || ReferenceEquals(course, plan.Courses[^1])).Select(one => (Scheme: one, Found: Characteristic(one, course, way, own))).Where(pair => Applies(pair.Scheme, pair.Found.Values.Count)).Select(pair => pair.Found)];
            yield return new AcceptanceLot(course.Id, (first / perLot) + 1, own, characteristics, Pay(characteristics));
        }
    }

    // A table for small lots stands in for one that needs more results, and the other way round.
    private bool Applies(SchemeCharacteristic one, int count) =>
        one.Most is { } most ? count > 0 && count <= most : count >= one.Least || count == 0 || !scheme.Characteristics.Any(other => other.Measures == one.Measures && other.Most >= count);

    // Sublots are those of the plan, so that what is laid later moves none of them.
    private IEnumerable<LotSublot> Sublots(Course course, CourseWay way)
    {
        var (ends, series) = (Ends(way).ToList(), plan.Courses.ToList().IndexOf(course));
        for (var i = 0; i < ends.Count; i++)
        {
            var from = i == 0 ? 0 : ends[i - 1];
            var places = SamplingPlaces.Of(seed, series, i + 1, from, ends[i] - from, way.WidthAt, scheme.Sublots.Margin, scheme.Sublots.Places);
            yield return new LotSublot(i + 1, from, Math.Min(ends[i], way.Length), [.. places.Select(place => Drawn(place, way)).OfType<DrawnPlace>()]);
        }
    }

    private static DrawnPlace? Drawn(SamplingPlace place, CourseWay way) => way.PlaceAt(place.Along) is var (run, station) ? new DrawnPlace(place, run, station) : null;

    private IEnumerable<double> Ends(CourseWay way)
    {
        var count = scheme.Sublots.Count ?? 0;
        for (var i = 1; i <= (scheme.Sublots.Count ?? MostSublots); i++)
        {
            var end = scheme.Sublots.Length is { } length ? i * length : scheme.Sublots.Mass is { } mass ? i * mass < way.Mass ? way.Reached(i * mass) : way.Length : way.Length * i / count;
            yield return end;
            if (end >= way.Length - 1e-6)
            {
                yield break;
            }
        }
    }

    // A thousand sublots are a slip of units.
    private const int MostSublots = 1000;

    private LotCharacteristic Characteristic(SchemeCharacteristic one, Course course, CourseWay way, IReadOnlyList<LotSublot> sublots)
    {
        var limits = Limits(one, course);
        var numbers = sublots.Select(sublot => sublot.Number).ToHashSet();
        var values = new LotMeasurements(record, plan, course, counts).Of(one)
            .Select(value => value with { Sublot = SublotOf(value.Station, way, sublots) })
            .Where(value => numbers.Contains(value.Sublot) || (value.Sublot == 0 && numbers.Contains(1))).ToList();
        double[] results = [.. values.Select(value => value.Value)];
        var outcome = results.Length >= one.Least ? LotJudge.Judge(one, limits, results) : new LotOutcome(null, [], null, null, LotVerdict.NotDecided);
        var outlier = scheme.OutlierLevel is { } level && results.Length >= scheme.OutlierLeast ? Grubbs.Of(results, level) : null;
        var without = outlier is { IsMarked: true } ? LotJudge.Judge(one, limits, [.. results.Where((_, index) => index != outlier.Index)]) : null;
        var next = outcome.Verdict == LotVerdict.Accept || outcome.Statistic is null || one.Measures == MeasuredProperty.ThermalRange ? null : LotJudge.Next(one, limits, results);
        IReadOnlyList<int> empty = one.Measures is MeasuredProperty.ThermalRange or MeasuredProperty.JointDensity || results.Length == 0 ? [] : [.. numbers.Where(number => values.TrueForAll(value => value.Sublot != number)).Order()];
        return new LotCharacteristic(
            one.Id, one.Measures, one.Statistic, one.Statistic == LotStatistic.PercentWithin ? one.Mode : null, one.Unit.Spelling,
            [.. values.Select((value, index) => value with { IsMarked = outlier is { IsMarked: true } && outlier.Index == index })], [.. Shown(one, limits)], outcome, outlier, without,
            next?.Low, next?.High, empty, scheme.Sources[one.Source.Id], one.Source.Clause, one.Source.Evidence, one.Source.Remark)
        {
            Verdict = empty.Count > 0 && outcome.Verdict != LotVerdict.Reject ? LotVerdict.NotDecided : outcome.Verdict,
        };
    }

    private static int SublotOf(double? station, CourseWay way, IReadOnlyList<LotSublot> sublots) =>
        station is { } at && way.DistanceOf(at) is { } distance ? sublots.FirstOrDefault(sublot => distance >= sublot.From && (distance < sublot.To || (sublot == sublots[^1] && distance <= sublot.To)))?.Number ?? -1 : 0;

    private CourseLimits Limits(SchemeCharacteristic one, Course course)
    {
        var mix = plan.Mixes.FirstOrDefault(mix => string.Equals(mix.Id, course.Mix, StringComparison.Ordinal));
        var isThickness = one.Measures == MeasuredProperty.Thickness;
        double? Of(SchemeLimit? limit, double? planned) => limit is null ? null : limit.FromPlan ? planned is { } si ? one.Unit.FromSi(si) : null : limit.Number;
        return new CourseLimits(
            Of(one.Lower, isThickness ? course.ThicknessLowest?.Si : mix?.Density?.Degree?.Si), Of(one.Upper, isThickness ? course.ThicknessHighest?.Si : null),
            Of(one.Target, isThickness ? course.Thickness.Si : mix?.Density?.Degree?.Si), isThickness ? one.Unit.FromSi(course.Thickness.Si) : null);
    }

    private static IEnumerable<LotLimit> Shown(SchemeCharacteristic one, CourseLimits limits)
    {
        foreach (var (name, stated, value) in new[] { ("lower limit", one.Lower, limits.Lower), ("upper limit", one.Upper, limits.Upper), ("target", one.Target, limits.Target) })
        {
            if (stated is not null)
            {
                yield return new LotLimit(name, value, stated.FromPlan);
            }
        }

        if (one.Statistic == LotStatistic.Shortfall)
        {
            yield return new LotLimit("design", limits.Design, FromPlan: true);
        }
    }

    private double? Pay(IReadOnlyList<LotCharacteristic> all)
    {
        var pays = all.Select(one => one.Outcome.Pay).ToList();
        if (scheme.Combine == PayCombination.None || pays.Contains(null))
        {
            return null;
        }

        var weights = all.Select(one => scheme.Characteristics.First(other => string.Equals(other.Id, one.Id, StringComparison.Ordinal)).Weight ?? 0).ToList();
        return scheme.Combine == PayCombination.Lowest ? pays.Min()
            : Math.Abs(weights.Sum() - 1) < 1e-9 ? pays.Zip(weights, (pay, weight) => pay * weight).Sum() : null;
    }

    private IEnumerable<GaugeReport> Gauges()
    {
        foreach (var group in record.Gauges.GroupBy(reading => (Gauge: reading.Gauge ?? string.Empty, Course: reading.Course ?? string.Empty)))
        {
            var offset = GaugeOffset.Of([.. group.Select(reading => (reading.Density, Core: CoreOf(reading))).Where(pair => pair.Core is not null).Select(pair => (pair.Density, pair.Core!.Value))]);
            var rule = scheme.Gauge;
            yield return new GaugeReport(
                group.Key.Gauge, group.Key.Course, offset, group.Count(), group.Average(reading => reading.Density) + (offset?.Offset ?? 0),
                rule is null || offset is null || offset.Pairs < rule.Pairs || !(offset.Deviation <= rule.Deviation));
        }
    }

    // Agencies state 1 % (Kansas, 5.2.6, read); the other level shows whether the verdict hangs on it.
    private static readonly double[] Levels = [0.01, 0.05];

    private IEnumerable<LaboratoryReport> Laboratories(Course course)
    {
        var laboratories = record.Cores.GroupBy(core => core.Place).ToDictionary(group => group.Key, group => group.First());
        foreach (var one in scheme.Characteristics)
        {
            var sides = new LotMeasurements(record, plan, course, laboratory: null).Of(one)
                .Select(value => (value.Value, Core: laboratories.GetValueOrDefault(value.Place))).Where(pair => pair.Core?.Laboratory is not null)
                .GroupBy(pair => pair.Core!.Laboratory!, StringComparer.Ordinal).OrderBy(group => group.Key, StringComparer.Ordinal).ToList();
            if (sides is not [var first, var second] || SetOfResults.Of([.. first.Select(pair => pair.Value)]) is not { } a || SetOfResults.Of([.. second.Select(pair => pair.Value)]) is not { } b)
            {
                continue;
            }

            var differences = first.Join(second, pair => pair.Core!.Number, pair => pair.Core!.Number, (x, y) => x.Value - y.Value, StringComparer.Ordinal).ToList();
            yield return new LaboratoryReport(
                course.Id, one.Id, one.Unit, (first.Key, a), (second.Key, b),
                [.. Levels.Select(level => TwoSets.Compare(a, b, level)).OfType<SetComparison>()], [.. Levels.Select(level => TwoSets.Compare(differences, level)).OfType<PairComparison>()]);
        }
    }

    private double? CoreOf(GaugeReading reading) => reading.Core is null ? null
        : record.Cores.FirstOrDefault(core => string.Equals(core.Number, reading.Core, StringComparison.Ordinal) && string.Equals(core.Course, reading.Course, StringComparison.Ordinal))?.Bulk;
}
