namespace Laygate.Engineering.Cooling;

/// <summary>
/// Between temperature and heat content of the cells. The content u is given as the temperature that a constant
/// specific heat would need for it: u = ∫ c dT / c0, in K above 0 °C; with a constant c it is the temperature itself.
/// </summary>
/// <remarks>With u the mass matrix of the column stays constant, and because k d²T/dz² = rho c0 du/dt the curvature terms
/// of the face fluxes keep their form (derived here).</remarks>
internal sealed class HeatScale
{
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
    }

    public void Set(int first, int end, LayerMaterial material)
    {
        var varying = material.HeatLaw is null ? null : material;
        Varies |= varying is not null;
        materials.AsSpan(first, end - first).Fill(varying);
    }

    public double Celsius(int cell, double u) =>
        materials[cell] is { } m ? m.HeatLaw!.Temperature(u * m.SpecificHeat) : u;

    public double Content(int cell, double celsius) =>
        materials[cell] is { } m ? m.HeatLaw!.Content(celsius) / m.SpecificHeat : celsius;

    public void ToCelsius(double[] u, double[] celsius, int first)
    {
        for (var i = first; i < cells; i++)
        {
            celsius[i] = Celsius(i, u[i]);
        }
    }

    /// <summary>du/dT of the cells.</summary>
    public void Slopes(double[] celsius, double[] slopes, int first)
    {
        for (var i = first; i < cells; i++)
        {
            slopes[i] = materials[i] is { } m ? m.HeatLaw!.At(celsius[i]) / m.SpecificHeat : 1;
        }
    }
}
