using Laygate.Model.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Faults;

/// <summary>One answer that a fault must get.</summary>
/// <param name="Id">Id of the fault.</param>
/// <param name="Rule">Rule that answers; null where the plan is refused.</param>
/// <param name="At">Address of the element.</param>
/// <param name="Status">Status it must have: warn, fail or refuse.</param>
/// <param name="Says">Number or word that shows the right reason.</param>
/// <param name="Short">Why a warning stands where a careful reader would fail the plan; null where nothing falls short.</param>
/// <param name="Whole">Whether the simulated shifts are needed.</param>
internal sealed record FaultAnswer(string Id, string? Rule, string? At, string Status, string Says, string? Short, bool Whole)
{
    /// <summary>The finding that answers; null when there is none of this rule there.</summary>
    public Said? Find(FaultVerdict verdict) => verdict.All.FirstOrDefault(said => said.Rule == Rule && said.Address == At);

    /// <summary>Why the answer does not hold; null when it does.</summary>
    public string? Difference(Fault fault)
    {
        var verdict = FaultCheck.Of(fault, Whole);
        if (Rule is null)
        {
            return verdict.Refusals.Any(text => text.Contains(Says, StringComparison.Ordinal)) ? null : $"The plan is not refused with `{Says}`: {string.Join(" / ", verdict.Refusals)}";
        }

        if (Find(verdict) is not { } said)
        {
            return $"{Rule} says nothing of {At}. Refused with: {string.Join(" / ", verdict.Refusals)}";
        }

        return (Words.Of(said.Status) != Status ? $"{Rule} at {At} is {Words.Of(said.Status)}, not {Status}: {said.Text}" : null)
            ?? (!said.Text.Contains(Says, StringComparison.Ordinal) ? $"{Rule} at {At} does not say `{Says}`: {said.Text}" : null)
            ?? (FaultCheck.OfPlan(fault.Plan, Whole).Any(own => own.Rule == Rule && own.Address == At && own.Status == said.Status && own.Text.Contains(Says, StringComparison.Ordinal)) ? $"{Rule} says the same of the plan without the fault." : null);
    }
}

/// <summary>A fault that nothing answers for the right reason.</summary>
/// <param name="Id">Id of the fault.</param>
/// <param name="Why">Why it is open.</param>
/// <param name="Adds">Rules whose findings it adds, read and found not to answer it; <c>refused</c> where the plan is refused.</param>
/// <param name="New">Rules that an approving run found besides; to be read.</param>
internal sealed record OpenFault(string Id, string Why, IReadOnlyList<string> Adds, IReadOnlyList<string> New)
{
    /// <summary>Rules whose findings the fault adds today.</summary>
    public static IReadOnlyList<string> AddsNow(Fault fault)
    {
        var verdict = FaultCheck.Of(fault, whole: false);
        return verdict.IsRefused ? ["refused"] : [.. verdict.Added.Select(said => said.Rule).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
    }
}

/// <summary>A warning or failure of the plan itself that a fault takes away.</summary>
/// <param name="Id">Id of the fault.</param>
/// <param name="Rule">Rule whose finding is gone or less bad.</param>
/// <param name="At">Address of the element.</param>
/// <param name="Why">Why that is right; empty until somebody has said so.</param>
internal sealed record FaultRemoval(string Id, string Rule, string At, string Why);

/// <summary>
/// The answers, the open faults and what faults remove, from the files beside this one. With <c>LAYGATE_APPROVE</c> set, status, words and lists are
/// first written anew from what the check says; what needs a judgement is left blank or marked new, and the tests refuse it until somebody has read it.
/// </summary>
internal static class FaultAnswers
{
    static FaultAnswers()
    {
        if (Approved.Approving)
        {
            FaultAnswersWriter.WriteAnew(ReadAnswers(), ReadOpen(), ReadRemovals());
        }

        Answers = ReadAnswers();
        Open = ReadOpen();
        Removals = ReadRemovals();
    }

    public static IReadOnlyList<FaultAnswer> Answers { get; }

    public static IReadOnlyList<OpenFault> Open { get; }

    public static IReadOnlyList<FaultRemoval> Removals { get; }

    private static List<FaultAnswer> ReadAnswers() => [.. FaultLists.Entries("answers.yaml").Select(entry => new FaultAnswer(
        Needed(entry, "id"), FaultLists.Text(entry, "rule"), FaultLists.Text(entry, "at"), Needed(entry, "status"), Needed(entry, "says"), FaultLists.Text(entry, "short"), FaultLists.Text(entry, "whole") is "yes"))];

    private static List<OpenFault> ReadOpen() => [.. FaultLists.Entries("open.yaml").Select(entry =>
        new OpenFault(Needed(entry, "id"), Needed(entry, "why"), FaultLists.Texts(entry, "adds"), FaultLists.Texts(entry, "new")))];

    private static List<FaultRemoval> ReadRemovals() => [.. FaultLists.Entries("removals.yaml").Select(entry =>
        new FaultRemoval(Needed(entry, "id"), Needed(entry, "rule"), Needed(entry, "at"), Needed(entry, "why")))];

    private static string Needed(MapToken entry, string key) => FaultLists.Text(entry, key) ?? throw new InvalidOperationException($"An entry has no `{key}`.");
}
