using System.CommandLine;
using Laygate.Checking;
using Laygate.Checking.Sizing;
using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Cli.Files;
using Laygate.Cli.Output;
using Laygate.Model.Measures;
using Laygate.Reading.Measures;
using Laygate.Reading.Parts;
using Laygate.Reporting.Sizing;
using Laygate.Rules.Results;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>size</c>: what a job takes, before anything of it is fixed.</summary>
internal sealed class SizeCommand : Verb
{
    private const string Words = """
        Sizes a plan at first sight: mix, trucks, rollers, the time that the mat stays hot,
        the length of a shift. Usual values stand in for what the plan leaves open, with
        ranges; each line names the rule that it meets later and what to state first.

        Usage
          laygate size PLAN [options]

        Options
          --rules NAME|PATH   lay a specification over general practice; may be repeated
          --full              working of each line, and the sources of usual values
          --months LIST       mean temperature of each month from January on, divided by
                              commas, such as "1 °C, 2 °C, …": the latest month then
          --format FORMAT     console (usual) or json
          --output FILE       write the result to a file
          --output json=FILE  write it also as JSON
          --help              show this

        Example
          laygate size examples/concept-fifteen-lines.yaml

        """;

    private readonly Argument<string[]> file = new("PLAN") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string[]> rules = Values.Rules();
    private readonly Option<bool> full = new("--full");
    private readonly Option<string> months = new("--months");
    private readonly Option<string> format = new("--format");
    private readonly Option<string[]> output = new("--output") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };

    public SizeCommand()
        : base("size", Words)
    {
        foreach (var option in (Option[])[rules, full, months, format, output])
        {
            Add(option);
        }

        Add(file);
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        if (parsed.GetValue(file) is not [var name])
        {
            throw new ArgumentProblem("Name one plan. Write for example: laygate size plan.yaml");
        }

        var names = Values.NotEmpty("--rules", parsed.GetValue(rules));
        var inFull = parsed.GetValue(full);
        var targets = OutputTargets.Of(Values.Word<OutputFormat>("--format", parsed.GetValue(format)), Values.NotEmpty("--output", parsed.GetValue(output)));
        var climate = Months(Values.NotEmpty("--months", parsed.GetValue(months)));
        return targets.FirstOrDefault(target => target.Format is not (OutputFormat.Console or OutputFormat.Json)) is { } other
            ? throw new ArgumentProblem($"A sizing has the forms console and json, not `{Model.Plans.Words.Of(other.Format)}`.")
            : new Request.Do(host => Run(host, name, names, targets, climate, inFull));
    }

    private static IReadOnlyList<SizingWeather> Months(string? list)
    {
        const int inAYear = 12;
        if (list is null)
        {
            return [];
        }

        var means = list.Split(',', StringSplitOptions.TrimEntries).Select(text => MeasureReader.Read(text, Dimension.Temperature, out var problem) is var (number, unit)
            ? new SizingWeather(number, unit.Spelling)
            : throw new ArgumentProblem($"--months: {problem!.Message} {problem.Hint}")).ToList();
        return means.Count == inAYear ? means : throw new ArgumentProblem("--months needs the mean temperatures of twelve months, from January on, divided by commas.");
    }

    private static int Run(Host host, string name, IReadOnlyList<string> names, IReadOnlyList<OutputTarget> targets, IReadOnlyList<SizingWeather> climate, bool full)
    {
        if (new PlanFiles(host.Streams.Input, "standard input").Find([name]) is not [var input])
        {
            throw new ArgumentProblem($"`{name}` names more than one file.");
        }

        var (bound, _) = RuleBookOnDisk.Open(names);
        if (bound.Book is not { } book)
        {
            return host.Streams.Refuse(bound.Problems);
        }

        var (bytes, problem) = PlanBytes.Read(input);
        if (bytes is null)
        {
            return host.Streams.Refuse([problem!]);
        }

        var files = new PartFilesOnDisk();
        var result = new PlanSizer(new PlanTools(), book).Size(input.Name, bytes, files, climate);
        foreach (var target in targets)
        {
            ResultOutput.KeepApart(target.File, [name, .. WholePlan.FilesOf(input.Name, bytes, files)]);
            Write(host, result, target, full);
        }

        return result.Problems.Count > 0 ? host.Streams.Refuse(result.Problems) : ExitCodes.Clean;
    }

    private static void Write(Host host, SizingResult result, OutputTarget target, bool full)
    {
        var written = new ResultOutput(host.Streams);
        if (target.Format is OutputFormat.Json)
        {
            using var bytes = new MemoryStream();
            SizingJson.Write(bytes, host.Version, [result]);
            written.Write(target.File, bytes.ToArray());
            return;
        }

        var lines = result.Plans.SelectMany(plan => SizingLines.Lines(result.File, plan, target.File is null ? host.Streams.Width : Streams.UsualWidth, full)).ToList();
        if (target.File is null)
        {
            host.Streams.Lines(lines);
        }
        else
        {
            written.Write(target.File, string.Concat(lines.Select(line => line.Text + "\n")));
        }
    }
}
