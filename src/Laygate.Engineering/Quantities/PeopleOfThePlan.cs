using System.Collections.Frozen;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Whether those on whom a step waits are on the list of people, and are not one and the same.</summary>
internal static class PeopleOfThePlan
{
    private static readonly Define Plan = new(ElementKind.Plan);
    private static readonly Define HoldPoint = new(ElementKind.HoldPoint);
    private static readonly Define Contingency = new(ElementKind.Contingency);
    private static readonly Define Measure = new(ElementKind.Measure);
    private static readonly Define Opening = new(ElementKind.Opening);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        HoldPoint.Flag("releaser_can_be_listed", "Whether the hold point names who releases it; not known against what where the plan lists nobody.", (c, e) =>
            CanBeListed(c, (e.Subject as HoldPoint)?.ReleasedBy, new InputReference(e.Address, "released_by"))),
        HoldPoint.Flag("releaser_listed", "Whether whoever releases is among the people of the plan or those who sign it: by id, name or role.", (c, e) =>
            Listed(c, (e.Subject as HoldPoint)?.ReleasedBy, new InputReference(e.Address, "released_by"))),
        HoldPoint.Flag("before_a_step", "Whether the hold point lies before laying or before traffic and names both owner and who releases.", (_, e) => Answers.Follows(
            e.Subject is HoldPoint point && HoldSteps.StepOf(point) is HoldStep.BeforeLaying or HoldStep.BeforeOpening && Answers.Given(((HoldPoint)e.Subject).Owner) && Answers.Given(((HoldPoint)e.Subject).ReleasedBy),
            new InputReference(e.Address, "released_by"))),
        HoldPoint.Flag("released_by_another", "Whether somebody else than the owner releases it.", ReleasedByAnother),
        Contingency.Flag("decider_can_be_listed", "Whether the action names who decides; not known against what where the plan lists nobody.", (c, e) =>
            CanBeListed(c, (e.Subject as Contingency)?.DecidedBy, new InputReference(e.Address, "decided_by"))),
        Contingency.Flag("decider_listed", "Whether whoever decides is among the people of the plan or those who sign it: by id, name or role.", (c, e) =>
            Listed(c, (e.Subject as Contingency)?.DecidedBy, new InputReference(e.Address, "decided_by"))),
        Opening.Flag("releaser_can_be_listed", "Whether the plan lists people and names who opens to traffic.", (c, e) => Answers.Follows(
            c.Plan.Identity.People.Count > 0 && Answers.Given((e.Subject as Opening)?.ReleasedBy), new InputReference(e.Address, "released_by"))),
        Opening.Flag("releaser_listed", "Whether whoever opens to traffic is among the people of the plan or those who sign it: by id, name or role.", (c, e) =>
            Listed(c, (e.Subject as Opening)?.ReleasedBy, new InputReference(e.Address, "released_by"))),
        Plan.Flag("deputies_named", "Whether a person of the plan has a deputy.", (c, _) => Answers.Follows(
            c.Plan.Identity.People.Any(one => Answers.Given(one.Deputy)), new InputReference("plan", "plan.people"))),
        Plan.Flag("deputies_differ", "Whether every deputy is somebody else than the person.", DeputiesDiffer),
        Plan.Flag("people_listed", "Whether the plan lists people.", (c, _) => Answers.Follows(c.Plan.Identity.People.Count > 0, new InputReference("plan", "plan.people"))),
        Plan.Presence("people_called", "How each person on the list is reached.", (c, _) => Answers.Fields(
            new InputReference("plan", "plan.people"), [.. c.Plan.Identity.People.Select(one => ($"plan.people.{one.Id}.call", Answers.Given(one.Call)))])),
        Measure.Flag("spotter_free", "Whether the spotter is nobody who has another task on the list of people.", SpotterFree),
        Measure.Flag("one_answers", "Whether one person, and not everybody, answers for it.", OneAnswers),
    ];

    // Each of these is a task of one person, or of two in turns.
    private static readonly FrozenSet<string> Everybody = FrozenSet.Create(
        StringComparer.OrdinalIgnoreCase, "all", "all workers", "anybody", "anyone", "crew", "each worker", "every worker", "everybody", "everyone", "the crew", "whole crew", "workers");

    /// <summary>Whether somebody who is named is among the people of the plan or those who sign it: by id, name or role.</summary>
    public static Answer Listed(QuantityContext context, string? named, InputReference input)
    {
        if (!Answers.Given(named))
        {
            return Answer.Missing(input);
        }

        var identity = context.Plan.Identity;
        var known = identity.People.SelectMany(one => new[] { one.Id, one.Name, one.Role, one.Deputy })
            .Concat(new[] { identity.Prepared, identity.Checked, identity.Approved }.SelectMany(one => new[] { one?.Name, one?.Role }));
        return Answers.Follows(known.Any(text => SharesWords(text, named!)), input);
    }

    private static Answer CanBeListed(QuantityContext context, string? named, InputReference input) =>
        !Answers.Given(named) ? Answers.Follows(flag: false, input)
        : context.Plan.Identity.People.Count == 0 ? Answer.Missing(new InputReference("plan", "plan.people"))
        : Answers.Follows(flag: true, input);

    private static Answer ReleasedByAnother(QuantityContext context, Element element)
    {
        var point = (HoldPoint)element.Subject!;
        var input = new InputReference(element.Address, "released_by");
        if (!Answers.Given(point.Owner) || !Answers.Given(point.ReleasedBy))
        {
            return Answer.Missing(input);
        }

        return Same(context.Plan, point.Owner!, point.ReleasedBy!)
            ? Answers.Follows(flag: false, input) with { Note = SamePerson(input, $"{point.Owner!.Trim()} owns the step and releases it") }
            : Answers.Follows(flag: true, input);
    }

    private static Answer DeputiesDiffer(QuantityContext context, Element element)
    {
        foreach (var person in context.Plan.Identity.People.Where(one => Answers.Given(one.Deputy)))
        {
            if (Is(person, person.Deputy!))
            {
                var input = new InputReference("plan", $"plan.people.{person.Id}.deputy");
                return Answers.Follows(flag: false, input) with { Note = SamePerson(input, $"{person.Deputy!.Trim()} stands in for {person.Name?.Trim() ?? person.Id}") };
            }
        }

        return Answers.Follows(flag: true, new InputReference("plan", "plan.people"));
    }

    private static Answer SpotterFree(QuantityContext context, Element element)
    {
        var input = new InputReference(element.Address, "who");
        var who = ((SafetyMeasure)element.Subject!).Who;
        if (!Answers.Given(who))
        {
            return Answer.Missing(input);
        }

        var busy = context.Plan.Identity.People.FirstOrDefault(person => Is(person, who!) && person.Role?.Contains("spotter", StringComparison.OrdinalIgnoreCase) != true);
        return busy is null ? Answers.Follows(flag: true, input)
            : Answers.Follows(flag: false, input) with { Note = SamePerson(input, $"{who!.Trim()} is on the list as {busy.Role?.Trim() ?? busy.Id}") };
    }

    private static Answer OneAnswers(QuantityContext context, Element element)
    {
        var input = new InputReference(element.Address, "who");
        var who = ((SafetyMeasure)element.Subject!).Who;
        return !Answers.Given(who) ? Answer.Missing(input) : Answers.Follows(!Everybody.Contains(who!.Trim()), input);
    }

    /// <summary>Whether two words name one person: by the same words, or by two of the words of one person, the role here, the name there.</summary>
    internal static bool Same(Plan plan, string one, string other) =>
        Equal(one, other) || plan.Identity.People.Any(person => Is(person, one) && Is(person, other));

    private static bool Is(Person person, string text) => Equal(person.Id, text) || Equal(person.Name, text) || Equal(person.Role, text);

    private static bool Equal(string? one, string other) => string.Equals(one?.Trim(), other.Trim(), StringComparison.OrdinalIgnoreCase);

    private static Note SamePerson(InputReference input, string who) => Note.Of(NoteIds.SamePerson, (NoteArgument.At, $"{input.Address}/{input.Key}"), ("who", who));

    // "foreman" stands for the "paving foreman", and "shift manager M. Ferrand" for M. Ferrand: all words of the one are in the other.
    private static bool SharesWords(string? listed, string named)
    {
        string[] one = WordsOf(listed ?? string.Empty);
        string[] other = WordsOf(named);
        return one.Length > 0 && other.Length > 0
            && (one.All(word => other.Contains(word, StringComparer.OrdinalIgnoreCase)) || other.All(word => one.Contains(word, StringComparer.OrdinalIgnoreCase)));
    }

    private static string[] WordsOf(string text) => text.Split([' ', '-', '_', ',', ';', '(', ')'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
