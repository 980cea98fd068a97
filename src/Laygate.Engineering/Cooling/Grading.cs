namespace Laygate.Engineering.Cooling;

/// <summary>Cell widths that grow linearly with the distance s from a face: width = finest + growth · s.</summary>
internal static class Grading
{
    /// <summary>Number of cells on a length that begins at a distance from the face: integral of ds/width.</summary>
    public static double Count(CoolingSettings settings, double from, double length)
    {
        var width = settings.FinestCell + (settings.Growth * from);
        return Math.Log((width + (settings.Growth * length)) / width) / settings.Growth;
    }

    /// <summary>Length that a number of cells covers; inverse of <see cref="Count"/>.</summary>
    public static double Length(CoolingSettings settings, double from, double count) =>
        (settings.FinestCell + (settings.Growth * from)) * (Math.Exp(settings.Growth * count) - 1) / settings.Growth;
}
