using Laygate.Reporting.Terminal;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Specifications;

/// <summary>Specifications of which nothing was read stay out of the usual list, say so first, and only warn.</summary>
public sealed class UnreadSpecificationTests
{
    // Which they are follows from the evidence of their limits; written down here so that a change is seen.
    private static readonly string[] Known = ["br", "cn", "fr", "jp", "pl", "us-faa"];

    public static TheoryData<string> Unread => [.. Known];

    [Fact]
    public void They_are_those_whose_every_limit_is_recalled() =>
        Assert.Equal(Known, Repository.Book.Specifications.Where(one => one.IsUnread).Select(one => one.Name).Order(StringComparer.Ordinal), StringComparer.Ordinal);

    [Fact]
    public void The_usual_list_leaves_them_out()
    {
        var loaded = Laygate.Reading.RuleBooks.Load(new Laygate.Reading.RuleFiles.RulePack(Repository.Book.General!, Repository.Book.Specifications, "x"), ["zzzzzzzz"], new Nothing());
        var hint = Assert.Single(loaded.Problems).Hint!;
        Assert.Contains("us-wa", hint, StringComparison.Ordinal);
        Assert.All(Known, name => Assert.DoesNotContain($" {name},", hint, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Unread))]
    public void A_check_that_names_one_says_so_on_its_first_line_and_no_limit_of_it_fails(string name)
    {
        foreach (var example in new[] { "moor-road-thin-overlay", "county-route-us" })
        {
            var result = Repository.Check($"examples/{example}.yaml", name);
            var report = Assert.Single(result.Reports);
            Assert.DoesNotContain(report.Findings, finding => finding.Limit?.SetBy == name && finding.Status == Status.Fail);
            var lines = TerminalReport.Lines([result], new TerminalSettings(2000, All: false)).Select(line => string.Concat(line.Spans.Select(span => span.Text)));
            var first = lines.First(line => line.Trim().Length > 0);
            Assert.StartsWith("Note: Nothing of ", first.Trim(), StringComparison.Ordinal);
        }
    }

    private sealed class Nothing : Laygate.Reading.IRuleFiles
    {
        public Laygate.Reading.RuleFiles.IRuleFolder? Folder(string path) => null;

        public byte[]? File(string path) => null;
    }
}
