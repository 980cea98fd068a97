using Laygate.Cli.Checking;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;
using Laygate.UnitTests.Reporting;

namespace Laygate.HostTests;

/// <summary>Stands in for reading and checking: a file's text says what is found in it.</summary>
internal sealed class FakePipeline : ICheckPipeline
{
    private static readonly Counts None = new(0, 0, 1, 0, 0, 0, 0, 0);

    public CheckRequest? Asked { get; private set; }

    public IReadOnlyList<Problem> RuleProblems { get; init; } = [];

    public CheckSession Open(CheckRequest request)
    {
        Asked = request;
        return new CheckSession(RuleProblems.Count > 0 ? null : Check, RuleProblems) { Rules = Rules };
    }

    /// <summary>The rules that its findings name.</summary>
    public static IReadOnlyList<RuleInForce> Rules() =>
        [.. Samples.Report().Findings.Select(finding => new RuleInForce(finding.Rule, finding.RuleName, finding.Title, finding.Why, finding.Remedy, finding.Local, [])).DistinctBy(rule => rule.Id, StringComparer.Ordinal)];

    private static FileResult Check(string file, byte[] bytes) => System.Text.Encoding.UTF8.GetString(bytes).Trim() switch
    {
        "fail" => Found(file, None with { Failed = 1 }),
        "warn" => Found(file, None with { Warned = 1 }),
        "not assessed" => Found(file, None with { NotAssessed = 1 }),
        "needs a person" => Found(file, None with { NeedsPerson = 1 }),
        "open" => Found(file, None with { Open = 1 }),
        "pass" => Found(file, None),
        "bug" => throw new InvalidOperationException("first line\nsecond line"),
        _ => new FileResult(file, [], [new Problem(file, "Not a plan.", "Begin with `format: 1`.", new Position(1, 1, 1, 2))]),
    };

    private static FileResult Found(string file, Counts counts) =>
        new(file, [Samples.Report() with { File = file, Counts = counts }], []);
}
