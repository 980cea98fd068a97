using System.CommandLine;
using Laygate.Cli.Arguments;
using Laygate.Cli.Output;
using Laygate.Reporting.Records;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>trial</c>: what a trial length proves for a plan.</summary>
internal sealed class TrialCommand : Verb
{
    private const string Words = """
        Works out from the record of a trial length how density grew from pass to pass, how many
        passes that proves, and whether it speaks for this plan: mix, thickness, rollers, passes,
        weather.

        Usage
          laygate trial PLAN RECORD --growth DENSITY [options]

        RECORD is the folder of the record of the trial length, with `density` after each pass in
        roller-passes; its stations need not be those of the plan.

        Options
          --growth DENSITY   gain per pass below which more passes are not worth it, as the
                             specification or the client has it, for example '16 kg/m3'
          --course ID        the course, where the plan has several
          --format FORM      terminal (usual), json, or html: one page
          --output FILE      write the result to a file
          --help             show this

        Exit codes
          0  a pattern is proven, and the trial length is like the plan in every respect
          1  no pattern is proven, trial and plan differ or a respect is not recorded, or rows
             were refused
          2  plan, record or arguments could not be read

        Example
          laygate trial night-1.yaml trial-record --course upper --growth '16 kg/m3'

        """;

    private readonly Argument<string[]> files = new("PLAN RECORD") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string> growth = new("--growth");
    private readonly Option<string> course = new("--course");
    private readonly Option<string> format = new("--format");
    private readonly Option<string> output = new("--output");

    public TrialCommand()
        : base("trial", Words)
    {
        Add(files);
        foreach (var option in (Option[])[growth, course, format, output])
        {
            Add(option);
        }

        format.CompletionSources.Add(RecordForms.Terminal, RecordForms.Json, RecordForms.Html);
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        if (parsed.GetValue(files) is not [var plan, var record] || Values.NotEmpty("--growth", parsed.GetValue(growth)) is not { } gain)
        {
            throw new ArgumentProblem("Name one plan, the folder of the record of its trial length, and the growth. Write for example: laygate trial plan.yaml trial-record --growth '16 kg/m3'");
        }

        var (id, target) = (Values.NotEmpty("--course", parsed.GetValue(course)), Values.NotEmpty("--output", parsed.GetValue(output)));
        var form = RecordForms.Read(parsed.GetValue(format), RecordForms.Terminal, RecordForms.Json, RecordForms.Html);
        return new Request.Do(host => Run(host, plan, record, id, gain, target, form));
    }

    private static int Run(Host host, string plan, string record, string? id, string gain, string? target, string form)
    {
        ResultOutput.KeepApart(target, [plan, record]);
        if (RecordInputs.Open(host, plan, record) is not { } shift)
        {
            return ExitCodes.Unreadable;
        }

        var (report, problem) = shift.Trial(id, gain);
        if (report is null)
        {
            return host.Streams.Refuse([problem!]);
        }

        ResultOutput.KeepApart(target, report.Record.Files.Select(file => Path.Combine(record, file.File)));
        new ResultOutput(host.Streams).Write(target, RecordForms.Bytes(
            host.Streams, form, () => TrialLines.Of(report, host.Streams.Width), stream => TrialJson.Write(report, host.Version, stream), stream => TrialPageWriter.Write(report, host.Version, stream)));
        return report.SpeaksForPlan ? RecordInputs.Code(report.Refused) : ExitCodes.Findings;
    }
}
