using Laygate.Checking.Verification;
using Laygate.Reporting.Verification;

namespace Laygate.ConformanceTests.Verification;

/// <summary>The manual is what the cases give today. LAYGATE_APPROVE=1 writes it anew; read the difference before you commit it.</summary>
public sealed class VerificationManualTests
{
    [Fact]
    public void The_manual_is_up_to_date()
    {
        var result = VerificationFiles.Runner().Run([.. VerificationFiles.Names.Select(VerificationFiles.Read)]);
        Assert.Equal(0, result.Tally.Unreadable);
        var page = Path.Combine(VerificationFiles.Root, "docs", "verification.md");
        var manual = VerificationManual.Markdown(result);
        if (Environment.GetEnvironmentVariable("LAYGATE_APPROVE") == "1")
        {
            File.WriteAllText(page, manual);
        }

        Assert.True(File.Exists(page), "docs/verification.md is missing; run with LAYGATE_APPROVE=1 to write it.");
        Assert.True(manual == File.ReadAllText(page), "docs/verification.md is stale; run with LAYGATE_APPROVE=1 to write it, and read the difference.");
    }

    [Fact]
    public void The_page_of_formulas_lists_them_as_they_are() => Approved.File_holds("docs/verification/formulas.md", FormulaPage.Markdown(VerificationRunner.Formulas));
}
