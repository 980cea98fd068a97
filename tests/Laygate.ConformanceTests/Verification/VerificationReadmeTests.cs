using System.Text;
using System.Text.RegularExpressions;
using Laygate.Checking.Verification;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Verification;

/// <summary>The cases shown in docs/verification/README.md run as they stand.</summary>
public sealed class VerificationReadmeTests
{
    [Fact]
    public void The_cases_of_the_page_run_and_agree()
    {
        var page = File.ReadAllText(Path.Combine(VerificationFiles.Folder, "README.md"));
        var blocks = Regex.Matches(page, "```yaml\n(?<case>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture, Patience.Longest).Select(match => match.Groups["case"].Value).ToList();
        Assert.NotEmpty(blocks);
        var result = VerificationFiles.Runner().Run([.. blocks.Select(text => new VerificationFile("README.md", Encoding.UTF8.GetBytes(text)))]);
        Assert.Empty(result.Files.SelectMany(file => file.Problems));
        Assert.All(result.Topics.SelectMany(topic => topic.Cases).SelectMany(one => one.Checks), check => Assert.Equal(VerificationVerdict.Within, check.Verdict));
        Assert.Equal(blocks.Count, result.Tally.Cases);
    }
}
