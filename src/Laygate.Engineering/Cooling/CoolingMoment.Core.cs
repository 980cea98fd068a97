namespace Laygate.Engineering.Cooling;

/// <content>The hottest point of the hot body.</content>
internal readonly partial struct CoolingMoment
{
    /// <summary>Highest point of the profile in the courses: the highest of the crests around every centre that tops its neighbours.</summary>
    private double Core()
    {
        // The face below the last course is read from the cell beyond it, too.
        var end = EndOfHotBody();
        return end > first ? Reading(first, Math.Min(end + 1, grid.Cells), static (moment, asked) => moment.CoreOf(asked), end) : double.NaN;
    }

    private double CoreOf(int end)
    {
        var (core, before, own) = (double.NaN, double.NegativeInfinity, end > first ? Centre(first) : double.NaN);
        for (var i = first; i < end; i++)
        {
            var after = i + 1 < end ? Centre(i + 1) : double.NegativeInfinity;
            if (!(own < before) && !(own < after))
            {
                var crest = Math.Max(own, CrestAround(i, end));
                core = crest <= core ? core : crest;
            }

            (before, own) = (own, after);
        }

        return core;
    }

    private double CrestAround(int at, int end)
    {
        var above = at > first && !Starts(at) ? CrestBetween(at - 1) : CrestToFace(at, FaceAbove(at), at > first ? at - 1 : -1);
        var below = at + 1 < end && !Starts(at + 1) ? CrestBetween(at) : CrestToFace(at, FaceBelow(at), at + 1 < end ? at + 1 : -1);
        return Math.Max(above, below);
    }

    /// <summary>Whether a cell is the first of its segment.</summary>
    private bool Starts(int cell)
    {
        var segment = 0;
        while (grid.SegmentStart[segment] < cell)
        {
            segment++;
        }

        return grid.SegmentStart[segment] == cell;
    }

    /// <summary>First cell below all courses; courses lie above existing layers.</summary>
    private int EndOfHotBody()
    {
        var end = first;
        for (var layer = 0; layer < problem.Layers.Count; layer++)
        {
            if (problem.Layers[layer].Role == LayerRole.Course && IsLaid(layer))
            {
                end = grid.SegmentStart[grid.SegmentOf(layer) + 1];
            }
        }

        return end;
    }

    /// <summary>Highest value of the cubic between the centres of a cell and the next, where it has a crest inside.</summary>
    private double CrestBetween(int i)
    {
        var (a, b) = (MiddleOf(i), MiddleOf(i + 1));
        var scale = (b - a) * (b - a) / 6;
        var (ca, cb) = (scale * Curvature(i), scale * Curvature(i + 1));
        var (square, half, constant) = (3 * (cb - ca), 3 * ca, Centre(i + 1) - Centre(i) - (2 * ca) - cb);
        var root = (half * half) - (square * constant);
        if (!(root > 0))
        {
            return double.NegativeInfinity;
        }

        // Of the two zeros of the slope the crest is the one where it falls; written so that a vanishing square does no harm.
        var share = half < 0 ? constant / (Math.Sqrt(root) - half) : -(half + Math.Sqrt(root)) / square;
        return share is > 0 and < 1 ? Between(i, a + (share * (b - a))) : double.NegativeInfinity;
    }

    /// <summary>Highest value between a centre and a face of its segment, and on the other side of that face if it is within the courses.</summary>
    private double CrestToFace(int i, double face, int beyond)
    {
        var best = Math.Max(face, CrestOfHalf(i, face));
        return beyond < 0 ? best : Math.Max(best, CrestOfHalf(beyond, beyond < i ? FaceBelow(beyond) : FaceAbove(beyond)));
    }

    private double CrestOfHalf(int i, double face)
    {
        var bend = 0.25 * grid.Width[i] * grid.Width[i] * Curvature(i);
        var share = 0.5 - ((Centre(i) - face) / bend);
        return bend < 0 && share is > 0 and < 1 ? face + (share * share * -0.5 * bend) : double.NegativeInfinity;
    }
}
