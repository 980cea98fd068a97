using System.CommandLine;
using Laygate.Checking.Cases;
using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Reading.Schema;
using Laygate.Reporting.Rules;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>explain</c>: one rule in full.</summary>
internal sealed class ExplainCommand : Verb
{
    private const string Words = """
        Shows one rule in full: why, on what it looks and when, its limits with source,
        how each is known and who set it, what to do, whom to ask, and its cases.

        Usage
          laygate explain RULE [options]

        RULE is an id such as LAY-001, or family and name.

        Options
          --rules NAME|PATH      lay a specification over general practice; may be repeated
          --format FORMAT        console (usual) or json
          --help                 show this

        Example
          laygate explain WEA-001 --rules us-wa

        """;

    private readonly Argument<string[]> rule = new("RULE") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string[]> rules = Values.Rules();
    private readonly Option<string> format = new("--format");

    public ExplainCommand()
        : base("explain", Words)
    {
        Add(rule);
        Add(rules);
        Add(format);
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        if (parsed.GetValue(rule) is not [{ Length: > 0 } id])
        {
            throw new ArgumentProblem("Name one rule. Write for example: laygate explain LAY-001");
        }

        var names = Values.NotEmpty("--rules", parsed.GetValue(rules));
        var asJson = Values.Word<OutputFormat>("--format", parsed.GetValue(format)) == OutputFormat.Json;
        return new Request.Do(host => Run(host, id, names, asJson));
    }

    private static int Run(Host host, string id, IReadOnlyList<string> names, bool asJson)
    {
        var (bound, _) = RuleBookOnDisk.Open(names);
        if (bound.Book is not { } book)
        {
            return host.Streams.Refuse(bound.Problems);
        }

        var found = Find(book, id);
        var cases = Cases(found.Rule.Definition.Id);
        if (asJson)
        {
            RuleJson.Write(host.Streams.Out, book, found, cases);
            host.Streams.Out.Flush();
        }
        else
        {
            host.Streams.Lines(RuleExplanation.Lines(book, found, cases, host.Streams.Width));
        }

        return ExitCodes.Clean;
    }

    private static MergedRule Find(RuleBook book, string id)
    {
        var found = book.All.FirstOrDefault(merged => string.Equals(merged.Rule.Definition.Id, id, StringComparison.OrdinalIgnoreCase)
            || string.Equals($"{merged.Rule.Definition.Family}/{merged.Rule.Definition.Name}", id, StringComparison.Ordinal));
        if (found is not null)
        {
            return found;
        }

        var known = book.All.SelectMany(merged => new[] { merged.Rule.Definition.Id, $"{merged.Rule.Definition.Family}/{merged.Rule.Definition.Name}" });
        var near = NearestNames.Of(id, known) is [var meant, ..] ? $" Did you mean {meant}?" : " `laygate rules` lists them.";
        throw new ArgumentProblem($"There is no rule `{id}`.{near}");
    }

    private static IReadOnlyList<CaseSummary> Cases(string id) => RuleTestRunner.Shipped() is { } shipped ? RuleTests.Cases(shipped, id) : [];
}
