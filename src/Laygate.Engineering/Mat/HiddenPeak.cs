namespace Laygate.Engineering.Mat;

/// <summary>
/// How high an answer may rise between two moments that were asked. The lines through the moments on either side, drawn on into the interval, meet
/// above a rounded peak and at the tip of a sharp one; they are drawn on steeper than they come, as an answer may rise ever faster up to a tip.
/// Where the line from one side does not reach the answer at the other end, the answer bends or jumps on the way, and what rises towards it from
/// the other side may go on rising up to there.
/// </summary>
internal static class HiddenPeak
{
    /// <summary>Least distance, as a share of the interval, that a moment to be asked keeps from its ends.</summary>
    private const double Apart = 0.1;

    /// <summary>Where the highest answer may lie, as a share of the interval, and what it may be at most.</summary>
    /// <param name="left">How much the line on the left rises over the length of the interval, from left to right; not a number where there is none.</param>
    /// <param name="first">Answer at the left end, more being worse.</param>
    /// <param name="second">Answer at the right end.</param>
    /// <param name="right">How much the line on the right rises over the length of the interval, from right to left.</param>
    /// <param name="alike">Difference of two answers that count as equal.</param>
    /// <param name="steeper">By how many times a line may be steeper in the interval than before it.</param>
    public static (double Share, double Value) Of(double left, double first, double second, double right, double alike, double steeper = 1)
    {
        var (above, beside) = (first + (steeper * left) - second, second + (steeper * right) - first);
        if (above > 0 && beside > 0 && double.IsFinite(above + beside))
        {
            var share = beside / (above + beside);
            return (Math.Clamp(share, Apart, 1 - Apart), first + (steeper * left * share));
        }

        (above, beside) = (first + left - second, second + right - first);
        var ends = Math.Max(first, second);
        var fromRight = right > 0 && !(above >= -alike) ? second + right : ends;
        var fromLeft = left > 0 && !(beside >= -alike) ? first + left : ends;
        return (0.5, Math.Max(ends + AtTheEnd(left, above, right, beside, alike), Math.Max(fromRight, fromLeft)));
    }

    /// <summary>At either end of the time of laying only one line is known: by as much as it misses the answer, something may hide.</summary>
    private static double AtTheEnd(double left, double above, double right, double beside, double alike) => (double.IsNaN(left), double.IsNaN(right)) switch
    {
        (false, true) when double.IsFinite(above) && Math.Abs(above) > alike => Math.Abs(above),
        (true, false) when double.IsFinite(beside) && Math.Abs(beside) > alike => Math.Abs(beside),
        _ => 0,
    };
}
