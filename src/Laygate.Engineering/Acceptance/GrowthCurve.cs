namespace Laygate.Engineering.Acceptance;

/// <summary>How density grows from pass to pass over fixed places, and the number of passes that it proves.</summary>
/// <param name="Gains">Gain of each pass but the first, in the unit of the densities: density after it less density after the pass before.</param>
/// <param name="Peak">Pass with the greatest density, from 1.</param>
/// <param name="Pattern">First pass at which the target is reached, where there is one, and behind which the next gains less than the growth; null where no pass shows it.</param>
/// <param name="Losses">Passes after which the density is lower than before by more than the repeatability: the mat breaks down, it is no noise.</param>
public sealed record GrowthCurve(IReadOnlyList<double> Gains, int Peak, int? Pattern, IReadOnlyList<int> Losses)
{
    /// <summary>Reads a curve. Method: control strips, growth curve with a limit of gain per pass, common in agency procedures (recalled).</summary>
    /// <param name="densities">Mean density after each pass, in order; at least one.</param>
    /// <param name="growth">Gain per pass below which more passes are not worth it, in the same unit; the specification or the client states it.</param>
    /// <param name="target">Density to be reached, in the same unit; null without one.</param>
    /// <param name="repeatability">What the gauge does not repeat, in the same unit; a fall within it is noise.</param>
    /// <returns>The curve; null without a density.</returns>
    public static GrowthCurve? Of(IReadOnlyList<double> densities, double growth, double? target, double repeatability)
    {
        if (densities.Count == 0)
        {
            return null;
        }

        double[] gains = [.. densities.Zip(densities.Skip(1), (before, after) => after - before)];
        var pattern = Enumerable.Range(1, gains.Length).Where(pass => !(densities[pass - 1] < target) && gains[pass - 1] < growth).Select(pass => (int?)pass).FirstOrDefault();
        var peak = Enumerable.Range(0, densities.Count).MaxBy(index => densities[index]) + 1;
        return new GrowthCurve(gains, peak, pattern, [.. gains.Index().Where(gain => -gain.Item > repeatability).Select(gain => gain.Index + 2)]);
    }
}
