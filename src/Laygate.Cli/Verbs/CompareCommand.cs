using System.CommandLine;
using Laygate.Cli.Arguments;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>compare</c>: two states of a plan, or one plan under two rule books.</summary>
internal sealed class CompareCommand : Verb
{
    private const string Words = """
        Shows what changed between two states of a plan: findings that are new, gone or
        different, quantities that moved, and the text of the plan that changed behind them.

        Usage
          laygate compare OLD NEW [options]                 two files
          laygate compare --since REVISION FILES [options]  files as they were at a git
                                                            revision, and as they are now
          laygate compare --old-rules NAME --new-rules NAME FILES [options]
                                                            the same plans under two rule
                                                            books, for example two editions
          laygate compare --old-shift ID --new-shift ID JOB [options]
                                                            two shifts of one job

        Two jobs are compared shift by shift, and what lies between their shifts.

        Rules, departures and stage that a laygate.yaml asks for hold on both sides.

        Options
          --rules NAME|PATH      a specification for both sides; may be repeated
          --old-rules NAME|PATH  a specification for the earlier side only
          --new-rules NAME|PATH  a specification for the later side only
          --shift ID             only this shift of a job, on both sides
          --old-shift ID         the shift of the earlier side
          --new-shift ID         the shift of the later side
          --since REVISION       compare with a git revision
          --fail-on KIND         exit with 1 when a finding became worse and now is: fail, or
                                 warn (fails, too); none (usual): never
          --format FORMAT        console (usual), json or markdown
          --output FILE          write the result to a file
          --date YYYY-MM-DD      day of checking for both sides; usually today
          --help                 show this

        Exit codes
          0  compared
          1  something became worse, as --fail-on asks
          2  input, arguments or rules could not be read
          3  an error of the program itself

        Example
          laygate compare plan-a.yaml plan-b.yaml --rules de

        """;

    private readonly Argument<string[]> files = new("FILES") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string[]> rules = Values.Rules();
    private readonly Option<string[]> oldRules = new("--old-rules") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
    private readonly Option<string[]> newRules = new("--new-rules") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
    private readonly Option<string> shift = new("--shift");
    private readonly Option<string> oldShift = new("--old-shift");
    private readonly Option<string> newShift = new("--new-shift");
    private readonly Option<string> since = new("--since");
    private readonly Option<string> failOn = new("--fail-on");
    private readonly Option<string> format = new("--format");
    private readonly Option<string> output = new("--output");
    private readonly Option<string> date = new("--date");

    public CompareCommand()
        : base("compare", Words)
    {
        Add(files);
        foreach (var option in (Option[])[rules, oldRules, newRules, shift, oldShift, newShift, since, failOn, format, output, date])
        {
            Add(option);
        }
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        var common = Values.NotEmpty("--rules", parsed.GetValue(rules));
        var both = Values.NotEmpty("--shift", parsed.GetValue(shift));
        var request = new CompareRequest(
            parsed.GetValue(files) ?? [],
            [.. common, .. Values.NotEmpty("--old-rules", parsed.GetValue(oldRules))],
            [.. common, .. Values.NotEmpty("--new-rules", parsed.GetValue(newRules))],
            Values.NotEmpty("--since", parsed.GetValue(since)),
            Values.Word<FailOn>("--fail-on", parsed.GetValue(failOn)) ?? FailOn.None,
            Values.Word<CompareFormat>("--format", parsed.GetValue(format)) ?? CompareFormat.Console,
            Values.NotEmpty("--output", parsed.GetValue(output)),
            Values.Day(parsed.GetValue(date)) ?? Values.Today(clock))
        {
            OldShift = Values.NotEmpty("--old-shift", parsed.GetValue(oldShift)) ?? both,
            NewShift = Values.NotEmpty("--new-shift", parsed.GetValue(newShift)) ?? both,
        };
        return new Request.Do(host => new CompareRun(host, request).Run());
    }
}

/// <summary>Form of a comparison.</summary>
internal enum CompareFormat
{
    /// <summary>For a person at a terminal.</summary>
    Console,

    /// <summary>For programs.</summary>
    Json,

    /// <summary>For a review comment.</summary>
    Markdown,
}

/// <summary>What is compared, and how.</summary>
/// <param name="Files">Files or patterns.</param>
/// <param name="OldRules">Specifications of the earlier side.</param>
/// <param name="NewRules">Specifications of the later side.</param>
/// <param name="Since">Git revision of the earlier side; null when two files or two rule books are compared.</param>
/// <param name="FailOn">From which kind of worse finding on the run counts as failed.</param>
/// <param name="Format">Form of the output.</param>
/// <param name="Output">File to write to; null: standard output.</param>
/// <param name="Date">Day of checking.</param>
internal sealed record CompareRequest(
    IReadOnlyList<string> Files,
    IReadOnlyList<string> OldRules,
    IReadOnlyList<string> NewRules,
    string? Since,
    FailOn FailOn,
    CompareFormat Format,
    string? Output,
    DateOnly Date)
{
    /// <summary>Shift of a job on the earlier side; null for all.</summary>
    public string? OldShift { get; init; }

    /// <summary>Shift of a job on the later side; null for all.</summary>
    public string? NewShift { get; init; }
}
