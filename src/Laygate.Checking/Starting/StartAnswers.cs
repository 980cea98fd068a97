using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Checking.Starting;

/// <summary>What a plan is begun for, in the trade's words.</summary>
public enum JobKind
{
    /// <summary>One surface course on an old, cold surface.</summary>
    Overlay,

    /// <summary>One thin surface course on an old, cold surface.</summary>
    ThinOverlay,

    /// <summary>The old course is milled off and one surface course laid between what is left.</summary>
    MillAndFill,

    /// <summary>A binder course and, on it when it is cold, a surface course.</summary>
    TwoCourses,

    /// <summary>A binder course and a surface course in one go, compacted together.</summary>
    HotOnHot,
}

/// <summary>Units in which a plan is written.</summary>
public enum PlanUnits
{
    /// <summary>Metric units.</summary>
    Metric,

    /// <summary>United States customary units.</summary>
    Us,
}

/// <summary>The answers with which a plan begins. What is not answered becomes a blank.</summary>
/// <param name="Given">Answers by the id of their question; each was accepted by it.</param>
public sealed record StartAnswers(IReadOnlyDictionary<string, string> Given)
{
    /// <summary>Kind of job; an overlay where it is not answered.</summary>
    public JobKind Kind => Words.Find<JobKind>(this[StartQuestions.Kind] ?? string.Empty) ?? JobKind.Overlay;

    /// <summary>Stage; concept where it is not answered.</summary>
    public Stage Stage => Words.Find<Stage>(this[StartQuestions.Stage] ?? string.Empty) ?? Stage.Concept;

    /// <summary>Units; metric where it is not answered.</summary>
    public UnitSystem Units => Words.Find<PlanUnits>(this[StartQuestions.Units] ?? string.Empty) == PlanUnits.Us ? UnitSystem.UnitedStates : UnitSystem.Metric;

    /// <summary>An answer; null where there is none.</summary>
    /// <param name="question">Id of the question.</param>
    public string? this[string question] => Given.GetValueOrDefault(question);

    /// <summary>An answer that is a list; empty where there is none.</summary>
    /// <param name="question">Id of the question.</param>
    public IReadOnlyList<string> List(string question) => this[question] is { } text ? [.. text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)] : [];
}
