using System.CommandLine;
using Laygate.Cli.Arguments;
using Laygate.Cli.Files;
using Laygate.Cli.Output;
using Laygate.Reading.Parts;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>expand</c>: a plan and the parts that it uses as one file.</summary>
internal sealed class ExpandCommand : Verb
{
    private const string Words = """
        Prints a plan with all parts that it uses written out: one file that stands alone and
        checks to the same findings. Of a job of several shifts it prints the plan of each
        shift, or of one. Comments are not carried over.

        Usage
          laygate expand PLAN [options]

        Options
          --shift ID      only this shift of a job
          --output FILE   write the plan to a file
          --help          show this

        Example
          laygate expand jobs/night-1.yaml --output night-1-whole.yaml

        """;

    private readonly Argument<string[]> file = new("PLAN") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string> shift = new("--shift");
    private readonly Option<string> output = new("--output");

    public ExpandCommand()
        : base("expand", Words)
    {
        Add(file);
        Add(shift);
        Add(output);
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        if (parsed.GetValue(file) is not [var name])
        {
            throw new ArgumentProblem("Name one plan. Write for example: laygate expand plan.yaml");
        }

        var target = Values.NotEmpty("--output", parsed.GetValue(output));
        var chosen = Values.NotEmpty("--shift", parsed.GetValue(shift));
        return new Request.Do(host => Run(host, name, chosen, target));
    }

    private static int Run(Host host, string name, string? chosen, string? target)
    {
        ResultOutput.KeepApart(target, [name]);
        if (new PlanFiles(host.Streams.Input, "standard input").Find([name]) is not [var input])
        {
            throw new ArgumentProblem($"`{name}` names more than one file.");
        }

        var (bytes, problem) = PlanBytes.Read(input);
        if (bytes is null)
        {
            return host.Streams.Refuse([problem!]);
        }

        var (text, uses, problems) = WholePlan.Of(input.Name, bytes, new PartFilesOnDisk(), chosen);
        if (text is null)
        {
            return host.Streams.Refuse(problems);
        }

        ResultOutput.KeepApart(target, uses);
        new ResultOutput(host.Streams).Write(target, text);
        return ExitCodes.Clean;
    }
}
