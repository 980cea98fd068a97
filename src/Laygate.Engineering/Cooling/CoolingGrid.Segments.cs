namespace Laygate.Engineering.Cooling;

/// <content>Segments and how far they reach.</content>
internal sealed partial class CoolingGrid
{
    private static bool Joined(StackLayer upper, StackLayer lower) =>
        upper.Role == lower.Role
        && upper.Material.ConductsLike(lower.Material)
        && upper.LaidAt.Equals(lower.LaidAt)
        && upper.ResistanceBelow <= 0
        && upper.Initial.At(upper.Thickness).Equals(lower.Initial.At(0));

    private void FindSegments(CoolingProblem problem)
    {
        var layers = problem.Layers;
        var count = layers.Count;
        LayerTop = AtLeast(LayerTop, count + 1);
        SegmentStart = AtLeast(SegmentStart, count + 1);
        SegmentLaidAt = AtLeast(SegmentLaidAt, count);
        SegmentMaterial = AtLeast(SegmentMaterial, count);
        segmentS = AtLeast(segmentS, count);
        segmentThickness = AtLeast(segmentThickness, count);
        segmentFirstLayer = AtLeast(segmentFirstLayer, count);
        activeFace = AtLeast(activeFace, count + 1);
        distance = AtLeast(distance, count + 1);
        Segments = 0;
        LayerTop[0] = 0;
        for (var i = 0; i < count; i++)
        {
            LayerTop[i + 1] = LayerTop[i] + layers[i].Thickness;
            if (i == 0 || !Joined(layers[i - 1], layers[i]))
            {
                Open(layers, i);
            }

            segmentThickness[Segments - 1] += layers[i].Thickness;
        }

        activeFace[Segments] = BottomJumps(problem);
    }

    private void Open(IReadOnlyList<StackLayer> layers, int i)
    {
        segmentFirstLayer[Segments] = i;
        segmentThickness[Segments] = 0;
        SegmentLaidAt[Segments] = layers[i].LaidAt;
        SegmentMaterial[Segments] = layers[i].Material;
        activeFace[Segments] = i == 0
            || layers[i - 1].Role == LayerRole.Course
            || !layers[i - 1].LaidAt.Equals(layers[i].LaidAt)
            || !layers[i - 1].Initial.At(layers[i - 1].Thickness).Equals(layers[i].Initial.At(0));
        Segments++;
    }

    private static bool BottomJumps(CoolingProblem problem)
    {
        var last = problem.Layers[^1];
        return problem.Bottom switch
        {
            BottomBoundary.GivenTemperature given => !given.Celsius.Equals(last.Initial.At(last.Thickness)),
            BottomBoundary.ConstantCoefficient open => open.Coefficient > 0,
            _ => false,
        };
    }

    private void ReachDown(CoolingProblem problem)
    {
        for (var i = 0; i < Segments; i++)
        {
            segmentS[i] = segmentThickness[i] / Math.Sqrt(SegmentMaterial[i].Diffusivity);
        }

        if (problem.Bottom is not BottomBoundary.HalfSpace)
        {
            return;
        }

        var last = Segments - 1;
        var between = 0.0;
        for (var i = last; i > 0 && !activeFace[i]; i--)
        {
            between += segmentS[i - 1];
        }

        var reach = (HalfSpaceReach * Math.Sqrt(problem.Duration)) - between;
        if (reach > segmentS[last])
        {
            var thickness = reach * Math.Sqrt(SegmentMaterial[last].Diffusivity);
            LayerTop[problem.Layers.Count] += thickness - segmentThickness[last];
            (segmentS[last], segmentThickness[last]) = (reach, thickness);
        }
    }

    private void FindDistances()
    {
        for (var i = 0; i <= Segments; i++)
        {
            distance[i] = activeFace[i] ? 0 : i == 0 ? double.PositiveInfinity : distance[i - 1] + segmentS[i - 1];
        }

        for (var i = Segments - 1; i >= 0; i--)
        {
            distance[i] = Math.Min(distance[i], distance[i + 1] + segmentS[i]);
        }
    }
}
