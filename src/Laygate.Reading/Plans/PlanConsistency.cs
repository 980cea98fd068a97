using Laygate.Model.Plans;
using Laygate.Reading.Plans.Consistency;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Plans;

/// <summary>
/// Finds stated values that cannot be true together, or not at all. What merely should not be so is the matter of a rule.
/// A reference into a list that the plan does not have yet is left open: plans grow.
/// </summary>
public static class PlanConsistency
{
    /// <summary>Checks a plan that was read from a file.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="positions">Where its values stand.</param>
    /// <returns>All contradictions in file order, each at the key that has to change.</returns>
    public static IReadOnlyList<ReadingProblem> Check(Plan plan, PlanPositions positions) =>
        Check(plan, positions, new PlanValidator());

    /// <summary>The same with a validator that serves many plans.</summary>
    internal static IReadOnlyList<ReadingProblem> Check(Plan plan, PlanPositions positions, PlanValidator validator) =>
        [.. Check(plan, validator).Select(found => new ReadingProblem(found.Message, positions.At(found.Path), found.Hint)).Distinct().OrderBy(problem => problem.Position)];

    /// <summary>Checks a plan that has no file, for example one that a remedy has changed.</summary>
    /// <param name="plan">The plan.</param>
    /// <returns>All contradictions in plan order.</returns>
    public static IReadOnlyList<Contradiction> Check(Plan plan) =>
        Check(plan, new PlanValidator());

    /// <summary>The same with a validator that serves many plans: making one costs more than asking it.</summary>
    internal static IReadOnlyList<Contradiction> Check(Plan plan, PlanValidator validator) =>
        [.. validator.Validate(plan).Errors.Select(failure => new Contradiction(failure.PropertyName, failure.ErrorMessage, failure.CustomState as string))];
}

/// <summary>Stated values that cannot be true together, or one that cannot be true at all.</summary>
/// <param name="Path">Path of the key from the top of the plan, list entries counted from 0: <c>courses[1].on</c>.</param>
/// <param name="Message">What is wrong, as a sentence.</param>
/// <param name="Hint">What to change, as a sentence; null where the message says it.</param>
public sealed record Contradiction(string Path, string Message, string? Hint);
