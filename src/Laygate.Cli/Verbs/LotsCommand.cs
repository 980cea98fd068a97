using System.CommandLine;
using System.Globalization;
using Laygate.Cli.Arguments;
using Laygate.Cli.Files;
using Laygate.Cli.Output;
using Laygate.Reading.Acceptance;
using Laygate.Reporting.Records;
using Laygate.Rules.Acceptance;
using Laygate.Rules.Results;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>lots</c>: random places before laying, and what the results of a record come to by an acceptance scheme.</summary>
internal sealed class LotsCommand : Verb
{
    private const string Words = """
        Draws the random places of a plan's lots by an acceptance scheme, and says from the record
        of the shift what its results come to: percent within limits, means, thickness, voids,
        thermal profiles, gauges against cores, outliers, pay where the publication has it. Each
        number stands with what it follows from, so that the other side can do it again.

        Usage
          laygate lots PLAN [RECORD] --scheme NAME|FILE [options]

        Without RECORD only the places are drawn.

        Options
          --scheme NAME|FILE   a shipped scheme, or a file of your own; --scheme list lists them
          --seed NUMBER        seed of the draw; usually 1
          --full               show results, working and the rows they come from
          --format FORM        terminal (usual), or html
          --output FILE        write the result to a file
          --help               show this

        Exit codes
          0  every lot is accepted in full, or only places were drawn
          1  a lot is not accepted in full or not decided, or rows were refused
          2  plan, record, scheme or arguments could not be read

        Example
          laygate lots night-1.yaml night-1-record --scheme ufgs-02749 --seed 4711

        """;

    private const string List = "list";

    private readonly Argument<string[]> files = new("PLAN RECORD") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string> scheme = new("--scheme");
    private readonly Option<string> seed = new("--seed");
    private readonly Option<bool> full = new("--full") { Arity = ArgumentArity.Zero };
    private readonly Option<string> format = new("--format");
    private readonly Option<string> output = new("--output");

    public LotsCommand()
        : base("lots", Words)
    {
        Add(files);
        foreach (var option in (Option[])[scheme, seed, full, format, output])
        {
            Add(option);
        }

        format.CompletionSources.Add(RecordForms.Terminal, RecordForms.Html);
        scheme.CompletionSources.Add([.. SchemeReader.Shipped]);
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        var name = Values.NotEmpty("--scheme", parsed.GetValue(scheme));
        if (name is List)
        {
            return new Request.Do(host => Listed(host));
        }

        var named = parsed.GetValue(files) ?? [];
        if (named.Length is not (1 or 2) || name is null)
        {
            throw new ArgumentProblem("Name one plan, the folder of its record, and a scheme. Write for example: laygate lots plan.yaml plan-record --scheme ufgs-02749");
        }

        var form = RecordForms.Read(parsed.GetValue(format), RecordForms.Terminal, RecordForms.Html);

        var number = Seed(parsed.GetValue(seed));
        var (target, isFull) = (Values.NotEmpty("--output", parsed.GetValue(output)), parsed.GetValue(full));
        return new Request.Do(host => Run(host, named[0], named.Length > 1 ? named[1] : null, name, number, target, report => RecordForms.Bytes(host.Streams, form, () => LotLines.Of(report, isFull), page: stream => LotPageWriter.Write(report, stream))));
    }

    private static ulong Seed(string? text) => text is null ? 1
        : ulong.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : throw new ArgumentProblem($"--seed needs a whole number, not `{text}`.");

    private static int Listed(Host host)
    {
        foreach (var name in SchemeReader.Shipped)
        {
            var (found, problems) = SchemeReader.Open(name, new RuleFilesOnDisk());
            if (found is null)
            {
                return host.Streams.Refuse(problems);
            }

            host.Streams.Text($"{name}: {found.Title}. {found.Issuer}, {found.Edition}.\n");
        }

        return ExitCodes.Clean;
    }

    private static int Run(Host host, string plan, string? record, string name, ulong number, string? target, Func<AcceptanceReport, byte[]> bytes)
    {
        ResultOutput.KeepApart(target, [plan, name]);
        var (opened, problems) = SchemeReader.Open(name, new RuleFilesOnDisk());
        if (opened is null)
        {
            return host.Streams.Refuse(problems);
        }

        if (RecordInputs.Open(host, plan, record) is not { } shift)
        {
            return ExitCodes.Unreadable;
        }

        var report = shift.Lots(opened, number, host.Version);
        new ResultOutput(host.Streams).Write(target, bytes(report));
        var open = record is not null && report.Lots.SelectMany(lot => lot.Characteristics).Any(one => one.Verdict != LotVerdict.Accept);
        return open ? ExitCodes.Findings : RecordInputs.Code(report.Refused);
    }
}
