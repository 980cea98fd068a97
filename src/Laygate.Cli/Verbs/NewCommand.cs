using System.CommandLine;
using Laygate.Checking.Starting;
using Laygate.Cli.Arguments;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>new</c>: begins a plan, its measures, a specification, a rule or a departure.</summary>
internal sealed class NewCommand : Verb
{
    private const string HelpWords = """
        Begins a file. What only its author can know is left as a blank that is marked
        TO FILL IN, and the command says on which lines. Nothing is overwritten.

        Usage
          laygate new plan [ID] [answers]
          laygate new measures --for PLAN [--write]
          laygate new specification NAME
          laygate new rule FAMILY/NAME [--quantity QUANTITY] [--id ID]
          laygate new departure RULE ADDRESS [--rules NAME|PATH]…

        Options
          --into PATH            folder to write to; for a rule the folder of the
                                 specification or rule book it belongs to; for a
                                 departure the file, usually departures.yaml
          --for PLAN             the plan that needs measures
          --write                adds the measures to the plan; usually they are printed
          --quantity QUANTITY    what the rule checks; usually course.thickness
          --id ID                id of the rule; usually the next free one
          --rules NAME|PATH      specifications in force; may be repeated
          --help                 show this

        Answers for a plan; in a terminal, what is not answered is asked
          --answers FILE         answers in YAML, by the names below
          --uses FILE            files of parts that the plan uses; may be repeated
          --kind KIND            overlay, thin-overlay, mill-and-fill, two-courses or
                                 hot-on-hot
          --stage STAGE          concept, submission or release; usually concept
          --units UNITS          metric or us; usually metric
          --title TEXT           what the job is called
          --jurisdiction CODE    whose rules govern, such as DE, US-WA or none
          --mixes, --thickness   from bottom to top, divided by commas
          --width, --length      of a strip; --lanes NUMBER of them side by side
          --speed SPEED          of the paver while it lays
          --date, --start, --end of the shift; --night yes or no where they are open
          --traffic WORD         none, open-lane or one-lane-shuttle
          --plants, --trucks, --pavers, --rollers
                                 how many, or ids of parts, divided by commas
          --by-hand NAMES        places laid by hand, divided by commas, or how many
          --conditions WORDS     what holds on site, divided by commas, or none; the
                                 others are written as no

        Examples
          laygate new plan hill-road --kind overlay --stage release
          laygate new measures --for hill-road.yaml --write
          laygate new specification harbour-road
          laygate new rule layers/course-thinner-than-the-harbour-asks --into harbour-road

        """;

    private static readonly string[] Kinds = ["plan", "measures", "specification", "rule", "departure"];

    private readonly Argument<string[]> words = new("WORDS") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string> into = new("--into");
    private readonly Option<string> plan = new("--for");
    private readonly Option<bool> write = new("--write");
    private readonly Option<string> quantity = new("--quantity");
    private readonly Option<string> id = new("--id");
    private readonly Option<string[]> rules = Values.Rules();
    private readonly Option<string> answers = new("--answers");
    private readonly Option<string[]> uses = new("--uses") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
    private readonly IReadOnlyList<Option<string>> questions = [.. StartQuestions.Ids.Select(question => new Option<string>($"--{question}"))];

    public NewCommand()
        : base("new", HelpWords)
    {
        Add(words);
        foreach (var option in (Option[])[into, plan, write, quantity, id, rules, answers, uses, .. questions])
        {
            Add(option);
        }
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        var given = parsed.GetValue(words) ?? [];
        var target = Values.NotEmpty("--into", parsed.GetValue(into));
        var names = Values.NotEmpty("--rules", parsed.GetValue(rules));
        switch (given)
        {
            case ["plan", .. var ids] when ids.Length <= 1:
                var options = StartQuestions.Ids.Zip(questions.Select(option => Values.NotEmpty(option.Name, parsed.GetValue(option))))
                    .Where(pair => pair.Second is not null).ToDictionary(pair => pair.First, pair => pair.Second!, StringComparer.Ordinal);
                var request = new NewPlanRequest(ids.FirstOrDefault() ?? "plan", target ?? ".", options, Values.NotEmpty("--answers", parsed.GetValue(answers)), Values.NotEmpty("--uses", parsed.GetValue(uses)), names);
                return new Request.Do(host => new NewPlan(host, request).Run());
            case ["measures"]:
                var file = Values.Needed("--for", parsed.GetValue(plan));
                var inPlace = parsed.GetValue(write);
                return new Request.Do(host => NewMeasures.Run(host, file, names, inPlace));
            case ["specification", var name]:
                return new Request.Do(host => NewThings.Specification(host, name, target ?? "."));
            case ["rule", var name]:
                var about = Values.NotEmpty("--quantity", parsed.GetValue(quantity)) ?? "course.thickness";
                var number = Values.NotEmpty("--id", parsed.GetValue(id));
                return new Request.Do(host => NewThings.Rule(host, name, about, number, target ?? "."));
            case ["departure", var rule, var address]:
                return new Request.Do(host => NewThings.Departure(host, rule, address, names, target ?? "departures.yaml"));
            case [var kind, ..] when !Kinds.Contains(kind, StringComparer.Ordinal):
                throw Values.NotKnown("new", kind, Kinds);
            default:
                throw new ArgumentProblem("Say what to begin and its name. `laygate new --help` shows how.");
        }
    }
}
