using System.Globalization;
using Laygate.Engineering.Quantities;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Verification;

/// <summary>Words for the results of the verification manual.</summary>
internal static class VerificationWords
{
    /// <summary>What a check compares, in a few words.</summary>
    public static string Of(VerifiedQuantity quantity) => quantity.Kind switch
    {
        VerifiedKind.Temperature when quantity.Place == VerifiedPlace.CoreSkinDifference => $"core minus skin after {quantity.Time}",
        VerifiedKind.Temperature => $"{Place(quantity)} after {quantity.Time}",
        VerifiedKind.Flux => $"heat flux through the lower face of {quantity.Layer} after {quantity.Time}",
        VerifiedKind.CrossingTime => $"time until {Place(quantity)} is below {quantity.Below}",
        VerifiedKind.AmplitudeRatio => $"amplitude at {Place(quantity)}, as a share of that at the skin",
        VerifiedKind.Lag => $"lag at {Place(quantity)} behind the skin",
        VerifiedKind.HeatBalanceGap => "heat not accounted for, as a share of the heat brought",
        _ => Formula(quantity),
    };

    /// <summary>The kind of quantity, in the plural.</summary>
    public static string Plural(VerifiedKind kind) => kind switch
    {
        VerifiedKind.Temperature => "temperatures",
        VerifiedKind.Flux => "heat fluxes",
        VerifiedKind.CrossingTime => "crossing times",
        VerifiedKind.AmplitudeRatio => "amplitudes",
        VerifiedKind.Lag => "lags",
        VerifiedKind.HeatBalanceGap => "heat balances",
        _ => "results of formulas",
    };

    /// <summary>The verdict in a word or two.</summary>
    public static string Of(VerificationVerdict verdict) => verdict switch
    {
        VerificationVerdict.Within => "within",
        VerificationVerdict.Off => "OFF",
        _ => "NOT COMPUTED",
    };

    /// <summary>How the expected values are known.</summary>
    public static string Of(Evidence evidence) => evidence switch
    {
        Evidence.Read => "read",
        Evidence.SecondHand => "second-hand",
        Evidence.Derived => "derived",
        Evidence.Judgement => "judgement",
        Evidence.CommonPractice => "common practice, no published source",
        Evidence.Confirmed => "confirmed",
        _ => "recalled",
    };

    /// <summary>The source in one line.</summary>
    public static string Of(VerificationSource source) =>
        string.Join(", ", new[] { source.Document, source.Edition, source.Place }.OfType<string>());

    /// <summary>The last line of every form of the manual.</summary>
    public static string Tally(VerificationTally tally)
    {
        var unreadable = tally.Unreadable == 0 ? string.Empty : $" {Count(tally.Unreadable, "file", "files")} could not be used.";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{Count(tally.Checks, "check", "checks")} in {Count(tally.Cases, "case", "cases")} of {Count(tally.Files, "file", "files")}: {tally.Within} within tolerance, {tally.Off} off, {tally.NotComputed} not computed.{unreadable}");
    }

    /// <summary>A number in all its digits.</summary>
    public static string Full(double number) => number.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>A number with its unit; none for ratios and counts.</summary>
    public static string WithUnit(string number, string unit) => unit.Length == 0 ? number : $"{number} {unit}";

    /// <summary>The unit of a difference.</summary>
    public static string DifferenceUnit(string unit) => unit is "°C" or "C" ? "K" : unit;

    private static string Place(VerifiedQuantity quantity) => quantity.Place switch
    {
        VerifiedPlace.Core => "the core",
        VerifiedPlace.CoreSkinDifference => "core minus skin",
        VerifiedPlace.HotBodyMean => "the mean of the hot body",
        VerifiedPlace.Mean => $"the mean of {quantity.Layer}",
        VerifiedPlace.Middle => $"the middle of {quantity.Layer}",
        VerifiedPlace.Top => $"the top of {quantity.Layer}",
        VerifiedPlace.Bottom => $"the lower face of {quantity.Layer}",
        VerifiedPlace.Depth => $"a depth of {quantity.Depth}",
        _ => "the skin",
    };

    private static string Formula(VerifiedQuantity quantity)
    {
        var name = (quantity.Formula ?? string.Empty).Replace('-', ' ');
        var inputs = (quantity.Inputs ?? []).Select(input => $"{input.Name.Replace('_', ' ')} {input.Value}").ToList();
        return inputs.Count == 0 ? name : $"{name}: {string.Join(", ", inputs)}";
    }

    private static string Count(int count, string one, string many) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");
}
