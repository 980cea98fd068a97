namespace Laygate.Engineering.Cooling.Catalogues;
/// <summary>x</summary>
public sealed record ConvectionForm(string Id, Func<double, double, double, double> Coefficient, bool DependsOnSurface, bool IncludesRadiation);
/// <summary>x</summary>
public static class ConvectionForms
{
    /// <summary>x</summary>
    public static ConvectionForm Iso6946 { get; } = new("C5", (v, _, _) => 4 + (4 * v), false, false);
}
