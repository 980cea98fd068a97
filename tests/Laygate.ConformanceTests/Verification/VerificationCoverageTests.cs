using Laygate.Checking.Verification;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Verification;

/// <summary>What the manual as a whole must hold.</summary>
public sealed class VerificationCoverageTests
{
    private static readonly VerificationResult Result =
        VerificationFiles.Runner().Run([.. VerificationFiles.Names.Select(VerificationFiles.Read)]);

    [Fact]
    public void Every_formula_has_a_case()
    {
        var used = Checks().Select(check => check.Quantity.Formula).OfType<string>();
        Assert.Empty(VerificationRunner.FormulaNames.Except(used, StringComparer.Ordinal));
    }

    [Fact]
    public void Every_kind_of_quantity_has_a_case() =>
        Assert.Empty(Enum.GetValues<VerifiedKind>().Except(Checks().Select(check => check.Quantity.Kind)));

    /// <summary>Nobody makes a case pass by loosening it: the accuracy asked of the solver is the upper bound of the tolerances.</summary>
    [Fact]
    public void No_tolerance_is_wider_than_the_accuracy_asked_of_the_solver()
    {
        // The one textbook figure that carries its own rounding of 0.15 K is not evaluated by us: evidence second-hand.
        var wide = Result.Topics.SelectMany(topic => topic.Cases)
            .Where(one => one.Evidence != Laygate.Engineering.Quantities.Evidence.SecondHand)
            .SelectMany(one => one.Checks)
            .Where(check => check.Quantity.Kind switch
            {
                VerifiedKind.Temperature => check.Allowed > 0.1,
                VerifiedKind.Flux => check.Allowed > 0.001 * Math.Abs(check.Expected),
                VerifiedKind.AmplitudeRatio => check.Allowed > 0.0050001 * Math.Abs(check.Expected),
                VerifiedKind.Lag => check.Allowed > 0.02,
                VerifiedKind.CrossingTime when check.Unit is "min" => check.Allowed > Math.Max(0.1, 0.005 * check.Expected),
                VerifiedKind.CrossingTime => check.Allowed > 0.005 * check.Expected,
                VerifiedKind.HeatBalanceGap => check.Allowed > 1e-9,
                _ => false,
            });
        Assert.Empty(wide);
    }

    [Fact]
    public void Every_case_names_its_source() =>
        Assert.All(Result.Topics.SelectMany(topic => topic.Cases), one => Assert.True(one.Source.Document.Length > 3 && (one.Source.Place ?? one.Source.Edition ?? one.Remark) is not null));

    private static IEnumerable<VerificationCheck> Checks() => Result.Topics.SelectMany(topic => topic.Cases).SelectMany(one => one.Checks);
}
