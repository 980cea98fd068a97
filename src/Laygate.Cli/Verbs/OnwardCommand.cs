using System.CommandLine;
using Laygate.Checking.Records;
using Laygate.Cli.Arguments;
using Laygate.Cli.Output;
using Laygate.Reporting.Records;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>onward</c>: the rest of a shift, planned anew from what its record says.</summary>
internal sealed class OnwardCommand : Verb
{
    private const string Words = """
        Plans the rest of a shift anew from what its record says of a moment: chance to finish, end
        with its range, longest stop, when a joint must be made, mix at risk, loads to call, and the
        one change that helps most. The simulation of the check goes on from where the paver, the
        trucks and the plants are now; what is recorded beats the plan.

        Usage
          laygate onward PLAN RECORD [options]

        RECORD is the folder with record.yaml; `laygate record` lays one out.

        Options
          --at TIME               the moment: 2027-05-15T01:40, with or without an offset, or 01:40
                                  of the shift; without it that of the last row
          --rules NAME|PATH       a specification whose assumptions hold, shipped or of your own; may be
                                  given several times. Rules of a laygate.yaml in the folder of the
                                  plan or above it hold too
          --full                  show what it started from and every change that was tried
          --format FORM           terminal (usual), json, or html for a phone
          --output FILE           write the result to a file
          --help                  show this

        What no file holds
          --closing TIME          when the site must be free, if not at the end of the shift
          --plant-down ID=TIME    the plant sends nothing until then; ID=end: not any more
          --rain TIME             rain stops laying for good
          --stands-until TIME     the paver stands until then
          --speed SPEED           average speed from now on, such as 2.2 m/min
          --end-at STATION        the work ends there, such as 1130 m; RUN=STATION where several do
          --trucks GROUP=COUNT    trucks of a group from now on; may be given again
          --roller-lost ID        the roller is lost; may be given again
          --air, --base TEMP      air and surface from now on, such as 8 °C
          --wind SPEED            wind from now on at the height of the forecast, such as 6 m/s

        Exit codes
          0  the whole record was read
          1  rows were refused; they are named, and the rest was used
          2  plan, record or arguments could not be read, or the shift cannot be simulated

        Example
          laygate onward night-1.yaml night-1-record --at 01:40 --plant-down plant-a=02:20

        """;

    private readonly Argument<string[]> files = new("PLAN RECORD") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string[]> rules = Values.Rules();
    private readonly Option<string> at = new("--at");
    private readonly Option<string> closing = new("--closing");
    private readonly Option<string> plantDown = new("--plant-down");
    private readonly Option<string> rain = new("--rain");
    private readonly Option<string> standsUntil = new("--stands-until");
    private readonly Option<string> speed = new("--speed");
    private readonly Option<string> endAt = new("--end-at");
    private readonly Option<string[]> trucks = new("--trucks") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
    private readonly Option<string[]> rollerLost = new("--roller-lost") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
    private readonly Option<string> air = new("--air");
    private readonly Option<string> below = new("--base");
    private readonly Option<string> wind = new("--wind");
    private readonly Option<bool> full = new("--full") { Arity = ArgumentArity.Zero };
    private readonly Option<string> format = new("--format");
    private readonly Option<string> output = new("--output");

    public OnwardCommand()
        : base("onward", Words)
    {
        Add(files);
        foreach (var option in (Option[])[at, closing, plantDown, rain, standsUntil, speed, endAt, trucks, rollerLost, air, below, wind, rules, full, format, output])
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
            throw new ArgumentProblem("Name one plan and the folder of its record. Write for example: laygate onward plan.yaml plan-record --at 01:40");
        }

        var form = RecordForms.Read(parsed.GetValue(format), RecordForms.Terminal, RecordForms.Json, RecordForms.Html);

        var texts = Events(parsed);
        var (moment, isFull, target) = (Text(parsed, at), parsed.GetValue(full), Text(parsed, output));
        var names = Values.NotEmpty("--rules", parsed.GetValue(rules));
        return new Request.Do(host => Run(host, plan, record, names, target, (shift, book) => shift.Onward(moment, texts, book, host.Version), report => RecordForms.Bytes(host.Streams, form, () => OnwardLines.Of(report, isFull), stream => OnwardJson.Write(report, stream), stream => OnwardPageWriter.Write(report, stream))));
    }

    private EventTexts Events(ParseResult parsed) => new()
    {
        Closing = Text(parsed, closing),
        PlantDown = Text(parsed, plantDown),
        Rain = Text(parsed, rain),
        StandsUntil = Text(parsed, standsUntil),
        Speed = Text(parsed, speed),
        EndAt = Text(parsed, endAt),
        Trucks = Values.NotEmpty("--trucks", parsed.GetValue(trucks)),
        RollersLost = Values.NotEmpty("--roller-lost", parsed.GetValue(rollerLost)),
        Air = Text(parsed, air),
        Base = Text(parsed, below),
        Wind = Text(parsed, wind),
    };

    private static string? Text(ParseResult parsed, Option<string> option) => Values.NotEmpty(option.Name, parsed.GetValue(option));

    private static int Run(
        Host host, string plan, string record, IReadOnlyList<string> names, string? target, Func<RecordedShift, RuleBook, (OnwardReport? Report, IReadOnlyList<Problem> Problems)> make, Func<OnwardReport, byte[]> bytes)
    {
        ResultOutput.KeepApart(target, [plan, record, .. names]);
        var (book, _, wrong) = RecordInputs.Book(names, [], RecordInputs.Settings(plan));
        if (book is null)
        {
            return host.Streams.Refuse(wrong);
        }

        if (RecordInputs.Open(host, plan, record) is not { } shift)
        {
            return ExitCodes.Unreadable;
        }

        var (report, problems) = make(shift, book);
        if (report is null)
        {
            return host.Streams.Refuse(problems);
        }

        ResultOutput.KeepApart(target, report.Record.Files.Select(file => Path.Combine(record, file.File)));
        new ResultOutput(host.Streams).Write(target, bytes(report));
        return RecordInputs.Code(report.Refused);
    }
}
