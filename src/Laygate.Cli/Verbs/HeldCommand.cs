using System.CommandLine;
using Laygate.Checking.Records;
using Laygate.Cli.Arguments;
using Laygate.Cli.Files;
using Laygate.Cli.Output;
using Laygate.Reporting.Records;
using Laygate.Rules.Results;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>held</c>: what became of the limits of a plan in its shift.</summary>
internal sealed class HeldCommand : Verb
{
    private const string Words = """
        Holds what happened in a shift, as its record has it, against the limits of the plan and of
        its specifications: by the same rules, each value with its uncertainty, place, time and the
        row that decided. What was not recorded is never held.

        Usage
          laygate held PLAN RECORD [options]
          laygate held --folder FOLDER [--rules NAME|PATH] [--departures FILE] [--format FORM] [--output FILE]

        Rules, departures and fail_on of a laygate.yaml in the folder of the plan or above it hold
        too; options add to them. With --folder: which warnings of plans came true, by rule, over all records below FOLDER;
        each record names its plan by id. RECORD is the folder with record.yaml; `laygate record` lays one out.

        Options
          --rules NAME|PATH     a specification, shipped or of your own; may be given several times
          --departures FILE     departures that were permitted; may be given several times
          --simple CLAUSE       take readings as they are, without their uncertainty, because this
                                clause of the contract says so
          --fail-on FAIL        warn (usual): whatever is not held counts; fail: only what fails
          --full                show every limit, every row that is not held, and the rules that no
                                record can show
          --format FORM         terminal (usual), json or html
          --output FILE         write the result to a file
          --help                show this

        Exit codes
          0  every limit that a record can show is held, or departed from with permission
          1  a limit is missed, not decided or not recorded, or rows were refused
          2  plan, record, rules or arguments could not be read

        Example
          laygate held night-1.yaml night-1-record --rules de

        """;

    private readonly Argument<string[]> files = new("PLAN RECORD") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string> folder = new("--folder");
    private readonly Option<string[]> rules = Values.Rules();
    private readonly Option<string[]> departures = new("--departures") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
    private readonly Option<string> simple = new("--simple");
    private readonly Option<string> failOn = new("--fail-on");
    private readonly Option<bool> full = new("--full") { Arity = ArgumentArity.Zero };
    private readonly Option<string> format = new("--format");
    private readonly Option<string> output = new("--output");

    public HeldCommand()
        : base("held", Words)
    {
        Add(files);
        foreach (var option in (Option[])[folder, rules, departures, simple, failOn, full, format, output])
        {
            Add(option);
        }

        format.CompletionSources.Add(RecordForms.Terminal, RecordForms.Json, RecordForms.Html);
        failOn.CompletionSources.Add("warn", "fail");
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        if (Values.NotEmpty("--folder", parsed.GetValue(folder)) is { } all)
        {
            return OverFolder(parsed, all, Values.Today(clock));
        }

        if (parsed.GetValue(files) is not [var plan, var record])
        {
            throw new ArgumentProblem("Name one plan and the folder of its record. Write for example: laygate held plan.yaml plan-record");
        }

        var form = RecordForms.Read(parsed.GetValue(format), RecordForms.Terminal, RecordForms.Json, RecordForms.Html);
        var strict = OneOf("--fail-on", parsed.GetValue(failOn), "warn", "fail") is "warn";
        var asked = new Asked(
            plan, record, Values.NotEmpty("--rules", parsed.GetValue(rules)), Values.NotEmpty("--departures", parsed.GetValue(departures)), Values.NotEmpty("--simple", parsed.GetValue(simple)),
            Values.Today(clock), Values.NotEmpty("--output", parsed.GetValue(output)));
        var isFull = parsed.GetValue(full);
        return new Request.Do(host => Run(host, asked, strict, report => RecordForms.Bytes(host.Streams, form, () => HeldLines.Of(report, isFull, host.Streams.Width), stream => HeldJson.Write(report, stream), stream => HeldPageWriter.Write(report, stream))));
    }

    private Request.Do OverFolder(ParseResult parsed, string all, DateOnly today)
    {
        if (parsed.GetValue(files) is { Length: > 0 } || parsed.GetValue(simple) is not null || parsed.GetValue(failOn) is not null)
        {
            throw new ArgumentProblem("--folder goes with --rules, --departures, --format and --output only. Write for example: laygate held --folder jobs --rules de");
        }

        var (names, permitted, target) = (Values.NotEmpty("--rules", parsed.GetValue(rules)), Values.NotEmpty("--departures", parsed.GetValue(departures)), Values.NotEmpty("--output", parsed.GetValue(output)));
        var form = RecordForms.Read(parsed.GetValue(format), RecordForms.Terminal, RecordForms.Json, RecordForms.Html);
        return new Request.Do(host => Count(host, all, names, permitted, today, target, form));
    }

    private static int Count(Host host, string all, IReadOnlyList<string> names, IReadOnlyList<string> permitted, DateOnly today, string? target, string form)
    {
        var (found, left) = RecordInputs.Below(all);
        var (book, departures, problems) = RecordInputs.Book(names, permitted, new SettingsOnDisk().For(Path.GetFullPath(all)));
        if (book is null)
        {
            return host.Streams.Refuse(problems);
        }

        var report = HeldFolder.Count(found, left, book, departures, today, host.Version);
        new ResultOutput(host.Streams).Write(target, RecordForms.Bytes(
            host.Streams, form, () => FeedbackLines.Of(report, host.Streams.Width), stream => FeedbackJson.Write(report, host.Version, stream), stream => FeedbackPageWriter.Write(report, host.Version, stream)));
        return report.Problems.Count > 0 ? ExitCodes.Findings : ExitCodes.Clean;
    }

    private static string OneOf(string option, string? given, params string[] words) => given is null ? words[0] : words.Contains(given, StringComparer.Ordinal) ? given : throw Values.NotKnown(option, given, words);

    private static int Run(Host host, Asked asked, bool strict, Func<HeldReport, byte[]> bytes)
    {
        ResultOutput.KeepApart(asked.Target, [asked.Plan, asked.Record, .. asked.Rules, .. asked.Departures]);
        var settings = RecordInputs.Settings(asked.Plan);
        var (book, permitted, problems) = RecordInputs.Book(asked.Rules, asked.Departures, settings);
        if (book is null)
        {
            return host.Streams.Refuse(problems);
        }

        if (RecordInputs.Open(host, asked.Plan, asked.Record) is not { } shift)
        {
            return ExitCodes.Unreadable;
        }

        var report = shift.Held(book, permitted, asked.Today, asked.Simple, host.Version);
        ResultOutput.KeepApart(asked.Target, report.Record.Files.Select(file => Path.Combine(asked.Record, file.File)));
        new ResultOutput(host.Streams).Write(asked.Target, bytes(report));
        return report.Gate == Status.Fail || ((strict || settings?.Settings?.FailOnWarn == true) && report.Gate == Status.Warn) ? ExitCodes.Findings : RecordInputs.Code(report.Refused);
    }

    private sealed record Asked(string Plan, string Record, IReadOnlyList<string> Rules, IReadOnlyList<string> Departures, string? Simple, DateOnly Today, string? Target);
}
