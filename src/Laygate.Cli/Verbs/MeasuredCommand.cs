using System.CommandLine;
using System.Text.RegularExpressions;
using Laygate.Checking.Records;
using Laygate.Cli.Arguments;
using Laygate.Cli.Output;
using Laygate.Reporting.Records;
using Laygate.Rules.Results;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>measured</c>: temperatures of the mat as measured against those that the solver gives.</summary>
internal sealed partial class MeasuredCommand : Verb
{
    private const string Words = """
        Compares the temperatures of the mat in the record of a shift with those that the solver
        gives for their place and minute: laid when the record says, with the temperature of the
        loads and the weather that were measured. Says for each shift how many readings lie in the
        computed band and how far they are off on average. With --learn, two values of the mat are
        fitted to several shifts, each shift left out in turn and predicted by the others; what may
        be stored is written to a file that plans can name. No limit is ever loosened by it.

        Usage
          laygate measured PLAN RECORD [PLAN RECORD …] [options]
          laygate measured --folder FOLDER [options]

        RECORD is the folder with record.yaml; several shifts are shown one below the other. With
        --folder: all records below FOLDER that have temperatures of the mat; each names its plan
        by id, and the plan stands below FOLDER too.

        Options
          --full          show each reading beside its computed band
          --learn FILE    learn from two shifts or more and write what was learnt to this new file,
                          FILE.yaml; its entry is called as the file is
          --format FORM   terminal (usual), json, or html: one page; both show each reading
          --output FILE   write the result to a file
          --help          show this

        Exit codes
          0  the whole record was read
          1  rows or records were refused, no reading could be compared, or nothing was learnt
          2  plan, record or arguments could not be read

        Example
          laygate measured night-1.yaml night-1-record --full
          laygate measured --folder jobs --learn night-works.yaml

        """;

    private readonly Argument<string[]> files = new("PLAN RECORD") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string> folder = new("--folder");
    private readonly Option<bool> full = new("--full") { Arity = ArgumentArity.Zero };
    private readonly Option<string> learn = new("--learn");
    private readonly Option<string> format = new("--format");
    private readonly Option<string> output = new("--output");

    public MeasuredCommand()
        : base("measured", Words)
    {
        Add(files);
        Add(folder);
        Add(full);
        Add(learn);
        Add(format);
        Add(output);
        format.CompletionSources.Add(RecordForms.Terminal, RecordForms.Json, RecordForms.Html);
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        var named = parsed.GetValue(files) ?? [];
        var all = Values.NotEmpty("--folder", parsed.GetValue(folder));
        if (named.Length % 2 != 0 || named.Length > 0 == all is not null)
        {
            throw new ArgumentProblem("Name each plan and the folder of its record, or a folder of all with --folder. Write for example: laygate measured plan.yaml plan-record");
        }

        var (target, isFull) = (Values.NotEmpty("--output", parsed.GetValue(output)), parsed.GetValue(full));
        var learnt = Values.NotEmpty("--learn", parsed.GetValue(learn)) is { } file ? (File: file, Id: IdOf(file), Today: Values.Today(clock)) : ((string File, string Id, DateOnly Today)?)null;
        var form = RecordForms.Read(parsed.GetValue(format), RecordForms.Terminal, RecordForms.Json, RecordForms.Html);
        return new Request.Do(host => Run(host, named, all, target, isFull, learnt, form));
    }

    private static string IdOf(string file) => Path.GetFileName(file) is var name && IdOfFile().Match(name) is { Success: true } id ? id.Groups["id"].Value
        : throw new ArgumentProblem($"--learn needs a file such as night-works.yaml, in lower-case letters, digits and hyphens; `{name}` cannot give an entry its name.");

    [GeneratedRegex("^(?<id>[a-z0-9]+(?:-[a-z0-9]+)*)[.]ya?ml$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: Timeout.Infinite)]
    private static partial Regex IdOfFile();

    private static int Run(Host host, string[] named, string? all, string? target, bool full, (string File, string Id, DateOnly Today)? learn, string form)
    {
        ResultOutput.KeepApart(target, named);
        if (learn is { } wanted && File.Exists(wanted.File))
        {
            throw new ArgumentProblem($"`{wanted.File}` is there already: what was learnt is written to a new file, so that plans that name the old one keep it.");
        }

        var (shifts, left) = all is null ? (Named(host, named), []) : Below(all);
        if (shifts is null)
        {
            return ExitCodes.Unreadable;
        }

        if (learn is not null && Learning.Twice(shifts) is { } twice)
        {
            throw new ArgumentProblem($"The shift of `{twice}` stands in the list more than once: left out to be predicted, it would be predicted by itself. Name each shift once.");
        }

        var reports = shifts.Select(shift => shift.Measured()).ToList();
        var report = learn is { } asked ? Learning.Of(shifts, asked.Id, asked.Today) : null;
        if (report?.Values is { } values)
        {
            ResultOutput.WriteFile(learn!.Value.File, Streams.Utf8.GetBytes(LearntYaml.Of(values)));
        }

        var run = new MeasuredRun(reports, report, learn?.File, left);
        new ResultOutput(host.Streams).Write(target, RecordForms.Bytes(
            host.Streams, form, () => [.. report is null ? [] : LearnLines.Of(report, learn!.Value.File), .. MeasuredLines.Of(reports, full), .. FeedbackLines.NotCounted(left, host.Streams.Width)],
            stream => MeasuredJson.Write(run, host.Version, stream), stream => MeasuredPageWriter.Write(run, host.Version, stream)));
        return left.Count == 0 && reports.TrueForAll(one => one.IsWhole) && (report is null || report.Values is not null) ? ExitCodes.Clean : ExitCodes.Findings;
    }

    private static List<RecordedShift>? Named(Host host, string[] named)
    {
        var shifts = new List<RecordedShift>();
        for (var i = 0; i < named.Length; i += 2)
        {
            if (RecordInputs.Open(host, named[i], named[i + 1]) is not { } shift)
            {
                return null;
            }

            shifts.Add(shift);
        }

        return shifts;
    }

    private static (IReadOnlyList<RecordedShift> Shifts, IReadOnlyList<Problem> Left) Below(string all)
    {
        var (found, problems) = RecordInputs.Below(all);
        List<RecordedShift> shifts = [.. found.Select(one => one.Shift).Where(shift => shift.HasMatTemperatures)];
        return shifts.Count > 0 || problems.Count > 0 ? (shifts, problems) : throw new ArgumentProblem($"No record below `{all}` has temperatures of the mat.");
    }
}
