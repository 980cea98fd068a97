using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling;
using Laygate.Engineering.Mat;
using Laygate.Engineering.Quantities;
using Laygate.Model.Records;
using MathNet.Numerics.LinearAlgebra;

namespace Laygate.Engineering.Measured;

/// <summary>
/// What one shift says about the two parameters: the sum of squares of measured less computed for any pair of values, weighed with how the
/// differences hang together. The curves are solved at a grid of values and taken as polynomials between.
/// </summary>
internal sealed class FitEvidence
{
    private readonly FitNodes nodes;
    private readonly Matrix<double> gram;

    private FitEvidence(FitNodes nodes, Matrix<double> gram) => (this.nodes, this.gram) = (nodes, gram);

    /// <summary>The evidence of a shift; null where a place could not be solved.</summary>
    /// <param name="tonight">The plan in the weather that was measured.</param>
    /// <param name="places">The places.</param>
    /// <param name="uncertainty">Uncertainties of the record.</param>
    /// <param name="nodes">Values at which the curves are solved.</param>
    public static FitEvidence? Of(QuantityContext tonight, IReadOnlyList<ComparedPlace> places, RecordUncertainty uncertainty, FitNodes nodes)
    {
        var (differences, spreads, inverse) = (new List<double[]>(), new List<double[]>(), new List<double>());
        var scatter = tonight.Assumptions[AssumptionIds.LayingSpread];
        for (var p = 0; p < places.Count; p++)
        {
            if (Solved(tonight, places[p], nodes) is not { } computed || Others(tonight, places[p]) is not { } others)
            {
                return null;
            }

            for (var row = 0; row < places[p].Rows.Count; row++)
            {
                var reading = places[p].Rows[row];
                var centre = computed[FitNodes.Centre][row];
                differences.Add([reading.Value - centre, .. computed.Select(answers => answers[row] - centre)]);
                // Places scatter about the mean of the shift by as much as is usual; evenly spread over a range R, one standard deviation is R/√12.
                spreads.Add([.. others[row], .. places.Select((_, i) => i == p ? (scatter.High - scatter.Low) / Math.Sqrt(12) : 0)]);
                inverse.Add(1 / Math.Pow((reading.Depth is 0 ? uncertainty.Skin : uncertainty.Temperature)!.Value, 2));
            }
        }

        return new FitEvidence(nodes, Weighed(Matrix<double>.Build.DenseOfRowArrays(differences), Matrix<double>.Build.DenseOfRowArrays(spreads), Vector<double>.Build.DenseOfEnumerable(inverse)));
    }

    /// <summary>Weighed sum of squares at a pair of values.</summary>
    public double Squares(double conductivity, double laying)
    {
        var weights = nodes.Weights(conductivity, laying);
        var vector = Vector<double>.Build.Dense(weights.Length + 1, i => i == 0 ? 1 : -weights[i - 1]);
        return vector * gram * vector;
    }

    // The inverse of D + S Sᵀ by the identity of Woodbury: D⁻¹ - D⁻¹ S (I + Sᵀ D⁻¹ S)⁻¹ Sᵀ D⁻¹ (recalled; the test derives it for one reading).
    private static Matrix<double> Weighed(Matrix<double> a, Matrix<double> s, Vector<double> inverse)
    {
        var weighed = Matrix<double>.Build.Dense(a.RowCount, a.ColumnCount, (row, column) => a[row, column] * inverse[row]);
        var across = s.TransposeThisAndMultiply(weighed);
        var inner = Matrix<double>.Build.DenseIdentity(s.ColumnCount) + s.TransposeThisAndMultiply(Matrix<double>.Build.Dense(s.RowCount, s.ColumnCount, (row, column) => s[row, column] * inverse[row]));
        return a.TransposeThisAndMultiply(weighed) - across.TransposeThisAndMultiply(inner.Cholesky().Solve(across));
    }

    private static List<double[]>? Solved(QuantityContext tonight, ComparedPlace place, FitNodes nodes)
    {
        var solved = new List<double[]>();
        foreach (var (conductivity, laying) in nodes.All)
        {
            var model = new MatModel(FitNodes.At(place.Inputs, tonight.Assumptions, conductivity, laying), tonight.Assumptions);
            var problem = model.Build(place.Weather, MatRanges.Central(), place.Duration, null, CoolingSettings.Coarse);
            if (MatCooling.Of(tonight).Answers(problem, place.Questions, place.Times).Answers is not { } answers || !Array.TrueForAll(answers, double.IsFinite))
            {
                return null;
            }

            solved.Add(answers);
        }

        return solved;
    }

    // All else that is not known, sampled as for any band, moves all places of a shift together: each sample is one way in which the shift may have been.
    private static List<double[]>? Others(QuantityContext tonight, ComparedPlace place)
    {
        var model = new MatModel(place.Inputs, tonight.Assumptions);
        var sampled = MatCooling.Of(tonight).Sample(
            MatRanges.All(isRolled: false), sample => model.Build(place.Weather, Pinned(sample), place.Duration, null, CoolingSettings.Coarse), place.Questions, _ => place.Times);
        return sampled.Answers is { } answers
            ? [.. place.Rows.Select((_, row) => Enumerable.Range(0, answers.Count).Select(i => (answers.Sample(row, i) - answers.Expected(row)) / Math.Sqrt(answers.Count)).ToArray())]
            : null;
    }

    private static double[] Pinned(double[] sample)
    {
        double[] pinned = [.. sample];
        (pinned[MatRanges.Mix], pinned[MatRanges.Laying]) = (double.NaN, double.NaN);
        return pinned;
    }
}
