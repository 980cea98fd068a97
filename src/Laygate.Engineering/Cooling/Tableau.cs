using System.Runtime.CompilerServices;

[assembly: InternalsVisibleTo("Laygate.UnitTests")]

namespace Laygate.Engineering.Cooling;

/// <summary>
/// A singly diagonally implicit Runge–Kutta method with an explicit first stage, stiffly accurate and L-stable: the
/// last stage is the new value, its derivative is the first of the next step.
/// </summary>
internal sealed class Tableau
{
    private Tableau(double gamma, double[] nodes, double[][] rows, double[] embedded)
    {
        Gamma = gamma;
        Nodes = nodes;
        Rows = rows;
        Error = new double[embedded.Length];
        for (var i = 0; i < embedded.Length; i++)
        {
            Error[i] = rows[^1][i] - embedded[i];
        }
    }

    /// <summary>
    /// ESDIRK4(3)6L[2]SA: implicit part of the additive method of Kennedy and Carpenter, Applied Numerical
    /// Mathematics 44 (2003) 139–181 (from memory; a test holds its order conditions).
    /// </summary>
    public static Tableau Esdirk4 { get; } = MakeEsdirk4();

    public double Gamma { get; }

    public double[] Nodes { get; }

    /// <summary>Coefficients a[i][j] with the diagonal; the last row is b.</summary>
    public double[][] Rows { get; }

    /// <summary>b − b̂.</summary>
    public double[] Error { get; }

    public int Stages => Nodes.Length;

    private static Tableau MakeEsdirk4() => new(
        0.25,
        [0, 1.0 / 2, 83.0 / 250, 31.0 / 50, 17.0 / 20, 1],
        [
            [0, 0, 0, 0, 0, 0],
            [0.25, 0.25, 0, 0, 0, 0],
            [8611.0 / 62500, -1743.0 / 31250, 0.25, 0, 0, 0],
            [5012029.0 / 34652500, -654441.0 / 2922500, 174375.0 / 388108, 0.25, 0, 0],
            [15267082809.0 / 155376265600, -71443401.0 / 120774400, 730878875.0 / 902184768, 2285395.0 / 8070912, 0.25, 0],
            [82889.0 / 524892, 0, 15625.0 / 83664, 69875.0 / 102672, -2260.0 / 8211, 0.25],
        ],
        [4586570599.0 / 29645900160, 0, 178811875.0 / 945068544, 814220225.0 / 1159782912, -3700637.0 / 11593932, 61727.0 / 225920]);
}
