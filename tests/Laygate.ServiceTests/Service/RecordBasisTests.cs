using Laygate.Register;
using Laygate.Service.Checking;
using Laygate.Service.Pages;

namespace Laygate.ServiceTests.Service;

/// <summary>A page of a record says by what it is computed where its submission was screened by something else.</summary>
public sealed class RecordBasisTests
{
    private static readonly string Book = new('b', 64);

    [Theory]
    [InlineData(true, true, true, null)]
    [InlineData(true, false, true, "rules bbbbbbbbbbbb; the submission was screened on 2027-05-14 with Laygate")]
    [InlineData(true, false, false, null)]
    [InlineData(false, true, false, "screened on 2027-05-14 with Laygate 0.0.1.")]
    [InlineData(false, true, true, "with Laygate 0.0.1 and rules bbbbbbbbbbbb.")]
    public void It_says_what_differs(bool sameVersion, bool sameRules, bool rules, string? says)
    {
        var report = new ReportSummary(1, "h", sameRules ? Book : new string('a', 64), sameVersion ? CheckDesk.Version : "0.0.1", new DateTimeOffset(2027, 5, 14, 20, 0, 0, TimeSpan.Zero), null!);
        var said = RecordBasis.Says(report, Book, rules).ToList();
        if (says is null)
        {
            Assert.Empty(said);
        }
        else
        {
            Assert.Contains(says, Assert.Single(said), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_submission_without_a_report_is_said() => Assert.Contains("no report", Assert.Single(RecordBasis.Says(null, Book, rules: true)), StringComparison.Ordinal);
}
