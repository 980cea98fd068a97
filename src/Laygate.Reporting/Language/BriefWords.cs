using Laygate.Engineering.Quantities;
using Laygate.Reporting.Remedies;
using Laygate.Reporting.Text;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>A finding in a line: what was found against what is allowed, whose limit it is and how well it is known, and what mends it.</summary>
internal static class BriefWords
{
    private const int MostKeys = 3;

    /// <summary>What was found against what is allowed, the fullest wording first; each says enough to be read alone below the title.</summary>
    public static IReadOnlyList<string> Found(Finding finding) => finding.Outcome switch
    {
        Outcome.Met or Outcome.Missed => finding.Check switch
        {
            CheckKind.Present => [Presence(finding)],
            CheckKind.NotBefore => Moments(finding),
            CheckKind.Agrees => Agreement(finding),
            _ => Comparison(finding),
        },
        Outcome.NeedsPerson => ["A competent person must look; computation cannot decide it"],
        _ when finding.Missing.Count > 0 => [$"Missing{(finding.Status == Status.Fail ? ", and at this stage it must be stated" : string.Empty)}: {Keys(finding)}"],
        _ => [$"Not assessed{string.Concat(finding.Notes.Take(1).Select(note => ": " + NoteWords.Glued(note).TrimEnd('.')))}"],
    };

    /// <summary>Whose limit it is and how well it is known, with the clause of a specification and without it; none where no limit was reached.</summary>
    public static IReadOnlyList<string> Whose(Finding finding)
    {
        if (finding.Limit is not { } limit)
        {
            return [];
        }

        var known = Known(limit.Source.Evidence);
        return limit.SetBy is { Length: > 0 } name
            ? [$"{PlainText.Show(name)} {PlainText.Show(limit.Source.Clause ?? string.Empty)}".TrimEnd() + ", " + known, $"{PlainText.Show(name)}, {known}"]
            : Own(limit.Source.Source) is { } own ? [own] : [$"{PlainText.Show(limit.Source.Source)}, {known}", known];
    }

    /// <summary>The smallest change that mends it, or the unit that was meant; null where neither was found.</summary>
    public static string? Mend(Finding finding) => finding.Remedies?.Found is [var remedy, ..]
        ? $"Mend: {string.Join(" and ", remedy.Changes.Select(change => $"{LeverWords.Name(change)} to {LeverWords.Value(change.To)}{(change.ByDesigner ? " (ask the designer)" : string.Empty)}"))}{(remedy.OnExpectedValuesOnly ? ", but the worse case still misses" : string.Empty)}"
        : finding.Notes.FirstOrDefault(note => string.Equals(note.Id, FindingNotes.UnitSlip, StringComparison.Ordinal)) is { } slip ? NoteWords.Glued(slip).TrimEnd('.') : null;

    /// <summary>What to write into the plan, each entry once: keys, and kinds of entries with the list to which they belong.</summary>
    public static IReadOnlyList<(string List, string Entry)> ToState(Finding finding)
    {
        var added = finding.Notes.Where(note => note.Id is "entry-missing").Select(note => (Argument(note, "list"), Argument(note, "kind").Replace("`", string.Empty, StringComparison.Ordinal)));
        var lists = added.Select(entry => entry.Item1).ToList();
        var keys = finding.Missing.Select(Names.Of).Where(key => !lists.Exists(list => IsList(key, list))).Select(key => (string.Empty, key));
        return [.. added.Concat(keys).Distinct()];
    }

    /// <summary>Whether a key is a list itself, by its whole name or without the block in which it stands.</summary>
    public static bool IsList(string key, string list) => string.Equals(key, list, StringComparison.Ordinal) || key.EndsWith("." + list, StringComparison.Ordinal);

    /// <summary>A word on how a figure is known.</summary>
    public static string Known(Evidence evidence) => evidence switch
    {
        Evidence.SecondHand => "second-hand",
        Evidence.CommonPractice => "common practice",
        _ => evidence.ToString().ToLowerInvariant(),
    };

    // Three sources of general practice are our own; their name says how they are known.
    private static string? Own(string source) => source switch
    {
        "laygate-derivation" => "derived",
        "laygate-judgement" => "our judgement",
        "common-practice" => "common practice",
        _ => null,
    };

    private static string Argument(Note note, string name) =>
        PlainText.Show(note.Arguments.FirstOrDefault(argument => string.Equals(argument.Name, name, StringComparison.Ordinal))?.Text ?? string.Empty);

    private static string Keys(Finding finding)
    {
        var keys = ToState(finding).Select(key => key.List.Length > 0 ? $"{key.Entry} in {key.List}" : key.Entry).ToList();
        return string.Join(", ", keys.Take(MostKeys)) + (keys.Count > MostKeys ? FormattableString.Invariant($" and {keys.Count - MostKeys} more") : string.Empty);
    }

    private static string Presence(Finding finding)
    {
        var asked = finding.Limit is { } limit ? Names.Of(limit.Strength, limit.Basis) : "asked for";
        var keys = finding.Missing.Count > 0 ? $": {Keys(finding)}" : string.Empty;
        return finding.Value?.Text switch
        {
            null or "absent" => $"Missing; {asked}{keys}",
            "thin" => $"Stated only in part; {asked}{keys}",
            "no" => $"The plan says no; yes is {asked}",
            var text => $"{Names.Capital(PlainText.Show(text))}; a full statement is {asked}{keys}",
        };
    }

    private static IReadOnlyList<string> Comparison(Finding finding)
    {
        var figures = Figures.Of(finding);
        var name = Names.Capital(Names.OfQuantity(finding.Quantity));
        var value = figures.Value() ?? "no value";
        if (finding.Limit is not { } limit)
        {
            return [$"{name} {value}"];
        }

        var band = value.IndexOf(" (", StringComparison.Ordinal);
        var plain = band > 0 ? value[..band] : value;
        var (bound, asked) = (Bound(limit, figures), Names.Of(limit.Strength, limit.Basis));
        var of = limit is { Quantity: { } other, Factor: null or 1 } ? $" ({Names.OfQuantity(other)})" : string.Empty;
        if (End(finding, limit, figures, band > 0 ? value[(band + 2)..^1].Split($"{PlainText.Glue}to{PlainText.Glue}") : []) is not { } end)
        {
            return [$"{name} {value}; {asked}: {bound}{of}", $"{name} {plain}; {asked}: {bound}{of}", $"{name} {plain}; {asked}: {bound}", $"{plain}; {asked}: {bound}"];
        }

        return [$"{name} {plain}{end.Value}; {asked}: {bound}{of}{end.Limit}", $"{name} {plain}{end.Value}; {asked}: {bound}{end.Limit}", $"{plain}{end.Value}; {asked}: {bound}{end.Limit}"];
    }

    // Where the ends of the spread say otherwise than the expected value, the end that does is shown: that of the value, or of the limit where only it is spread.
    private static (string Value, string Limit)? End(Finding finding, ShownLimit limit, Figures figures, string[] band)
    {
        var (isWorse, isBetter) = (finding is { Outcome: Outcome.Met, OnExpectedValuesOnly: true }, finding is { Outcome: Outcome.Missed, FavourableEndMeets: true });
        if (!isWorse && !isBetter)
        {
            return null;
        }

        var (word, isLow) = (isWorse ? "at worst" : "at best", limit.High is null == isWorse);
        if (band.Length == 2 && limit.Low is null != limit.High is null)
        {
            return ($", {word} {Figures.WithUnit(band[isLow ? 0 : 1], finding.Value!.Unit)}", string.Empty);
        }

        return (limit.Low ?? limit.High) is { Low: { } low, High: { } high } spread && limit.Low is null != limit.High is null
            ? (string.Empty, $", {word} {figures.End(spread with { Number = isLow ? high : low, Low = null, High = null }, limit)}")
            : (string.Empty, $"; {word} it {(isWorse ? "misses" : "meets")}");
    }

    private static string Bound(ShownLimit limit, Figures figures) => (limit.Low, limit.High) switch
    {
        ({ } low, { } high) => $"{figures.End(low, limit)} to {figures.End(high, limit)}",
        ({ Number: null } low, null) => figures.End(low, limit),
        ({ } low, null) => $"{(limit.LowExclusive ? "more than" : "at least")} {figures.End(low, limit)}",
        (null, { } high) => $"{(limit.HighExclusive ? "less than" : "at most")} {figures.End(high, limit)}",
        _ => "a statement",
    };

    private static IReadOnlyList<string> Agreement(Finding finding)
    {
        var figures = Figures.Of(finding);
        var value = figures.Value() ?? "no value";
        if (finding.Limit is not { } limit)
        {
            return [$"{Names.Capital(Names.OfQuantity(finding.Quantity))}: {value}"];
        }

        var (asked, bound) = (Names.Of(limit.Strength, limit.Basis), Bound(limit, figures));
        return value is "yes" or "no"
            ? [$"The plan says {value}; {asked}: {bound}"]
            : [$"{Names.Capital(Names.OfQuantity(finding.Quantity))} {value}; {asked}: {bound}", $"{value}; {asked}: {bound}"];
    }

    // Two moments of one day are told apart by their times.
    private static IReadOnlyList<string> Moments(Finding finding)
    {
        var figures = Figures.Of(finding);
        var value = figures.Value() ?? "no value";
        if (finding.Limit is not { Low: { } low } limit)
        {
            return [$"{Names.Capital(Names.OfQuantity(finding.Quantity))} {value}"];
        }

        var (end, asked) = (figures.End(low, limit), Names.Of(limit.Strength, limit.Basis));
        return IsMoment(value) && IsMoment(end) && string.Equals(value[..10] + value[16..], end[..10] + end[16..], StringComparison.Ordinal)
            ? [$"{Names.Capital(Names.OfQuantity(finding.Quantity))} {value[11..16]}; {asked}: not before {end[11..16]} on {value[..10]}"]
            : [$"{Moment(value)}; {asked}: not before {Moment(end)}"];
    }

    private static bool IsMoment(string text) => text.Length == 22 && text[10] == 'T';

    private static string Moment(string text) => IsMoment(text) ? $"{text[..10]} {text[11..16]} ({text[16..]})" : text;
}
