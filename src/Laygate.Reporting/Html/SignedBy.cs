using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Html;

/// <summary>One line that somebody signs for.</summary>
/// <param name="What">What holds when it is signed, said positively.</param>
/// <param name="Why">Why the program does not say it by itself; empty where a measure is merely stated.</param>
internal sealed record SignedLine(string What, string Why);

/// <summary>What one person signs for.</summary>
/// <param name="Who">Who it is, by what they answer for; the contract says who that is.</param>
/// <param name="Lines">Lines, those that the check leaves open first.</param>
internal sealed record SignedBy(string Who, IReadOnlyList<SignedLine> Lines)
{
    private const string Acceptance = "Whoever accepts the work for the client";

    /// <summary>Everything that a report leaves to people, by who answers for it in the order of the subjects.</summary>
    public static IReadOnlyList<SignedBy> Of(Report report) =>
    [
        .. Open(report).Concat(Clauses(report)).Concat(Stated(report))
            .GroupBy(line => line.Who, line => line.Line, StringComparer.Ordinal)
            .Select(who => new SignedBy(who.Key, [.. who]))
            .OrderBy(who => Array.IndexOf(Order, who.Who)),
    ];

    // Who answers for a subject on most jobs is our judgement; contracts and local law differ.
    private static readonly string[] Order =
        ["Whoever answers for safety on site", "Whoever designed the pavement", "Whoever leads the shift", "Whoever opens the road", "Whoever tests", Acceptance, "Whoever wrote the plan"];

    private static string For(string family) => family switch
    {
        "safety" => Order[0],
        "layers" or "mixes" => Order[1],
        "weather" or "supply" or "paving" or "rolling" or "bond-and-joints" => Order[2],
        "friction-and-opening" => Order[3],
        "quality" => Order[4],
        _ => Order[^1],
    };

    private static IEnumerable<(string Who, SignedLine Line)> Open(Report report) => report.Findings
        .Where(finding => FindingGroups.Of(finding) is FindingGroup.NeedsPerson or FindingGroup.NotAssessed)
        .OrderBy(FindingGroups.Of)
        .Select(finding => (For(Subjects.Of(finding)), new SignedLine(
            $"{PositiveForm.Of(finding)} ({PlainText.Show(finding.Rule)}, {PlainText.Show(finding.Address)})",
            string.Join(' ', finding.Notes.Select(NoteWords.Of).DefaultIfEmpty(FindingGroups.Of(finding) == FindingGroup.NeedsPerson ? Wording.Sentence(finding) : "The plan does not say enough.")))));

    private static IEnumerable<(string Who, SignedLine Line)> Clauses(Report report) => report.Layers.Reverse()
        .SelectMany(layer => layer.Clauses.Where(clause => clause.Status is ClauseStatus.Person or ClauseStatus.Partly)
            .Select(clause => (Acceptance, new SignedLine(
                $"{PlainText.Show(layer.Title)}, {PlainText.Show(clause.Number)} is kept: {PlainText.Show(clause.Subject)}",
                clause.Note is { Length: > 0 } note ? PlainText.Show(note) : "No rule judges it in full."))));

    private static IEnumerable<(string Who, SignedLine Line)> Stated(Report report) =>
        Alike.Of(report.Findings.Where(finding => finding is { Check: CheckKind.Present, Status: Status.Pass }))
            .Select(same => (For(Subjects.Of(same.First)), new SignedLine($"{PositiveForm.Of(same.First).Replace(PositiveForm.NotChecked, string.Empty, StringComparison.Ordinal)} ({PlainText.Show(same.First.Rule)}, {same.Addresses})", string.Empty)));
}
