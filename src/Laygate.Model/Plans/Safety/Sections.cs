namespace Laygate.Model.Plans;

#pragma warning disable CS1591 // The members are the words themselves; what they mean stands in the plan schema.

/// <summary>Section of a method statement that reviewers look for.</summary>
public enum SectionKind
{
    Scope, Standards, People, Programme, Materials, Supply, Preparation, PlantList, Laying, Compaction, Joints, WeatherLimits,
    Testing, CorrectiveAction, Acceptance, Traffic, Safety, NightWork, Environment, Contingency, Communication, Records, Approval,
}

#pragma warning restore CS1591

/// <summary>A section of the method statement.</summary>
/// <param name="Id">Id.</param>
/// <param name="Kind">Kind.</param>
/// <param name="What">What it says, in a line.</param>
/// <param name="Reference">Where it stands.</param>
public sealed record Section(string Id, SectionKind? Kind, string? What, string? Reference);
