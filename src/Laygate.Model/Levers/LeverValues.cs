using System.Collections;

namespace Laygate.Model.Levers;

/// <summary>Multiples of a step and the end of a range as a list that holds none of them: a plan may state figures a million steps from the end.</summary>
/// <param name="first">Number of the first multiple.</param>
/// <param name="step">The step.</param>
/// <param name="up">Whether the numbers rise.</param>
/// <param name="multiples">How many multiples there are.</param>
/// <param name="end">What comes after them.</param>
internal sealed class LeverValues(double first, double step, bool up, int multiples, double end) : IReadOnlyList<double>
{
    /// <inheritdoc/>
    public int Count => multiples + 1;

    /// <inheritdoc/>
    public double this[int index] => index == multiples ? end
        : index >= 0 && index < multiples ? Tidy((up ? first + index : first - index) * step)
        : throw new ArgumentOutOfRangeException(nameof(index));

    /// <inheritdoc/>
    public IEnumerator<double> GetEnumerator()
    {
        for (var i = 0; i < Count; i++)
        {
            yield return this[i];
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    // 26 steps of 0.1 are 2.6, not 2.6000000000000001.
    private static double Tidy(double value) => double.Round(value, 9);
}
