using Laygate.Engineering.Acceptance;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Records.Happened;

/// <summary>A pass of a trial length, over all places at which a density was read after it.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Rollers">Rollers that made it.</param>
/// <param name="Phase">Phase of the plan to which they belong; null where they differ or are not in the plan.</param>
/// <param name="Places">Number of places.</param>
/// <param name="Density">Mean density, kg/m³, with the offset of the gauge.</param>
/// <param name="Share">The same as a share of the reference density; null without one.</param>
/// <param name="Skin">Mean skin, °C; null where it was not read.</param>
public sealed record TrialPass(int Number, IReadOnlyList<string> Rollers, string? Phase, int Places, double Density, double? Share, double? Skin);

/// <summary>In what a trial length may be like a plan.</summary>
public enum TrialLikeness
{
    /// <summary>The mix.</summary>
    Mix,

    /// <summary>Mean thickness.</summary>
    Thickness,

    /// <summary>Rollers of the phases that densify.</summary>
    Rollers,

    /// <summary>Passes that densify.</summary>
    Passes,

    /// <summary>Lowest air.</summary>
    Air,

    /// <summary>Lowest surface of the base.</summary>
    Base,

    /// <summary>Highest wind.</summary>
    Wind,
}

/// <summary>What a trial length and a plan have in one respect.</summary>
/// <param name="Kind">The respect.</param>
/// <param name="Trial">What the record shows: words, or a number in SI.</param>
/// <param name="Plan">What the plan has.</param>
/// <param name="Covers">Whether the trial speaks for the plan; null where one of the two is not known.</param>
public sealed record TrialCover(TrialLikeness Kind, TrialSaid Trial, TrialSaid Plan, bool? Covers);

/// <summary>Words or a number.</summary>
/// <param name="Text">Words; null for a number.</param>
/// <param name="Si">Number in SI (°C for temperatures); null for words, or where it is not known.</param>
public sealed record TrialSaid(string? Text, double? Si);

/// <summary>What a trial length proves for one course of a plan.</summary>
/// <param name="Course">The course.</param>
/// <param name="Passes">Passes in order.</param>
/// <param name="Curve">Growth over them, kg/m³; null without densities.</param>
/// <param name="Offset">Offset of the gauge; null where no core was paired with a reading, so that densities are indicative.</param>
/// <param name="Reference">Reference density from cores, kg/m³; null without one.</param>
/// <param name="Target">Density that the plan asks for, kg/m³; null without reference or degree.</param>
/// <param name="Behind">Density before the first pass as a share of the reference; null where it was not read.</param>
/// <param name="Covers">In what it is like the plan.</param>
public sealed record TrialGrowth(
    Course Course, IReadOnlyList<TrialPass> Passes, GrowthCurve? Curve, GaugeOffset? Offset, double? Reference, double? Target, double? Behind, IReadOnlyList<TrialCover> Covers)
{
    /// <summary>Works out what a record of a trial length proves.</summary>
    /// <param name="shift">The plan with the record of the trial length, whose stations need not be those of the plan.</param>
    /// <param name="course">The course.</param>
    /// <param name="growth">Gain per pass below which more passes are not worth it, kg/m³.</param>
    /// <param name="repeatability">What the gauge does not repeat, kg/m³.</param>
    public static TrialGrowth Of(HappenedShift shift, Course course, double growth, double repeatability) => new Worker(shift, course).Of(growth, repeatability);

    private sealed class Worker(HappenedShift shift, Course course)
    {
        private readonly ShiftRecord record = shift.Record;
        private readonly Mix? mix = shift.Plan.Mixes.FirstOrDefault(one => PlanView.Same(one.Id, course.Mix));

        public TrialGrowth Of(double growth, double repeatability)
        {
            var offset = GaugeOffset.Of([.. record.Gauges.Where(reading => shift.IsOf(reading.Course, course)).Select(reading => (reading.Density, Core: CoreOf(reading))).Where(pair => pair.Core is not null).Select(pair => (pair.Density, pair.Core!.Value))]);
            var reference = Reference();
            var places = record.Passes.Where(pass => pass.Station is not null).GroupBy(pass => pass.Station!.Value).Select(place => place.OrderBy(pass => pass.At).ThenBy(pass => pass.Place.Line).ToList()).ToList();
            var rolled = places.ConvertAll(place => place.FindAll(pass => pass.Pass != 0));
            var passes = Enumerable.Range(0, rolled.Select(place => place.Count).DefaultIfEmpty(0).Max())
                .Select(index => Pass(index, [.. rolled.Where(place => place.Count > index).Select(place => place[index])], offset?.Offset ?? 0, reference)).OfType<TrialPass>().ToList();
            var target = reference * mix?.Density?.Degree?.Si;
            var behind = places.SelectMany(place => place).Where(pass => pass.Pass == 0).Select(pass => pass.Density).OfType<double>().ToList();
            var curve = GrowthCurve.Of([.. passes.Select(pass => pass.Density)], growth, target, repeatability);
            return new TrialGrowth(course, passes, curve, offset, reference, target, behind.Count > 0 ? (behind.Average() + (offset?.Offset ?? 0)) / reference : null, [.. Covers(curve, rolled)]);
        }

        private TrialPass? Pass(int index, IReadOnlyList<PassReading> made, double offset, double? reference)
        {
            var read = made.Where(pass => pass.Density is not null).ToList();
            if (read.Count == 0)
            {
                return null;
            }

            var density = read.Average(pass => pass.Density!.Value) + offset;
            var skins = read.Select(pass => pass.Skin).OfType<double>().ToList();
            var phases = read.Select(pass => HappenedRolling.PhaseOf(shift, pass)?.Id).Distinct(StringComparer.Ordinal).ToList();
            return new TrialPass(index + 1, [.. read.Select(pass => pass.Roller).Distinct(StringComparer.Ordinal)], phases is [{ } only] ? only : null, read.Count, density, density / reference, skins.Count > 0 ? skins.Average() : null);
        }

        private double? CoreOf(GaugeReading reading) => reading.Core is null ? null
            : record.Cores.FirstOrDefault(core => PlanView.Same(core.Number, reading.Core) && shift.IsOf(core.Course, course))?.Bulk;

        private double? Reference()
        {
            var all = record.Cores.Where(core => shift.IsOf(core.Course, course))
                .Select(core => mix?.Density?.Reference switch { DensityReference.Laboratory => core.Reference, DensityReference.Maximum => core.Maximum, _ => null }).OfType<double>().ToList();
            return all.Count > 0 ? all.Average() : null;
        }

        private IEnumerable<TrialCover> Covers(GrowthCurve? curve, List<List<PassReading>> rolled)
        {
            string[] mixes = [.. record.Loads.Where(load => load.State == LoadState.Valid && load.Mix is not null && (load.Course is null || shift.IsOf(load.Course, course))).Select(load => load.Mix!).Distinct(StringComparer.Ordinal)];
            yield return new(TrialLikeness.Mix, Words(mixes), new(course.Mix, null), mixes.Length == 0 ? null : mixes.Contains(course.Mix, StringComparer.Ordinal));
            yield return Thickness();
            string[] planned = [.. (shift.Plan.Rolling?.Rollers ?? []).Where(roller => Densifies(roller.Phase)).Select(roller => roller.Id)];
            string[] seen = [.. rolled.SelectMany(place => place).Select(pass => pass.Roller).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
            yield return new(TrialLikeness.Rollers, Words(seen), Words(planned), seen.Length == 0 || planned.Length == 0 ? null : planned.All(roller => seen.Contains(roller, StringComparer.Ordinal)));
            var counted = (shift.Plan.Rolling?.Phases ?? []).Where(phase => Densifies(phase.Id)).Select(phase => (double?)phase.Passes).ToList();
            var passes = counted.Count == 0 || counted.Contains(null) ? null : counted.Sum();
            yield return new(TrialLikeness.Passes, new(null, curve?.Pattern), new(null, passes), curve?.Pattern is { } pattern && passes is { } n ? n >= pattern : null);
            yield return Weather(TrialLikeness.Air, record.Weather.Min(reading => reading.Air), Planned("course.air_lowest"), isLowest: true);
            yield return Weather(TrialLikeness.Base, record.Weather.Min(reading => reading.Surface), Planned("course.base_lowest"), isLowest: true);
            yield return Weather(TrialLikeness.Wind, record.Weather.Max(reading => reading.Wind), Planned("weather.wind_highest_at_mat"), isLowest: false);
        }

        // Within what the plan tolerates, and what the mean of a few places leaves open.
        private TrialCover Thickness()
        {
            double[] points = [.. HappenedCourse.Points(shift, course).Select(point => point.Si)];
            double? mean = points.Length > 0 ? points.Average() : null;
            var open = (course.Tolerance?.Si ?? 0) + (2 * HappenedCourse.OfMean(points, shift.Known.Thickness) ?? 0);
            return new(TrialLikeness.Thickness, new(null, mean), new(null, course.Thickness.Si), mean is { } known ? Math.Abs(known - course.Thickness.Si) <= open : null);
        }

        private static TrialCover Weather(TrialLikeness kind, double? trial, double? plan, bool isLowest) =>
            new(kind, new(null, trial), new(null, plan), trial is { } was && plan is { } will ? (isLowest ? was <= will : was >= will) : null);

        private double? Planned(string quantity) => PlanView.Of(shift.Context).Of(ElementKind.Course, course.Id) is { } element && shift.Context.Get(quantity, element).Value is NumberValue number ? number.Si : null;

        private bool Densifies(string? phase) => shift.Plan.Rolling?.Phases.FirstOrDefault(one => PlanView.Same(one.Id, phase))?.Kind is PhaseKind.Initial or PhaseKind.Main;

        private static TrialSaid Words(string[] words) => new(words.Length == 0 ? null : string.Join(", ", words), null);
    }
}
