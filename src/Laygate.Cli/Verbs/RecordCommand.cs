using System.CommandLine;
using Laygate.Checking;
using Laygate.Checking.Scaffolding;
using Laygate.Cli.Arguments;
using Laygate.Cli.Files;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>record</c>: lays out the empty files of the record of a shift.</summary>
internal sealed class RecordCommand : Verb
{
    private const string Words = """
        Lays out the record of a shift: an empty CSV file for each kind of rows (load tickets,
        deliveries, stations, stops, temperatures, cores and so on) and record.yaml, which says
        what each column holds, in which unit and in which zone. An export that looks otherwise
        is read by changing record.yaml; raw files are never changed.

        Usage
          laygate record PLAN --into FOLDER

        Options
          --into FOLDER   the folder to make; what is there is never overwritten
          --help          show this

        Example
          laygate record night-1.yaml --into night-1-record

        """;

    private readonly Argument<string[]> file = new("PLAN") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string> into = new("--into");

    public RecordCommand()
        : base("record", Words)
    {
        Add(file);
        Add(into);
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        if (parsed.GetValue(file) is not [var name] || Values.NotEmpty("--into", parsed.GetValue(into)) is not { } folder)
        {
            throw new ArgumentProblem("Name one plan and the folder to make. Write for example: laygate record plan.yaml --into plan-record");
        }

        return new Request.Do(host => Run(host, name, folder));
    }

    private static int Run(Host host, string name, string folder)
    {
        var (input, bytes) = RecordInputs.Plan(host, name);
        if (bytes is null)
        {
            return ExitCodes.Unreadable;
        }

        var (files, problems) = RecordScaffold.For(new PlanTools(), input.Name, bytes, new PartFilesOnDisk());
        if (problems.Count > 0)
        {
            return host.Streams.Refuse(problems);
        }

        host.Streams.Text(string.Concat(NewFiles.Make(folder, files).Select(line => line + "\n")));
        return ExitCodes.Clean;
    }
}
