using Laygate.Engineering.Cooling;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Checking.Verification;

/// <summary>A tolerance: a difference in SI units, or a share of the expected value.</summary>
/// <param name="Written">As the file writes it.</param>
/// <param name="Value">The difference, or the share.</param>
/// <param name="IsShare">Whether it is a share of the expected value.</param>
internal sealed record CaseTolerance(string Written, double Value, bool IsShare)
{
    /// <summary>The difference allowed in a unit.</summary>
    public double In(Unit? unit, double expected) => IsShare ? Value * Math.Abs(expected) : Value / (unit?.Factor ?? 1);
}

/// <summary>One expected value and the way to compute its counterpart.</summary>
/// <param name="Quantity">What is compared.</param>
/// <param name="Expected">The value in its unit.</param>
/// <param name="Unit">The unit; null for ratios and counts.</param>
/// <param name="Tolerance">Tolerance.</param>
/// <param name="Compute">The computed value in SI units (temperatures in °C) from the solved curve; formulas ignore the curve.</param>
/// <param name="Span">Where the expected value stands.</param>
internal sealed record ExpectedValue(
    VerifiedQuantity Quantity, double Expected, Unit? Unit, CaseTolerance Tolerance, Func<CoolingCurve?, double?> Compute, TextSpan Span);

/// <summary>A conduction question and where its parts stand.</summary>
/// <param name="Problem">The question.</param>
/// <param name="Span">Where the case stands.</param>
/// <param name="Layers">Where each layer stands.</param>
internal sealed record ConductionQuestion(CoolingProblem Problem, TextSpan Span, IReadOnlyList<(string Id, TextSpan Span)> Layers);

/// <summary>A case as read.</summary>
internal sealed record CaseDefinition(
    string Topic,
    string Title,
    VerificationSource Source,
    Evidence Evidence,
    string? Remark,
    ConductionQuestion? Conduction,
    IReadOnlyList<ExpectedValue> Expected);
