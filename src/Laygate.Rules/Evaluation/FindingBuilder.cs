using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Rules.Evaluation;

/// <summary>Puts findings together.</summary>
internal sealed class FindingBuilder(QuantityContext context, IReadOnlyDictionary<string, Source> sources)
{
    private readonly Display display = new(context);

    public static Finding NotApplicable(CheckedRule rule, Element element, Answer? decisive) =>
        Start(rule, element, Outcome.NotApplicable, Status.None) with { Input = decisive?.Input };

    public static Finding NotInForce(CheckedRule rule, Element element, IReadOnlyList<Note> notes)
    {
        var status = GateStatus.Of(new GateCase { Outcome = Outcome.NotAssessed });
        return Start(rule, element, Outcome.NotAssessed, status) with { Notes = [.. Life(rule), .. notes] };
    }

    public Finding Unknown(CheckedRule rule, Element element, Silence silence, Answer? value, GateCase given)
    {
        var missing = silence.Answers.SelectMany(answer => answer.Absence!.Missing).Distinct().ToList();
        var reasons = silence.Answers.Select(answer => answer.Absence!.Note).OfType<Note>();
        var outside = given.OutOfRange ? silence.Answers.FirstOrDefault(answer => answer.Absence!.Reason == AbsenceReason.OutsideRange) : null;
        var status = GateStatus.Of(given);
        return Start(rule, element, given.Outcome, status) with
        {
            Input = outside?.Input ?? value?.Input ?? silence.Answers.Select(answer => answer.Input).Prepend(missing.Count > 0 ? missing[0] : null).FirstOrDefault(input => input is not null),
            Value = value?.Value is null ? null : display.Value(rule.Quantity, value),
            Origin = value?.Value is null ? null : value.Origin,
            Working = value?.Value is null ? null : value.Working,
            Missing = missing,
            Notes = [.. Life(rule), .. reasons, .. value?.Note is { } remark ? [remark] : (Note[])[], .. silence.Notes, .. given.OutOfRange && status == Status.Fail ? [Note.Of(FindingNotes.OutOfRangeFails)] : (Note[])[]],
        };
    }

    public Finding Judged(
        CheckedRule rule, Element element, Answer answer, Judgement deciding, IReadOnlyList<Judgement> judged, GateCase given, IReadOnlyList<Note> notes)
    {
        var status = GateStatus.Of(given);
        var other = judged.FirstOrDefault(one => !ReferenceEquals(one, deciding));
        return Start(rule, element, given.Outcome, status) with
        {
            Input = answer.Input,
            Value = display.Value(rule.Quantity, answer),
            Origin = answer.Origin,
            Limit = display.Limit(deciding.Bound, rule.Quantity, answer, sources) with { SilenceFails = SilenceFails(rule, deciding) },
            OtherLimit = other is null ? null : display.Limit(other.Bound, rule.Quantity, answer, sources),
            OnExpectedValuesOnly = given is { Outcome: Outcome.Met, Band: Band.Straddles or Band.Misses },
            FavourableEndMeets = given is { Outcome: Outcome.Missed, Band: Band.Straddles or Band.Meets },
            Working = Join(answer.Working, deciding.Bound.Other?.Working),
            Missing = MissingFields(answer, element),
            Notes = [.. Life(rule), .. Remarks(answer, deciding), .. notes, .. OtherReadings(judged), .. StatusNotes(given, status, deciding)],
        };
    }

    private static bool SilenceFails(CheckedRule rule, Judgement deciding) =>
        rule.Definition is { LifeCritical: true, Check: CheckKind.Present } && deciding.Bound.Bound.Definition.Strength == Strength.Required;

    private static Finding Start(CheckedRule rule, Element element, Outcome outcome, Status status) => new()
    {
        Rule = rule.Definition.Id,
        RuleName = $"{rule.Definition.Family}/{rule.Definition.Name}",
        Title = rule.Definition.Title,
        Why = rule.Definition.Why,
        Remedy = rule.Definition.Remedy,
        Local = rule.Definition.Local,
        Asks = rule.Definition.Asks,
        Holds = rule.Definition.Holds,
        Severity = rule.Definition.Severity,
        Check = rule.Definition.Check,
        Address = element.Address,
        Outcome = outcome,
        Status = status,
        Quantity = rule.Quantity.Name,
        QuantityMeaning = rule.Quantity.Meaning,
    };

    private static IEnumerable<Note> Remarks(Answer answer, Judgement deciding) =>
        new[] { answer.Note, deciding.Note }.OfType<Note>()
            .Concat((answer.Value as PresenceValue)?.Remarks ?? [])
            .Concat(deciding.Bound.Notes);

    private IEnumerable<Note> OtherReadings(IReadOnlyList<Judgement> judged) =>
        judged.SelectMany(one => one.Bound.Bound.Definition.Also).Select(other => Note.Of(
            FindingNotes.OtherReading,
            ("source", string.Join(", ", new[] { Publication(other.Source), other.Clause }.Where(part => !string.IsNullOrEmpty(part)))),
            ("evidence", Words.Of(other.Evidence)),
            ("text", other.Remark ?? string.Empty)));

    // Issuer and title: nobody finds a publication by its id in our bibliography.
    private string Publication(string id) => sources.GetValueOrDefault(id) is { } source
        ? string.Join(", ", new[] { source.Issuer, source.Title }.Where(part => !string.IsNullOrEmpty(part)))
        : id;

    private IEnumerable<Note> StatusNotes(GateCase given, Status status, Judgement deciding)
    {
        var known = GateStatus.CanFail(given.Evidence, given.Layer, given.LimitIsQuantity);
        if (given is { Outcome: Outcome.Missed, NothingStated: true } && status == Status.Fail && !known)
        {
            yield return Note.Of(FindingNotes.SilenceFails, ("evidence", Words.Of(given.Evidence)));
        }
        else if (given.Outcome == Outcome.Missed && given.Strength == Strength.Required && status == Status.Warn)
        {
            yield return known
                ? Note.Of(FindingNotes.WeakAssumption)
                : Note.Of(FindingNotes.LimitTooWeakToFail, ("evidence", Words.Of(given.Evidence)));
        }
        else if (given.Outcome == Outcome.Met && given.Evidence == Evidence.Recalled && !given.LimitIsQuantity)
        {
            yield return Note.Of(FindingNotes.LimitRecalled, ("source", Publication(deciding.Bound.Source.Source)));
        }
    }

    private static IEnumerable<Note> Life(CheckedRule rule) => rule.Definition.Life switch
    {
        { State: LifeState.Leaving } life => [Note.Of(FindingNotes.RuleLeaving, ("successor", life.Successor ?? string.Empty))],
        { State: LifeState.OnTrial } => [Note.Of(FindingNotes.RuleOnTrial)],
        _ => [],
    };

    private static List<InputReference> MissingFields(Answer answer, Element element)
    {
        if (answer.Absence is { } absence)
        {
            return [.. absence.Missing];
        }

        var address = answer.Input?.Address ?? element.Address;
        return answer.Value switch
        {
            // Nothing is there that could lack a field: the list itself lacks an entry.
            PresenceValue { Level: PresenceLevel.Absent, MissingFields.Count: 0, MissingAt.Count: 0 } when answer.Input is { } list => [list],
            PresenceValue { MissingAt: { Count: > 0 } places } => [.. places],
            PresenceValue presence => [.. presence.MissingFields.Select(field => new InputReference(address, field))],
            _ => [],
        };
    }

    private static Working Join(Working value, Working? limit) => limit is null ? value : new Working(
        [.. value.Inputs, .. limit.Inputs], [.. value.Steps, .. limit.Steps], [.. value.Assumptions.Union(limit.Assumptions)]);
}
