using System.Buffers;
using System.Numerics;

namespace Laygate.Engineering.Cooling;

/// <summary>The profile of a recorded solve at one moment, read without building it.</summary>
internal readonly partial struct CoolingMoment
{
    private readonly CoolingProblem problem;
    private readonly CoolingGrid grid;
    private readonly CoolingRecord record;
    private readonly double time;
    private readonly int row;
    private readonly int next;
    private readonly int first;
    private readonly double y0;
    private readonly double f0;
    private readonly double y1;
    private readonly double f1;
    private readonly double dy;
    private readonly double df0;
    private readonly double df1;
    private readonly double curved;

    /// <summary>Temperatures and then rates of some cells in a row, where many questions to them follow; null: each is read when asked for.</summary>
    private readonly double[]? known;
    private readonly int knownFrom;
    private readonly int knownCount;

    public CoolingMoment(CoolingProblem problem, CoolingGrid grid, CoolingRecord record, double time)
        : this(problem, grid, record, time, record.Before(time))
    {
    }

    public CoolingMoment(CoolingProblem problem, CoolingGrid grid, CoolingRecord record, double time, int k)
    {
        (this.problem, this.grid, this.record, this.time) = (problem, grid, record, time);
        var step = k + 1 < record.Count ? record.Time[k + 1] - record.Time[k] : 0;
        first = record.First[k];
        curved = record.Curved[step > 0 ? k + 1 : k];
        row = k * grid.Cells;
        next = step > 0 ? row + grid.Cells : row;
        var x = step > 0 ? (time - record.Time[k]) / step : 0;
        y1 = x * x * (3 - (2 * x));
        y0 = 1 - y1;
        f0 = step * x * (1 - x) * (1 - x);
        f1 = -step * x * x * (1 - x);
        dy = step > 0 ? 6 * x * (1 - x) / step : 0;
        df0 = (1 - x) * (1 - (3 * x));
        df1 = x * ((3 * x) - 2);
    }

    private CoolingMoment(in CoolingMoment moment, int from, int to, double[] known)
    {
        this = moment;
        (knownFrom, knownCount) = (from, to - from);
        var cells = known.AsSpan(0, knownCount);
        var rates = known.AsSpan(knownCount, knownCount);
        FillContents(cells, from);
        if (grid.Heat.Varies)
        {
            grid.Heat.ToCelsius(cells, cells, from);
        }

        for (var i = from; i < to; i++)
        {
            rates[i - from] = Rate(i);
        }

        this.known = known;
    }

    public double Value(CoolingPlace place) => place.Kind switch
    {
        CoolingPlaceKind.Skin => Skin(),
        CoolingPlaceKind.Core => Core(),
        CoolingPlaceKind.CoreSkinDifference => Core() - Skin(),
        CoolingPlaceKind.HotBodyMean => HotBodyMean(),
        CoolingPlaceKind.Depth => AtDepth(place.AtDepth),
        _ => InLayer(place),
    };

    public double FluxBelow(int layer)
    {
        if (!IsLaid(layer))
        {
            return double.NaN;
        }

        var segment = grid.SegmentOf(layer);
        var i = grid.CellAt(grid.LayerTop[layer + 1], grid.SegmentStart[segment], grid.SegmentStart[segment + 1]);
        var lower = i + 1 < grid.Cells ? Cell(i + 1) - (grid.LagBelow[i] * Rate(i + 1)) : grid.BottomTemperature;
        return grid.Down[i] * (Cell(i) - (grid.LagAbove[i] * Rate(i)) - lower);
    }

    private double InLayer(CoolingPlace place)
    {
        var layer = place.Layer;
        if (layer < 0 || layer >= problem.Layers.Count || !IsLaid(layer))
        {
            return double.NaN;
        }

        var (top, bottom) = (grid.LayerTop[layer], grid.LayerTop[layer + 1]);
        return place.Kind switch
        {
            CoolingPlaceKind.LayerMean => Mean(layer),
            CoolingPlaceKind.MidDepth => InSegment(grid.SegmentOf(layer), 0.5 * (top + bottom)),
            CoolingPlaceKind.TopFace => InSegment(grid.SegmentOf(layer), top),
            _ => InSegment(grid.SegmentOf(layer), bottom),
        };
    }

    private bool IsLaid(int layer) => grid.SegmentStart[grid.SegmentOf(layer)] >= first;

    /// <summary>Mean temperature of a cell; what is recorded is its heat content.</summary>
    private double Cell(int i) => known is not null ? known[i - knownFrom] : grid.Heat.Varies ? grid.Heat.Celsius(i, Content(i)) : Content(i);

    private double Content(int i) =>
        (y0 * record.Content[row + i]) + (y1 * record.Content[next + i]) + (f0 * record.Rate[row + i]) + (f1 * record.Rate[next + i]);

    private void FillContents(Span<double> target, int from)
    {
        ReadOnlySpan<double> a = record.Content.AsSpan(row + from, target.Length);
        ReadOnlySpan<double> b = record.Content.AsSpan(next + from, target.Length);
        ReadOnlySpan<double> c = record.Rate.AsSpan(row + from, target.Length);
        ReadOnlySpan<double> d = record.Rate.AsSpan(next + from, target.Length);
        var i = 0;
        for (; i <= target.Length - Vector<double>.Count; i += Vector<double>.Count)
        {
            ((new Vector<double>(a[i..]) * y0) + (new Vector<double>(b[i..]) * y1) + (new Vector<double>(c[i..]) * f0) + (new Vector<double>(d[i..]) * f1)).CopyTo(target[i..]);
        }

        for (; i < target.Length; i++)
        {
            target[i] = Content(from + i);
        }
    }

    /// <summary>Asks the same moment with the cells of a stretch read at once, which is much cheaper than one by one.</summary>
    private double Reading(int from, int to, Func<CoolingMoment, int, double> ask, int argument)
    {
        var rented = ArrayPool<double>.Shared.Rent(2 * (to - from));
        try
        {
            return ask(new CoolingMoment(this, from, to, rented), argument);
        }
        finally
        {
            ArrayPool<double>.Shared.Return(rented);
        }
    }

    /// <summary>Rate of a cell where the step counted the curvature of the profile, else zero: as the step did, so do we.</summary>
    private double Rate(int i) => known is not null ? known[i - knownFrom + knownCount] : curved <= 0 ? 0 :
        (dy * (record.Content[next + i] - record.Content[row + i])) + (df0 * record.Rate[row + i]) + (df1 * record.Rate[next + i]);

    /// <summary>Second derivative over depth, from the heat equation: d²T/dz² = (dT/dt)/alpha.</summary>
    private double Curvature(int i) => Rate(i) * grid.InverseDiffusivity[i];

    /// <summary>Temperature at the centre of a cell; a cell's own value is its mean.</summary>
    private double Centre(int i) => Cell(i) - (grid.Width[i] * grid.Width[i] / 24 * Curvature(i));

    private double Skin()
    {
        var surface = default(SurfaceBalance);
        surface.Use(problem.Top, MaterialOf(first));
        var half = grid.Half[first];
        var cell = Cell(first);
        return surface.Skin(half, (half * cell) - (grid.Capacity[first] / 3 * Rate(first)), time, cell);
    }

    private LayerMaterial MaterialOf(int cell)
    {
        var segment = 0;
        while (grid.SegmentStart[segment + 1] <= cell)
        {
            segment++;
        }

        return grid.SegmentMaterial[segment];
    }

    private double HotBodyMean()
    {
        var (sum, depth) = (0.0, 0.0);
        for (var layer = 0; layer < problem.Layers.Count; layer++)
        {
            if (problem.Layers[layer].Role == LayerRole.Course && IsLaid(layer))
            {
                var thickness = grid.LayerTop[layer + 1] - grid.LayerTop[layer];
                sum += thickness * Mean(layer);
                depth += thickness;
            }
        }

        return depth > 0 ? sum / depth : double.NaN;
    }

    private double Mean(int layer)
    {
        var segment = grid.SegmentOf(layer);
        return Reading(grid.SegmentStart[segment], grid.SegmentStart[segment + 1], static (moment, asked) => moment.MeanOf(asked), layer);
    }

    private double MeanOf(int layer)
    {
        var (top, bottom) = (grid.LayerTop[layer], grid.LayerTop[layer + 1]);
        var segment = grid.SegmentOf(layer);
        var sum = 0.0;
        for (var i = grid.SegmentStart[segment]; i < grid.SegmentStart[segment + 1]; i++)
        {
            var (from, to) = (Math.Max(top, grid.Face[i]), Math.Min(bottom, grid.Face[i + 1]));
            if (to <= from)
            {
                continue;
            }

            var part = to - from;
            var whole = part > grid.Width[i] * (1 - 1e-9);
            sum += part * (whole ? Cell(i) : Cell(i) + (Slope(segment, i) * (0.5 * (from + to) - MiddleOf(i))));
        }

        return sum / (bottom - top);
    }

    private double MiddleOf(int i) => 0.5 * (grid.Face[i] + grid.Face[i + 1]);

    private double Slope(int segment, int i)
    {
        var upper = Math.Max(i - 1, grid.SegmentStart[segment]);
        var lower = Math.Min(i + 1, grid.SegmentStart[segment + 1] - 1);
        return (Cell(lower) - Cell(upper)) / (MiddleOf(lower) - MiddleOf(upper));
    }
}
