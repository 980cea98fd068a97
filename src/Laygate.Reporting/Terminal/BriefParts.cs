using System.Globalization;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Terminal;

/// <summary>What stands behind the findings of the short form: laying by the hour, what is not due yet, what is permitted or known earlier, what was assumed.</summary>
internal sealed class BriefParts(Report report, int width)
{
    private const int MostOfWeather = 8;
    private const int MostOfOthers = 3;
    private const int MostAssumed = 2;

    /// <summary>Laying by the hour, or the weather in which the plan still works.</summary>
    public IReadOnlyList<TerminalLine> Outlook()
    {
        if (report.Outlook is not { } outlook)
        {
            return [];
        }

        var page = new Page(width, cuts: false);
        if (OutlookWords.Unsaid(outlook) is { } unsaid)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Warn, outlook.NotJudged.Count > 0 ? $"Not judged by the weather: {string.Join(", ", outlook.NotJudged.Select(rule => PlainText.Show(rule.Finding.Rule)).Distinct(StringComparer.Ordinal))}" : unsaid)]);
        }

        if (outlook.Hours.Count > 0)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Heading, "Laying by the hour: "), new TextSpan(TextStyle.Plain, Strip(outlook.Hours) + " (margins: --full)")]);
        }

        foreach (var axis in outlook.Weather?.Alone ?? [])
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Plain, OutlookWords.Alone(axis, outlook.Weather!.IsUnknown))]);
        }

        var lines = page.Take();
        return lines.Count <= MostOfWeather ? lines : [.. lines.Take(MostOfWeather - 1), new TerminalLine([new TextSpan(TextStyle.Quiet, "More about the weather: --full.")])];
    }

    /// <summary>Findings that do not count, and what was taken in place of a statement.</summary>
    public IReadOnlyList<TerminalLine> Others() =>
    [
        .. Listed("permitted by the approving side", report.Findings.Where(finding => finding.Status == Status.Departed)),
        .. Listed("known earlier, in the baseline; they do not count", report.Findings.Where(finding => finding.Known && finding.Status is Status.Fail or Status.Warn)),
        .. Assumed(),
    ];

    /// <summary>What is not due yet: how much, and what to state next, what most rules wait for first.</summary>
    public IReadOnlyList<TerminalLine> Open(int room)
    {
        var open = report.Findings.Where(finding => finding.Outcome == Outcome.Open).ToList();
        if (open.Count == 0 || room < 1)
        {
            return [];
        }

        var due = report.Stage == Stage.Concept ? open.FindAll(finding => finding.Severity is null) : open;
        var keys = due.SelectMany(finding => finding.Missing.Select(Names.Of).Distinct(StringComparer.Ordinal)).GroupBy(key => key, StringComparer.Ordinal)
            .OrderByDescending(key => key.Count()).Select(key => key.Key).ToList();
        var later = open.Count - due.Count;
        var label = $"OPEN {Number(open.Count)} not due yet, or not known to apply{(later > 0 ? $" ({Number(later)} of safety)" : string.Empty)}. State next: ";
        return BriefText.List(0, new TextSpan(TextStyle.Undecided, label), keys, width, room);
    }

    private IReadOnlyList<TerminalLine> Listed(string label, IEnumerable<Finding> findings)
    {
        var rules = findings.GroupBy(finding => finding.Rule, StringComparer.Ordinal).Select(rule => rule.ToList()).ToList();
        if (rules.Count == 0)
        {
            return [];
        }

        var span = new TextSpan(TextStyle.Undecided, $"{Number(rules.Sum(rule => rule.Count))} {label}: ");
        var lines = BriefText.List(0, span, rules.ConvertAll(BriefEntry.Item), width, int.MaxValue);
        return lines.Count <= MostOfOthers ? lines : BriefText.List(0, span, [.. BriefFindings.Families(rules)], width, int.MaxValue);
    }

    // An assumption that decides comes first.
    private IReadOnlyList<TerminalLine> Assumed()
    {
        var deciding = report.Findings.Where(finding => finding.Status is Status.Fail or Status.Warn).SelectMany(finding => finding.Notes).Where(BriefEntry.IsDeciding)
            .SelectMany(note => note.Arguments).Where(argument => argument.Name is "keys" && argument.Text is not null)
            .SelectMany(argument => argument.Text!.Split(", ")).Select(Named).ToHashSet(StringComparer.Ordinal);
        var assumed = report.Assumptions.Where(use => use.StandsFor is not null).Select(use => Names.Of(use.StandsFor!)).Distinct(StringComparer.Ordinal).ToList();
        List<string> keys = [.. deciding.Select(key => key + " (decides)"), .. assumed.Where(key => !deciding.Contains(key))];
        return keys.Count == 0 ? [] : BriefText.List(0, new TextSpan(TextStyle.Quiet, $"{Number(keys.Count)} assumed, because the plan does not state: "), keys, width, MostAssumed);
    }

    private static string Named(string text) => text.Split('/', 2) is [var address, var key] ? Names.Of(new InputReference(address, key)) : PlainText.Show(text);

    private static string Strip(IReadOnlyList<HourOutlook> hours)
    {
        var runs = new List<(LayingVerdict Verdict, DateTimeOffset From, DateTimeOffset To)>();
        foreach (var hour in hours)
        {
            if (runs is [.., var last] && last.Verdict == hour.Verdict)
            {
                runs[^1] = last with { To = hour.At };
            }
            else
            {
                runs.Add((hour.Verdict, hour.At, hour.At));
            }
        }

        return string.Join(", ", runs.Select(run => $"{OutlookWords.Of(run.Verdict)} {Time(run.From)}{(run.From == run.To ? string.Empty : $" to {Time(run.To)}")}"));
    }

    private static string Time(DateTimeOffset at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);
}
