using Laygate.Engineering.Records.Happened;

namespace Laygate.Exchange.Records;

/// <summary>What <c>laygate trial --format json</c> writes. Keys may be added; none is renamed or removed under the same trial_version.</summary>
/// <param name="TrialVersion">Version of this shape.</param>
/// <param name="Program">Name of the program.</param>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Plan">The plan.</param>
/// <param name="Record">The record of the trial length.</param>
/// <param name="Course">Course of the plan.</param>
/// <param name="Says">What it comes to, in sentences.</param>
/// <param name="SpeaksForPlan">Whether a pattern is proven, and the trial length is like the plan in every respect.</param>
/// <param name="GrowthLimitKgM3">Gain per pass below which more passes are not worth it, kg/m³.</param>
/// <param name="ReferenceKgM3">Reference density from cores, kg/m³; null without one.</param>
/// <param name="TargetKgM3">Density that the plan asks for, kg/m³; null without reference or degree.</param>
/// <param name="Pattern">Passes that are proven; null where none is.</param>
/// <param name="Peak">Pass with the greatest density; null without densities.</param>
/// <param name="Losses">Passes after which the density fell by more than a gauge does not repeat.</param>
/// <param name="Passes">Passes in order.</param>
/// <param name="Gauge">Offset of the gauge; null where no core was paired with a reading, so that densities are indicative.</param>
/// <param name="Covers">In what the trial length is like the plan.</param>
/// <param name="Reached">The block that a plan may take over.</param>
/// <param name="Differences">What the plan states otherwise, in sentences.</param>
/// <param name="Refused">Rows and files that were not read.</param>
public sealed record TrialShape(
    [property: Schema(Only = TrialShape.Version)] int TrialVersion, string Program, string ProgramVersion, RecordedPlanShape Plan, RecordShape Record, string Course, IReadOnlyList<string> Says, bool SpeaksForPlan,
    double GrowthLimitKgM3, double? ReferenceKgM3, double? TargetKgM3, int? Pattern, int? Peak, IReadOnlyList<int> Losses, IReadOnlyList<TrialPassShape> Passes, TrialGaugeShape? Gauge, IReadOnlyList<TrialCoverShape> Covers, string Reached,
    IReadOnlyList<string> Differences, IReadOnlyList<RowProblemShape> Refused)
{
    /// <summary>Version of the shape.</summary>
    public const int Version = 1;
}

/// <summary>A pass of a trial length.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Rollers">Rollers that made it.</param>
/// <param name="Phase">Phase of the plan; null where the rollers differ or are not in it.</param>
/// <param name="Places">Places at which a density was read after it.</param>
/// <param name="DensityKgM3">Mean density, kg/m³.</param>
/// <param name="Share">The same as a share of the reference density.</param>
/// <param name="GainKgM3">Gain against the pass before, kg/m³; null for the first.</param>
/// <param name="SkinC">Mean skin, °C.</param>
public sealed record TrialPassShape(int Number, IReadOnlyList<string> Rollers, string? Phase, int Places, double DensityKgM3, double? Share, double? GainKgM3, double? SkinC);

/// <summary>Offset of a gauge.</summary>
/// <param name="Pairs">Pairs of gauge and core.</param>
/// <param name="OffsetKgM3">What is added to each reading, kg/m³.</param>
public sealed record TrialGaugeShape(int Pairs, double OffsetKgM3);

/// <summary>What trial length and plan have in one respect.</summary>
/// <param name="Respect">The respect.</param>
/// <param name="Says">The same as a sentence.</param>
/// <param name="Covers">Whether the trial speaks for the plan; null where it is not known.</param>
public sealed record TrialCoverShape(TrialLikeness Respect, string Says, bool? Covers);
