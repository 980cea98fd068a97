using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Answers that the plan states itself.</summary>
internal static class Answers
{
    /// <summary>A stated measure.</summary>
    public static Answer Measure(IMeasure? measure, InputReference input, Place? place = null) => measure is null
        ? Answer.Missing(input)
        : new() { Value = new NumberValue(measure.Si), Unit = measure.Unit, Input = input, Place = place };

    /// <summary>A stated count.</summary>
    public static Answer Count(int? count, InputReference input) => count is null
        ? Answer.Missing(input)
        : new() { Value = new NumberValue(count.Value), Input = input };

    /// <summary>A stated word.</summary>
    public static Answer Word(string? word, InputReference input) => word is null
        ? Answer.Missing(input)
        : new() { Value = new CategoryValue(word), Input = input };

    /// <summary>A stated yes or no.</summary>
    public static Answer Flag(bool? flag, InputReference input) => flag is null
        ? Answer.Missing(input)
        : new() { Value = new FlagValue(flag.Value), Input = input };

    /// <summary>A yes or no that follows from what is stated.</summary>
    public static Answer Follows(bool flag, InputReference? input = null) =>
        new() { Value = new FlagValue(flag), Origin = Origin.Computed, Input = input };

    /// <summary>A word that follows from what is stated.</summary>
    public static Answer Follows(string word, InputReference? input = null) =>
        new() { Value = new CategoryValue(word), Origin = Origin.Computed, Input = input };

    /// <summary>A moment.</summary>
    public static Answer At(DateTimeOffset at, InputReference input, Origin origin = Origin.Stated) =>
        new() { Value = new MomentValue(at), Origin = origin, Input = input };

    /// <summary>Presence of something with fields: stated with all of them, thin with some, absent with none.</summary>
    public static Answer Fields(InputReference input, params (string Key, bool Given)[] fields)
    {
        string[] missing = [.. fields.Where(field => !field.Given).Select(field => field.Key)];
        var level = missing.Length == 0 ? PresenceLevel.Stated
            : missing.Length == fields.Length ? PresenceLevel.Absent : PresenceLevel.Thin;
        return new() { Value = new PresenceValue(level, missing), Input = input };
    }

    /// <summary>The fullest entry of a list; absent, with a remark on the entry that is asked for, where the list has none.</summary>
    /// <param name="presences">Entries of the list that count.</param>
    /// <param name="input">The list.</param>
    /// <param name="kind">Kind of the entry that is asked for.</param>
    /// <param name="fields">Keys that the entry needs.</param>
    public static Answer Fullest(IEnumerable<Answer> presences, InputReference input, string kind, params string[] fields)
    {
        Answer? best = null;
        foreach (var presence in presences)
        {
            best = best is null || Level(presence) > Level(best) ? presence : best;
        }

        return best ?? new()
        {
            Value = new PresenceValue(PresenceLevel.Absent, []),
            Input = input,
            Note = Note.Of(NoteIds.EntryMissing, ("list", input.Key), ("kind", kind), ("fields", string.Join(", ", fields))),
        };
    }

    /// <summary>The least complete entry of a list; some entries with all fields and one with none make the list thin.</summary>
    /// <param name="presences">Entries of the list; at least one.</param>
    public static Answer Weakest(IReadOnlyList<Answer> presences)
    {
        var worst = presences.MinBy(Level)!;
        var found = (PresenceValue)worst.Value!;
        return found.Level == PresenceLevel.Absent && presences.Any(one => Level(one) > PresenceLevel.Absent)
            ? worst with { Value = found with { Level = PresenceLevel.Thin } }
            : worst;
    }

    /// <summary>Whether a text says anything.</summary>
    public static bool Given(string? text) => !string.IsNullOrWhiteSpace(text);

    private static PresenceLevel Level(Answer answer) => ((PresenceValue)answer.Value!).Level;
}
