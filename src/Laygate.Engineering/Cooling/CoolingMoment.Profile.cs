namespace Laygate.Engineering.Cooling;

/// <summary>Temperatures between the centres of cells and on faces.</summary>
internal readonly partial struct CoolingMoment
{
    private double AtDepth(double depth)
    {
        if (!(depth >= grid.Face[first] && depth <= grid.Face[grid.Cells]))
        {
            return double.NaN;
        }

        var segment = 0;
        while (segment + 1 < grid.Segments && grid.Face[grid.SegmentStart[segment + 1]] <= depth)
        {
            segment++;
        }

        return InSegment(segment, depth);
    }

    /// <summary>
    /// Temperature at a depth: between cell centres a cubic with the second derivatives of the heat equation, in the
    /// half cells at the ends of a segment a line to the face bent by the second derivative.
    /// </summary>
    private double InSegment(int segment, double depth)
    {
        var (start, end) = (grid.SegmentStart[segment], grid.SegmentStart[segment + 1]);
        var i = grid.CellAt(depth, start, end);
        if (depth < MiddleOf(i))
        {
            return i == start ? Bent(i, grid.Face[i], FaceAbove(i), depth) : Between(i - 1, depth);
        }

        return i == end - 1 ? Bent(i, grid.Face[i + 1], FaceBelow(i), depth) : Between(i, depth);
    }

    private double Between(int i, double depth)
    {
        var (a, b) = (MiddleOf(i), MiddleOf(i + 1));
        var lower = (depth - a) / (b - a);
        var upper = 1 - lower;
        var bend = (((upper * upper * upper) - upper) * Curvature(i)) + (((lower * lower * lower) - lower) * Curvature(i + 1));
        return (upper * Centre(i)) + (lower * Centre(i + 1)) + (bend * (b - a) * (b - a) / 6);
    }

    private double Bent(int i, double face, double atFace, double depth)
    {
        var middle = MiddleOf(i);
        var share = (depth - face) / (middle - face);
        return (atFace * (1 - share)) + (Centre(i) * share)
            - (0.5 * Curvature(i) * (middle - face) * (middle - face) * share * (1 - share));
    }

    private double FaceAbove(int i) => i == first ? Skin() : Shared(i - 1, fromAbove: false);

    private double FaceBelow(int i)
    {
        if (i + 1 < grid.Cells)
        {
            return Shared(i, fromAbove: true);
        }

        var seen = Cell(i) - (grid.Width[i] * grid.Width[i] / 6 * Curvature(i));
        return seen - (grid.Down[i] / grid.Half[i] * (seen - grid.BottomTemperature));
    }

    /// <summary>
    /// Temperature of the face below a cell, from the flux on both of its sides; across a contact resistance the side
    /// of the upper or of the lower cell.
    /// </summary>
    private double Shared(int i, bool fromAbove)
    {
        var (a, b) = (grid.Half[i], grid.Half[i + 1]);
        var above = (a * Cell(i)) - (grid.Capacity[i] / 3 * Rate(i));
        var below = (b * Cell(i + 1)) - (grid.Capacity[i + 1] / 3 * Rate(i + 1));
        if (grid.Resistance[i] <= 0)
        {
            return (above + below) / (a + b);
        }

        var flux = grid.Down[i] * ((above / a) - (below / b));
        return fromAbove ? (above - flux) / a : (below + flux) / b;
    }
}
