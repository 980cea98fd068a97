using System.CommandLine;
using Laygate.Checking.Importing;
using Laygate.Cli.Arguments;
using Laygate.Cli.Files;
using Laygate.Cli.Output;
using Laygate.Reading.Imports;
using Laygate.Reading.Plans;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>import</c>: hours of weather, trucks, plants and loads from files of others, as YAML.</summary>
internal sealed class ImportCommand : Verb
{
    private const string Words = """
        Imports a list from outside and prints it as YAML, with name and hash of its file. One
        bad row, and nothing is written.

        Usage
          laygate import weather|trucks|plants|loads FILE --mapping MAP [--output OUT]
          laygate import weather FILE --format geojson [--zone ZONE] [--from MOMENT]
            [--until MOMENT] [--output OUT]
          laygate import weather FILE … --into PLAN

        A mapping declares how a CSV is written: columns, units, zone, encoding, delimiter
        and decimal mark. `geojson` is the point forecast of the Norwegian Meteorological
        Institute, which serves any place on earth. Weather becomes a section of a plan,
        the other lists a file of parts; loads become groups of trucks.

        Options
          --mapping MAP    how the CSV is written; `laygate schema import` describes it
          --format FORMAT  geojson
          --zone ZONE      zone in which the hours are written, such as Europe/Berlin or
                           +02:00; usually that of the file
          --from MOMENT    first hour that is wanted, such as 2031-06-12T18:00+02:00
          --until MOMENT   last hour that is wanted
          --output OUT     write to a file; it must not be there yet
          --into PLAN      put the hours into a plan in place of its own; every other
                           line stays as it is
          --help           show this

        Example
          laygate import weather forecast.csv --mapping forecast-map.yaml --output weather.yaml

        """;

    private static readonly string[] Formats = ["geojson"];

    private readonly Argument<string[]> words = new("WORDS") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string> mapping = new("--mapping");
    private readonly Option<string> format = new("--format");
    private readonly Option<string> zone = new("--zone");
    private readonly Option<string> from = new("--from");
    private readonly Option<string> until = new("--until");
    private readonly Option<string> output = new("--output");
    private readonly Option<string> into = new("--into");

    public ImportCommand()
        : base("import", Words)
    {
        Add(words);
        foreach (var option in (Option[])[mapping, format, zone, from, until, output, into])
        {
            Add(option);
        }
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        if (parsed.GetValue(words) is not [var kind, var file])
        {
            throw new ArgumentProblem("Say what to import and from which file. `laygate import --help` shows how.");
        }

        if (!TableImport.Kinds.Contains(kind, StringComparer.Ordinal))
        {
            throw Values.NotKnown("import", kind, TableImport.Kinds);
        }

        var map = Values.NotEmpty("--mapping", parsed.GetValue(mapping));
        var form = parsed.GetValue(format) is { } name && !Formats.Contains(name, StringComparer.Ordinal) ? throw new ArgumentProblem($"--format takes geojson, not `{name}`; for a CSV name its --mapping.") : parsed.GetValue(format);
        if ((map is null) == (form is null) || (form is not null && kind is not "weather"))
        {
            throw new ArgumentProblem(kind is "weather" ? "Name either the --mapping of a CSV, or --format geojson." : $"Name the --mapping of the list: a CSV with {kind}.");
        }

        var (hours, first, last) = (parsed.GetValue(zone), parsed.GetValue(from), parsed.GetValue(until));
        if (form is null && (hours ?? first ?? last) is not null)
        {
            throw new ArgumentProblem("--zone, --from and --until go with --format geojson; a mapping names its zone itself.");
        }

        var (target, plan) = (Values.NotEmpty("--output", parsed.GetValue(output)), Values.NotEmpty("--into", parsed.GetValue(into)));
        if (plan is not null && (target is not null || kind is not "weather"))
        {
            throw new ArgumentProblem("--into goes with weather, and without --output.");
        }

        return new Request.Do(host => Run(host, (target, plan), Values.NotEmpty("FILE", file)!, map, (bytes, reader) => map is { } known
            ? Table(kind, file, bytes, known, reader)
            : ForecastImport.Read(file, bytes, hours, first, last, reader)));
    }

    private static int Run(Host host, (string? Output, string? Plan) target, string file, string? map, Func<byte[], PlanReader, Import> read)
    {
        ResultOutput.KeepApart(target.Output ?? target.Plan, map is null ? [file] : [file, map]);
        if (target.Output is { } path && Path.Exists(path))
        {
            throw new ArgumentProblem($"`{path}` is there already; nothing is overwritten.");
        }

        var reader = new PlanReader();
        var import = LoadGroups.OfLoads(read(PlanBytes.Needed(file, TableImport.LargestFile), reader), reader);
        if (import.Problems.Count > 0)
        {
            return host.Streams.Refuse(import.Problems);
        }

        if (import.Notes.Count > 0)
        {
            host.Streams.Refuse(import.Notes);
        }

        if (target.Plan is { } plan)
        {
            ResultOutput.WriteFile(plan, WeatherEdit.Into(PlanBytes.Needed(plan), import) ?? throw new ArgumentProblem($"`{plan}` is not changed: it cannot be read, or is written in a form into which no hours can be put safely. Print them without --into and paste them."));
        }
        else
        {
            new ResultOutput(host.Streams).Write(target.Output, ImportText.Write(import));
        }

        return ExitCodes.Clean;
    }

    private static Import Table(string kind, string file, byte[] bytes, string map, PlanReader reader) => TableImport.Read(kind, file, bytes, map, PlanBytes.Needed(map), reader);
}
