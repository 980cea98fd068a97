using Laygate.Engineering.Acceptance;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;

namespace Laygate.Rules.Acceptance;

/// <summary>What is measured on a lot.</summary>
public enum MeasuredProperty
{
    /// <summary>Bulk density against the maximum density, of cores away from joints.</summary>
    DensityOfMaximum,

    /// <summary>Bulk density against the reference density of the mix, of cores away from joints.</summary>
    DensityOfReference,

    /// <summary>Air voids of cores away from joints.</summary>
    AirVoids,

    /// <summary>Bulk density against the maximum density, of cores over a joint.</summary>
    JointDensity,

    /// <summary>Mean thickness of each core.</summary>
    Thickness,

    /// <summary>Range of the skin temperatures of each thermal profile.</summary>
    ThermalRange,
}

/// <summary>What is made of the results of a lot.</summary>
public enum LotStatistic
{
    /// <summary>Percent of the lot within the limits.</summary>
    PercentWithin,

    /// <summary>Mean.</summary>
    Mean,

    /// <summary>Mean absolute deviation from the target.</summary>
    MeanDeviation,

    /// <summary>Absolute deviation of the mean from the target.</summary>
    DeviationOfMean,

    /// <summary>Least result.</summary>
    Least,

    /// <summary>Greatest result.</summary>
    Greatest,

    /// <summary>By how much the least result lies below the design value.</summary>
    Shortfall,

    /// <summary>Lower end of the mean.</summary>
    LowerMean,
}

/// <summary>How a quality index becomes a percent.</summary>
public enum PercentMode
{
    /// <summary>The formula.</summary>
    Formula,

    /// <summary>A table of Q for whole percents, the next higher one.</summary>
    TableNextHigher,

    /// <summary>The same table, straight between two rows.</summary>
    TableInterpolated,
}

/// <summary>What holds of a lot.</summary>
public enum LotVerdict
{
    /// <summary>Accepted as it is.</summary>
    Accept,

    /// <summary>Accepted with another pay than the full one, or with a measure.</summary>
    Adjust,

    /// <summary>Not decided: results are missing, or the publication as it is known does not tell.</summary>
    NotDecided,

    /// <summary>Rejected.</summary>
    Reject,
}

/// <summary>A limit: a number, or what the plan or the contract says.</summary>
/// <param name="Number">The number in the unit of the characteristic; null where it comes from elsewhere.</param>
/// <param name="FromPlan">Whether the plan has it.</param>
public sealed record SchemeLimit(double? Number, bool FromPlan);

/// <summary>Decimals to which a publication rounds; null: not.</summary>
/// <param name="Mean">Of the mean.</param>
/// <param name="Deviation">Of the standard deviation.</param>
/// <param name="Index">Of the quality index.</param>
/// <param name="Percent">Of the percent.</param>
/// <param name="Rule">What is done with a 5.</param>
public sealed record SchemeRounding(int? Mean, int? Deviation, int? Index, int? Percent, HalfRule Rule);

/// <summary>A row of a table from the statistic to what holds; the first that matches counts.</summary>
public sealed record SchemeRow
{
    /// <summary>Only for so many results.</summary>
    public int? Tests { get; init; }

    /// <summary>Least statistic, inclusive.</summary>
    public double? AtLeast { get; init; }

    /// <summary>Least statistic, exclusive.</summary>
    public double? Above { get; init; }

    /// <summary>Greatest statistic, inclusive.</summary>
    public double? AtMost { get; init; }

    /// <summary>Greatest statistic, exclusive.</summary>
    public double? Below { get; init; }

    /// <summary>Least design value, inclusive, for tables by thickness.</summary>
    public double? DesignAtLeast { get; init; }

    /// <summary>Greatest design value, exclusive.</summary>
    public double? DesignBelow { get; init; }

    /// <summary>What holds.</summary>
    public LotVerdict Verdict { get; init; }

    /// <summary>The class, or what is to be done, in the words of the publication.</summary>
    public string? Says { get; init; }

    /// <summary>Pay in %; with <see cref="Times"/> what is added to the product.</summary>
    public double? Pay { get; init; }

    /// <summary>Pay in % for each unit of the statistic.</summary>
    public double? Times { get; init; }
}

/// <summary>Where a table or limit comes from.</summary>
/// <param name="Id">Publication, in the sources of the scheme.</param>
/// <param name="Clause">Clause or table.</param>
/// <param name="Evidence">How it is known.</param>
/// <param name="Remark">Remark.</param>
public sealed record SchemeSource(string Id, string? Clause, Evidence Evidence, string? Remark);

/// <summary>One property with its limits, its statistic and its table.</summary>
/// <param name="Id">Id in the scheme.</param>
/// <param name="Measures">What is measured.</param>
/// <param name="Statistic">What is made of the results.</param>
/// <param name="Unit">Unit of limits, rows and results.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record SchemeCharacteristic(string Id, MeasuredProperty Measures, LotStatistic Statistic, Unit Unit, SchemeSource Source)
{
    /// <summary>Lower limit.</summary>
    public SchemeLimit? Lower { get; init; }

    /// <summary>Upper limit.</summary>
    public SchemeLimit? Upper { get; init; }

    /// <summary>Target.</summary>
    public SchemeLimit? Target { get; init; }

    /// <summary>How the index becomes a percent.</summary>
    public PercentMode Mode { get; init; }

    /// <summary>Decimals of the table of Q.</summary>
    public int TableDecimals { get; init; } = 2;

    /// <summary>Rounding.</summary>
    public SchemeRounding Rounding { get; init; } = new(null, null, null, null, HalfRule.HalfUp);

    /// <summary>Chance of a lower end, 1.</summary>
    public double Chance { get; init; } = 0.95;

    /// <summary>Least number of results.</summary>
    public int Least { get; init; } = 1;

    /// <summary>Greatest number of results for which it applies; null: any.</summary>
    public int? Most { get; init; }

    /// <summary>Weight in a weighted pay, 1.</summary>
    public double? Weight { get; init; }

    /// <summary>Rows; without any the lot is accepted when the statistic lies within the limits.</summary>
    public IReadOnlyList<SchemeRow> Rows { get; init; } = [];

    /// <summary>How profiles are cut and read; null where nothing is said.</summary>
    public ThermalSettings? Thermal { get; init; }
}

/// <summary>How a thermal profile is cut and read.</summary>
/// <param name="Length">Length of a profile, m.</param>
/// <param name="Low">Low percentile, 1.</param>
/// <param name="High">High percentile, 1.</param>
/// <param name="Edge">Distance from each edge that is left out, m.</param>
/// <param name="DropBelow">Readings below are dropped, °C.</param>
/// <param name="DropAbove">Readings above are dropped, °C.</param>
public sealed record ThermalSettings(double Length, double Low, double High, double Edge, double DropBelow, double DropAbove);

/// <summary>How a lot is divided. One of the three is stated.</summary>
/// <param name="Count">Number of equal sublots.</param>
/// <param name="Length">Length of a sublot, m.</param>
/// <param name="Mass">Mass of a sublot, kg.</param>
/// <param name="PerLot">Sublots of a lot; null: all of the course.</param>
/// <param name="Places">Random places in each.</param>
/// <param name="Margin">Distance of places from each edge, m.</param>
public sealed record SchemeSublots(int? Count, double? Length, double? Mass, int? PerLot, int Places, double Margin);

/// <summary>Rule for gauges: how many pairs, and how even they must be; else readings are indicative.</summary>
/// <param name="Pairs">Least number of pairs.</param>
/// <param name="Deviation">Greatest standard deviation of the differences, kg/m³.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record SchemeGauge(int Pairs, double Deviation, SchemeSource Source);

/// <summary>How pays of characteristics become one.</summary>
public enum PayCombination
{
    /// <summary>They do not.</summary>
    None,

    /// <summary>The lowest counts.</summary>
    Lowest,

    /// <summary>By weight.</summary>
    Weighted,
}

/// <summary>An acceptance scheme of a publication or a contract.</summary>
/// <param name="Name">Name.</param>
/// <param name="Title">Title.</param>
/// <param name="Issuer">Issuer.</param>
/// <param name="Edition">Edition.</param>
/// <param name="Coverage">What it covers and what not.</param>
/// <param name="Sources">Publications by id.</param>
/// <param name="Sublots">Sublots and places.</param>
/// <param name="Characteristics">Characteristics.</param>
/// <param name="Combine">How pays become one.</param>
/// <param name="OutlierLevel">Level of the test for outliers; null: none is made.</param>
/// <param name="OutlierLeast">Least number of results for it.</param>
/// <param name="Gauge">Rule for gauges; null: none is stated.</param>
/// <param name="Hash">SHA-256 of the text, hexadecimal.</param>
public sealed record AcceptanceScheme(
    string Name, string Title, string Issuer, string Edition, string Coverage, IReadOnlyDictionary<string, string> Sources, SchemeSublots Sublots, IReadOnlyList<SchemeCharacteristic> Characteristics,
    PayCombination Combine, double? OutlierLevel, int OutlierLeast, SchemeGauge? Gauge, string Hash)
{
    /// <summary>Laboratory whose results count, as cores name it; null where nothing is said.</summary>
    public string? Laboratory { get; init; }
}
