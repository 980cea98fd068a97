using System.Globalization;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Values;

/// <summary>Lists the numbers that a plan states and of which a usual range can be named, in plan order. Stations and angles tell where something lies and have none.</summary>
internal sealed partial class StatedValues
{
    private readonly List<StatedValue> values = [];
    private string owner = string.Empty;

    /// <summary>The numbers of a plan.</summary>
    public static IReadOnlyList<StatedValue> Of(Plan plan)
    {
        var list = new StatedValues();
        list.Place(plan);
        list.Mixes(plan);
        list.Courses(plan);
        list.Runs(plan);
        list.Supply(plan.Supply);
        list.Pavers(plan);
        list.Rolling(plan.Rolling);
        list.Surface(plan);
        list.Tests(plan);
        return list.values;
    }

    private void Add(string key, IMeasure? measure, ValueSort sort)
    {
        if (measure is not null) values.Add(new StatedValue(owner, key, sort, measure, null));
    }

    private void Add(string key, int? count, ValueSort sort)
    {
        if (count is not null) values.Add(new StatedValue(owner, key, sort, null, count));
    }

    private void Add(string key, TemperatureBand? band, ValueSort sort)
    {
        Add($"{key}.lowest", band?.Lowest, sort);
        Add($"{key}.expected", band?.Expected, sort);
        Add($"{key}.highest", band?.Highest, sort);
    }

    private void Mixes(Plan plan)
    {
        foreach (var mix in plan.Mixes)
        {
            owner = $"mix:{mix.Id}";
            var sort = mix.Kind == MixKind.MasticAsphalt ? ValueSort.MasticMix : ValueSort.HotMix;
            Add("density.degree", mix.Density?.Degree, ValueSort.Compaction);
            Add("loading", mix.Loading, sort);
            Add("delivery", mix.Delivery, sort);
            Add("refuse_below.value", mix.RefuseBelow?.Value, ValueSort.Refusal);
            Add("start.value", mix.Start?.Value, ValueSort.RollingStart);
            Add("cessation.value", mix.Cessation?.Value, ValueSort.Cessation);
            Add("tender", mix.Tender, ValueSort.Tender);
            Add("grit_embedment.value", mix.GritEmbedment?.Value, ValueSort.GritEmbedment);
            Add("age_limit", mix.AgeLimit, ValueSort.AgeLimit);
        }
    }

    private void Courses(Plan plan)
    {
        foreach (var course in plan.Courses)
        {
            owner = $"course:{course.Id}";
            var mastic = plan.Mixes.FirstOrDefault(mix => string.Equals(mix.Id, course.Mix, StringComparison.Ordinal))?.Kind == MixKind.MasticAsphalt;
            Add("thickness", course.Thickness, ValueSort.CourseThickness);
            Add("thickness_lowest", course.ThicknessLowest, ValueSort.ThicknessAtAPoint);
            Add("thickness_highest", course.ThicknessHighest, ValueSort.ThicknessAtAPoint);
            Add("tolerance", course.Tolerance, ValueSort.Tolerance);
            Add("distance", course.Distance, ValueSort.ScreedDistance);
            Add("delay", course.Delay, ValueSort.LayingDelay);
            Add("laying_temperature", course.LayingTemperature, mastic ? ValueSort.MasticMix : ValueSort.HotMix);
            Add("lower_temperature_lowest.value", course.LowerTemperatureLowest?.Value, ValueSort.WarmCourse);
            Add("density_behind_screed.value", course.DensityBehindScreed?.Value, ValueSort.ScreedDensity);
            Add("tonnage", course.Tonnage, ValueSort.Tonnage);
        }
    }

    private void Runs(Plan plan)
    {
        foreach (var run in plan.Runs)
        {
            owner = $"run:{run.Id}";
            Add("order", run.Order, ValueSort.RunOrder);
            Add("move", run.Move, ValueSort.PaverMove);
            Add("starts_after", run.StartsAfter, ValueSort.RunStart);
            Length(run);
            foreach (var width in run.Width) Add(width.At is null ? "width" : $"widths.{Name(width.At)}.value", width.Value, ValueSort.MatWidth);
            Add("left_reach", run.LeftReach, ValueSort.Reach);
            Add("right_reach", run.RightReach, ValueSort.Reach);
            Add("edge_slope", run.EdgeSlope, ValueSort.EdgeSlope);
            Add("above_gutter", run.AboveGutter, ValueSort.Gutter);
            Details(run);
        }
    }

    // Stations may be chainages: only the way between them can be unusual. It is shown at the last one, in its unit.
    private void Length(Run run)
    {
        if (run is { From: { } from, To: { } to }) Add("to", new Measure<Length>(to.Unit.FromSi(Math.Abs(to.Si - from.Si)), to.Unit), ValueSort.RunLength);
    }

    private void Details(Run run)
    {
        foreach (var level in run.Levels)
        {
            Add($"levels.{level.Id}.above", level.Above, ValueSort.Level);
            Add($"levels.{level.Id}.roll_down", level.RollDown, ValueSort.RollDown);
        }

        foreach (var at in run.Thickness)
        {
            Add($"thickness.{at.Course}.nominal", at.Nominal, ValueSort.ThicknessAtAPoint);
            Add($"thickness.{at.Course}.lowest", at.Lowest, ValueSort.ThicknessAtAPoint);
            Add($"thickness.{at.Course}.highest", at.Highest, ValueSort.ThicknessAtAPoint);
        }

        foreach (var area in run.HandLaid)
        {
            Add($"hand_laid.{area.Id}.area", area.Area, ValueSort.HandLaidArea);
            Add($"hand_laid.{area.Id}.thickness", area.Thickness, ValueSort.ThicknessAtAPoint);
        }

        foreach (var end in run.TieIns) Add($"tie_ins.{end.Id}.length", end.Length, ValueSort.TieIn);
    }

    private void Surface(Plan plan)
    {
        foreach (var coat in plan.BondCoats)
        {
            owner = $"bond-coat:{coat.Id}";
            Add("rate", coat.MassRate, ValueSort.BondCoatMass);
            Add("rate", coat.VolumeRate, ValueSort.BondCoatVolume);
            Add("residue", coat.Residue, ValueSort.Residue);
        }

        foreach (var joint in plan.Joints)
        {
            owner = $"joint:{joint.Id}";
            Add("offset_below", joint.OffsetBelow, ValueSort.JointOffset);
            Add("delay", joint.Delay, ValueSort.LayingDelay);
            Add("removed", joint.Removed, ValueSort.CutOff);
        }

        owner = "early-friction";
        Add("grit_by", plan.EarlyFriction?.GritBy, ValueSort.GritBy);
        Add("temporary_limit", plan.EarlyFriction?.TemporaryLimit, ValueSort.TrafficSpeed);
        owner = "opening";
        Add("after", plan.Opening?.After, ValueSort.OpeningAfter);
        Add("below.value", plan.Opening?.Below?.Value, ValueSort.OpeningTemperature);
    }

    private void Tests(Plan plan)
    {
        foreach (var test in plan.Tests)
        {
            owner = $"test:{test.Id}";
            Add("cores.count", test.Cores?.Count, ValueSort.Cores);
            if (test.Reached is not { } reached) continue;
            Add("reached.thickness", reached.Thickness, ValueSort.CourseThickness);
            Add("reached.laying_temperature", reached.LayingTemperature, ValueSort.HotMix);
            Add("reached.density_behind_screed", reached.DensityBehindScreed, ValueSort.ScreedDensity);
            Add("reached.density", reached.Density, ValueSort.Compaction);
            foreach (var passes in reached.Passes) Add($"reached.passes.{passes.Phase}.passes", passes.Passes, ValueSort.Passes);
        }
    }

    // As a reference names the entry of a list: the station or depth as it is written.
    private static string Name(IMeasure at) => string.Create(CultureInfo.InvariantCulture, $"{at.Number:0.######} {at.Unit.Spelling}");
}
