using System.CommandLine;
using Laygate.Cli.Arguments;
using Laygate.Model.Plans;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>new</c>: begins a plan, a specification, a rule or a departure.</summary>
internal sealed class NewCommand : Verb
{
    private const string HelpWords = """
        Begins a file. What only its author can know is left as a blank that is marked
        TO FILL IN, and the command says on which lines. Nothing is overwritten.

        Usage
          laygate new plan [ID] --stage concept|submission|release
          laygate new specification NAME
          laygate new rule FAMILY/NAME [--quantity QUANTITY] [--id ID]
          laygate new departure RULE ADDRESS [--rules NAME|PATH]…

        Options
          --into PATH            folder to write to; for a rule the folder of the
                                 specification or rule book it belongs to; for a
                                 departure the file, usually departures.yaml
          --stage STAGE          stage of the plan; usually concept
          --quantity QUANTITY    what the rule checks; usually course.thickness
          --id ID                id of the rule; usually the next free one
          --rules NAME|PATH      specifications in force; may be repeated
          --help                 show this

        Example
          laygate new specification harbour-road
          laygate new rule layers/course-thinner-than-the-harbour-asks --into harbour-road

        """;

    private static readonly string[] Kinds = ["plan", "specification", "rule", "departure"];

    private readonly Argument<string[]> words = new("WORDS") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string> into = new("--into");
    private readonly Option<string> stage = new("--stage");
    private readonly Option<string> quantity = new("--quantity");
    private readonly Option<string> id = new("--id");
    private readonly Option<string[]> rules = Values.Rules();

    public NewCommand()
        : base("new", HelpWords)
    {
        Add(words);
        foreach (var option in (Option[])[into, stage, quantity, id, rules])
        {
            Add(option);
        }
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        var given = parsed.GetValue(words) ?? [];
        var target = Values.NotEmpty("--into", parsed.GetValue(into));
        switch (given)
        {
            case ["plan", .. var names] when names.Length <= 1:
                var wanted = Values.Word<Stage>("--stage", parsed.GetValue(stage)) ?? Stage.Concept;
                return new Request.Do(host => NewThings.Plan(host, names.FirstOrDefault() ?? "plan", wanted, target ?? "."));
            case ["specification", var name]:
                return new Request.Do(host => NewThings.Specification(host, name, target ?? "."));
            case ["rule", var name]:
                var about = Values.NotEmpty("--quantity", parsed.GetValue(quantity)) ?? "course.thickness";
                var number = Values.NotEmpty("--id", parsed.GetValue(id));
                return new Request.Do(host => NewThings.Rule(host, name, about, number, target ?? "."));
            case ["departure", var rule, var address]:
                var names2 = Values.NotEmpty("--rules", parsed.GetValue(rules));
                return new Request.Do(host => NewThings.Departure(host, rule, address, names2, target ?? "departures.yaml"));
            case [var kind, ..] when !Kinds.Contains(kind, StringComparer.Ordinal):
                throw Values.NotKnown("new", kind, Kinds);
            default:
                throw new ArgumentProblem("Say what to begin and its name. `laygate new --help` shows how.");
        }
    }
}
