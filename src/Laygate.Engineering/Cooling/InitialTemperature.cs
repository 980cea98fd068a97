namespace Laygate.Engineering.Cooling;

/// <summary>
/// Temperature of a layer at the moment it joins the stack: one value, or a profile over its depth
/// (straight lines between points, constant above the first and below the last).
/// </summary>
public sealed class InitialTemperature
{
    private readonly double[] depths;
    private readonly double[] values;

    private InitialTemperature(double[] depths, double[] values) => (this.depths, this.values) = (depths, values);

    /// <summary>The same temperature throughout the layer.</summary>
    /// <param name="celsius">Temperature in °C.</param>
    public static InitialTemperature Constant(double celsius) => new([0], [celsius]);

    /// <summary>A profile over the depth below the layer's own top face.</summary>
    /// <param name="points">Depth in m below the top of the layer, strictly increasing, and temperature in °C.</param>
    public static InitialTemperature Profile(params IReadOnlyList<(double Depth, double Celsius)> points) =>
        new([.. points.Select(p => p.Depth)], [.. points.Select(p => p.Celsius)]);

    /// <summary>The same profile, colder by a difference in K throughout.</summary>
    public InitialTemperature Lowered(double kelvin) => new(depths, [.. values.Select(v => v - kelvin)]);

    /// <summary>The same profile over a layer that is thicker by a factor.</summary>
    public InitialTemperature Stretched(double factor) => new([.. depths.Select(d => d * factor)], values);

    /// <summary>Temperature in °C at a depth in m below the top of the layer.</summary>
    public double At(double depth)
    {
        var last = depths.Length - 1;
        if (depth <= depths[0])
        {
            return values[0];
        }

        if (depth >= depths[last])
        {
            return values[last];
        }

        var i = 1;
        while (depths[i] < depth)
        {
            i++;
        }

        var share = (depth - depths[i - 1]) / (depths[i] - depths[i - 1]);
        return values[i - 1] + (share * (values[i] - values[i - 1]));
    }

    /// <summary>Mean temperature in °C between two depths in m below the top of the layer (exact integral of the lines).</summary>
    public double Mean(double from, double to)
    {
        if (depths.Length == 1 || to <= from)
        {
            return At(from);
        }

        var sum = 0.0;
        var z = from;
        var left = At(from);
        for (var i = 0; i < depths.Length && depths[i] < to; i++)
        {
            if (depths[i] > z)
            {
                sum += (depths[i] - z) * 0.5 * (left + values[i]);
                (z, left) = (depths[i], values[i]);
            }
        }

        return (sum + ((to - z) * 0.5 * (left + At(to)))) / (to - from);
    }

    /// <summary>Everything that makes it what it is: number of points, depths, temperatures.</summary>
    internal IEnumerable<double> Numbers => [depths.Length, .. depths, .. values];

    internal bool IsUsable()
    {
        for (var i = 0; i < depths.Length; i++)
        {
            if (!double.IsFinite(depths[i]) || !CoolingPhysics.IsTemperature(values[i]) || (i > 0 && depths[i] <= depths[i - 1]))
            {
                return false;
            }
        }

        return depths.Length > 0;
    }
}
