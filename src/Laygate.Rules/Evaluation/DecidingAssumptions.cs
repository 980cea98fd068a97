using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Merging;
using Laygate.Rules.Remedies;
using Laygate.Rules.Results;

namespace Laygate.Rules.Evaluation;

/// <summary>
/// Names the assumptions that decide: where another value in the range of one that stands in for a plan input turns the
/// outcome of a finding, or moves a count in its working, the finding says which, from which value on, and what to state.
/// Outcome and status stay. What is simulated is left out; what is solved from the cooling mat is looked at only where its
/// spread says that something could turn it.
/// </summary>
internal sealed class DecidingAssumptions(RuleBook book, QuantityContext context, EvaluationSettings settings)
{
    private readonly Dictionary<(string Id, double Number), Variant> variants = [];

    /// <summary>The findings, with a note on each assumption that decides one which does not pass.</summary>
    public IReadOnlyList<Finding> Noted(IReadOnlyList<Finding> findings) => [.. findings.Select(finding =>
        IsAsked(finding) && Notes(finding) is { Count: > 0 } notes ? finding with { Notes = [.. finding.Notes, .. notes] } : finding)];

    private bool IsAsked(Finding finding) =>
        finding is { Status: Status.Warn or Status.Fail, Outcome: Outcome.Met or Outcome.Missed, Working: { } working }
        && working.Assumptions.Any(use => use.Key is not null)
        && !Variant.IsSimulated(finding)
        && (!IsSolved(working) || (!context.IsQuick && IsTurned(finding)));

    private static bool IsTurned(Finding finding) => finding.OnExpectedValuesOnly || finding.FavourableEndMeets;

    private static bool IsSolved(Working working) => working.Assumptions.Any(use => AssumptionIds.IsOfMaterial(use.Id));

    private List<Note> Notes(Finding finding)
    {
        var uses = finding.Working!.Assumptions.Where(use => use.Key is not null).GroupBy(use => use.Id, StringComparer.Ordinal).ToList();
        var notes = uses.Select(use => Alone(finding, [.. use])).OfType<Note>().ToList();
        return notes.Count > 0 || !IsTurned(finding) || uses.Count < 2 || IsSolved(finding.Working) ? notes : [Together(finding, [.. uses.SelectMany(use => use)])];
    }

    private Note? Alone(Finding finding, IReadOnlyList<AssumptionUse> uses)
    {
        var assumption = context.Assumptions[uses[0].Id];
        var turned = Ends(assumption).Select(end => (At: end, Effect: EffectOf(finding, assumption, end))).Where(end => end.Effect is not null).ToList();
        if (turned.Count == 0)
        {
            return null;
        }

        var (at, effect) = turned.Find(end => end.Effect!.Outcome is not null) is { Effect: not null } verdict ? verdict : turned[0];
        at = IsSolved(finding.Working!) ? at : Nearest(finding, assumption, at, effect!);
        return Worded(assumption, at, EffectOf(finding, assumption, at)!, uses);
    }

    // At a reach of zero the drum still covers the mat: who states it may state that, whatever is usual.
    private static IEnumerable<double> Ends(Assumption assumption) => new[] { assumption.Low, assumption.High }
        .Concat(AssumptionIds.IsReach(assumption.Id) ? [0d] : [])
        .Where(end => end != assumption.Number)
        .Distinct();

    /// <summary>The value nearest to the assumed one that still has the effect, to two digits.</summary>
    private double Nearest(Finding finding, Assumption assumption, double end, Effect effect)
    {
        var (without, with) = (assumption.Number, end);
        for (var step = 0; step < 12; step++)
        {
            var middle = (without + with) / 2;
            (without, with) = effect.IsIn(EffectOf(finding, assumption, middle)) ? (without, middle) : (middle, with);
        }

        var shown = RoundedTowards(end, with, Math.Abs(end - assumption.Number));
        return (end - shown) * (end - assumption.Number) >= 0 && effect.IsIn(EffectOf(finding, assumption, shown)) ? shown : end;
    }

    private static double RoundedTowards(double end, double value, double range)
    {
        var digit = Math.Pow(10, Math.Floor(Math.Log10(range)) - 1);
        var rounded = (end > value ? Math.Ceiling(value / digit) : Math.Floor(value / digit)) * digit;
        return Math.Round(rounded, 9);
    }

    /// <summary>What another value does to a finding; null when it changes neither outcome nor a count, or cannot be judged.</summary>
    private Effect? EffectOf(Finding finding, Assumption assumption, double number)
    {
        if (!variants.TryGetValue((assumption.Id, number), out var variant))
        {
            variant = new Variant(book, context.Assuming([assumption with { Number = number }]), settings with { Samples = null });
            variants[(assumption.Id, number)] = variant;
        }

        if (variant.Find(finding.Rule, finding.Address) is not { Outcome: Outcome.Met or Outcome.Missed } other)
        {
            return null;
        }

        Outcome? outcome = other.Outcome == finding.Outcome ? null : other.Outcome;
        var count = CountIn(finding, other);
        return outcome is null && count is null ? null : new Effect(outcome, count);
    }

    private MovedCount? CountIn(Finding finding, Finding other)
    {
        if (Moved(finding.Value?.Number, other.Value?.Number, finding.Value?.Unit) is { } value)
        {
            return value with { Quantity = finding.Quantity };
        }

        var before = finding.Working!;
        var after = other.Working ?? Working.None;
        return before.Inputs.Zip(after.Inputs)
            .Where(pair => (pair.First.Quantity, pair.First.Address) == (pair.Second.Quantity, pair.Second.Address))
            .Select(pair => Moved(pair.First.Number, pair.Second.Number, pair.First.Unit) is { } moved && context.Catalogue.Find(pair.First.Quantity) is not null ? moved with { Quantity = pair.First.Quantity } : null)
            .Concat(Steps(before, after))
            .FirstOrDefault(moved => moved is not null);
    }

    private IEnumerable<MovedCount?> Steps(Working before, Working after)
    {
        return before.Steps.Zip(after.Steps)
            .Where(pair => string.Equals(pair.First.Symbol, pair.Second.Symbol, StringComparison.Ordinal))
            .Select(pair => Moved(pair.First.Number, pair.Second.Number, pair.First.Unit) is { } moved && NameOf(pair.First) is { } name ? moved with { Quantity = name } : null);
    }

    private static MovedCount? Moved(double? from, double? to, string? unit) =>
        unit is "" && from is { } old && to is { } now && old != now && double.IsInteger(old) && double.IsInteger(now) ? new MovedCount(string.Empty, old, now) : null;

    // A step has a symbol only; the quantity that is found by the same formula has the name.
    private string? NameOf(WorkingStep step) => context.Catalogue.All
        .FirstOrDefault(definition => definition.Formula.Length > 0 && string.Equals(definition.Formula, step.Expression, StringComparison.Ordinal))?.Name;

    private static Note Worded(Assumption assumption, double at, Effect effect, IReadOnlyList<AssumptionUse> uses)
    {
        var id = (effect.Outcome, effect.Count) switch
        {
            (null, _) => FindingNotes.AssumptionMovesCount,
            (_, null) => FindingNotes.AssumptionDecides,
            _ => FindingNotes.AssumptionDecidesByCount,
        };
        List<NoteArgument> arguments =
        [
            new("assumption", assumption.Id),
            new("meaning", Inside(assumption.Meaning)),
            new("value", null, assumption.Number, assumption.Unit),
            new("at", null, at, assumption.Unit),
            new("side", at < assumption.Number ? "less" : "more"),
            new("keys", Keys(uses)),
        ];
        if (effect.Outcome is { } outcome)
        {
            arguments.Add(new("outcome", Words.Of(outcome)));
        }

        if (effect.Count is { } count)
        {
            arguments.AddRange([new("quantity", count.Quantity), new("from", null, count.From, string.Empty), new("to", null, count.To, string.Empty)]);
        }

        return new Note(id, arguments);
    }

    private Note Together(Finding finding, IReadOnlyList<AssumptionUse> uses) => Note.Of(
        FindingNotes.AssumptionsDecideTogether,
        ("assumptions", string.Join("; ", uses.Select(use => use.Id).Distinct(StringComparer.Ordinal).Select(id => Inside(context.Assumptions[id].Meaning)))),
        ("outcome", Words.Of(finding.Outcome == Outcome.Met ? Outcome.Missed : Outcome.Met)),
        ("keys", Keys(uses)));

    private static string Keys(IReadOnlyList<AssumptionUse> uses) =>
        string.Join(", ", uses.Select(use => use.Key!).Distinct().Select(input => $"{input.Address}/{input.Key}"));

    // As the beginning of a list or of a clause.
    private static string Inside(string sentence) => char.ToLowerInvariant(sentence[0]) + sentence[1..].TrimEnd('.');

    /// <summary>What another value of an assumption does.</summary>
    /// <param name="Outcome">The other outcome; null when it stays.</param>
    /// <param name="Count">A count that moves; null when none does.</param>
    private sealed record Effect(Outcome? Outcome, MovedCount? Count)
    {
        /// <summary>Whether another value turns the outcome as well or, where none is turned, moves a count.</summary>
        public bool IsIn(Effect? other) => other is not null && (Outcome is null || other.Outcome == Outcome);
    }

    /// <summary>A count that moves.</summary>
    /// <param name="Quantity">Name of the quantity that counts.</param>
    /// <param name="From">Count with the assumption.</param>
    /// <param name="To">Count with the other value.</param>
    private sealed record MovedCount(string Quantity, double From, double To);
}
