using System.Text;
using System.Text.RegularExpressions;
using Laygate.Checking;
using Laygate.Reading;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Docs;

/// <summary>The output that README.md shows is what the program says; version, hash and positions stand as placeholders.</summary>
public sealed partial class ReadmeTests
{
    [Fact]
    public void The_output_shown_is_the_output_given()
    {
        var readme = File.ReadAllText(Path.Combine(Repository.Root, "README.md"));
        var shown = ShownOutput().Replace(readme, match =>
        {
            var arguments = match.Groups["arguments"].Value.Split(' ');
            return $"<!-- output of: check {match.Groups["arguments"].Value} -->\n```text\n{Output(arguments[0], arguments[2])}```\n<!-- end of output -->";
        });
        Assert.NotEmpty(ShownOutput().Matches(readme));
        Approved.File_holds("README.md", shown);
    }

    [Fact]
    public void The_job_is_told_in_the_first_paragraph_and_the_two_commands_follow()
    {
        var readme = File.ReadAllText(Path.Combine(Repository.Root, "README.md"));
        // Who it is and what they must get done; only then what the program does.
        var paragraphs = readme.Split("\n\n");
        Assert.All((string[])["engineer", "contractor", "reviewer", "must"], word => Assert.Contains(word, paragraphs[1], StringComparison.Ordinal));
        Assert.DoesNotContain("Laygate", paragraphs[1], StringComparison.Ordinal);
        Assert.StartsWith("Laygate reads that plan", paragraphs[2], StringComparison.Ordinal);
        Assert.Contains("\ndotnet test\n", readme, StringComparison.Ordinal);
    }

    // With remedies, as the command looks for them.
    private static FileResult Checked(string plan, string rules) =>
        new PlanCheck(Repository.Bound(rules), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Remedies = true, Parts = new Repository.PartsOfRepository() }).Run(plan, Repository.Bytes(plan));

    private static string Output(string plan, string rules)
    {
        var text = new StringBuilder();
        foreach (var line in TerminalReport.Lines([Checked(plan, rules)], new TerminalSettings(80)))
        {
            text.Append(string.Concat(line.Spans.Select(span => span.Text)).TrimEnd()).Append('\n');
        }

        return Place().Replace(Hash().Replace(text.ToString(), "Rule book (hash)"), ":(line)").Replace($"General practice {Repository.Version}", "General practice (version)", StringComparison.Ordinal);
    }

    [GeneratedRegex("<!-- output of: check (?<arguments>[^\n]*) -->\n```text\n.*?```\n<!-- end of output -->", RegexOptions.Singleline, Patience.Milliseconds)]
    private static partial Regex ShownOutput();

    [GeneratedRegex("(?<=\\.yaml):[0-9]+", RegexOptions.None, Patience.Milliseconds)]
    private static partial Regex Place();

    [GeneratedRegex("Rule book [0-9a-f]{12}", RegexOptions.None, Patience.Milliseconds)]
    private static partial Regex Hash();
}
