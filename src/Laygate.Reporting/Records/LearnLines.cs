using System.Globalization;
using Laygate.Engineering.Measured;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>What several shifts taught, on a terminal.</summary>
public static class LearnLines
{
    /// <summary>All lines.</summary>
    /// <param name="report">The report.</param>
    /// <param name="file">The file that is written where something may be stored.</param>
    public static IReadOnlyList<TerminalLine> Of(LearnReport report, string file)
    {
        var fit = report.Fit;
        if (fit.Refusal is { } refusal)
        {
            return [Line(TextStyle.Heading, $"Nothing is learnt: {Why(report, refusal)}")];
        }

        List<TerminalLine> lines =
        [
            Line(TextStyle.Heading, $"{Verdict(report, file)} Mixes: {string.Join(", ", fit.Mixes.Select(PlainText.Show))}."),
            Line(TextStyle.Plain, $"  Conductivity: {Value(fit.Conductivity!, 100, "% of the assumed one", isSigned: false)}"),
            Line(TextStyle.Plain, $"  Behind the screed: {Value(fit.Laying!, 1, "K against the plan", isSigned: true)}"),
            Line(TextStyle.Plain, string.Create(CultureInfo.InvariantCulture, $"  Shifts left out in turn, predicted by the others: {100 * fit.Inside.Before:F0} % of the readings in the band before, {100 * fit.Inside.After:F0} % after (90 % should be); off by {fit.Off.Before:F1} K before, {fit.Off.After:F1} K after (root mean square).")),
        ];
        for (var i = 0; i < fit.HeldOut.Count; i++)
        {
            lines.AddRange(Shift(report.Shifts[i].PlanId, fit.HeldOut[i]));
        }

        lines.Add(Line(TextStyle.Quiet, "A conductivity also takes up what else the solver has wrong; it holds for these mixes and machines, and is no property of the material. Two shifts are few."));
        lines.Add(Line(TextStyle.Quiet, "No limit is ever loosened by it: a plan that names it is judged by the more careful of what was learnt and what is assumed."));
        return lines;
    }

    private static IEnumerable<TerminalLine> Shift(string plan, HeldOutShift shift) => shift.Before.Groups.Zip(shift.After.Groups)
        .Where(pair => pair.First.From <= 0 && double.IsInfinity(pair.First.To))
        .Select(pair => Line(TextStyle.Plain, string.Create(
            CultureInfo.InvariantCulture,
            $"    {PlainText.Show(plan)}, {(pair.First.IsSkin ? "skin" : "inside")}, {LedgerNumbers.Count(pair.First.Readings, "reading", "readings")}: {100 * pair.First.Inside.Expected:F0} % in the band before, {100 * pair.Second.Inside.Expected:F0} % after; off by {Signed(pair.First.Bias)} K on average before, {Signed(pair.Second.Bias)} K after.")));

    private static string Verdict(LearnReport report, string file) => report.Values is not null
        ? $"Learnt from {report.Shifts.Count.ToString(CultureInfo.InvariantCulture)} shifts and written to {PlainText.Show(file)}; plans name it as `{report.Id}` under `learnt`."
        : report.Fit.Conductivity?.State == FitState.AtItsEnd || report.Fit.Laying?.State == FitState.AtItsEnd ? "Nothing is stored: a value lies at an end of its range, so that something else is wrong. Look at clocks, depths and the weather that was measured."
        : !report.Fit.IsBetter ? "Nothing is stored: with it the shifts that were left out are met no better."
        : "Nothing is stored: the readings do not tell the values.";

    private static string Value(FittedValue value, double scale, string unit, bool isSigned)
    {
        return value.State switch
        {
            FitState.NotIdentifiable => $"not to be told from these readings; the range stays {Number(value.Before.Low)} to {Number(value.Before.High)} {unit}.",
            FitState.AtItsEnd => $"at an end of its range, {Number(value.Before.Low)} to {Number(value.Before.High)} {unit}.",
            _ => $"{Number(value.Value)} {unit} ({Number(value.Low)} to {Number(value.High)}; before {Number(value.Before.Low)} to {Number(value.Before.High)}).",
        };

        string Number(double number) => isSigned ? Signed(number) : (scale * number).ToString("F0", CultureInfo.InvariantCulture);
    }

    private static string Signed(double kelvins) => kelvins.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture);

    private static string Why(LearnReport report, FitRefusal refusal) => refusal switch
    {
        FitRefusal.FewShifts => string.Create(CultureInfo.InvariantCulture, $"{MatFits.FewestShifts} shifts at least need temperatures that can be compared; with one, none is left to be held out. Name more plans and records."),
        FitRefusal.NoUncertainty => $"the record of {PlainText.Show(report.Shifts[report.Fit.Shift].PlanId)} does not state how uncertain its temperatures are. Write `temperature` and `skin` under `uncertainty` in its record.yaml.",
        _ => $"the mat of {PlainText.Show(report.Shifts[report.Fit.Shift].PlanId)} could not be solved. `laygate measured --full` shows its readings.",
    };

    private static TerminalLine Line(TextStyle style, string text) => new([new TextSpan(style, text)]);
}
