using System.CommandLine;
using Laygate.Checking.Scaffolding;
using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Cli.Files;
using Laygate.Rules.Definitions;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>confirm</c>: records that the checking side has looked a limit up.</summary>
internal sealed class ConfirmCommand : Verb
{
    private const string Words = """
        Records that a limit was looked up in its publication. From then on it fails a plan
        like one that was read, and each finding says who confirmed it. The record goes into
        an overlay of the checking side; what else stands in the file stays as it is.

        Usage
          laygate confirm RULE --edition TEXT --page TEXT --by NAME --into FILE [options]

        Options
          --edition TEXT         edition that was looked at
          --page TEXT            page on which the limit stands
          --by NAME              who looked it up
          --into FILE            overlay; made when it is missing
          --row KEY              row of the table: its place from 1, or what it matches, as
                                 `laygate explain` shows it; all rows when left out
          --strength WORD        required or advised, where the rule has both
          --date YYYY-MM-DD      when; usually today
          --rules NAME|PATH      the specification whose limit it is; may be repeated
          --help                 show this

        Example
          laygate confirm WEA-002 --rules de --edition 2013 --page 14 --by "A. Checker" --into confirmed.yaml
          laygate check plan.yaml --rules de --rules confirmed.yaml

        """;

    private readonly Argument<string[]> rule = new("RULE") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string> edition = new("--edition");
    private readonly Option<string> page = new("--page");
    private readonly Option<string> by = new("--by");
    private readonly Option<string> into = new("--into");
    private readonly Option<string> row = new("--row");
    private readonly Option<string> strength = new("--strength");
    private readonly Option<string> date = new("--date");
    private readonly Option<string[]> rules = Values.Rules();

    public ConfirmCommand()
        : base("confirm", Words)
    {
        Add(rule);
        foreach (var option in (Option[])[edition, page, by, into, row, strength, date, rules])
        {
            Add(option);
        }
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        if (parsed.GetValue(rule) is not [{ Length: > 0 } id])
        {
            throw new ArgumentProblem("Name one rule. `laygate confirm --help` shows an example.");
        }

        var confirmation = new Confirmation(
            Values.Needed("--by", parsed.GetValue(by)),
            Values.Day(parsed.GetValue(date)) ?? Values.Today(clock),
            Values.Needed("--edition", parsed.GetValue(edition)),
            Values.Needed("--page", parsed.GetValue(page)));
        var request = new ConfirmRequest(
            id, Values.Word<Strength>("--strength", parsed.GetValue(strength)), Values.NotEmpty("--row", parsed.GetValue(row)), confirmation);
        var file = Values.Needed("--into", parsed.GetValue(into));
        var names = Values.NotEmpty("--rules", parsed.GetValue(rules));
        return new Request.Do(host => Run(host, names, file, request));
    }

    private static int Run(Host host, IReadOnlyList<string> names, string file, ConfirmRequest request)
    {
        var (bound, pack) = RuleBookOnDisk.Open([]);
        if (pack is null)
        {
            return host.Streams.Refuse(bound.Problems);
        }

        var edited = ConfirmationEdit.Add(pack, names, file, new RuleFilesOnDisk(), request);
        if (edited.Text is not { } text)
        {
            return host.Streams.Refuse(edited.Problems);
        }

        NewFiles.Replace(file, text);
        host.Streams.Text($"Confirmed in {file}: {edited.Summary}.\nUse it with: laygate check PLAN {string.Concat(names.Where(name => !string.Equals(name, file, StringComparison.Ordinal)).Select(name => $"--rules {name} "))}--rules {file}\n");
        return ExitCodes.Clean;
    }
}
