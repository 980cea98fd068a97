using System.CommandLine;
using Laygate.Checking;
using Laygate.Checking.Cases;
using Laygate.Checking.Keys;
using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Reading.Schema;
using Laygate.Reporting.Keys;
using Laygate.Reporting.Rules;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>explain</c>: one rule in full, or a key of a plan.</summary>
internal sealed class ExplainCommand : Verb
{
    private const string Words = """
        Shows one rule in full: why, on what it looks and when, its limits with source,
        how each is known and who set it, what to do, whom to ask, and its cases. Or a
        key of a plan: what it means, what may stand there, and which rules ask for it.

        Usage
          laygate explain RULE|KEY [options]

        RULE is an id such as LAY-001, or family and name. KEY is a path such as
        courses.thickness, or its last key.

        Options
          --rules NAME|PATH      lay a specification over general practice; may be repeated
          --format FORMAT        console (usual), or json for a rule
          --help                 show this

        Examples
          laygate explain WEA-001 --rules us-wa
          laygate explain courses.thickness

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
            throw new ArgumentProblem("Name one rule or key. Write for example: laygate explain LAY-001");
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

        if (Find(book, id) is not { } found)
        {
            return Key(host, book, id, asJson);
        }

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

    private static MergedRule? Find(RuleBook book, string id) =>
        book.All.FirstOrDefault(merged => string.Equals(merged.Rule.Definition.Id, id, StringComparison.OrdinalIgnoreCase)
            || string.Equals($"{merged.Rule.Definition.Family}/{merged.Rule.Definition.Name}", id, StringComparison.Ordinal));

    private static int Key(Host host, RuleBook book, string name, bool asJson)
    {
        var keys = PlanKeys.Of(new PlanTools(), book);
        var found = PlanKeys.Find(keys, name);
        if (found.Count == 0)
        {
            var others = PlanKeys.OfOtherFiles(keys);
            found = PlanKeys.Find(others, name) is { Count: > 0 } other ? other : throw Unknown(book, [.. keys, .. others], name);
        }

        if (asJson)
        {
            throw new ArgumentProblem("A key is shown on the console only; `laygate schema plan` prints the schema for programs.");
        }

        host.Streams.Lines(KeyExplanation.Lines(found, book, host.Streams.Width));
        return ExitCodes.Clean;
    }

    private static ArgumentProblem Unknown(RuleBook book, IReadOnlyList<PlanKey> keys, string name)
    {
        var known = book.All.SelectMany(merged => new[] { merged.Rule.Definition.Id, $"{merged.Rule.Definition.Family}/{merged.Rule.Definition.Name}" });
        if (NearestNames.Of(name, known) is [var id, ..])
        {
            return new ArgumentProblem($"There is no rule `{name}`. Did you mean {id}?");
        }

        var paths = keys.SelectMany(key => new[] { key.Path, key.Path.Split('.')[^1] }).Distinct(StringComparer.Ordinal);
        return NearestNames.Of(name, paths) is [var path, ..]
            ? new ArgumentProblem($"There is no key `{name}`. Did you mean {path}?")
            : new ArgumentProblem($"There is neither a rule nor a key `{name}`. `laygate rules` lists the rules, docs/plan-keys.md the keys.");
    }

    private static IReadOnlyList<CaseSummary> Cases(string id) => RuleTestRunner.Shipped() is { } shipped ? RuleTests.Cases(shipped, id) : [];
}
