namespace Laygate.Engineering.Cooling;

/// <content>Stages with a specific heat that changes with temperature.</content>
internal sealed partial class ImplicitColumn
{
    /// <summary>
    /// One stage with varying heat: Newton's method in the temperatures. The heat content moves by what the linear
    /// equations bring, so heat is conserved however far the iteration goes; slopes are renewed when it converges slowly.
    /// </summary>
    private double Iterate(int index, double dt, double guess)
    {
        var before = double.PositiveInfinity;
        Predict(tableau.Nodes[index], dt, Math.Min(index, 2));
        for (var iteration = 0; iteration < MostIterations; iteration++)
        {
            CellMaths.Load(load, right, stage, slope, celsius, First, grid.Cells);
            guess = Sweep(load, solved, index, dt, guess);
            var gap = Move();
            if (gap <= agreement)
            {
                return guess;
            }

            grid.Heat.ToCelsius(stage, celsius, First);
            if (!(gap < 0.05 * before))
            {
                grid.Heat.Slopes(celsius, slope, First);
                Factor(tableau.Gamma * dt);
            }

            before = gap;
        }

        return double.NaN;
    }

    /// <summary>Guesses heat contents at a node of the step from the rates known: a line, or a parabola once the first stage is solved.</summary>
    private void Predict(double node, double dt, int known)
    {
        var bend = node * node / (2 * tableau.Nodes[1]);
        (weights[0], weights[1]) = known > 1 ? (node - bend, bend) : (node, 0);
        CellMaths.Combine(stage, y, rates, grid.Cells, weights, known, dt, First);
        grid.Heat.ToCelsius(stage, celsius, First);
    }

    /// <summary>Moves heat contents along the slopes; returns by how much they miss those of the temperatures just solved for.</summary>
    private double Move()
    {
        grid.Heat.ToContent(solved, load, First);
        return CellMaths.Move(stage, slope, solved, celsius, load, First, grid.Cells);
    }
}
