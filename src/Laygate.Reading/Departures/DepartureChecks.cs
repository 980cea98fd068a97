using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Reading.Measures;
using Laygate.Reading.Plans;
using Laygate.Reading.RuleFiles;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;

namespace Laygate.Reading.Departures;

/// <summary>What a single departure and all of them together must be, given the rule book.</summary>
internal sealed class DepartureChecks(RuleBook book)
{
    private readonly Dictionary<string, MergedRule> rules = book.All.ToDictionary(merged => merged.Rule.Definition.Id, StringComparer.Ordinal);
    private readonly HashSet<string> ids = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Rule, string Address), List<string?>> places = [];

    /// <summary>Checks id, rule, place and days.</summary>
    /// <returns>The rule, or null when it cannot be departed from.</returns>
    public CheckedRule? Check(MapToken map, DateOnly? approved, DateOnly? expires, List<ReadingProblem> problems)
    {
        if (!ids.Add(map.Needed("id")))
        {
            Add(map, "id", $"There is another departure `{map.Needed("id")}`.", "An id is never used twice.", problems);
        }

        CheckPlace(map, problems);
        if (approved > expires)
        {
            Add(map, "expires_on", "The departure ends before it is permitted.", "Check `approved_on` and `expires_on`.", problems);
        }

        foreach (var key in new[] { "reason", "compensating_measure", "asked_by", "approved_by", "accepted", "reference" }.Where(key => Blanks.IsBlank(map.Text(key))))
        {
            Add(map, key, $"`{key}` is still a blank.", "Fill it in.", problems);
        }

        return Rule(map, problems);
    }

    /// <summary>Reads the value that is accepted.</summary>
    public static AcceptedValue? Accepted(MapToken map, CheckedRule rule, List<ReadingProblem> problems, string key = "accepted")
    {
        if (map.Text(key) is not { } text)
        {
            return null;
        }

        var (accepted, message, hint) = Accepted(text, rule);
        if (accepted is null)
        {
            Add(map, key, message, hint, problems);
        }

        return accepted;
    }

    // One departure per rule and place; one that names no plan speaks for all plans.
    private void CheckPlace(MapToken map, List<ReadingProblem> problems)
    {
        var key = (map.Needed("rule"), map.Needed("address"));
        var plan = map.Text("plan");
        if (!places.TryGetValue(key, out var plans))
        {
            places[key] = plans = [];
        }

        if (plans.Exists(other => other is null || plan is null || string.Equals(other, plan, StringComparison.Ordinal)))
        {
            Add(map, "address", $"There is another departure from `{key.Item1}` at `{key.Item2}`.", "Keep one; the earlier ones stay in the history of the file.", problems);
        }

        plans.Add(plan);
    }

    private CheckedRule? Rule(MapToken map, List<ReadingProblem> problems)
    {
        var id = map.Needed("rule");
        if (!rules.TryGetValue(id, out var merged))
        {
            var near = NearestNames.Of(id, rules.Keys);
            Add(map, "rule", $"There is no rule `{id}` in this rule book.", near.Count > 0 ? $"Did you mean `{near[0]}`?" : "`laygate rules` lists them.", problems);
            return null;
        }

        if (merged.Rule.Definition.Life.State == LifeState.Gone)
        {
            Add(map, "rule", $"The rule `{id}` has been removed.", "Name its successor, or remove the departure.", problems);
            return null;
        }

        if (!merged.Rule.Definition.LifeCritical)
        {
            return merged.Rule;
        }

        Add(map, "rule", $"`{id}` guards lives (severity A): nobody can permit a departure from it.", "Change the plan.", problems);
        return null;
    }

    private static (AcceptedValue? Value, string Message, string? Hint) Accepted(string text, CheckedRule rule)
    {
        var quantity = rule.Quantity;
        switch (quantity.Kind)
        {
            case ValueKind.Number when quantity.Dimension == Dimension.None:
                return MeasureReader.ReadNumber(text, out var wrong) is { } number ? (new AcceptedValue(text, number, null), string.Empty, null) : (null, wrong!.Message, wrong.Hint);
            case ValueKind.Number:
                return MeasureReader.Read(text, quantity.Dimension, out var problem) is var (amount, unit)
                    ? (new AcceptedValue(text, unit.ToSi(amount), null), string.Empty, null) : (null, problem!.Message, problem.Hint);
            case ValueKind.Moment:
                return ScalarTexts.Moment(text) is { } moment
                    ? (new AcceptedValue(text, null, moment), string.Empty, null) : (null, $"{TokenNames.Quote(text)} is no moment.", "Write it as `2027-06-30T05:00`.");
            case ValueKind.Presence:
                return (null, "A rule about something that is stated has no value to accept.", "Remove `accepted`.");
            case ValueKind.Flag when text is not ("yes" or "no"):
                return (null, $"{TokenNames.Quote(text)} is neither yes nor no.", "Write `yes` or `no`.");
            case ValueKind.Category when quantity.Words.Count > 0 && !quantity.Words.Contains(text, StringComparer.Ordinal):
                return (null, $"{TokenNames.Quote(text)} is no word of `{quantity.Name}`.", $"Known are {string.Join(", ", quantity.Words)}.");
            default:
                return (new AcceptedValue(text, null, null), string.Empty, null);
        }
    }

    private static void Add(MapToken map, string key, string message, string? hint, List<ReadingProblem> problems) =>
        problems.Add(new ReadingProblem(message, map[key]?.Span ?? TokenNames.Head(map).Span, hint));
}
