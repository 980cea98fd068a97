using Laygate.Engineering.Quantities;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Merging;

/// <summary>Lays specifications over the rules, one after the other: bring in, set, move, confirm, take out.</summary>
internal sealed class Overlay(
    SortedDictionary<string, Entry> entries, HashSet<string> known, RuleChecker checker, BookProblems problems)
{
    private readonly Dictionary<(Layer Layer, string Rule), string> changedBy = [];

    /// <summary>Lays one specification over the rules.</summary>
    public void Apply(Specification specification)
    {
        var root = new BookPlace(specification.Name, null, string.Empty);
        CheckClauses(specification, root);
        ForEach(specification.BringIn, id => id, root, "bring_in", specification, (entry, _, place) => Select(entry, place));
        ForEach(specification.Set, set => set.Rule, root, "set", specification, (entry, set, place) => Set(entry, set, place, specification));
        ForEach(specification.Move, move => move.Rule, root, "move", specification, (entry, move, place) => Move(entry, move, place, specification));
        ForEach(specification.Confirm, confirm => confirm.Rule, root, "confirm", specification, (entry, confirm, place) => Confirm(entry, confirm, place));
        ForEach(specification.TakeOut, taken => taken.Rule, root, "take_out", specification, (entry, taken, place) => TakeOut(entry, taken, place, specification));
    }

    private void CheckClauses(Specification specification, BookPlace root)
    {
        for (var clause = 0; clause < specification.Clauses.Count; clause++)
        {
            for (var rule = 0; rule < specification.Clauses[clause].Rules.Count; rule++)
            {
                _ = Find(specification.Clauses[clause].Rules[rule], root.In("clauses", clause).In("rules", rule));
            }
        }
    }

    private void ForEach<T>(
        IReadOnlyList<T> list, Func<T, string> ruleOf, BookPlace root, string step, Specification specification, Action<Entry, T, BookPlace> apply)
    {
        var seen = new HashSet<string>(list.Count, StringComparer.Ordinal);
        for (var index = 0; index < list.Count; index++)
        {
            var rule = ruleOf(list[index]);
            var place = root.In(step, index);
            if (!seen.Add(rule) && step is not "confirm")
            {
                Dead(place, rule, NoEffect.Contradiction);
            }
            else if (Find(rule, step is "bring_in" ? place : place.In("rule")) is { } entry && Claim(rule, step, place, specification))
            {
                apply(entry, list[index], place);
            }
        }
    }

    private Entry? Find(string rule, BookPlace place)
    {
        if (!known.Contains(rule))
        {
            problems.Add(place, new BookMistake.UnknownRule(rule, [.. known.Order(StringComparer.Ordinal)]));
            return null;
        }

        var entry = entries.GetValueOrDefault(rule); // Null for a rule that is itself mistaken, which is reported already.
        if (entry?.Definition.Life.State != LifeState.Gone)
        {
            return entry;
        }

        problems.Add(place, new BookMistake.RemovedRule(rule));
        return null;
    }

    // Two specifications of one layer may bring in or confirm the same rule, but never give it two limits.
    private bool Claim(string rule, string step, BookPlace place, Specification specification)
    {
        if (step is "bring_in" or "confirm" || changedBy.TryAdd((specification.Layer, rule), specification.Name))
        {
            return true;
        }

        var first = changedBy[(specification.Layer, rule)];
        if (string.Equals(first, specification.Name, StringComparison.Ordinal))
        {
            return true;
        }

        problems.Add(place, new BookMistake.TwoSpecificationsDiffer(rule, first, specification.Name));
        return false;
    }

    private void Select(Entry entry, BookPlace place)
    {
        if (entry.InForce)
        {
            // What another specification has brought in may be brought in again: either must work without the other.
            if (!entry.Definition.OnDemand)
            {
                Dead(place, entry.Definition.Id, NoEffect.InForce);
            }

            return;
        }

        if (entry.Bounds.Count == 0)
        {
            Dead(place, entry.Definition.Id, NoEffect.NoSuchBound);
            return;
        }

        entry.InForce = true;
        entry.Chosen = true;
        entry.TakenOut = null;
        entry.TakenOutBy = null;
    }

    private void Set(Entry entry, LimitOverride set, BookPlace place, Specification specification)
    {
        var before = problems.Count;
        var bounds = checker.Bounds(set.Bounds, entry.Definition, entry.Quantity, specification.Layer, specification.Name, place);
        if (set.Bounds.Count == 0)
        {
            Dead(place, entry.Definition.Id, NoEffect.NoSuchBound);
        }

        if (problems.Count > before)
        {
            return;
        }

        if (entry.InForce && CanonicalText.Of(bounds).Equals(CanonicalText.Of(entry.Bounds), StringComparison.Ordinal))
        {
            Dead(place, entry.Definition.Id, NoEffect.SameBounds);
        }
        else if (LifeCritical(entry, specification) && Weakening.Of(entry.Bounds, bounds, entry.Quantity.Dimension) is { } how)
        {
            problems.Add(place, new BookMistake.LifeCriticalWeakened(entry.Definition.Id, how));
        }

        entry.Bounds = bounds;
        entry.InForce = true;
        entry.Chosen = true;
        entry.TakenOut = null;
        entry.TakenOutBy = null;
    }

    private void Move(Entry entry, BoundMove move, BookPlace place, Specification specification)
    {
        var moved = entry.Bounds.FirstOrDefault(bound => bound.Definition.Strength == move.From);
        if (moved is null || move.From == move.To)
        {
            Dead(place, entry.Definition.Id, NoEffect.NoSuchBound);
        }
        else if (entry.Bounds.Any(bound => bound.Definition.Strength == move.To))
        {
            problems.Add(place.In("to"), new BookMistake.TwoBoundsOfOneStrength(move.To));
        }
        else if (move.To == Strength.Advised && LifeCritical(entry, specification))
        {
            problems.Add(place, new BookMistake.LifeCriticalWeakened(entry.Definition.Id, WeakerBy.Advised));
        }
        else if (move.To == Strength.Required && moved.Definition.Basis is Basis.Recommendation or Basis.Judgement)
        {
            Raise(entry, moved, specification);
        }
        else
        {
            Replace(entry, moved, moved with { Definition = moved.Definition with { Strength = move.To } });
        }
    }

    // A specification that makes a recommendation binding requires it: the requirement is its own, the figure is the source's.
    private static void Raise(Entry entry, CheckedBound moved, Specification specification) =>
        Replace(entry, moved, moved with
        {
            Definition = moved.Definition with { Strength = Strength.Required, Basis = Basis.Requirement },
            Layer = specification.Layer,
            SetBy = specification.Name,
        });

    private static void Replace(Entry entry, CheckedBound old, CheckedBound now) =>
        entry.Bounds = [.. entry.Bounds.Select(bound => ReferenceEquals(bound, old) ? now : bound).OrderBy(bound => bound.Definition.Strength)];

    private void Confirm(Entry entry, LimitConfirmation confirm, BookPlace place)
    {
        var bound = entry.Bounds.FirstOrDefault(candidate => candidate.Definition.Strength == confirm.Strength);
        if (bound is null)
        {
            Dead(place, entry.Definition.Id, NoEffect.NoSuchBound);
        }
        else
        {
            Confirm(entry, bound, confirm, place);
        }
    }

    // Row 0 is never there: a key that no row has.
    private void Confirm(Entry entry, CheckedBound bound, LimitConfirmation confirm, BookPlace place)
    {
        var row = confirm.RowKey is { } key ? LimitTexts.RowOf(bound.Definition.Limit, key) ?? 0 : confirm.Row;
        var rows = (bound.Limit as CheckedTable)?.Rows.Count ?? 0;
        if (row is { } number && (number < 1 || number > rows))
        {
            problems.Add(
                place.In("row"), new BookMistake.UnknownRow(confirm.RowKey ?? FormattableString.Invariant($"{row}"), rows));
        }
        else if (Confirmations.SourcesOf(bound, row).All(source => Unpublished(source.Evidence)))
        {
            problems.Add(place, new BookMistake.NothingToLookUp(entry.Definition.Id, Confirmations.SourcesOf(bound, row).First().Evidence));
        }
        else if (confirm.Limit is { } seen && LimitTexts.Of(bound.Definition, row) is { } now && !string.Equals(seen, now, StringComparison.Ordinal))
        {
            problems.Add(place.In("limit"), new BookMistake.ConfirmedLimitChanged(entry.Definition.Id, seen, now));
        }
        else
        {
            Replace(entry, bound, Confirmations.Confirm(bound, confirm with { Row = row }));
        }
    }

    // What another overlay has confirmed already stood on a page.
    private static bool Unpublished(Evidence evidence) => evidence != Evidence.Confirmed && !Confirmations.CanBeLookedUp(evidence);

    private void TakeOut(Entry entry, TakenOut taken, BookPlace place, Specification specification)
    {
        if (!entry.InForce)
        {
            Dead(place, entry.Definition.Id, NoEffect.OutOfForce);
        }
        else if (specification.Set.Any(set => string.Equals(set.Rule, taken.Rule, StringComparison.Ordinal))
            || specification.BringIn.Contains(taken.Rule, StringComparer.Ordinal))
        {
            Dead(place, entry.Definition.Id, NoEffect.Contradiction);
        }
        else if (LifeCritical(entry, specification))
        {
            problems.Add(place, new BookMistake.LifeCriticalWeakened(entry.Definition.Id, WeakerBy.TakenOut));
        }

        entry.InForce = false;
        entry.TakenOut = taken;
        entry.TakenOutBy = specification.Name;
    }

    // Life-critical in the countries its source speaks for; a specification that names no place is taken to work in all of them.
    private static bool LifeCritical(Entry entry, Specification specification) =>
        entry.Definition.LifeCritical
        && (entry.Definition.Jurisdictions.Count == 0
            || string.Equals(specification.Jurisdiction, "none", StringComparison.Ordinal)
            || entry.Definition.Jurisdictions.Any(place => Jurisdiction.Overlap(place, specification.Jurisdiction)));

    private void Dead(BookPlace place, string rule, NoEffect why) => problems.Add(place, new BookMistake.DeadOverride(rule, why));
}
