using System.Collections.Frozen;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Whether those who are to do, decide and sign something are somebody, and sign in an order in which it means something.</summary>
internal static class NamesAndSignatures
{
    private static readonly Define Plan = new(ElementKind.Plan);
    private static readonly Define HoldPoint = new(ElementKind.HoldPoint);

    /// <summary>Words that hold a place for a name.</summary>
    private static readonly FrozenSet<string> Placeholders = FrozenSet.Create(
        StringComparer.OrdinalIgnoreCase,
        "tbd", "t.b.d.", "tba", "t.b.a.", "tbc", "t.b.c.", "to be confirmed", "to be decided", "to be determined", "to be named", "to be announced",
        "n.n.", "nn", "n. n.", "n/a", "unknown", "nobody", "no one", "somebody", "someone", "anybody", "anyone", "whoever", "?", "??", "???", "-", "--", "...", "xxx", "name");

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Plan.Flag("names_given", "Whether everybody who is to do, decide or release something is more than a word that holds a place for a name.", NamesGiven),
        Plan.Flag("signed", "Whether the plan states on which day it was prepared, checked or approved.", (c, _) => Answers.Follows(
            new[] { c.Plan.Identity.Prepared, c.Plan.Identity.Checked, c.Plan.Identity.Approved }.Any(one => one?.Date is not null), new InputReference("plan", "plan.prepared.date"))),
        Plan.Flag("signed_in_order", "Whether the plan is prepared, checked and approved in this order and before the day of the shift, not before the date of the revision that it approves, and neither checker nor approver is the preparer.", SignedInOrder),
        HoldPoint.Flag("owner_can_be_listed", "Whether the hold point names an owner; not known against what where the plan lists nobody.", (c, e) =>
            !Answers.Given((e.Subject as HoldPoint)?.Owner) ? Answers.Follows(flag: false, new InputReference(e.Address, "owner"))
            : c.Plan.Identity.People.Count == 0 ? Answer.Missing(new InputReference("plan", "plan.people"))
            : Answers.Follows(flag: true, new InputReference(e.Address, "owner"))),
        HoldPoint.Flag("owner_listed", "Whether the owner is among the people of the plan or those who sign it: by id, name or role.", (c, e) =>
            PeopleOfThePlan.Listed(c, (e.Subject as HoldPoint)?.Owner, new InputReference(e.Address, "owner"))),
    ];

    private static Answer NamesGiven(QuantityContext context, Element element)
    {
        var named = Named(context.Plan).Where(one => Answers.Given(one.Text)).ToList();
        return named.Count == 0 ? Answer.Missing(new InputReference("plan", "plan.people"))
            : named.Find(one => Placeholders.Contains(one.Text!.Trim())) is { Input: { } input } ? Answers.Follows(flag: false, input)
            : Answers.Follows(flag: true);
    }

    private static IEnumerable<(string? Text, InputReference Input)> Named(Plan plan) =>
    [
        .. plan.Identity.People.Select(one => (one.Name, new InputReference("plan", $"plan.people.{one.Id}.name"))),
        .. plan.Identity.People.Select(one => (one.Call, new InputReference("plan", $"plan.people.{one.Id}.call"))),
        .. plan.Identity.People.Select(one => (one.Deputy, new InputReference("plan", $"plan.people.{one.Id}.deputy"))),
        .. new[] { ("prepared", plan.Identity.Prepared), ("checked", plan.Identity.Checked), ("approved", plan.Identity.Approved) }
            .Select(one => (one.Item2?.Name, new InputReference("plan", $"plan.{one.Item1}.name"))),
        .. plan.Opening is { } opening ? [(opening.ReleasedBy, new InputReference("opening", "released_by"))] : Array.Empty<(string?, InputReference)>(),
        .. plan.Tests.Select(one => (one.By, new InputReference($"test:{one.Id}", "by"))),
        .. plan.HoldPoints.Select(one => (one.Owner, new InputReference($"hold-point:{one.Id}", "owner"))),
        .. plan.HoldPoints.Select(one => (one.ReleasedBy, new InputReference($"hold-point:{one.Id}", "released_by"))),
        .. plan.Contingencies.Select(one => (one.DecidedBy, new InputReference($"contingency:{one.Id}", "decided_by"))),
        .. plan.Measures.Select(one => (one.Who, new InputReference($"measure:{one.Id}", "who"))),
    ];

    private static Answer SignedInOrder(QuantityContext context, Element element)
    {
        var identity = context.Plan.Identity;
        var shift = context.Plan.Shift?.Date;
        if (identity is { Date: { } revision, Approved.Date: { } approval } && approval < revision)
        {
            return Answers.Follows(flag: false, new InputReference("plan", "plan.approved.date"));
        }

        (string Key, DateOnly? Date)[] order =
        [
            ("plan.prepared.date", identity.Prepared?.Date), ("plan.checked.date", identity.Checked?.Date), ("plan.approved.date", identity.Approved?.Date),
        ];
        var dated = order.Where(one => one.Date is not null).ToList();
        if (dated.Count == 0 || shift is null)
        {
            return Answer.Missing(dated.Count == 0 ? new InputReference("plan", "plan.prepared.date") : new InputReference("shift", "date"));
        }

        for (var i = 0; i < dated.Count; i++)
        {
            if (dated[i].Date > shift || (i > 0 && dated[i].Date < dated[i - 1].Date))
            {
                return Answers.Follows(flag: false, new InputReference("plan", dated[i].Key));
            }
        }

        if (SamePerson(identity.Checked, identity.Prepared))
        {
            return Answers.Follows(flag: false, new InputReference("plan", "plan.checked.name"));
        }

        return SamePerson(identity.Approved, identity.Prepared)
            ? Answers.Follows(flag: false, new InputReference("plan", "plan.approved.name"))
            : Answers.Follows(flag: true, new InputReference("plan", dated[^1].Key));
    }

    private static bool SamePerson(Signature? one, Signature? other) =>
        Answers.Given(one?.Name) && string.Equals(one!.Name!.Trim(), other?.Name?.Trim(), StringComparison.OrdinalIgnoreCase);
}
