using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Laygate.Reporting.Language;
using Laygate.Reporting.Remedies;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Runs;

/// <summary>Lists what a run found, file by file in its order, for formats that machines read.</summary>
internal sealed class Listing(RunHead head)
{
    private static readonly Position Start = new(1, 1, 1, 2);

    // Fingerprints of a file hold its name, so that they are counted within it; a name that another file has too is remembered.
    private readonly Dictionary<string, int> shared = new(StringComparer.Ordinal);
    private Dictionary<string, int> seen = [];

    /// <summary>What fails and warns and no baseline knows, departures that do not hold, and the parts that the run asks for.</summary>
    public IEnumerable<ListedItem> Asked(FileResult result) =>
        Everything(result).Where(item => !item.Known && (item.Group is FindingGroup.Failed or FindingGroup.Warned || head.Include.Contains(item.Group)));

    /// <summary>Every finding and every departure that does not hold.</summary>
    public IEnumerable<ListedItem> Everything(FileResult result)
    {
        seen = head.IsShared(result.File) ? shared : new Dictionary<string, int>(StringComparer.Ordinal);
        return result.Reports.SelectMany(Of);
    }

    private IEnumerable<ListedItem> Of(Report report) =>
        report.Departures.Where(use => use.State != DepartureState.Holds).Select(use => Of(report, use))
            .Concat(report.Findings.Select(finding => Of(report, finding)));

    private ListedItem Of(Report report, Finding finding) => new(
        finding.Rule, FindingGroups.Of(finding), finding.Position?.File ?? report.File, finding.Position ?? Start, finding.Address, Wording.Title(finding),
        Wording.Sentence(finding), [.. Advice(finding)], Fingerprint(finding.Rule, report, finding.Address), report, finding);

    private ListedItem Of(Report report, DepartureUse use) => new(
        ListedItem.DepartureRule, FindingGroup.Warned, use.Departure.File.Length > 0 ? use.Departure.File : report.File, Start, use.Departure.Address,
        "Departure that does not hold", DepartureWords.Of(use), [],
        Fingerprint($"{ListedItem.DepartureRule} {use.Departure.Id} {use.Departure.Rule}", report, use.Departure.Address), report, null);

    private static IEnumerable<string> Advice(Finding finding)
    {
        if (Names.Missing(finding) is { Count: > 0 } missing)
        {
            yield return $"State {string.Join(" and ", missing)}.";
        }

        foreach (var note in finding.Notes)
        {
            yield return NoteWords.Of(note);
        }

        if (finding.Departure is { } departure)
        {
            yield return $"Permitted: {DepartureWords.Permission(departure)}";
        }

        if (FindingGroups.Of(finding) is not (FindingGroup.Passed or FindingGroup.NotApplicable))
        {
            yield return PlainText.Show(finding.Remedy);
            if (finding.Local.Length > 0)
            {
                yield return $"Ask: {PlainText.Show(finding.Local)}";
            }

            foreach (var sentence in RemedyWords.Of(finding))
            {
                yield return sentence.Replace(PlainText.Glue, ' ');
            }
        }
    }

    // Lines move with every edit; what is compared does not. Two plans of one file may share their ids.
    private string Fingerprint(string rule, Report report, string address)
    {
        var what = string.Join('\n', rule, report.File.Replace('\\', '/'), report.PlanId, address);
        var number = seen[what] = seen.GetValueOrDefault(what) + 1;
        var text = number == 1 ? what : string.Create(CultureInfo.InvariantCulture, $"{what}\n{number}");
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)).AsSpan(0, 16));
    }
}
