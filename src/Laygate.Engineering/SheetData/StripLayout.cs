namespace Laygate.Engineering.SheetData;

/// <summary>Where the strips of a roller lie across the mat.</summary>
public static class StripLayout
{
    /// <summary>Strips spread evenly, the outer ones reaching as far over the edges as they may.</summary>
    /// <param name="width">W, m: width of the mat.</param>
    /// <param name="left">hl, m: reach over the left edge; below zero where the drum stays off.</param>
    /// <param name="right">hr, m: reach over the right edge.</param>
    /// <param name="drum">b, m: width of the drum.</param>
    /// <param name="strips">k: number of strips; at least 1.</param>
    /// <returns>Each strip from the left edge, m, left to right; empty where a value is no usable number.</returns>
    public static IReadOnlyList<(double From, double To)> Of(double width, double left, double right, double drum, int strips)
    {
        var rolled = width + left + right;
        if (!(rolled > 0 && drum > 0) || strips < 1 || !double.IsFinite(rolled + drum))
        {
            return [];
        }

        var gap = strips == 1 ? 0 : (rolled - drum) / (strips - 1);
        return [.. Enumerable.Range(0, strips).Select(i => (-left + (i * gap), -left + (i * gap) + drum))];
    }
}
