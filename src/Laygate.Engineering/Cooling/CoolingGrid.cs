namespace Laygate.Engineering.Cooling;

/// <summary>
/// Graded finite-volume grid of a stack. Cell widths are measured as s = z/√alpha, so that one grading serves every
/// material; they grow linearly with the distance from the nearest face at which temperatures jump.
/// Neighbouring layers that conduct alike, join together and meet without a jump form one segment: cutting a layer
/// in two changes neither the grid nor the result.
/// </summary>
internal sealed partial class CoolingGrid
{
    /// <summary>More cells than this are refused.</summary>
    public const int MostCells = 20_000;

    private const double HalfSpaceReach = 6;

    private double[] segmentS = [];
    private double[] segmentThickness = [];
    private bool[] activeFace = [];
    private double[] distance = [];
    private int[] segmentFirstLayer = [];

    public int Cells { get; private set; }

    public int Segments { get; private set; }

    /// <summary>First cell of each segment; one more entry than segments.</summary>
    public int[] SegmentStart { get; private set; } = [];

    /// <summary>Time at which each segment is laid.</summary>
    public double[] SegmentLaidAt { get; private set; } = [];

    /// <summary>Material of each segment.</summary>
    public LayerMaterial[] SegmentMaterial { get; private set; } = [];

    /// <summary>Depth of the top face of each layer below the finished surface, m; one more entry than layers.</summary>
    public double[] LayerTop { get; private set; } = [];

    /// <summary>Depth of the top face of each cell, m; one more entry than cells.</summary>
    public double[] Face { get; private set; } = [];

    public double[] Width { get; private set; } = [];

    /// <summary>Heat capacity of each cell, J/(m² K).</summary>
    public double[] Capacity { get; private set; } = [];

    /// <summary>Conductance from the cell's centre to the next centre below (last: to the bottom face), W/(m² K).</summary>
    public double[] Down { get; private set; } = [];

    /// <summary>Conductance from the cell's centre to its own faces, W/(m² K).</summary>
    public double[] Half { get; private set; } = [];

    /// <summary>1/alpha of each cell, s/m².</summary>
    public double[] InverseDiffusivity { get; private set; } = [];

    /// <summary>
    /// Time constants of the face below each cell, s: flux = Down · (T[i] − T[i+1] − LagAbove[i] dT[i]/dt + LagBelow[i] dT[i+1]/dt).
    /// </summary>
    /// <remarks>
    /// The plain difference of two cell means misses the curvature of the profile; with d²T/dz² = (dT/dt)/alpha its
    /// Taylor series gives these terms (third order on a graded grid, fourth on an even one; derived here). At a change
    /// of material each side is expanded to its own face. Being part of the flux they leave heat conserved.
    /// </remarks>
    public double[] LagAbove { get; private set; } = [];

    /// <summary>See <see cref="LagAbove"/>.</summary>
    public double[] LagBelow { get; private set; } = [];

    /// <summary>Between temperature and heat content of each cell.</summary>
    public HeatScale Heat { get; } = new();

    /// <summary>Thermal resistance between each cell and the one below beyond that of the cells themselves, m² K/W.</summary>
    public double[] Resistance { get; private set; } = [];

    /// <summary>Weight of each cell in the error norm: width/√alpha.</summary>
    public double[] Weight { get; private set; } = [];

    public double BottomTemperature { get; private set; }

    /// <summary>Builds the grid; false if it would need more than <see cref="MostCells"/> cells.</summary>
    public bool Build(CoolingProblem problem)
    {
        FindSegments(problem);
        ReachDown(problem);
        FindDistances();
        if (!Place(problem.Settings))
        {
            return false;
        }

        FillCells(problem);
        var half = Half[Cells - 1];
        (BottomTemperature, Down[Cells - 1]) = problem.Bottom switch
        {
            BottomBoundary.GivenTemperature given => (given.Celsius, half),
            BottomBoundary.ConstantCoefficient open => (open.Fluid, half * open.Coefficient / (half + open.Coefficient)),
            _ => (0, 0),
        };
        return true;
    }

    /// <summary>Segment that holds a layer.</summary>
    public int SegmentOf(int layer)
    {
        var segment = 0;
        while (segment + 1 < Segments && segmentFirstLayer[segment + 1] <= layer)
        {
            segment++;
        }

        return segment;
    }

    /// <summary>Cell that holds a depth, searched between two cells.</summary>
    public int CellAt(double depth, int first, int end)
    {
        while (end - first > 1)
        {
            var middle = (first + end) / 2;
            (first, end) = Face[middle] <= depth ? (middle, end) : (first, middle);
        }

        return first;
    }

    private static T[] AtLeast<T>(T[] array, int length) => array.Length >= length ? array : new T[length];

    private bool Place(CoolingSettings settings)
    {
        var total = 0;
        for (var i = 0; i < Segments; i++)
        {
            var need = Measure(settings, i, out _);
            if (!(need < MostCells - total))
            {
                return false;
            }

            SegmentStart[i] = total;
            // An even number of cells puts a face into the middle of a symmetrically graded course.
            total += Math.Max(2, 2 * (int)Math.Ceiling(0.5 * need));
        }

        SegmentStart[Segments] = Cells = total;
        if (Width.Length < total)
        {
            Face = new double[total + 1];
            Width = new double[total];
            Capacity = new double[total];
            Down = new double[total];
            Half = new double[total];
            InverseDiffusivity = new double[total];
            Weight = new double[total];
            LagAbove = new double[total];
            LagBelow = new double[total];
            Resistance = new double[total];
        }

        PlaceFaces(settings);
        return true;
    }

    /// <summary>Number of cells wanted in a segment, integral of ds/width, and its part above the crest of the widths.</summary>
    private double Measure(CoolingSettings settings, int i, out double above)
    {
        var crest = Crest(i);
        above = Grading.Count(settings, distance[i], crest);
        return above + Grading.Count(settings, distance[i + 1], segmentS[i] - crest);
    }

    private double Crest(int i) => Math.Clamp(0.5 * (segmentS[i] + distance[i + 1] - distance[i]), 0, segmentS[i]);

    private void PlaceFaces(CoolingSettings settings)
    {
        Face[0] = 0;
        for (var i = 0; i < Segments; i++)
        {
            var need = Measure(settings, i, out var above);
            var (start, end) = (SegmentStart[i], SegmentStart[i + 1]);
            var root = Math.Sqrt(SegmentMaterial[i].Diffusivity);
            var top = Face[start];
            for (var j = start + 1; j < end; j++)
            {
                var wanted = need * (j - start) / (end - start);
                var s = wanted <= above
                    ? Grading.Length(settings, distance[i], wanted)
                    : segmentS[i] - Grading.Length(settings, distance[i + 1], need - wanted);
                Face[j] = top + (s * root);
            }

            Face[end] = top + segmentThickness[i];
        }
    }

    private void FillCells(CoolingProblem problem)
    {
        Heat.Clear(Cells);
        Array.Clear(Resistance, 0, Cells);
        for (var i = 0; i < Segments; i++)
        {
            var material = SegmentMaterial[i];
            Heat.Set(SegmentStart[i], SegmentStart[i + 1], material);
            if (i > 0)
            {
                Resistance[SegmentStart[i] - 1] = problem.Layers[segmentFirstLayer[i] - 1].ResistanceBelow;
            }

            for (var j = SegmentStart[i]; j < SegmentStart[i + 1]; j++)
            {
                Width[j] = Face[j + 1] - Face[j];
                Capacity[j] = material.VolumetricHeat * Width[j];
                Half[j] = 2 * material.Conductivity / Width[j];
                InverseDiffusivity[j] = 1 / material.Diffusivity;
                Weight[j] = Width[j] / Math.Sqrt(material.Diffusivity);
            }
        }

        for (var j = 0; j + 1 < Cells; j++)
        {
            Down[j] = Half[j] * Half[j + 1] / (Half[j] + Half[j + 1] + (Half[j] * Half[j + 1] * Resistance[j]));
        }

        for (var i = 0; i < Segments; i++)
        {
            FillLags(SegmentStart[i], SegmentStart[i + 1]);
        }
    }

    private void FillLags(int start, int end)
    {
        for (var j = start; j + 1 < end; j++)
        {
            var (a, b) = (Width[j], Width[j + 1]);
            var scale = InverseDiffusivity[j] / 12;
            LagAbove[j] = scale * ((a * a) + (a * b) - (b * b));
            LagBelow[j] = scale * ((b * b) + (a * b) - (a * a));
        }

        LagAbove[end - 1] = OneSided(end - 1);
        LagBelow[end - 1] = end < Cells ? OneSided(end) : 0;
    }

    /// <summary>Time constant of a cell seen from its own face: width²/(6 alpha).</summary>
    private double OneSided(int j) => Width[j] * Width[j] * InverseDiffusivity[j] / 6;
}
