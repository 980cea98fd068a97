using System.Globalization;
using Laygate.Checking.Cases;
using Laygate.Cli.Arguments;
using Laygate.Cli.Files;
using Laygate.Cli.Output;
using Laygate.Reading.RuleFiles;
using Laygate.Reporting.Text;

namespace Laygate.Cli.Verbs;

/// <summary>Runs cases and says which do not hold; the last line counts them.</summary>
internal sealed class RuleTestRunner(Streams streams)
{
    /// <summary>The text of the shipped rules, beside the program.</summary>
    public static IRuleFolder? Shipped() => new RuleFilesOnDisk().Folder(Path.Combine(AppContext.BaseDirectory, "rules"));

    /// <summary>Runs the cases of a folder; of the shipped rules when it is null.</summary>
    /// <returns>The exit code.</returns>
    public int Run(string? folder, DateOnly date)
    {
        var shipped = Shipped() ?? throw new ArgumentProblem("The rules that belong beside the program are missing. Install it again.");
        IRuleFolder? own = null;
        if (folder is not null && (own = new RuleFilesOnDisk().Folder(folder)) is null)
        {
            throw new ArgumentProblem($"There is no folder `{folder}`.");
        }

        var run = RuleTests.Run(shipped, own, folder is null ? string.Empty : new DirectoryInfo(folder).Name, date);
        if (run.Problems.Count > 0)
        {
            return streams.Refuse(run.Problems);
        }

        var misses = run.Results.Where(result => !result.Holds).ToList();
        foreach (var miss in misses)
        {
            Write(miss);
        }

        var cases = run.Results.Count(result => result.Case.Length > 0);
        var wrong = misses.Count == 0 ? "all hold" : string.Create(CultureInfo.InvariantCulture, $"{misses.Count} wrong");
        streams.Text(string.Create(CultureInfo.InvariantCulture, $"{cases} {(cases == 1 ? "case" : "cases")} of {run.Rules} {(run.Rules == 1 ? "rule" : "rules")}: {wrong}.\n"));
        return misses.Count == 0 ? ExitCodes.Clean : ExitCodes.Findings;
    }

    private void Write(CaseResult miss)
    {
        var place = miss.Position is { } at ? string.Create(CultureInfo.InvariantCulture, $"{miss.File}:{at.Line}:{at.Column}") : miss.File;
        streams.Text($"{PlainText.Show(place)}: {miss.Rule}{(miss.Case.Length > 0 ? $", {PlainText.Show(miss.Case)}" : string.Empty)}\n");
        foreach (var difference in miss.Differences)
        {
            streams.Text($"  {PlainText.Show(difference)}\n");
        }
    }
}
