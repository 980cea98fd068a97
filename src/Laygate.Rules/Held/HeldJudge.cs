using Laygate.Engineering.Quantities;
using Laygate.Engineering.Records.Happened;
using Laygate.Model.Measures;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Departures;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Rules.Held;

/// <summary>How what happened is to be judged.</summary>
/// <param name="Plan">Plan, date and names, as for a check of the plan.</param>
/// <param name="Departures">Departures, checked against the book.</param>
/// <param name="SimpleBy">The clause of the contract by which readings are taken as they are; null: the uncertainty decides.</param>
public sealed record HeldSettings(EvaluationSettings Plan, IReadOnlyList<Departure> Departures, string? SimpleBy);

/// <summary>
/// Holds what happened in a shift against the rules of its plan: each quantity of the catalogue that the record can show is given as it
/// happened, and the same rules are evaluated by the same gate.
/// </summary>
public sealed class HeldJudge
{
    private readonly RuleBook book;
    private readonly HappenedShift shift;
    private readonly HeldSettings settings;
    private readonly QuantityContext context;
    private readonly HeldRule rules;

    private HeldJudge(RuleBook book, HappenedShift shift, HeldSettings settings)
    {
        (this.book, this.shift, this.settings, context) = (book, shift, settings, shift.Context);
        var date = context.Plan.Shift?.Date ?? settings.Plan.CheckedOn;
        var evaluation = new RuleEvaluation(new AnswerLog(context), new FindingBuilder(context, book.Sources), Model.Plans.Stage.Release, date, samples: null);
        rules = new HeldRule(shift, evaluation, settings.SimpleBy is not null);
    }

    /// <summary>Judges.</summary>
    /// <param name="book">The merged rule book.</param>
    /// <param name="shift">Plan and record.</param>
    /// <param name="settings">Date, departures, and how uncertainty counts.</param>
    /// <returns>The report without what was refused while the record was read.</returns>
    public static HeldReport Judge(RuleBook book, HappenedShift shift, HeldSettings settings) => new HeldJudge(book, shift, settings).Judge();

    private HeldReport Judge()
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var findings = new List<HeldFinding>();
        foreach (var element in context.Elements.All)
        {
            foreach (var rule in book.On(element.Kind).Where(IsSeen))
            {
                seen.Add(rule.Definition.Id);
                if (rules.Judge(rule, element, Shown(rule)!) is { } found)
                {
                    findings.Add(found);
                }
            }
        }

        var (plan, departed) = Departed(findings);
        return new HeldReport(
            plan, shift.Record, departed, [.. HoldPointUses.Of(shift).Select(Point)], HoldPointUses.Unknown(shift),
            [.. book.InForce.Where(rule => !IsSeen(rule)).Select(rule => rule.Definition.Id)], settings.SimpleBy, [], [])
        {
            Strips = RunStrip.Of(shift),
            Length = context.Plan.Runs.Select(run => run.From?.Unit).FirstOrDefault(unit => unit is { Spelling: not "km" and not "mi" }) ?? UnitTable.Find("m")!,
        };
    }

    // A step that the plan lets wait for a person fails where another let it go on, where it went on before, and where nobody is known to have let it.
    private static HeldPoint Point(HoldPointUse use) => use.State switch
    {
        HoldPointState.Released => new(use, HeldOutcome.Held, Status.Pass),
        HoldPointState.ByAnother or HoldPointState.TooLate => new(use, HeldOutcome.Missed, Status.Fail),
        HoldPointState.Incomplete => new(use, HeldOutcome.NotDecided, Status.Warn),
        _ => new(use, HeldOutcome.NotRecorded, Status.Fail),
    };

    private static bool IsSeen(CheckedRule rule) => Shown(rule) is not null;

    // Rules about single numbers of a plan ask whether they are usual, not what happened.
    private static HappenedQuantity? Shown(CheckedRule rule) =>
        HappenedQuantities.Find(rule.Quantity.Name) is { IsLimit: false } direct ? direct
        : rule.Bounds.Select(bound => bound.Limit).OfType<CheckedQuantity>().Select(limit => HappenedQuantities.Find(limit.Quantity.Name)).FirstOrDefault(found => found is { IsLimit: true });

    // A departure permits a value, never that nothing was recorded; it must have been in force on the day of the shift.
    private (Report Plan, IReadOnlyList<HeldFinding> Findings) Departed(List<HeldFinding> findings)
    {
        var date = context.Plan.Shift?.Date ?? settings.Plan.CheckedOn;
        var judged = findings.FindAll(one => one.Outcome is HeldOutcome.Missed or HeldOutcome.NotDecided).ConvertAll(one => one.Finding with { Status = one.Status, Value = Unfavourable(one) });
        var identity = context.Plan.Identity;
        var report = new Report
        {
            File = settings.Plan.File,
            PlanId = identity.Id,
            PlanTitle = identity.Title,
            Revision = identity.Revision,
            PlanHash = settings.Plan.PlanHash,
            Jurisdiction = context.Plan.Location?.Jurisdiction,
            Stage = Model.Plans.Stage.Release,
            JudgedFor = date,
            JudgedForShift = context.Plan.Shift?.Date is not null,
            ProgramVersion = settings.Plan.ProgramVersion,
            Layers = book.Layers,
            BookHash = book.Hash,
            Findings = judged,
            Counts = Counting.Of(judged),
        };
        var applied = DepartureJudge.Apply(report, book, settings.Departures, context.Elements.All.Select(element => element.Address), date);
        var departures = applied.Findings.Where(finding => finding.Status == Status.Departed).ToDictionary(finding => (finding.Rule, finding.Address), finding => finding.Departure);
        return (applied with { Findings = [] }, findings.ConvertAll(one => departures.TryGetValue((one.Finding.Rule, one.Finding.Address), out var departure)
            ? one with { Outcome = HeldOutcome.Departed, Status = Status.Departed, Finding = one.Finding with { Departure = departure } }
            : one));
    }

    // What is permitted must cover the whole uncertainty.
    private ShownValue? Unfavourable(HeldFinding one)
    {
        if (one.Finding.Value is not { Number: { } number } value || settings.SimpleBy is not null || one.Uncertainty is not { } u)
        {
            return one.Finding.Value;
        }

        var isLow = one.Finding.Check == CheckKind.AtLeast
            || (one.Finding.Check == CheckKind.Between && one.Finding.Limit is { } limit && number - (limit.Low?.Number ?? double.NegativeInfinity) < (limit.High?.Number ?? double.PositiveInfinity) - number);
        return value with { Number = isLow ? number - u : number + u };
    }
}
