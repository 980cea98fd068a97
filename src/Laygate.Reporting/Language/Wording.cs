using Laygate.Model.Plans;
using Laygate.Reporting.Text;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>The sentence that sets value against limit: one per kind of check, none per rule.</summary>
public static class Wording
{
    /// <summary>
    /// What stands over a finding: its title, which names what is wrong, only where that is known; otherwise what is not known. A finding never
    /// asserts what the plan does not state.
    /// </summary>
    public static string Title(Finding finding) => finding.Outcome is not (Outcome.NotAssessed or Outcome.Open or Outcome.NeedsPerson) ? PlainText.Show(finding.Title)
        : (Asked(finding) ?? (finding.Asks is { } asks ? PlainText.Show(asks) : null)) is { } clause ? $"Not known whether {clause}"
        : $"Not known whether this is so: {PlainText.Show(finding.Title)}";

    /// <summary>What a finding says, title first, on one line.</summary>
    public static string Message(Finding finding) => $"{Title(finding)}: {Sentence(finding)}";

    /// <summary>What a finding says, without its title.</summary>
    public static string Sentence(Finding finding) => Glued(finding).Replace(PlainText.Glue, ' ');

    /// <summary>The same sentence with numbers glued to their units.</summary>
    public static string Glued(Finding finding) => finding.Outcome switch
    {
        Outcome.Met or Outcome.Missed => Judged(finding),
        Outcome.NotApplicable => "Does not apply here.",
        Outcome.NeedsPerson => "Cannot be decided by computation: a competent person must look.",
        Outcome.Open when finding.Notes.Any(NoteWords.Asks) => "Open: the plan does not say whether it applies.",
        Outcome.Open => "Not yet due at this stage of the plan.",
        _ when finding.Missing.Count == 0 => "Not assessed.",
        _ when finding.Status == Status.Fail => "Missing. At this stage it must be stated.",
        _ => "Not assessed: the plan does not say enough.",
    };

    /// <summary>A limit in words, for example "at least 3" or "between 140 °C and 190 °C".</summary>
    internal static string LimitText(ShownLimit limit, Figures figures)
    {
        var text = (limit.Low, limit.High) switch
        {
            ({ } low, { } high) => $"between {figures.End(low, limit)} and {figures.End(high, limit)}",
            ({ Number: null } low, null) => OneOf(figures.End(low, limit)),
            ({ } low, null) => $"{(limit.LowExclusive ? "more than" : "at least")} {figures.End(low, limit)}",
            (null, { } high) => $"{(limit.HighExclusive ? "less than" : "at most")} {figures.End(high, limit)}",
            _ => "a statement",
        };
        return text + PlaceText((limit.Low ?? limit.High)?.Place) + Origin(limit);
    }

    // The meaning of a condition is a sentence of its own; within another it begins small and ends without its point.
    private static string? Asked(Finding finding) =>
        finding.Notes.FirstOrDefault(note => string.Equals(note.Id, FindingNotes.SayWhether, StringComparison.Ordinal))?.Arguments
            .FirstOrDefault(argument => string.Equals(argument.Name, "meaning", StringComparison.Ordinal))?.Text is { Length: > 1 } meaning
            ? PlainText.Show(Clause(meaning))
            : null;

    private static string Clause(string meaning)
    {
        var text = meaning.StartsWith("Whether ", StringComparison.Ordinal) ? meaning[8..] : meaning;
        return char.ToLowerInvariant(text[0]) + text[1..].TrimEnd('.');
    }

    private static string Judged(Finding finding) => finding.Check switch
    {
        CheckKind.Present => Presence(finding),
        CheckKind.NotBefore => Moments(finding),
        CheckKind.Agrees => Agreement(finding),
        _ => Comparison(finding),
    };

    private static string Comparison(Finding finding)
    {
        var figures = Figures.Of(finding);
        var value = $"{Names.Capital(Names.OfQuantity(finding.Quantity))}: {figures.Value() ?? "no value"}{PlaceText(finding.Value?.Place)}";
        if (finding.Limit is not { } limit)
        {
            return value + ".";
        }

        var missed = finding.Outcome == Outcome.Missed;
        return $"{value}{(missed ? ", but" : ";")} {LimitText(limit, figures)} is {Names.Of(limit.Strength, limit.Basis)}.{Ends(finding)}";
    }

    private static string Agreement(Finding finding)
    {
        var figures = Figures.Of(finding);
        var value = $"{Names.Capital(Names.OfQuantity(finding.Quantity))}: {figures.Value() ?? "no value"}";
        return (finding.Limit, finding.Outcome) switch
        {
            (null, _) => value + ".",
            ({ } limit, Outcome.Missed) => $"{value}, where {LimitText(limit, figures)} is {Names.Of(limit.Strength, limit.Basis)}.",
            ({ } limit, _) => $"{value}, as is {Names.Of(limit.Strength, limit.Basis)}.",
        };
    }

    private static string Ends(Finding finding) => finding switch
    {
        { Outcome: Outcome.Met, OnExpectedValuesOnly: true } => " Just meets it; in the worse case it does not.",
        { Outcome: Outcome.Missed, FavourableEndMeets: true } => " In the better case it would pass.",
        _ => string.Empty,
    };

    private static string Moments(Finding finding)
    {
        var figures = Figures.Of(finding);
        var value = $"{Names.Capital(Names.OfQuantity(finding.Quantity))}: {Moment(figures.Value() ?? "no value")}";
        if (finding.Limit is not { Low: { } low } limit)
        {
            return value + ".";
        }

        var missed = finding.Outcome == Outcome.Missed;
        return $"{value}{(missed ? ", but" : ";")} not before {Moment(figures.End(low, limit))}{Origin(limit)} is {Names.Of(limit.Strength, limit.Basis)}.";
    }

    // Presence is never judged adequate, whatever the status.
    private static string Presence(Finding finding)
    {
        if (finding.Outcome == Outcome.Met)
        {
            return "Stated (not judged adequate).";
        }

        var asked = finding.Limit is { } limit ? Names.Of(limit.Strength, limit.Basis) : "asked for";
        return finding.Value?.Text switch
        {
            null or "absent" when finding.Notes.Any(note => string.Equals(note.Id, "entry-thin", StringComparison.Ordinal)) => $"Begun, but it does not say enough to count; the statement is {asked}.",
            null or "absent" => $"Not stated, but {asked}.",
            "thin" => $"Stated only in part; the whole statement is {asked}.",
            "no" => $"The plan says no; this is {asked}.",
            var text => $"{Names.Capital(PlainText.Show(text))}, but a full statement is {asked}.",
        };
    }

    private static string PlaceText(Place? place) => place is { } known ? " " + Names.Of(known) : string.Empty;

    private static string Origin(ShownLimit limit)
    {
        // A limit that is a quantity of the plan is shown once, rounded; its own full digits would pretend to know more.
        if (limit.Quantity is { } name)
        {
            var factor = limit.Factor is null or 1 ? string.Empty : $"{Rounding.Plain(limit.Factor.Value)}{PlainText.Glue}×{PlainText.Glue}";
            return $" ({factor}{Names.OfQuantity(name)})";
        }

        return limit.Stated is { Length: > 0 } text ? $" ({PlainText.Show(text).Replace(' ', PlainText.Glue)} in the source)" : string.Empty;
    }

    // A moment comes as 2031-05-14T21:15+02:00; people read it with blanks.
    private static string Moment(string text) => text.Length == 22 && text[10] == 'T'
        ? $"{text[..10]} {text[11..16]} ({text[16..]})"
        : text;

    private static string OneOf(string words)
    {
        var last = words.LastIndexOf(", ", StringComparison.Ordinal);
        return last < 0 ? words : $"{words[..last]} or {words[(last + 2)..]}";
    }
}
