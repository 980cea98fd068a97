namespace Laygate.Register.Storage;

/// <summary>
/// The one change that append-only rows allow: a name or a text gives way to a fixed word, together with its salt, once, and nothing else of the row changes. Before that a row
/// of an earlier version gets its salts and digests, once.
/// </summary>
internal static class ReplaceTriggers
{
    /// <summary>The condition under which an update is refused.</summary>
    /// <param name="same">How a database compares two values that may be missing.</param>
    /// <param name="kept">Columns that never change.</param>
    /// <param name="parts">Value, the part of its name that its salt and digest share, and the word that replaces it.</param>
    public static string Refused(string same, string[] kept, params (string Value, string Part, string Word)[] parts)
    {
        var rest = string.Join(" AND ", kept.Select(column => $"NEW.{column} {same} OLD.{column}"));
        var each = string.Join(" AND ", parts.Select(part => Part(same, part)));
        var some = string.Join(" OR ", parts.Select(part => $"NOT (NEW.{part.Part}_salt {same} OLD.{part.Part}_salt)"));
        return $"NOT ({rest} AND {each} AND ({some}))";
    }

    private static string Part(string same, (string Value, string Part, string Word) part)
    {
        var (value, salt, digest) = (part.Value, part.Part + "_salt", part.Part + "_digest");
        var untouched = $"NEW.{value} {same} OLD.{value} AND NEW.{salt} {same} OLD.{salt} AND NEW.{digest} {same} OLD.{digest}";

        // Comparisons that know missing values: an unknown condition would let the change pass.
        var isSealed = $"OLD.{digest} IS NULL AND NEW.{value} {same} OLD.{value} AND NEW.{value} IS NOT NULL AND NEW.{salt} IS NOT NULL AND NEW.{digest} IS NOT NULL";
        var replaced = $"OLD.{salt} IS NOT NULL AND NEW.{salt} IS NULL AND NEW.{digest} {same} OLD.{digest} AND NEW.{value} {same} '{part.Word}'";
        return $"(({untouched}) OR ({isSealed}) OR ({replaced}))";
    }
}
