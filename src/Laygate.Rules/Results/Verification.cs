using Laygate.Engineering.Quantities;

namespace Laygate.Rules.Results;

/// <summary>What a verification check compares.</summary>
public enum VerifiedKind
{
    /// <summary>A temperature at a place and time.</summary>
    Temperature,

    /// <summary>A heat flux downwards through the lower face of a layer.</summary>
    Flux,

    /// <summary>The time at which a place falls below a temperature.</summary>
    CrossingTime,

    /// <summary>Amplitude at a place as a share of the amplitude at the skin.</summary>
    AmplitudeRatio,

    /// <summary>Time by which the wave at a place lags behind the skin.</summary>
    Lag,

    /// <summary>Heat that the balance of the whole solve fails to account for, as a share of the heat brought.</summary>
    HeatBalanceGap,

    /// <summary>Result of a formula.</summary>
    Formula,
}

/// <summary>Where a check takes its temperature.</summary>
public enum VerifiedPlace
{
    /// <summary>No place: formulas and balances.</summary>
    None,

    /// <summary>Surface of what is laid at the time.</summary>
    Skin,

    /// <summary>Hottest point of the hot body.</summary>
    Core,

    /// <summary>Core minus skin.</summary>
    CoreSkinDifference,

    /// <summary>Mean of all courses laid at the time.</summary>
    HotBodyMean,

    /// <summary>Mean of one layer.</summary>
    Mean,

    /// <summary>Middle of one layer.</summary>
    Middle,

    /// <summary>Top face of one layer.</summary>
    Top,

    /// <summary>Lower face of one layer.</summary>
    Bottom,

    /// <summary>A depth below the finished surface.</summary>
    Depth,
}

/// <summary>Whether a computed value agrees with the expected one.</summary>
public enum VerificationVerdict
{
    /// <summary>Within the tolerance, its end included.</summary>
    Within,

    /// <summary>Farther away than the tolerance.</summary>
    Off,

    /// <summary>There is no computed value.</summary>
    NotComputed,
}

/// <summary>An input of a formula, as the case file writes it.</summary>
/// <param name="Name">Name.</param>
/// <param name="Value">Value as written.</param>
public sealed record VerifiedInput(string Name, string Value);

/// <summary>What one check compares, with times and depths as the case file writes them.</summary>
/// <param name="Kind">Kind of quantity.</param>
/// <param name="Place">Place.</param>
/// <param name="Layer">Id of the layer, where the place is in one.</param>
/// <param name="Depth">Depth, where the place is a depth.</param>
/// <param name="Time">Time after the start, for temperatures and fluxes.</param>
/// <param name="Below">Temperature that is crossed, for crossing times.</param>
/// <param name="Formula">Name of the formula, for formulas.</param>
/// <param name="Inputs">Inputs of the formula that differ from check to check of the case.</param>
public sealed record VerifiedQuantity(
    VerifiedKind Kind,
    VerifiedPlace Place = VerifiedPlace.None,
    string? Layer = null,
    string? Depth = null,
    string? Time = null,
    string? Below = null,
    string? Formula = null,
    IReadOnlyList<VerifiedInput>? Inputs = null);

/// <summary>One expected value and what was computed for it.</summary>
/// <param name="Quantity">What is compared.</param>
/// <param name="Unit">Unit of expected, computed, difference and allowed difference; empty for ratios and counts.</param>
/// <param name="Expected">Value from the source.</param>
/// <param name="Computed">Value computed now; null when there is none.</param>
/// <param name="Difference">Computed minus expected; null when there is no computed value.</param>
/// <param name="Tolerance">Tolerance as the case file writes it.</param>
/// <param name="Allowed">Tolerance in the unit.</param>
/// <param name="Verdict">Verdict.</param>
/// <param name="Reason">Why there is no computed value.</param>
/// <param name="Position">Where the expected value stands in its file.</param>
public sealed record VerificationCheck(
    VerifiedQuantity Quantity,
    string Unit,
    double Expected,
    double? Computed,
    double? Difference,
    string Tolerance,
    double Allowed,
    VerificationVerdict Verdict,
    string? Reason,
    Position Position);

/// <summary>Where the expected values of a case come from.</summary>
/// <param name="Document">Document.</param>
/// <param name="Edition">Edition or year.</param>
/// <param name="Place">Section, table or page.</param>
public sealed record VerificationSource(string Document, string? Edition, string? Place);

/// <summary>One case of the verification manual and its checks.</summary>
/// <param name="File">Name of the file as given.</param>
/// <param name="Document">Number of the case in its file, from 1.</param>
/// <param name="Topic">Topic.</param>
/// <param name="Title">What is verified.</param>
/// <param name="Source">Source of the expected values.</param>
/// <param name="Evidence">How they are known.</param>
/// <param name="Remark">Remark.</param>
/// <param name="Checks">Checks in the order of the file.</param>
public sealed record VerificationCase(
    string File,
    int Document,
    string Topic,
    string Title,
    VerificationSource Source,
    Evidence Evidence,
    string? Remark,
    IReadOnlyList<VerificationCheck> Checks);

/// <summary>What became of one case file: cases, or problems that stopped it.</summary>
/// <param name="File">Name as given.</param>
/// <param name="Cases">Cases; none when there are problems.</param>
/// <param name="Problems">Why the file could not be used.</param>
public sealed record VerificationFileResult(string File, IReadOnlyList<VerificationCase> Cases, IReadOnlyList<Problem> Problems);

/// <summary>Counts; each check is in exactly one of within, off and not computed.</summary>
/// <param name="Files">Files.</param>
/// <param name="Unreadable">Files with problems.</param>
/// <param name="Cases">Cases.</param>
/// <param name="Checks">Checks.</param>
/// <param name="Within">Checks within their tolerance.</param>
/// <param name="Off">Checks off by more than their tolerance.</param>
/// <param name="NotComputed">Checks without a computed value.</param>
public sealed record VerificationTally(int Files, int Unreadable, int Cases, int Checks, int Within, int Off, int NotComputed);

/// <summary>The largest difference among the checks of one kind that have one tolerance.</summary>
/// <param name="Kind">Kind of quantity.</param>
/// <param name="Tolerance">Tolerance as the case files write it.</param>
/// <param name="Checks">Number of checks with a computed value.</param>
/// <param name="Absolute">Largest difference in the SI unit of the kind (K, W/m², s, share); null for formulas, whose units differ.</param>
/// <param name="Relative">Largest difference as a share of its expected value; null for temperatures and where an expected value is zero.</param>
/// <param name="OfTolerance">Largest difference as a share of its tolerance.</param>
public sealed record WorstDifference(VerifiedKind Kind, string Tolerance, int Checks, double? Absolute, double? Relative, double OfTolerance);

/// <summary>All cases of one topic, in file order.</summary>
/// <param name="Name">Topic.</param>
/// <param name="Cases">Cases.</param>
/// <param name="Tally">Counts; files are those with a case of the topic.</param>
/// <param name="Worst">Largest differences, one per kind and tolerance.</param>
public sealed record VerificationTopic(
    string Name, IReadOnlyList<VerificationCase> Cases, VerificationTally Tally, IReadOnlyList<WorstDifference> Worst);

/// <summary>A run of the verification manual.</summary>
/// <param name="Files">Files in the given order.</param>
/// <param name="Topics">Topics in the order in which they first occur.</param>
/// <param name="Tally">Counts of the whole run.</param>
/// <param name="Worst">Largest differences of the whole run, one per kind and tolerance, by kind.</param>
public sealed record VerificationResult(
    IReadOnlyList<VerificationFileResult> Files,
    IReadOnlyList<VerificationTopic> Topics,
    VerificationTally Tally,
    IReadOnlyList<WorstDifference> Worst);
