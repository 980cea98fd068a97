namespace Laygate.Engineering.Cooling;

/// <summary>Finds what makes a problem impossible to compute. Allocates only when there is something to say.</summary>
internal static class ProblemCheck
{
    /// <summary>Least thickness of a layer, m: below it the conductance of a cell leaves the range in which sums of cells keep their digits.</summary>
    private const double Thinnest = 1e-6;

    public static CoolingFailure? Find(CoolingProblem problem)
    {
        if (problem.Layers.Count == 0)
        {
            return new(CoolingFailureKind.NoLayers, "stack", "The stack has no layer.");
        }

        if (!(problem.Duration > 0) || !double.IsFinite(problem.Duration))
        {
            return Unusable("duration", "The time to solve for must be a positive number of seconds.");
        }

        var s = problem.Settings;
        if (!(s.FinestCell > 0 && s.Growth > 0 && s.Tolerance > 0 && s.MaxSteps > 0) || !double.IsFinite(s.FinestCell + s.Growth + s.Tolerance))
        {
            return new(CoolingFailureKind.Settings, "settings", "Cell width, growth, tolerance and number of steps must be positive.");
        }

        if (problem.StopAt is { } stop && (stop.Layer < 0 || stop.Layer >= problem.Layers.Count || !double.IsFinite(stop.Celsius)))
        {
            return Unusable("stop", "The solve is to stop at a layer that is not in the stack, or at no temperature.");
        }

        return InLayers(problem) ?? InTop(problem.Top) ?? InBottom(problem.Bottom);
    }

    private static CoolingFailure? InLayers(CoolingProblem problem)
    {
        var count = problem.Layers.Count;
        for (var i = 0; i < count; i++)
        {
            var layer = problem.Layers[i];
            if (InLayer(layer) is { } failure)
            {
                return failure;
            }

            if (layer.LaidAt < 0 || layer.LaidAt >= problem.Duration)
            {
                return new(CoolingFailureKind.OrderOfLaying, layer.Name, "The layer is laid before the start or after the end of the time solved for.");
            }

            if (i + 1 < count ? problem.Layers[i + 1].LaidAt > layer.LaidAt : layer.LaidAt > 0)
            {
                return new(CoolingFailureKind.OrderOfLaying, layer.Name, "The layer is laid before the one below it, or has nothing below it.");
            }

            if (layer.Role == LayerRole.Existing && (layer.LaidAt > 0 || (i + 1 < count && problem.Layers[i + 1].Role == LayerRole.Course)))
            {
                return new(CoolingFailureKind.OrderOfLaying, layer.Name, "An existing layer lies below all courses and is there from the start.");
            }
        }

        return null;
    }

    private static CoolingFailure? InLayer(StackLayer layer)
    {
        var m = layer.Material;
        if (!(layer.Thickness >= Thinnest) || !double.IsFinite(layer.Thickness))
        {
            return Unusable(layer.Name, "The thickness must be a number of metres and at least a thousandth of a millimetre.");
        }

        if (!IsPositive(m.Conductivity) || !IsPositive(m.Density) || !IsPositive(m.SpecificHeat) || !IsPositive(m.Diffusivity))
        {
            return Unusable(layer.Name, "Conductivity, density and specific heat must be positive numbers.");
        }

        if (!IsShare(m.Emissivity) || !IsShare(m.Absorptivity))
        {
            return Unusable(layer.Name, "Emissivity and absorptivity must lie between 0 and 1.");
        }

        if (m.HeatLaw is { IsUsable: false })
        {
            return Unusable(layer.Name, "The specific heat over temperature needs points of rising temperature and positive specific heat.");
        }

        if (!(layer.ResistanceBelow >= 0) || !double.IsFinite(layer.ResistanceBelow))
        {
            return Unusable(layer.Name, "The thermal resistance to the layer below must be zero or a positive number.");
        }

        return layer.Initial.IsUsable() && double.IsFinite(layer.LaidAt)
            ? null
            : Unusable(layer.Name, "The initial temperature or the time of laying is not a usable number.");
    }

    private static CoolingFailure? InTop(TopBoundary top)
    {
        var usable = top switch
        {
            TopBoundary.GivenTemperature t => CoolingPhysics.IsTemperature(t.Mean - Math.Abs(t.Amplitude)) && IsPositive(t.Period),
            TopBoundary.GivenFlux f => double.IsFinite(f.Flux),
            TopBoundary.ConstantCoefficient c => c.Coefficient >= 0 && double.IsFinite(c.Coefficient) && CoolingPhysics.IsTemperature(c.Fluid)
                && IsShare(c.Emissivity) && CoolingPhysics.IsTemperature(c.Surroundings) && double.IsFinite(c.Absorbed),
            TopBoundary.Weather w => w.Series.IsUsable(),
            _ => true,
        };
        return usable ? null : Unusable("skin", "A value at the skin (temperature, flux, coefficient or weather) is not a usable number.");
    }

    private static CoolingFailure? InBottom(BottomBoundary bottom)
    {
        var usable = bottom switch
        {
            BottomBoundary.GivenTemperature t => CoolingPhysics.IsTemperature(t.Celsius),
            BottomBoundary.ConstantCoefficient c => c.Coefficient >= 0 && double.IsFinite(c.Coefficient) && CoolingPhysics.IsTemperature(c.Fluid),
            _ => true,
        };
        return usable ? null : Unusable("bottom", "The temperature or the coefficient at the bottom is not a usable number.");
    }

    private static bool IsPositive(double value) => value > 0 && double.IsFinite(value);

    private static bool IsShare(double value) => value is >= 0 and <= 1;

    private static CoolingFailure Unusable(string subject, string reason) => new(CoolingFailureKind.UnusableValue, subject, reason);
}
