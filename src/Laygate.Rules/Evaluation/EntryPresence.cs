using Laygate.Engineering.Quantities;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Evaluation;

/// <summary>
/// Holds the entries of a list against those that the bounds of a rule ask for. An entry counts with the keys that every entry needs;
/// one that counts is thin while a key is missing that is asked of its kind. Whether a key says something is judged, never what it says.
/// </summary>
internal static class EntryPresence
{
    /// <summary>
    /// Absent when an entry of the required bound is missing (of the advised one, where there is no required bound); thin when an asked key or
    /// an entry of the advised bound is missing; stated otherwise.
    /// </summary>
    public static PresenceValue Of(IReadOnlyList<ListEntry> entries, CheckedRule rule, InputReference? list)
    {
        var bounds = rule.Bounds.Where(bound => bound.Limit is CheckedPresence).ToList();
        var decisive = bounds.Exists(bound => bound.Definition.Strength == Strength.Required) ? Strength.Required : Strength.Advised;
        var found = bounds
            .SelectMany(bound => ((CheckedPresence)bound.Limit).Entries.Select(line => (bound.Definition.Strength, Line: line)))
            .GroupBy(pair => string.Join('|', pair.Line.AnyOf), StringComparer.Ordinal)
            .Select(same => (same.First().Strength, Found: Best(entries, same.Select(pair => pair.Line), rule.Quantity)))
            .ToList();
        var level = found.Exists(pair => pair.Strength == decisive && pair.Found.Level == PresenceLevel.Absent) ? PresenceLevel.Absent
            : found.Exists(pair => pair.Found.Level != PresenceLevel.Stated) ? PresenceLevel.Thin : PresenceLevel.Stated;
        var lacking = found.Where(pair => pair.Found.Level != PresenceLevel.Stated).Select(pair => pair.Found).ToList();
        return new PresenceValue(level, [])
        {
            MissingAt = [.. lacking.SelectMany(line => line.MissingAt(list)).Distinct()],
            Remarks = [.. lacking.Select(line => line.Remark(list))],
        };
    }

    // Of several entries of the kinds that will do, the fullest speaks.
    private static LineFound Best(IReadOnlyList<ListEntry> entries, IEnumerable<EntryLine> lines, QuantityDefinition quantity)
    {
        var all = lines.ToList();
        var asks = all.SelectMany(line => line.Asks).Distinct(StringComparer.Ordinal).ToList();
        LineFound? best = null;
        foreach (var entry in entries.Where(entry => all[0].AnyOf.Contains(entry.Kind, StringComparer.Ordinal)))
        {
            var needed = quantity.EntryNeeds.Except(entry.Given, StringComparer.Ordinal).ToList();
            var asked = asks.Except(entry.Given, StringComparer.Ordinal).ToList();
            var level = needed.Count > 0 ? PresenceLevel.Absent : asked.Count > 0 ? PresenceLevel.Thin : PresenceLevel.Stated;
            var found = new LineFound(all[0].AnyOf, level, entry, [.. needed, .. asked]);
            best = best is null || Better(found, best) ? found : best;
        }

        return best ?? new LineFound(all[0].AnyOf, PresenceLevel.Absent, null, [.. quantity.EntryNeeds, .. asks]);
    }

    private static bool Better(LineFound one, LineFound other) =>
        one.Level != other.Level ? Rank(one.Level) > Rank(other.Level) : one.Fields.Count < other.Fields.Count;

    private static int Rank(PresenceLevel level) => level switch
    {
        PresenceLevel.Stated => 2,
        PresenceLevel.Thin => 1,
        _ => 0,
    };

    private sealed record LineFound(IReadOnlyList<string> Kinds, PresenceLevel Level, ListEntry? Entry, IReadOnlyList<string> Fields)
    {
        public IEnumerable<InputReference> MissingAt(InputReference? list) => Entry is { } entry
            ? Fields.Select(field => new InputReference(entry.Address, field))
            : list is null ? [] : [list];

        public Note Remark(InputReference? list) => Entry is { } entry
            ? Note.Of(NoteIds.EntryThin, ("kind", entry.Kind), ("entry", entry.Address), ("fields", string.Join(", ", Fields)), ("who", entry.Who ?? "nobody"))
            : Note.Of(NoteIds.EntryMissing, ("list", list?.Key ?? string.Empty), ("kind", string.Join("` or `", Kinds)), ("fields", string.Join(", ", Fields)));
    }
}
