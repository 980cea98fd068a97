using Laygate.Engineering.Records;
using Laygate.Engineering.Supply.Simulation;

namespace Laygate.Engineering.Onward;

/// <summary>What the plants have: silo and loading places, reckoned from the tickets, as no file of a record holds them.</summary>
internal sealed class LineStates
{
    public LineStates(ShiftModel model, ShiftPlan plan, RecordedLoads loads, OnwardKnown known)
    {
        var lines = new List<LineState>();
        for (var l = 0; l < model.Lines.Count; l++)
        {
            var line = model.Lines[l];
            var capacity = Math.Max(line.Capacity, plan.LargestLoad(l));
            var (level, time) = (Math.Min(line.Stock, capacity), plan.LineOpening[l]);
            var free = new double?[line.Places];
            foreach (var load in loads.Loads.Where(load => model.Trucks[load.Carried.Group].Line == l))
            {
                var at = known.Clock.Of(load.Left);
                level = Math.Max(0, Math.Min(capacity, level + (line.Rate * Math.Max(0, at - time))) - load.Load.Net);
                time = Math.Max(time, at);
                free[Array.IndexOf(free, free.MinBy(one => one ?? double.NegativeInfinity))] = at;
            }

            known.Facts.Add(new OnwardFact(FactKind.Silo, line.Plant, FactBasis.Assumed, new LedgerFigure(level, known.Units.Mass)) { At = known.Clock.At(time) });
            lines.Add(new LineState(level, time, free, []));
        }

        Lines = lines;
    }

    /// <summary>Lines in the order of the model.</summary>
    public IReadOnlyList<LineState> Lines { get; }
}
