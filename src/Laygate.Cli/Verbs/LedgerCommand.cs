using System.CommandLine;
using Laygate.Cli.Arguments;
using Laygate.Cli.Output;
using Laygate.Reporting.Records;
using Laygate.Rules.Results;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>ledger</c>: what was laid, against the plan, and what is left.</summary>
internal sealed class LedgerCommand : Verb
{
    private const string Words = """
        Says from the record of a shift what was laid, against the plan, and what is left: mass per
        length and per area and mean thickness of the shift and of the last five loads, tonnes to
        order, size of the last load, trucks on the way, stops, and when laying ends.

        Usage
          laygate ledger PLAN RECORD [options]

        RECORD is the folder with record.yaml; `laygate record` lays one out.

        Options
          --at TIME       the moment: 2027-05-15T01:40, with or without an offset, or 01:40 of the
                          shift; without it that of the last row. Later rows are not looked at
          --full          show the working, every remark and the hashes of the raw files
          --format FORM   terminal (default), json, or html for a phone
          --output FILE   write the result to a file
          --help          show this

        Exit codes
          0  the whole record was read
          1  rows were refused; they are named, and the rest was used
          2  plan, record or arguments could not be read

        Example
          laygate ledger night-1.yaml night-1-record --at 01:40

        """;

    private const string Terminal = "terminal";
    private const string Json = "json";
    private const string Html = "html";

    private readonly Argument<string[]> files = new("PLAN RECORD") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string> at = new("--at");
    private readonly Option<bool> full = new("--full") { Arity = ArgumentArity.Zero };
    private readonly Option<string> format = new("--format");
    private readonly Option<string> output = new("--output");

    public LedgerCommand()
        : base("ledger", Words)
    {
        Add(files);
        foreach (var option in (Option[])[at, full, format, output])
        {
            Add(option);
        }

        format.CompletionSources.Add(Terminal, Json, Html);
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        if (parsed.GetValue(files) is not [var plan, var record])
        {
            throw new ArgumentProblem("Name one plan and the folder of its record. Write for example: laygate ledger plan.yaml plan-record");
        }

        var form = parsed.GetValue(format) ?? Terminal;
        if (form is not (Terminal or Json or Html))
        {
            throw Values.NotKnown("--format", form, [Terminal, Json, Html]);
        }

        var (moment, isFull, target) = (Values.NotEmpty("--at", parsed.GetValue(at)), parsed.GetValue(full), Values.NotEmpty("--output", parsed.GetValue(output)));
        return new Request.Do(host => Run(host, plan, record, moment, target, report => Bytes(host, report, form, isFull)));
    }

    private static int Run(Host host, string plan, string record, string? moment, string? target, Func<LedgerReport, byte[]> bytes)
    {
        ResultOutput.KeepApart(target, [plan, record]);
        if (RecordInputs.Open(host, plan, record) is not { } shift)
        {
            return ExitCodes.Unreadable;
        }

        var (report, problem) = shift.Ledger(moment, host.Version);
        if (report is null)
        {
            return host.Streams.Refuse([problem!]);
        }

        ResultOutput.KeepApart(target, report.Record.Files.Select(file => Path.Combine(record, file.File)));
        new ResultOutput(host.Streams).Write(target, bytes(report));
        return RecordInputs.Code(report.Refused);
    }

    private static byte[] Bytes(Host host, LedgerReport report, string form, bool full)
    {
        using var stream = new MemoryStream();
        switch (form)
        {
            case Json:
                LedgerJson.Write(report, stream);
                break;
            case Html:
                LedgerPageWriter.Write(report, stream);
                break;
            default:
                using (var writer = new StreamWriter(stream, Streams.Utf8, leaveOpen: true) { NewLine = "\n" })
                {
                    TerminalWriter.Write(writer, host.Streams.Colour, LedgerLines.Of(report, full));
                }

                break;
        }

        return stream.ToArray();
    }
}
