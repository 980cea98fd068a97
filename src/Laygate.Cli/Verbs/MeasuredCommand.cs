using System.CommandLine;
using Laygate.Cli.Arguments;
using Laygate.Cli.Output;
using Laygate.Reporting.Records;
using Laygate.Rules.Results;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>measured</c>: temperatures of the mat as measured against those that the solver gives.</summary>
internal sealed class MeasuredCommand : Verb
{
    private const string Words = """
        Compares the temperatures of the mat in the record of a shift with those that the solver
        gives for their place and minute: laid when the record says, with the temperature of the
        loads and the weather that were measured. Says for each shift how many readings lie in the
        computed band and how far they are off on average. Nothing is fitted, no limit moves.

        Usage
          laygate measured PLAN RECORD [PLAN RECORD …] [options]

        RECORD is the folder with record.yaml; several shifts are shown one below the other.

        Options
          --full          show each reading beside its computed band
          --output FILE   write the result to a file
          --help          show this

        Exit codes
          0  the whole record was read
          1  rows were refused, or no reading could be compared
          2  plan, record or arguments could not be read

        Example
          laygate measured night-1.yaml night-1-record --full

        """;

    private readonly Argument<string[]> files = new("PLAN RECORD") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<bool> full = new("--full") { Arity = ArgumentArity.Zero };
    private readonly Option<string> output = new("--output");

    public MeasuredCommand()
        : base("measured", Words)
    {
        Add(files);
        Add(full);
        Add(output);
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        if (parsed.GetValue(files) is not { Length: > 0 } named || named.Length % 2 != 0)
        {
            throw new ArgumentProblem("Name each plan and the folder of its record. Write for example: laygate measured plan.yaml plan-record");
        }

        var (target, isFull) = (Values.NotEmpty("--output", parsed.GetValue(output)), parsed.GetValue(full));
        return new Request.Do(host => Run(host, named, target, isFull));
    }

    private static int Run(Host host, string[] named, string? target, bool full)
    {
        ResultOutput.KeepApart(target, named);
        var reports = new List<MeasuredReport>();
        for (var i = 0; i < named.Length; i += 2)
        {
            if (RecordInputs.Open(host, named[i], named[i + 1]) is not { } shift)
            {
                return ExitCodes.Unreadable;
            }

            reports.Add(shift.Measured());
        }

        new ResultOutput(host.Streams).Write(target, RecordForms.Bytes(host.Streams, RecordForms.Terminal, () => MeasuredLines.Of(reports, full)));
        return reports.TrueForAll(report => report.IsWhole) ? ExitCodes.Clean : ExitCodes.Findings;
    }
}
