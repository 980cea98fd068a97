using Laygate.Engineering.Formulas;

namespace Laygate.Engineering.Rolling;

/// <summary>Side-by-side strips that a roller needs to cover a mat.</summary>
public static class Strips
{
    /// <summary>Number of strips.</summary>
    /// <param name="width">W, m: mat width.</param>
    /// <param name="left">hl, m: how far the drum reaches over the left edge; below zero where it stays off.</param>
    /// <param name="right">hr, m: how far the drum reaches over the right edge; below zero where it stays off.</param>
    /// <param name="drum">b, m: width of the drum.</param>
    /// <param name="overlap">o, m: overlap of neighbouring strips.</param>
    /// <returns>k, 1; null outside the range.</returns>
    [Formula("k", "k = ⌈(W + hl + hr − o) / (b − o)⌉", Sources.Strips, "drum wider than the overlap, width to roll above zero, result below a thousand; otherwise no result")]
    public static int? Count(double width, double left, double right, double drum, double overlap)
    {
        var rolled = width + left + right;
        var fresh = drum - overlap;
        if (!Finite.Positive(width, rolled, fresh) || !Finite.NotNegative(overlap))
        {
            return null;
        }

        var strips = Math.Max(1, (rolled - overlap) / fresh);
        return strips < 1000 ? (int)Math.Ceiling(strips - 1e-9) : null;
    }
}
