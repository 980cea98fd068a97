namespace Laygate.Register.Storage;

/// <summary>
/// The one change that contents allow: a row gives its salt and digest up for others together with its bytes, where an entry of the history says so. Before that a row of an
/// earlier version gets its salt and digest, once.
/// </summary>
internal static class ContentTriggers
{
    /// <summary>The tables of contents: what they are called in replacements, the column of the bytes, the columns that never change.</summary>
    public static IReadOnlyList<(string Table, string Kind, string[] Bytes, string[] Kept)> All { get; } =
    [
        ("texts", "Text", ["text"], ["number"]),
        ("files", "File", ["bytes"], ["number", "place", "name"]),
        ("archives", "Archive", ["bytes"], ["number"]),
        ("record_files", "Record", ["bytes"], ["number", "upload", "place", "name", "at", "by"]),
        ("reports", "Report", ["json", "hash"], ["number", "screening", "attempt", "book_hash", "program_version", "at", "readable", "failed", "warned", "not_assessed", "needs_person", "passed", "departed", "failed_a", "failed_b", "failed_c"]),
        ("pictures", "Pictures", ["bytes"], ["number", "screening"]),
        ("documents", "Document", ["bytes"], ["number", "screening", "name", "type", "policy"]),
    ];

    /// <summary>The condition under which an update is let through.</summary>
    /// <param name="same">How a database compares two values that may be missing.</param>
    /// <param name="table">One of <see cref="All"/>.</param>
    public static string Allowed(string same, (string Table, string Kind, string[] Bytes, string[] Kept) table)
    {
        string Same(IEnumerable<string> columns) => string.Join(" AND ", columns.Select(column => $"NEW.\"{column}\" {same} OLD.\"{column}\""));
        var isSealed = $"OLD.digest IS NULL AND NEW.salt IS NOT NULL AND NEW.digest IS NOT NULL AND {Same(table.Bytes)}";
        var replaced = $"OLD.digest IS NOT NULL AND NEW.salt IS NOT NULL AND NOT (NEW.salt {same} OLD.salt) AND NEW.digest IS NOT NULL AND EXISTS (SELECT 1 FROM replacements r "
            + $"WHERE r.number = NEW.number AND r.kind = '{table.Kind}' AND r.\"before\" = OLD.digest AND r.\"after\" = NEW.digest)";
        var content = $"(({isSealed}) OR ({replaced}))";
        return table.Table is not "record_files" ? $"{Same(table.Kept)} AND {content}"
            : $"{Same(table.Kept)} AND ((NEW.by_name {same} OLD.by_name AND {content}) OR (NEW.by_name {same} '(name replaced)' AND OLD.by_name <> NEW.by_name AND {Same([.. table.Bytes, "salt", "digest"])}))";
    }

    /// <summary>The condition under which an entry of the history takes the hash of its report as it stands, and nothing else of it changes.</summary>
    /// <param name="same">How a database compares two values that may be missing.</param>
    public static string HashAllowed(string same) =>
        string.Join(" AND ", new[] { "entry", "number", "at", "event", "by", "by_name", "comment", "screening", "on_own", "open_comments", "name_salt", "name_digest", "comment_salt", "comment_digest" }.Select(column => $"NEW.\"{column}\" {same} OLD.\"{column}\""))
        + $" AND OLD.report_hash IS NOT NULL AND NOT (NEW.report_hash {same} OLD.report_hash) AND EXISTS (SELECT 1 FROM reports r WHERE r.number = NEW.number AND r.screening = NEW.screening AND r.hash = NEW.report_hash)";
}
