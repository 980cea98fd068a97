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

        format.CompletionSources.Add(RecordForms.Terminal, RecordForms.Json, RecordForms.Html);
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        if (parsed.GetValue(files) is not [var plan, var record])
        {
            throw new ArgumentProblem("Name one plan and the folder of its record. Write for example: laygate ledger plan.yaml plan-record");
        }

        var form = RecordForms.Read(parsed.GetValue(format), RecordForms.Terminal, RecordForms.Json, RecordForms.Html);

        var (moment, isFull, target) = (Values.NotEmpty("--at", parsed.GetValue(at)), parsed.GetValue(full), Values.NotEmpty("--output", parsed.GetValue(output)));
        return new Request.Do(host => Run(host, plan, record, moment, target, report => RecordForms.Bytes(host.Streams, form, () => LedgerLines.Of(report, isFull), stream => LedgerJson.Write(report, stream), stream => LedgerPageWriter.Write(report, stream))));
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
}
