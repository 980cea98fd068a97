using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Mat;

namespace Laygate.Engineering.Measured;

/// <summary>Values of the two parameters at which curves are solved, and the polynomials between them.</summary>
/// <param name="Conductivity">Range of the conductivity as a share of the assumed one.</param>
/// <param name="Laying">Range of the temperature behind the screed less the expected one, K.</param>
internal sealed record FitNodes((double Low, double High) Conductivity, (double Low, double High) Laying)
{
    // A curve bends with the conductivity and is nearly straight in the temperature that it begins with.
    private const int Conductivities = 5;
    private const int Layings = 3;

    /// <summary>The pairs of values.</summary>
    public IReadOnlyList<(double Conductivity, double Laying)> All { get; } =
        [.. from i in Enumerable.Range(0, Conductivities) from k in Enumerable.Range(0, Layings) select (At(Conductivity, i, Conductivities), At(Laying, k, Layings))];

    /// <summary>Index of the pair in the middle, about which differences are taken.</summary>
    public static int Centre => ((Conductivities / 2) * Layings) + (Layings / 2);

    /// <summary>The ranges that hold for all courses of all places: the narrowest.</summary>
    public static FitNodes Of(IEnumerable<ComparedPlace> places, AssumptionSet assumptions)
    {
        var courses = places.SelectMany(place => place.Inputs.Courses).ToList();
        var shares = courses.ConvertAll(course => assumptions[AssumptionIds.ConductivityOf(course.Material)]).ConvertAll(one => (Low: one.Low / one.Number, High: one.High / one.Number));
        return new FitNodes(
            (shares.Max(share => share.Low), shares.Min(share => share.High)),
            (courses.Max(course => course.Coldest - course.Celsius), courses.Min(course => course.Hottest - course.Celsius)));
    }

    /// <summary>What was laid, with a pair of values.</summary>
    public static MatInputs At(MatInputs inputs, AssumptionSet assumptions, double conductivity, double laying) => inputs with
    {
        Courses = [.. inputs.Courses.Select(course =>
        {
            var number = conductivity * assumptions[AssumptionIds.ConductivityOf(course.Material)].Number;
            return LearntMat.Shifted(course, laying, laying, laying) with { Conductivity = new MatRange(number, number, number) };
        })],
    };

    /// <summary>Weights of the solved curves for a pair of values; they sum to 1 (Lagrange's form of the polynomial through the nodes).</summary>
    public double[] Weights(double conductivity, double laying)
    {
        var (along, across) = (Lagrange(conductivity, Conductivity, Conductivities), Lagrange(laying, Laying, Layings));
        return [.. along.SelectMany(one => across.Select(other => one * other))];
    }

    private static double At((double Low, double High) range, int index, int count) => range.Low + ((range.High - range.Low) * index / (count - 1));

    private static double[] Lagrange(double value, (double Low, double High) range, int count)
    {
        var at = Enumerable.Range(0, count).Select(i => At(range, i, count)).ToArray();
        return [.. at.Select((own, i) => at.Where((_, k) => k != i).Aggregate(1.0, (product, other) => product * (value - other) / (own - other)))];
    }
}
