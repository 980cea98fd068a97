using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Measured;

/// <summary>
/// Fits two parameters of the mat to the measured temperatures of several shifts: the conductivity of the mixes and the temperature behind the screed.
/// Each is even over its range before the fit, as it is sampled everywhere; the fit narrows it by how probable each value makes what was measured,
/// with all else that is not known left free. Each shift is left out in turn and predicted by the others.
/// </summary>
public static class MatFits
{
    /// <summary>Fewest shifts: with one, none is left to be held out. Judgement; two are few.</summary>
    public const int FewestShifts = 2;

    /// <summary>A parameter counts as learnt when its standard deviation is at most this share of the one before: judgement.</summary>
    private const double Narrowed = 0.5;

    private const int Steps = 60;
    private static readonly Unit Percent = UnitTable.Find("%")!;
    private static readonly Unit Kelvin = UnitTable.Find("K")!;

    /// <summary>Fits.</summary>
    /// <param name="shifts">Each shift with its record.</param>
    public static MatFit Of(IReadOnlyList<(QuantityContext Context, ShiftRecord Record)> shifts)
    {
        var read = shifts.Select(shift => MatComparisons.Places(shift.Context, shift.Record)).ToList();
        var empty = read.FindIndex(one => one.Places.Count == 0);
        if (read.Count < FewestShifts || empty >= 0)
        {
            return new MatFit(FitRefusal.FewShifts, Math.Max(0, empty));
        }

        var silent = read.Zip(shifts).ToList().FindIndex(one => one.First.Places.SelectMany(place => place.Rows).Any(row => (row.Depth is 0 ? one.Second.Record.Uncertainty.Skin : one.Second.Record.Uncertainty.Temperature) is not > 0));
        if (silent >= 0)
        {
            return new MatFit(FitRefusal.NoUncertainty, silent);
        }

        var nodes = FitNodes.Of(read.SelectMany(one => one.Places), shifts[0].Context.Assumptions);
        var evidence = read.Select((one, i) => FitEvidence.Of(one.Tonight, one.Places, shifts[i].Record.Uncertainty, nodes)).ToList();
        return evidence.IndexOf(null) is >= 0 and var failed ? new MatFit(FitRefusal.NotSolved, failed) : Fit(shifts, nodes, [.. evidence.OfType<FitEvidence>()], Mixes(read));
    }

    private static MatFit Fit(IReadOnlyList<(QuantityContext Context, ShiftRecord Record)> shifts, FitNodes nodes, List<FitEvidence> evidence, IReadOnlyList<string> mixes)
    {
        var without = evidence.Select((_, i) => Posterior.Of(nodes, [.. evidence.Where((_, k) => k != i)])).ToList();
        var whole = Posterior.Of(nodes, evidence);
        var held = shifts.Select((shift, i) =>
        {
            var before = MatComparisons.Of(shift.Context, shift.Record);
            var taught = Values("held-out", mixes, evidence.Count - 1, Judged(without[i].Conductivity, 0), Judged(without[i].Laying, 0));
            return new HeldOutShift(before, taught is null ? before : MatComparisons.Of(shift.Context, shift.Record, [taught]));
        }).ToList();
        return new MatFit(null, 0)
        {
            Conductivity = Judged(whole.Conductivity, Jackknife(without.ConvertAll(one => one.Conductivity.Mean))),
            Laying = Judged(whole.Laying, Jackknife(without.ConvertAll(one => one.Laying.Mean))),
            HeldOut = held,
            Mixes = mixes,
        };
    }

    /// <summary>An entry of a plan with what was learnt; null where nothing was.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="mixes">Mixes for which it holds.</param>
    /// <param name="shifts">Number of shifts.</param>
    /// <param name="conductivity">Conductivity.</param>
    /// <param name="laying">Temperature behind the screed.</param>
    public static LearntValues? Values(string id, IReadOnlyList<string> mixes, int shifts, FittedValue? conductivity, FittedValue? laying)
    {
        var (known, warmer) = (conductivity is { State: FitState.Learnt } ? conductivity : null, laying is { State: FitState.Learnt } ? laying : null);
        return known is null && warmer is null ? null : new LearntValues
        {
            Id = id,
            Mixes = mixes,
            Shifts = shifts,
            Conductivity = known is null ? null : new LearntConductivity { Value = Share(known.Value), Low = Share(known.Low), High = Share(known.High), AssumedLow = Share(known.Before.Low), AssumedHigh = Share(known.Before.High) },
            Laying = warmer is null ? null : new LearntLaying { Value = Warmer(warmer.Value), Low = Warmer(warmer.Low), High = Warmer(warmer.High), AssumedLow = Warmer(warmer.Before.Low), AssumedHigh = Warmer(warmer.Before.High) },
        };
    }

    private static Measure<Ratio> Share(double share) => new(Math.Round(100 * share, 1), Percent);

    private static Measure<TemperatureDelta> Warmer(double kelvins) => new(Math.Round(kelvins, 1), Kelvin);

    // The uncertainty is what the fit says, or how far the value moves from shift to shift, whichever is more.
    private static FittedValue Judged(Marginal marginal, double moved)
    {
        var deviation = Math.Max(marginal.Deviation, moved);
        var (low, high) = marginal.Before;
        var half = 1.645 * deviation; // The 95 % point of the normal distribution.
        var state = deviation > Narrowed * (high - low) / Math.Sqrt(12) ? FitState.NotIdentifiable : marginal.IsAtEnd ? FitState.AtItsEnd : FitState.Learnt;
        return new FittedValue(state, marginal.Mean, Math.Max(low, marginal.Mean - half), Math.Min(high, marginal.Mean + half), marginal.Before);
    }

    /// <summary>Standard error by leaving one out: √((n - 1)/n · Σ(xᵢ - mean)²). Source: Efron and Stein, The Annals of Statistics 9 (1981) 586–596 (recalled).</summary>
    private static double Jackknife(List<double> values)
    {
        var mean = values.Average();
        return Math.Sqrt((values.Count - 1.0) / values.Count * values.Sum(value => (value - mean) * (value - mean)));
    }

    private static IReadOnlyList<string> Mixes(IEnumerable<(QuantityContext Tonight, IReadOnlyList<ComparedPlace> Places)> read) =>
        [.. read.SelectMany(one => one.Places.SelectMany(place => place.Inputs.Courses).Select(course => one.Tonight.Plan.Courses.FirstOrDefault(own => PlanView.Same(own.Id, course.Id))?.Mix)).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>How probable the values of one parameter are.</summary>
    private sealed record Marginal(double Mean, double Deviation, bool IsAtEnd, (double Low, double High) Before)
    {
        public static Marginal Of((double Low, double High) range, double[] weights)
        {
            var sum = weights.Sum();
            var mean = weights.Select((weight, i) => weight * At(range, i)).Sum() / sum;
            var deviation = Math.Sqrt(weights.Select((weight, i) => weight * Math.Pow(At(range, i) - mean, 2)).Sum() / sum);
            return new Marginal(mean, deviation, Array.IndexOf(weights, weights.Max()) is 0 or Steps, range);
        }

        public static double At((double Low, double High) range, int step) => range.Low + ((range.High - range.Low) * step / Steps);
    }

    /// <summary>How probable pairs of values are, given the evidence of shifts.</summary>
    private sealed record Posterior(Marginal Conductivity, Marginal Laying)
    {
        public static Posterior Of(FitNodes nodes, IReadOnlyList<FitEvidence> evidence)
        {
            var squares = new double[Steps + 1, Steps + 1];
            var least = double.PositiveInfinity;
            for (var i = 0; i <= Steps; i++)
            {
                for (var k = 0; k <= Steps; k++)
                {
                    squares[i, k] = evidence.Sum(one => one.Squares(Marginal.At(nodes.Conductivity, i), Marginal.At(nodes.Laying, k)));
                    least = Math.Min(least, squares[i, k]);
                }
            }

            var (along, across) = (new double[Steps + 1], new double[Steps + 1]);
            for (var i = 0; i <= Steps; i++)
            {
                for (var k = 0; k <= Steps; k++)
                {
                    var weight = Math.Exp((least - squares[i, k]) / 2);
                    along[i] += weight;
                    across[k] += weight;
                }
            }

            return new Posterior(Marginal.Of(nodes.Conductivity, along), Marginal.Of(nodes.Laying, across));
        }
    }
}
