using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Rules.Evaluation;

/// <summary>Judges one rule on one element at one stage and date.</summary>
internal sealed class RuleEvaluation(AnswerLog answers, FindingBuilder findings, Stage stage, DateOnly date, IJointSamples? samples)
{
    private readonly LimitResolver resolver = new(answers, date);
    private readonly BoundJudge judge = new(samples);

    /// <summary>The finding.</summary>
    public Finding Evaluate(CheckedRule rule, Element element) => Evaluate(rule, element, alsoGood: true)!;

    /// <summary>The finding where it warns, fails or misses; null where it does not, and is not put together.</summary>
    public Finding? Bad(CheckedRule rule, Element element) =>
        Evaluate(rule, element, alsoGood: false) is { } found && IsBad(found.Outcome, found.Status) ? found : null;

    private Finding? Evaluate(CheckedRule rule, Element element, bool alsoGood)
    {
        var applicability = ConditionJudge.Judge(rule, element, answers);
        if (applicability.Applies is false)
        {
            return alsoGood ? FindingBuilder.NotApplicable(rule, element, applicability.Decisive) : null;
        }

        if (rule.Bounds.All(bound => !Periods.MayHold(bound, date)))
        {
            return FindingBuilder.NotInForce(rule, element, Periods.Notes(rule, date));
        }

        if (applicability.Applies is null)
        {
            return HoldsAnyway(rule, element)
                ?? Unknown(rule, element, new Silence(applicability.Unknown, applicability.Questions, InCondition: true, rule.Bounds), value: null, alsoGood);
        }

        var answer = answers.Get(rule.Quantity.Name, element);
        return Judge(rule, element, rule.Definition.Check == CheckKind.Present ? Presence.Of(answer, rule) : answer, alsoGood);
    }

    // What is held whether or not the rule applies leaves nothing to ask. Whether a hazard is there is asked all the same.
    private Finding? HoldsAnyway(CheckedRule rule, Element element)
    {
        if (rule.Definition.Check == CheckKind.Present || answers.Get(rule.Quantity.Name, element) is not { Value: not null, RestsOnWeakAssumption: false } answer)
        {
            return null;
        }

        return Judge(rule, element, answer, alsoGood: true) is { Outcome: Outcome.Met, OnExpectedValuesOnly: false } held ? held with { Notes = [.. held.Notes, Note.Of(FindingNotes.HeldEitherWay)] } : null;
    }

    private static bool Holds(Judgement judged) => judged is { Met: true, Band: Band.None or Band.Meets };

    private Finding? Judge(CheckedRule rule, Element element, Answer answer, bool alsoGood)
    {
        var (resolved, unresolved) = Resolve(rule, element, answer);
        var outOfForce = unresolved.Where(bound => !bound.InForce).Select(bound => bound.Note!).ToList();
        var open = unresolved.Where(bound => bound.InForce).ToList();
        if (resolved.Count == 0 && open.Count == 0)
        {
            return FindingBuilder.NotInForce(rule, element, outOfForce);
        }

        if (answer.Value is null)
        {
            return Unknown(
                rule, element, new Silence([answer, .. open.SelectMany(bound => bound.Answers)], [.. outOfForce], InCondition: false, rule.Bounds), answer, alsoGood);
        }

        var judged = resolved.Select(bound => judge.Judge(rule, bound, answer.Value, element.Address)).ToList();
        if (BlockedBy(judged, open) is { Count: > 0 } blocking)
        {
            var silence = new Silence(
                [.. blocking.SelectMany(bound => bound.Answers)],
                [.. blocking.Select(bound => bound.Note).OfType<Note>(), .. outOfForce],
                InCondition: false,
                [.. blocking.Select(bound => bound.Bound)]);
            return Unknown(rule, element, silence, answer, alsoGood);
        }

        // A value for a part only can show a miss, never that the whole meets a limit.
        return judged.TrueForAll(one => one.Met) && LeftOut(answer, judged) is { } left
            ? Unknown(rule, element, new Silence([Answer.None(AbsenceReason.NotComputable, left)], [.. outOfForce], InCondition: false, rule.Bounds), answer, alsoGood)
            : Decide(rule, element, answer, judged, outOfForce, alsoGood);
    }

    private static Note? LeftOut(Answer answer, List<Judgement> judged) =>
        answer.Partial ?? judged.Select(one => one.Bound.Other?.Partial).FirstOrDefault(note => note is not null);

    private (List<ResolvedBound> Resolved, List<UnresolvedBound> Unresolved) Resolve(CheckedRule rule, Element element, Answer answer)
    {
        var resolved = new List<ResolvedBound>(2);
        var unresolved = new List<UnresolvedBound>(2);
        foreach (var bound in rule.Bounds)
        {
            var (limit, without) = resolver.Resolve(bound, element);
            limit ??= HeldByEachRow(rule, element, answer, without!);
            var (comparable, unlike) = limit is null ? (null, without) : PlaceCheck.Check(rule, limit, answer);
            if (comparable is not null)
            {
                resolved.Add(comparable);
            }
            else
            {
                unresolved.Add(unlike!);
            }
        }

        return (resolved, unresolved);
    }

    // Where a word or number that chooses the row is not known, but the value holds by every row that may be meant, the nearest of them stands as the limit.
    private ResolvedBound? HeldByEachRow(CheckedRule rule, Element element, Answer answer, UnresolvedBound without)
    {
        if (without.Candidates.Count == 0 || answer is not { Value: not null, RestsOnWeakAssumption: false })
        {
            return null;
        }

        var judged = without.Candidates
            .Where(row => PlaceCheck.Check(rule, row, answer).Item1 is not null)
            .Select(row => judge.Judge(rule, row, answer.Value, element.Address)).ToList();
        return judged.Count == without.Candidates.Count && judged.TrueForAll(Holds) ? judged.MinBy(one => one.Distance)!.Bound : null;
    }

    // A missed bound decides whatever is unknown below it: a required miss always, an advised miss once no required bound is unknown.
    private static List<UnresolvedBound> BlockedBy(List<Judgement> judged, List<UnresolvedBound> open)
    {
        if (open.Count == 0 || judged.Exists(one => !one.Met && one.Bound.Bound.Definition.Strength == Strength.Required))
        {
            return [];
        }

        var required = open.Where(bound => bound.Bound.Definition.Strength == Strength.Required).ToList();
        return required.Count == 0 && judged.Exists(one => !one.Met) ? [] : required.Count > 0 ? required : open;
    }

    private Finding? Decide(CheckedRule rule, Element element, Answer answer, List<Judgement> judged, List<Note> notes, bool alsoGood)
    {
        var deciding = judged.Where(one => !one.Met).OrderBy(one => one.Bound.Bound.Definition.Strength).FirstOrDefault()
            ?? judged.OrderByDescending(one => one.Band is Band.Straddles or Band.Misses)
                .ThenBy(one => one.Distance).ThenBy(one => one.Bound.Bound.Definition.Strength).First();
        var outcome = deciding.Met ? Outcome.Met : Outcome.Missed;
        if (outcome == Outcome.Missed && StagesLate(rule) < 0 && answer.Value is PresenceValue { Level: not PresenceLevel.Stated })
        {
            outcome = Outcome.Open; // What must be stated only later is not yet missed.
        }

        var given = new GateCase
        {
            Outcome = outcome,
            Strength = deciding.Bound.Bound.Definition.Strength,
            Evidence = deciding.Bound.Source.Evidence,
            Layer = deciding.Bound.Bound.Layer,
            LimitIsQuantity = deciding.Bound.Bound.Limit is CheckedQuantity,
            WeakAssumption = answer.RestsOnWeakAssumption || deciding.Bound.Other?.RestsOnWeakAssumption == true,
            Band = deciding.Band,
            Severity = rule.Definition.Severity,
            AtRelease = stage == Stage.Release,
            NothingStated = answer.Value is PresenceValue { Level: PresenceLevel.Absent },
        };
        return alsoGood || IsBad(given) ? findings.Judged(rule, element, answer, deciding, judged, given, notes) : null;
    }

    private static bool IsBad(GateCase given) => IsBad(given.Outcome, GateStatus.Of(given));

    private static bool IsBad(Outcome outcome, Status status) => outcome == Outcome.Missed || status is Status.Warn or Status.Fail;

    // A limit for another place than the value's cannot be compared by computing, only by somebody who knows both.
    private static bool NeedsPerson(Silence silence, List<AbsenceReason> reasons) => reasons.Contains(AbsenceReason.NeedsPerson)
        || silence.Notes.Any(note => string.Equals(note.Id, FindingNotes.PlacesDiffer, StringComparison.Ordinal));

    private Finding? Unknown(CheckedRule rule, Element element, Silence silence, Answer? value, bool alsoGood)
    {
        var reasons = silence.Answers.Select(answer => answer.Absence!.Reason).ToList();
        var missing = reasons.Contains(AbsenceReason.MissingInput);
        var late = StagesLate(rule);
        var notAsked = silence.InCondition && rule.Definition.Severity is (Severity.B or Severity.C); // Only the gravest hazards ask a question that holds the plan up.
        var outcome = missing ? (late < 0 || notAsked ? Outcome.Open : Outcome.NotAssessed)
            : NeedsPerson(silence, reasons) ? Outcome.NeedsPerson : Outcome.NotAssessed;
        var given = new GateCase
        {
            Outcome = outcome,
            InputMissing = missing,
            OutOfRange = outcome == Outcome.NotAssessed && !missing && reasons.Contains(AbsenceReason.OutsideRange),
            ConditionUnknown = silence.InCondition,
            MissCouldFail = silence.Bounds.Any(bound => Periods.CouldFail(bound, date)),
            StagesLate = late,
            AtRelease = stage == Stage.Release,
            Severity = rule.Definition.Severity,
            AboutOpening = rule.Definition.AppliesTo == ElementKind.Opening || rule.Quantity.Element == ElementKind.Opening,
        };
        return alsoGood || IsBad(given) ? findings.Unknown(rule, element, silence, value, given) : null;
    }

    private int StagesLate(CheckedRule rule) => stage - rule.Definition.FromStage;
}

/// <summary>What keeps a rule from being assessed.</summary>
/// <param name="Answers">Answers without a value.</param>
/// <param name="Notes">Other reasons.</param>
/// <param name="InCondition">Whether it is a condition that is not known.</param>
/// <param name="Bounds">Bounds that cannot be judged for it.</param>
internal sealed record Silence(
    IReadOnlyList<Answer> Answers, IReadOnlyList<Note> Notes, bool InCondition, IReadOnlyList<CheckedBound> Bounds);
