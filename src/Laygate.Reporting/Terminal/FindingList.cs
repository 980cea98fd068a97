using System.Globalization;
using Laygate.Model.Plans;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Terminal;

/// <summary>The findings of one report in parts, worst part first; inside a part the report's own order stays.</summary>
internal sealed class FindingList(Page page, Report report, TerminalSettings settings)
{
    // More open rules than this are listed by what they wait for; and so many of them are named for each.
    private const int MostListed = 12;
    private const int MostNamed = 5;

    // So many silences of a part are written in full; more of them in short.
    private const int MostSilencesInFull = 3;

    private bool silencesExplained;

    public void Write()
    {
        var parts = report.Findings.ToLookup(FindingGroups.Of);
        foreach (var group in Enum.GetValues<FindingGroup>())
        {
            var findings = parts[group].ToList();
            if (findings.Count > 0 && (settings.All || group != FindingGroup.NotApplicable))
            {
                WritePart(group, findings);
            }
        }
    }

    private void WritePart(FindingGroup group, List<Finding> findings)
    {
        page.Blank();
        page.Flow(0, 2, [new TextSpan(TextStyle.Heading, $"{Names.Capital(Names.Of(group))}: {Number(findings.Count)}"), new TextSpan(TextStyle.Quiet, Remark(group))]);
        switch (group)
        {
            case FindingGroup.Passed when !settings.All:
                WriteFamilies(findings);
                break;
            case FindingGroup.Open:
                WriteOpen(findings);
                break;
            case FindingGroup.Passed or FindingGroup.NotApplicable:
                findings.ForEach(finding => WriteShort(group, finding));
                break;
            default:
                WriteBlocks(group, findings.FindAll(finding => settings.All || !finding.Known));
                WriteKnown(findings.FindAll(finding => finding.Known));
                break;
        }
    }

    private void WriteKnown(List<Finding> known)
    {
        if (known.Count > 0 && !settings.All)
        {
            page.Blank();
            page.Flow(0, 2, [new TextSpan(TextStyle.Quiet, $"Known earlier, in full with --all: {Number(known.Count)}")]);
            known.ForEach(finding => page.Flow(2, 4, [new TextSpan(TextStyle.Plain, $"{Wording.Title(finding)} ({PlainText.Show(finding.Rule)}, {PlainText.Show(finding.Address)})")]));
        }
    }

    private string Remark(FindingGroup group) => group switch
    {
        FindingGroup.Passed or FindingGroup.NotApplicable when settings.All => " (rules are named after what they guard against)",
        FindingGroup.NotAssessed => " (counts as a warning)",
        FindingGroup.NeedsPerson => " (computation cannot decide it; not counted as a warning)",
        FindingGroup.Open => " (not due at this stage, or waiting for a word whether it applies; no warning)",
        FindingGroup.Departed => " (permitted by the approving side; not counted)",
        _ => string.Empty,
    };

    private void WriteFamilies(List<Finding> passes)
    {
        var families = passes.GroupBy(finding => finding.RuleName.Split('/')[0], StringComparer.Ordinal);
        foreach (var family in families)
        {
            page.Labelled(2, 24, PlainText.Show(family.Key), [new TextSpan(TextStyle.Plain, Family([.. family]))]);
        }
    }

    // A measure that is stated is not a measure that is good: the two are counted apart.
    private static string Family(List<Finding> passes)
    {
        var stated = passes.Count(finding => finding.Check == CheckKind.Present);
        var met = passes.Count - stated;
        return (met, stated) switch
        {
            (_, 0) => $"{Number(met)} met",
            (0, _) => $"{Number(stated)} stated (not judged adequate)",
            _ => $"{Number(met)} met, {Number(stated)} stated (not judged adequate)",
        };
    }

    // Safety comes first: what the plan states wrongly before what it does not say, the gravest hazard on top of each; a question that several rules wait for is asked once.
    private void WriteBlocks(FindingGroup group, List<Finding> findings)
    {
        if (findings.Count == 0)
        {
            return;
        }

        var block = new FindingBlock(page, report.File, settings.All);
        var safety = Safety(findings);
        var inFull = settings.All || safety.Count(Silence.Is) <= MostSilencesInFull;
        if (safety.Count > 0)
        {
            var hidden = inFull && !settings.All && safety.Exists(finding => Silence.Is(finding) && finding.Notes.Any(Silence.IsReading));
            page.Blank();
            page.Flow(0, 2, [new TextSpan(TextStyle.Quiet, Heading(safety, safety.Count < findings.Count) + (hidden ? " (--all adds what other publications say)" : string.Empty))]);
        }

        if (inFull)
        {
            WriteInFull(block, group, safety);
        }
        else
        {
            WriteInShort(block, group, safety);
        }

        findings.Where(finding => finding.Severity is null).ToList().ForEach(finding => block.Write(group, finding));
    }

    private static void WriteInFull(FindingBlock block, FindingGroup group, List<Finding> safety)
    {
        safety.Where(finding => !Asks(finding)).ToList().ForEach(finding => block.Write(group, finding));
        foreach (var question in safety.Where(Asks).GroupBy(FindingBlock.Keys, StringComparer.Ordinal))
        {
            block.Ask(group, [.. question]);
        }
    }

    // A plan that says nothing about thirty hazards is told what to write, not fifteen lines about each.
    private void WriteInShort(FindingBlock block, FindingGroup group, List<Finding> safety)
    {
        safety.Where(finding => !Silence.Is(finding)).ToList().ForEach(finding => block.Write(group, finding));
        foreach (var grade in Silence.Of(safety).GroupBy(silence => silence.Severity))
        {
            block.Silent(group, [.. grade], isFirst: !silencesExplained);
            silencesExplained = true;
        }
    }

    private static string Heading(List<Finding> safety, bool isFollowed)
    {
        var both = safety.Exists(Silence.Is) && !safety.TrueForAll(Silence.Is);
        return $"Safety first: {(both ? "what is wrong, then what the plan does not say, " : string.Empty)}most serious on top{(isFollowed ? "; then the rest" : string.Empty)}";
    }

    private void WriteOpen(List<Finding> findings)
    {
        var listed = findings.FindAll(finding => finding.Severity is null || settings.All);
        if (listed.Count > MostListed && !settings.All)
        {
            WriteOpenKeys(listed);
        }
        else
        {
            listed.ForEach(WriteOpen);
        }

        if (!settings.All && Safety(findings) is { Count: > 0 } safety)
        {
            WriteOpenSafety(safety);
        }
    }

    // At the start of a plan nearly every rule waits; what to state next is the shorter list, and each key stands in it once.
    private void WriteOpenKeys(List<Finding> findings)
    {
        page.Flow(2, 4, [new TextSpan(TextStyle.Plain, "What to state next, and which rules wait for it (--all gives their titles):")]);
        foreach (var key in findings.SelectMany(finding => finding.Missing.Select(Names.Of).DefaultIfEmpty(PlainText.Show(finding.Address)).Distinct(StringComparer.Ordinal).Select(key => (key, finding.Rule))).GroupBy(pair => pair.key, pair => pair.Rule, StringComparer.Ordinal))
        {
            var rules = key.Distinct(StringComparer.Ordinal).ToList();
            var more = rules.Count > MostNamed ? $" and {Number(rules.Count - MostNamed)} more" : string.Empty;
            page.Flow(2, 4, [new TextSpan(TextStyle.Plain, $"`{key.Key}`"), new TextSpan(TextStyle.Quiet, $" {string.Join(", ", rules.Take(MostNamed).Select(PlainText.Show))}{more}")]);
        }
    }

    // A small plan need not read the whole register: what waits is counted, and the questions stand in one line.
    private void WriteOpenSafety(List<Finding> safety)
    {
        var due = report.Stage == Stage.Concept ? safety.Count : safety.Count(finding => !Asks(finding));
        if (due > 0)
        {
            page.Flow(2, 4, [new TextSpan(TextStyle.Plain, $"{Number(due)} safety rules that a later stage asks (--all lists them)")]);
        }

        if (report.Stage == Stage.Concept)
        {
            return;
        }

        var questions = safety.Where(Asks).SelectMany(finding => finding.Missing).Select(Names.Of).Distinct(StringComparer.Ordinal).ToList();
        if (questions.Count > 0)
        {
            page.Flow(2, 4, [new TextSpan(TextStyle.Plain, "say whether these hold; more safety rules may apply: "), new TextSpan(TextStyle.Quiet, string.Join(", ", questions.Select(question => $"`{question}`")))]);
        }
    }

    private static List<Finding> Safety(List<Finding> findings) =>
        [.. findings.Where(finding => finding.Severity is not null).OrderBy(Silence.Is).ThenBy(finding => finding.Severity)];

    private static bool Asks(Finding finding) => finding.Notes.Any(NoteWords.Asks);

    private void WriteOpen(Finding finding)
    {
        page.Flow(2, 4, [new TextSpan(TextStyle.Plain, $"{Wording.Title(finding)} ({PlainText.Show(finding.Rule)})")]);
        page.Flow(4, 6, [new TextSpan(TextStyle.Quiet, finding.Missing.Count == 0 ? $"at {PlainText.Show(finding.Address)}" : $"state {FindingBlock.Keys(finding)}")]);
    }

    private void WriteShort(FindingGroup group, Finding finding)
    {
        page.Flow(2, 4, [new TextSpan(Styles.Of(group), Names.Of(group)), new TextSpan(TextStyle.Plain, $" {Wording.Title(finding)} ({PlainText.Show(finding.Rule)}, {PlainText.Show(finding.Address)})")]);
        if (group == FindingGroup.Passed)
        {
            page.Flow(4, 6, [new TextSpan(TextStyle.Plain, Wording.Glued(finding))]);
            foreach (var note in finding.Notes)
            {
                page.Flow(4, 6, [new TextSpan(TextStyle.Quiet, NoteWords.Glued(note))]);
            }
        }
    }

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);
}
