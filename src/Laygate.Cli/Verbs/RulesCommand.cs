using System.CommandLine;
using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Reading.RuleFiles;
using Laygate.Reporting.Rules;
using Laygate.Rules.Merging;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>rules</c>: lists rules, prints the merged book, or runs cases.</summary>
internal sealed class RulesCommand : Verb
{
    private const string Words = """
        Lists the rules, prints the merged rule book, or runs the cases of rules.

        Usage
          laygate rules [options]
          laygate rules --merged [--rules NAME|PATH]…
          laygate rules --test [FOLDER]

        Options
          --rules NAME|PATH      lay a specification over general practice; may be repeated
          --family FAMILY        only rules of a family, such as layers or weather
          --jurisdiction CODE    only rules that hold in a place, such as DE or US-WA
          --evidence WORD        only rules with a limit that is: read, second-hand,
                                 recalled, derived, common-practice, judgement, confirmed
          --in-force             only rules in force
          --format FORMAT        console (usual) or json
          --merged               print the merged book with the layer of each limit and
                                 its hash; conflicts, entries that change nothing and
                                 attempts to weaken a rule that guards lives are errors
          --test [FOLDER]        run every case of the shipped rules, or of a rule book
                                 or specification of your own
          --date YYYY-MM-DD      day of checking for cases that give none; usually today
          --help                 show this

        Exit codes
          0  done; every case holds
          1  a case does not hold
          2  rules or arguments could not be read

        Example
          laygate rules --rules us-wa --family weather --in-force

        """;

    private readonly Option<string[]> rules = Values.Rules();
    private readonly Option<string> family = new("--family");
    private readonly Option<string> jurisdiction = new("--jurisdiction");
    private readonly Option<string> evidence = new("--evidence");
    private readonly Option<bool> inForce = new("--in-force") { Arity = ArgumentArity.Zero };
    private readonly Option<string> format = new("--format");
    private readonly Option<bool> merged = new("--merged") { Arity = ArgumentArity.Zero };
    private readonly Option<string?> test = new("--test") { Arity = ArgumentArity.ZeroOrOne };
    private readonly Option<string> date = new("--date");

    public RulesCommand()
        : base("rules", Words)
    {
        foreach (var option in (Option[])[rules, family, jurisdiction, evidence, inForce, format, merged, test, date])
        {
            Add(option);
        }

        evidence.CompletionSources.Add([.. RuleFilter.EvidenceWords]);
        format.CompletionSources.Add([.. Laygate.Model.Plans.Words.Of<OutputFormat>()]);
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        if (parsed.GetResult(test) is not null)
        {
            var folder = Values.NotEmpty("--test", parsed.GetValue(test));
            var day = Values.Day(parsed.GetValue(date)) ?? Values.Today(clock);
            return new Request.Do(host => new RuleTestRunner(host.Streams).Run(folder, day));
        }

        var names = Values.NotEmpty("--rules", parsed.GetValue(rules));
        if (parsed.GetValue(merged))
        {
            return new Request.Do(host => With(host, names, book => host.Streams.Text($"{book.Text}hash {book.Hash}\n")));
        }

        var filter = Filter(parsed);
        var asJson = Values.Word<OutputFormat>("--format", parsed.GetValue(format)) == OutputFormat.Json;
        return new Request.Do(host => With(host, names, book =>
        {
            if (asJson)
            {
                RuleJson.Write(host.Streams.Out, book, filter);
                host.Streams.Out.Flush();
            }
            else
            {
                host.Streams.Lines(RuleList.Lines(book, filter, host.Streams.Width));
            }
        }));
    }

    private RuleFilter Filter(ParseResult parsed)
    {
        var chosen = parsed.GetValue(family);
        if (chosen is not null && !RuleFileReader.Families.Contains(chosen, StringComparer.Ordinal))
        {
            throw Values.NotKnown("--family", chosen, RuleFileReader.Families);
        }

        var known = parsed.GetValue(evidence);
        return known is null || RuleFilter.EvidenceWords.Contains(known, StringComparer.Ordinal)
            ? new RuleFilter(chosen, Values.NotEmpty("--jurisdiction", parsed.GetValue(jurisdiction)), known, parsed.GetValue(inForce))
            : throw Values.NotKnown("--evidence", known, RuleFilter.EvidenceWords);
    }

    private static int With(Host host, IReadOnlyList<string> names, Action<RuleBook> act)
    {
        var (bound, _) = RuleBookOnDisk.Open(names);
        if (bound.Book is not { } book)
        {
            return host.Streams.Refuse(bound.Problems);
        }

        act(book);
        return ExitCodes.Clean;
    }
}
