using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Rules.Evaluation;

/// <summary>Holds a plan against a rule book.</summary>
public static class Evaluator
{
    /// <summary>Judges a plan by all rules in force: one finding per rule and element of its kind, in plan order, then by rule id.</summary>
    /// <param name="book">The merged rule book.</param>
    /// <param name="context">The plan under its assumptions.</param>
    /// <param name="settings">Stage, dates and names.</param>
    public static Report Evaluate(RuleBook book, QuantityContext context, EvaluationSettings settings)
    {
        var plan = context.Plan;
        var stage = StageOf(plan, settings);
        var shift = plan.Shift?.Date ?? context.Job?.Shifts.Min(one => one.Plan.Shift?.Date);
        var date = shift ?? settings.CheckedOn;
        var answers = new AnswerLog(context);
        var evaluation = new RuleEvaluation(answers, new FindingBuilder(context, book.Sources), stage, date, settings.Samples);
        var judged = context.Elements.All
            .SelectMany(element => book.On(element.Kind)
                .Where(rule => settings.OnlyRule is null || string.Equals(settings.OnlyRule, rule.Definition.Id, StringComparison.Ordinal))
                .Select(rule => (rule, evaluation.Evaluate(rule, element))))
            .Concat(settings.OnlyRule is { } only ? UsualValues.Of(book, context, evaluation, only) : UsualValues.Of(book, context, evaluation))
            .ToList();
        var findings = new DecidingAssumptions(book, context, settings).Noted(LastWord.Noted(judged, context.Catalogue));
        return new Report
        {
            File = settings.File,
            Document = settings.Document,
            PlanId = plan.Identity.Id,
            PlanTitle = plan.Identity.Title,
            Revision = plan.Identity.Revision,
            PlanHash = settings.PlanHash,
            Jurisdiction = plan.Location?.Jurisdiction,
            Stage = stage,
            JudgedFor = date,
            JudgedForShift = shift is not null,
            ProgramVersion = settings.ProgramVersion,
            Layers = book.Layers,
            BookHash = book.Hash,
            Findings = findings,
            Counts = Counting.Of(findings),
            Assumptions = answers.Assumptions,
            IsQuick = context.IsQuick,
            Notes = [.. book.Layers.Where(layer => layer.IsUnread).Select(layer => Note.Of(FindingNotes.SpecificationUnread, ("specification", layer.Title))), .. context.IsQuick ? [Note.Of(FindingNotes.QuickReport)] : (Note[])[], .. JurisdictionNotes(plan.Location?.Jurisdiction, book.Layers), .. book.Layers.SelectMany(layer => layer.OldWords).Select(OldWordNotes.Of)],
        };
    }

    /// <summary>The stage at which a plan is judged: its own, or the one asked for, whichever is later.</summary>
    public static Stage StageOf(Plan plan, EvaluationSettings settings) =>
        settings.Stage is { } asked && asked > plan.Identity.Stage ? asked : plan.Identity.Stage;

    private static List<Note> JurisdictionNotes(string? stated, IReadOnlyList<BookLayer> layers) =>
    [
        .. layers
            .Where(layer => layer.Layer == Layer.StandardSpecification && !string.Equals(layer.Jurisdiction, Jurisdiction.None, StringComparison.Ordinal))
            .Where(layer => stated is null || !Jurisdiction.LiesIn(stated, layer.Jurisdiction))
            .Select(layer => stated is null
                ? Note.Of(FindingNotes.JurisdictionNotStated, ("book", layer.Jurisdiction), ("specification", layer.Title))
                : Note.Of(FindingNotes.JurisdictionDiffers, ("plan", stated), ("book", layer.Jurisdiction), ("specification", layer.Title))),
    ];
}

/// <summary>Counts findings by outcome; each is in exactly one.</summary>
public static class Counting
{
    /// <summary>Counts.</summary>
    public static Counts Of(IReadOnlyCollection<Finding> findings) => new(
        Failed: findings.Count(finding => finding.Status == Status.Fail),
        Warned: findings.Count(finding => finding is { Status: Status.Warn, Outcome: Outcome.Met or Outcome.Missed }),
        Passed: findings.Count(finding => finding.Status == Status.Pass),
        NotAssessed: findings.Count(finding => finding is { Status: Status.Warn, Outcome: Outcome.NotAssessed }),
        NeedsPerson: findings.Count(finding => finding is { Status: Status.Warn, Outcome: Outcome.NeedsPerson }),
        Open: findings.Count(finding => finding is { Status: Status.None, Outcome: Outcome.Open }),
        NotApplicable: findings.Count(finding => finding is { Status: Status.None, Outcome: Outcome.NotApplicable }),
        Departed: findings.Count(finding => finding.Status == Status.Departed));
}
