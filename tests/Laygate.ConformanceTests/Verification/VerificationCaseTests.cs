using System.Globalization;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Verification;

/// <summary>Every shipped case file is one test; its expected values, sources and tolerances stand in the file.</summary>
public sealed class VerificationCaseTests
{
    public static TheoryData<string> Cases => [.. VerificationFiles.Names];

    [Theory]
    [MemberData(nameof(Cases))]
    public void All_values_agree_within_their_tolerance(string file)
    {
        var result = VerificationFiles.Runner().Run([VerificationFiles.Read(file)]);
        Assert.Empty(result.Files.SelectMany(one => one.Problems).Select(one => $"{one.Position?.Line}:{one.Position?.Column} {one.Message} {one.Hint}"));
        var wrong = result.Topics.SelectMany(topic => topic.Cases)
            .SelectMany(one => one.Checks, (one, check) => (one, check))
            .Where(pair => pair.check.Verdict != VerificationVerdict.Within)
            .Select(pair => string.Create(CultureInfo.InvariantCulture, $"{file}:{pair.check.Position.Line} {pair.one.Title} {pair.check.Quantity}: expected {pair.check.Expected}, computed {pair.check.Computed}, tolerance {pair.check.Tolerance} {pair.check.Reason}"));
        Assert.Empty(wrong);
        Assert.True(result.Tally.Checks > 0);
    }
}
