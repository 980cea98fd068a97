namespace Laygate.Engineering.Cooling;

/// <summary>
/// Between temperature and heat content of the cells. The content u is given as the temperature that a constant
/// specific heat would need for it: u = ∫ c dT / c0, in K above 0 °C; with a constant c it is the temperature itself.
/// </summary>
/// <remarks>With u the mass matrix of the column stays constant, and because k d²T/dz² = rho c0 du/dt the curvature terms
/// of the face fluxes keep their form (derived here).</remarks>
internal sealed class HeatScale
{
    private readonly List<(int First, int End, LayerMaterial Material)> parts = [];
    private LayerMaterial?[] materials = [];
    private int cells;

    /// <summary>Whether any cell has a specific heat that changes with temperature.</summary>
    public bool Varies { get; private set; }

    public void Clear(int count)
    {
        if (materials.Length < count)
        {
            materials = new LayerMaterial?[count];
        }

        (cells, Varies) = (count, false);
        parts.Clear();
    }

    public void Set(int first, int end, LayerMaterial material)
    {
        var varying = material.HeatLaw is null ? null : material;
        Varies |= varying is not null;
        materials.AsSpan(first, end - first).Fill(varying);
        parts.Add((first, end, material));
    }

    public double Celsius(int cell, double u) =>
        materials[cell] is { } m ? m.HeatLaw!.Temperature(u * m.SpecificHeat) : u;

    public double Content(int cell, double celsius) =>
        materials[cell] is { } m ? m.HeatLaw!.Content(celsius) / m.SpecificHeat : celsius;

    /// <summary>Temperatures of heat contents, from a cell down.</summary>
    public void ToCelsius(double[] u, double[] celsius, int first) => ToCelsius(u.AsSpan(first, cells - first), celsius.AsSpan(first), first);

    /// <summary>Temperatures of the heat contents of cells that follow each other.</summary>
    /// <param name="u">Heat contents.</param>
    /// <param name="celsius">Takes the temperatures; may be the same place as <paramref name="u"/>.</param>
    /// <param name="first">The first of these cells.</param>
    public void ToCelsius(ReadOnlySpan<double> u, Span<double> celsius, int first) =>
        Convert(u, celsius, first, static (material, from, to) => material.HeatLaw!.Temperatures(from, material.SpecificHeat, to));

    /// <summary>Heat contents of temperatures, from a cell down.</summary>
    public void ToContent(double[] celsius, double[] u, int first) =>
        Convert(celsius.AsSpan(first, cells - first), u.AsSpan(first), first, static (material, from, to) => material.HeatLaw!.Contents(from, material.SpecificHeat, to));

    /// <summary>du/dT of the cells.</summary>
    public void Slopes(double[] celsius, double[] slopes, int first)
    {
        for (var i = first; i < cells; i++)
        {
            slopes[i] = materials[i] is { } m ? m.HeatLaw!.At(celsius[i]) / m.SpecificHeat : 1;
        }
    }

    private void Convert(ReadOnlySpan<double> source, Span<double> target, int first, Conversion convert)
    {
        foreach (var (start, end, material) in parts)
        {
            var (from, to) = (Math.Max(first, start), Math.Min(first + source.Length, end));
            if (from >= to)
            {
                continue;
            }

            var given = source[(from - first)..(to - first)];
            var made = target[(from - first)..(to - first)];
            if (material.HeatLaw is null)
            {
                given.CopyTo(made);
            }
            else
            {
                convert(material, given, made);
            }
        }
    }

    private delegate void Conversion(LayerMaterial material, ReadOnlySpan<double> given, Span<double> made);
}
