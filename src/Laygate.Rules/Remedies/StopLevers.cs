using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Levers;
using Laygate.Rules.Results;

namespace Laygate.Rules.Remedies;

/// <summary>Which levers aim at what a standing paver waits for: they are proposed before others that mend the same finding.</summary>
internal static class StopLevers
{
    /// <summary>Whether a lever moves the cause that a finding names; false where it names none.</summary>
    public static bool Aims(Finding finding, LeverKind lever) =>
        finding.Notes.Select(note => SimulationNotes.CauseOf(note.Id)).FirstOrDefault(cause => cause is not null) switch
        {
            StopCause.Dispatch => lever is LeverKind.Dispatch or LeverKind.LoadsBeforeStart,
            StopCause.Loading => lever is LeverKind.LoadingPlaces,
            StopCause.Trucks => lever is LeverKind.TruckCount,
            StopCause.Plant => lever is LeverKind.PlantOutput,
            StopCause.Buffer => lever is LeverKind.BufferCapacity or LeverKind.CallLevel,
            _ => false,
        };
}
