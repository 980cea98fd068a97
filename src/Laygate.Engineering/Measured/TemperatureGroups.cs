using Laygate.Engineering.Supply.Simulation;

namespace Laygate.Engineering.Measured;

/// <summary>Bias and coverage of readings, by kind and time after the screed.</summary>
internal static class TemperatureGroups
{
    /// <summary>Times after the screed at which groups begin, s: judgement, as long as initial, main and finish rolling last.</summary>
    private static readonly double[] Begins = [0, 600, 1200, 2400];

    /// <summary>Skin, then inside: all of them, then by time; none without readings.</summary>
    public static IReadOnlyList<TemperatureGroup> Of(IReadOnlyList<ComparedTemperature> compared)
    {
        var groups = new List<TemperatureGroup>();
        foreach (var isSkin in new[] { true, false })
        {
            var own = compared.Where(one => one.IsSkin == isSkin).ToList();
            groups.AddRange(Group(own, isSkin, 0, double.PositiveInfinity));
            for (var i = 0; i < Begins.Length; i++)
            {
                var (from, to) = (Begins[i], i + 1 < Begins.Length ? Begins[i + 1] : double.PositiveInfinity);
                groups.AddRange(Group([.. own.Where(one => one.Age >= from && one.Age < to)], isSkin, from, to));
            }
        }

        return groups;
    }

    private static IEnumerable<TemperatureGroup> Group(List<ComparedTemperature> own, bool isSkin, double from, double to)
    {
        if (own.Count == 0)
        {
            yield break;
        }

        var places = own.Select(one => (one.Row.Station, one.Row.Run, one.Row.Offset)).Distinct().Count();
        var share = own.Count(one => one.IsInside) / (double)own.Count;
        var limits = Statistics.Share((int)Math.Round(share * places), places);
        var bias = own.Average(one => one.Difference);
        yield return new TemperatureGroup(
            isSkin, from, to, own.Count, places, new Band(share, Math.Min(share, limits.Low), Math.Max(share, limits.High)), bias,
            own.Count > 1 ? MathNet.Numerics.Statistics.Statistics.StandardDeviation(own.Select(one => one.Difference)) : null);
    }
}
