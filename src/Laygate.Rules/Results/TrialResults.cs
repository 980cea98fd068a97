using Laygate.Engineering.Records.Happened;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Rules.Results;

/// <summary>What the record of a trial length proves for a course of a plan.</summary>
/// <param name="PlanId">Id of the plan.</param>
/// <param name="PlanTitle">Its title.</param>
/// <param name="Record">The record of the trial length.</param>
/// <param name="Growth">What it proves.</param>
/// <param name="GrowthLimit">Gain per pass below which more passes are not worth it, kg/m³.</param>
/// <param name="Density">Unit of densities.</param>
/// <param name="System">System of units.</param>
/// <param name="Phases">Phases of the plan in order, with the passes of each that the pattern holds.</param>
/// <param name="Stated">What the plan states of its trial length for the course; null where it states nothing.</param>
/// <param name="Refused">Rows and files that were not read.</param>
public sealed record TrialReport(
    string PlanId, string? PlanTitle, ShiftRecord Record, TrialGrowth Growth, double GrowthLimit, Unit Density, UnitSystem System, IReadOnlyList<(string Phase, int Passes)> Phases, TrialResult? Stated, IReadOnlyList<Problem> Refused)
{
    /// <summary>Revision of the plan; null where it has none.</summary>
    public string? Revision { get; init; }

    /// <summary>SHA-256 of the bytes of the plan, hexadecimal.</summary>
    public string PlanHash { get; init; } = string.Empty;

    /// <summary>Whether a pattern is proven, and the trial length is like the plan in every respect; what is not known is not like it.</summary>
    public bool SpeaksForPlan => Growth.Curve?.Pattern is not null && Growth.Covers.All(cover => cover.Covers == true);
}
