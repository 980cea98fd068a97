using System.CommandLine;
using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Cli.Files;
using Laygate.Cli.Output;
using Laygate.Reading.Departures;
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

        RECORD is the folder with record.yaml; `laygate record` lays one out.

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

    private const string Terminal = "terminal";
    private const string Json = "json";
    private const string Html = "html";

    private readonly Argument<string[]> files = new("PLAN RECORD") { Arity = ArgumentArity.ZeroOrMore };
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
        foreach (var option in (Option[])[rules, departures, simple, failOn, full, format, output])
        {
            Add(option);
        }

        format.CompletionSources.Add(Terminal, Json, Html);
        failOn.CompletionSources.Add("warn", "fail");
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        if (parsed.GetValue(files) is not [var plan, var record])
        {
            throw new ArgumentProblem("Name one plan and the folder of its record. Write for example: laygate held plan.yaml plan-record");
        }

        var form = OneOf("--format", parsed.GetValue(format), Terminal, Json, Html);
        var strict = OneOf("--fail-on", parsed.GetValue(failOn), "warn", "fail") is "warn";
        var asked = new Asked(
            plan, record, Values.NotEmpty("--rules", parsed.GetValue(rules)), Values.NotEmpty("--departures", parsed.GetValue(departures)), Values.NotEmpty("--simple", parsed.GetValue(simple)),
            Values.Today(clock), Values.NotEmpty("--output", parsed.GetValue(output)));
        var isFull = parsed.GetValue(full);
        return new Request.Do(host => Run(host, asked, strict, report => Bytes(host, report, form, isFull)));
    }

    private static string OneOf(string option, string? given, params string[] words) => given is null ? words[0] : words.Contains(given, StringComparer.Ordinal) ? given : throw Values.NotKnown(option, given, words);

    private static int Run(Host host, Asked asked, bool strict, Func<HeldReport, byte[]> bytes)
    {
        ResultOutput.KeepApart(asked.Target, [asked.Plan, asked.Record, .. asked.Rules, .. asked.Departures]);
        var (bound, _) = RuleBookOnDisk.Open(asked.Rules);
        if (bound.Book is not { } book)
        {
            return host.Streams.Refuse(bound.Problems);
        }

        var permitted = DepartureFiles.Load(asked.Departures, book, new RuleFilesOnDisk());
        if (permitted.Problems.Count > 0)
        {
            return host.Streams.Refuse(permitted.Problems);
        }

        if (RecordInputs.Open(host, asked.Plan, asked.Record) is not { } shift)
        {
            return ExitCodes.Unreadable;
        }

        var report = shift.Held(book, permitted.Departures, asked.Today, asked.Simple, host.Version);
        ResultOutput.KeepApart(asked.Target, report.Record.Files.Select(file => Path.Combine(asked.Record, file.File)));
        new ResultOutput(host.Streams).Write(asked.Target, bytes(report));
        return report.Gate == Status.Fail || (strict && report.Gate == Status.Warn) ? ExitCodes.Findings : RecordInputs.Code(report.Refused);
    }

    private static byte[] Bytes(Host host, HeldReport report, string form, bool full)
    {
        using var stream = new MemoryStream();
        switch (form)
        {
            case Json:
                HeldJson.Write(report, stream);
                break;
            case Html:
                HeldPageWriter.Write(report, stream);
                break;
            default:
                using (var writer = new StreamWriter(stream, Streams.Utf8, leaveOpen: true) { NewLine = "\n" })
                {
                    TerminalWriter.Write(writer, host.Streams.Colour, HeldLines.Of(report, full, host.Streams.Width));
                }

                break;
        }

        return stream.ToArray();
    }

    private sealed record Asked(string Plan, string Record, IReadOnlyList<string> Rules, IReadOnlyList<string> Departures, string? Simple, DateOnly Today, string? Target);
}
