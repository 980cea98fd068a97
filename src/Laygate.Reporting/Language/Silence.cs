using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>Silences of a plan about safety: one question with the rules that wait for its answer.</summary>
/// <param name="Severity">Severity of the gravest of them.</param>
/// <param name="Findings">The findings, the gravest first; all stand in one part of the report.</param>
public sealed record Silence(Severity Severity, IReadOnlyList<Finding> Findings)
{
    /// <summary>Whether a finding says no more than that the plan is silent about a hazard.</summary>
    public static bool Is(Finding finding) =>
        finding is { Severity: not null, Departure: null, Missing.Count: > 0 } && FindingGroups.Of(finding) is FindingGroup.Failed or FindingGroup.Warned or FindingGroup.NotAssessed
        && (finding.Check == CheckKind.Present || finding.Outcome == Outcome.NotAssessed || Asks(finding));

    /// <summary>The silences among findings, the gravest first, then what fails before what warns. Rules that wait for the same answer stand together.</summary>
    public static IReadOnlyList<Silence> Of(IEnumerable<Finding> findings) =>
    [
        .. findings.Where(Is)
            .GroupBy(finding => Asks(finding) ? $"{FindingGroups.Of(finding)} {finding.Address} {Keys(finding)}" : $"{finding.Rule} {finding.Address}", StringComparer.Ordinal)
            .Select(same => same.OrderBy(finding => finding.Severity).ToList())
            .Select(same => new Silence(same[0].Severity!.Value, same))
            .OrderBy(silence => silence.Severity).ThenBy(silence => FindingGroups.Of(silence.Findings[0])),
    ];

    /// <summary>Findings of safety that stand for themselves, the gravest first.</summary>
    public static IReadOnlyList<Finding> Others(IEnumerable<Finding> findings) =>
        [.. findings.Where(finding => finding.Severity is not null && !Is(finding)).OrderBy(finding => finding.Severity)];

    /// <summary>What silences of one severity have in common, for example <c>The plan says nothing about 26 hazards of severity A</c>.</summary>
    public static string Heading(IReadOnlyList<Silence> grade) => grade.Sum(silence => silence.Findings.Count) is var rules and > 1
        ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"The plan says nothing, or too little, about {rules} hazards of severity {grade[0].Severity}")
        : $"The plan says nothing, or too little, about a hazard of severity {grade[0].Severity}";

    /// <summary>The sentence with which every word on whom to ask begins, to be said once; empty where they differ.</summary>
    public static string Shared(IEnumerable<Silence> silences)
    {
        var all = silences.SelectMany(silence => silence.Locals).Distinct(StringComparer.Ordinal).ToList();
        var first = all.Count > 1 && all[0].IndexOf(". ", StringComparison.Ordinal) is var end and > 0 ? all[0][..(end + 1)] : string.Empty;
        return all.TrueForAll(local => local.StartsWith(first, StringComparison.Ordinal)) ? first : string.Empty;
    }

    /// <summary>Whom to ask, each once.</summary>
    public IReadOnlyList<string> Locals =>
        [.. Findings.Select(finding => finding.Local).Where(local => local.Length > 0).Distinct(StringComparer.Ordinal)];

    /// <summary>What to write, each sentence once.</summary>
    public IReadOnlyList<string> Sentences =>
    [
        .. Findings.SelectMany(finding => finding.Notes).Where(note => !IsReading(note)).Select(NoteWords.Glued)
            .Concat(Findings.Any(Asks) || !Findings.Any(finding => finding.Notes.Any(note => !IsReading(note))) ? [$"State {string.Join(", ", Findings[0].Missing.Select(Names.Of).Distinct(StringComparer.Ordinal).Select(key => $"`{key}`"))}."] : [])
            .Distinct(StringComparer.Ordinal),
    ];

    /// <summary>Where it comes from, each source once.</summary>
    public IReadOnlyList<string> Sources =>
    [
        .. Limits.Concat(Findings.SelectMany(finding => finding.Notes).Where(IsReading).Select(NoteWords.Glued)).Distinct(StringComparer.Ordinal),
    ];

    /// <summary>Where the limits that decide come from, each source once.</summary>
    public IReadOnlyList<string> Limits =>
        [.. Findings.Select(finding => finding.Limit).OfType<ShownLimit>().Select(Source).Distinct(StringComparer.Ordinal)];

    private static bool Asks(Finding finding) => finding.Notes.Any(NoteWords.Asks);

    // That general practice set a limit is the usual case, and not said again in every line.
    private static string Source(ShownLimit limit) =>
        $"{SourceWords.Publication(limit)} ({SourceWords.HowKnown(limit)}).{(limit.SetBy is null ? string.Empty : $" Set by {SourceWords.SetBy(limit)}.")}";

    /// <summary>Whether a remark tells what another publication says.</summary>
    internal static bool IsReading(Note note) => string.Equals(note.Id, FindingNotes.OtherReading, StringComparison.Ordinal);

    private static string Keys(Finding finding) => string.Join(", ", finding.Missing.Select(Names.Of).Distinct(StringComparer.Ordinal));
}
