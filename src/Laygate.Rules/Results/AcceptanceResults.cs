using Laygate.Engineering.Acceptance;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Records;
using Laygate.Rules.Acceptance;

namespace Laygate.Rules.Results;

/// <summary>A step of a lot report.</summary>
/// <param name="Expression">The formula in symbols, or what an input is.</param>
/// <param name="Value">Value.</param>
/// <param name="Unit">Unit; empty for a plain number.</param>
public sealed record AcceptanceStep(string Expression, double Value, string Unit);

/// <summary>What the results of a characteristic come to.</summary>
/// <param name="Statistic">The statistic; null where it is not defined.</param>
/// <param name="Steps">How it follows.</param>
/// <param name="Pay">Pay, %; null where the publication has none.</param>
/// <param name="Says">The class, or what is to be done.</param>
/// <param name="Verdict">What holds.</param>
public sealed record LotOutcome(double? Statistic, IReadOnlyList<AcceptanceStep> Steps, double? Pay, string? Says, LotVerdict Verdict)
{
    /// <summary>Whether the table does not list the statistic.</summary>
    public bool IsUnlisted { get; init; }

    /// <summary>Whether a table that is only remembered would reject.</summary>
    public bool IsWeak { get; init; }
}

/// <summary>A result with its place.</summary>
/// <param name="Label">Core, test or profile.</param>
/// <param name="Value">Value in the unit of the characteristic.</param>
/// <param name="Station">Station, m; null where it is not recorded.</param>
/// <param name="Sublot">Number of its sublot, from 1; 0 where its station is not in the plan.</param>
/// <param name="Place">Its row.</param>
/// <param name="IsMarked">Whether it is marked as an outlier; it is never removed.</param>
public sealed record LotValue(string Label, double Value, double? Station, int Sublot, RowPlace Place, bool IsMarked);

/// <summary>A limit as it was used.</summary>
/// <param name="Name">Lower, upper, target or design.</param>
/// <param name="Value">Value in the unit of the characteristic; null where nobody states it.</param>
/// <param name="FromPlan">Whether the plan has it; otherwise the publication, or nobody.</param>
public sealed record LotLimit(string Name, double? Value, bool FromPlan);

/// <summary>One characteristic of one lot.</summary>
/// <param name="Id">Id in the scheme.</param>
/// <param name="Measures">What is measured.</param>
/// <param name="Statistic">What is made of it.</param>
/// <param name="Mode">How an index becomes a percent; null where there is none.</param>
/// <param name="Unit">Unit.</param>
/// <param name="Values">Results.</param>
/// <param name="Limits">Limits.</param>
/// <param name="Outcome">What they come to.</param>
/// <param name="Outlier">Result of the test for an outlier; null where none was made.</param>
/// <param name="Without">What they come to without the marked result; null where none is marked.</param>
/// <param name="NextLow">Least next result that accepts in full; null where none does, or where it is accepted already.</param>
/// <param name="NextHigh">Greatest next result that does.</param>
/// <param name="EmptySublots">Sublots without a result.</param>
/// <param name="Source">Publication, in words.</param>
/// <param name="Clause">Clause.</param>
/// <param name="Evidence">How it is known.</param>
/// <param name="Remark">Remark.</param>
public sealed record LotCharacteristic(
    string Id, MeasuredProperty Measures, LotStatistic Statistic, PercentMode? Mode, string Unit, IReadOnlyList<LotValue> Values, IReadOnlyList<LotLimit> Limits, LotOutcome Outcome, Outlier? Outlier, LotOutcome? Without,
    double? NextLow, double? NextHigh, IReadOnlyList<int> EmptySublots, string Source, string? Clause, Evidence Evidence, string? Remark)
{
    /// <summary>What holds: not decided while a sublot has no result.</summary>
    public LotVerdict Verdict { get; init; }
}

/// <summary>A sublot with its random places.</summary>
/// <param name="Number">Number, from 1.</param>
/// <param name="From">Distance from the start of laying, m.</param>
/// <param name="To">Distance from the start of laying, m.</param>
/// <param name="Places">Places.</param>
public sealed record LotSublot(int Number, double From, double To, IReadOnlyList<DrawnPlace> Places);

/// <summary>A place that was drawn.</summary>
/// <param name="Draw">The draw.</param>
/// <param name="Run">Run.</param>
/// <param name="Station">Station, m.</param>
public sealed record DrawnPlace(SamplingPlace Draw, string Run, double Station);

/// <summary>One lot.</summary>
/// <param name="Course">Course.</param>
/// <param name="Number">Number of the lot of the course, from 1.</param>
/// <param name="Sublots">Sublots.</param>
/// <param name="Characteristics">Characteristics.</param>
/// <param name="Pay">Pay of the lot, %; null where the scheme does not combine.</param>
public sealed record AcceptanceLot(string Course, int Number, IReadOnlyList<LotSublot> Sublots, IReadOnlyList<LotCharacteristic> Characteristics, double? Pay);

/// <summary>A gauge against cores.</summary>
/// <param name="Gauge">Number of the gauge.</param>
/// <param name="Course">Course.</param>
/// <param name="Offset">Its offset; null without a pair.</param>
/// <param name="Readings">Readings.</param>
/// <param name="Mean">Mean of the corrected readings, kg/m³; of the readings as they stand where there is no offset.</param>
/// <param name="IsIndicative">Whether the readings are indicative only.</param>
public sealed record GaugeReport(string Gauge, string Course, GaugeOffset? Offset, int Readings, double Mean, bool IsIndicative);

/// <summary>Results of two laboratories for one characteristic of a course.</summary>
/// <param name="Course">Course.</param>
/// <param name="Characteristic">Id of the characteristic.</param>
/// <param name="Unit">Unit of its results.</param>
/// <param name="First">One laboratory and its results.</param>
/// <param name="Second">The other.</param>
/// <param name="Sets">Both sets against each other, at each level; none where one has no spread.</param>
/// <param name="Pairs">Samples that both tested, result by result, at each level; none without two.</param>
public sealed record LaboratoryReport(
    string Course, string Characteristic, Unit Unit, (string Name, SetOfResults Results) First, (string Name, SetOfResults Results) Second, IReadOnlyList<SetComparison> Sets, IReadOnlyList<PairComparison> Pairs);

/// <summary>The lots of a shift by one scheme.</summary>
/// <param name="PlanId">Id of the plan.</param>
/// <param name="PlanTitle">Title of the plan.</param>
/// <param name="Revision">Its revision.</param>
/// <param name="PlanHash">SHA-256 of its bytes.</param>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Scheme">The scheme.</param>
/// <param name="Seed">Seed of the draw.</param>
/// <param name="Record">The record.</param>
/// <param name="Lots">Lots.</param>
/// <param name="Gauges">Gauges.</param>
/// <param name="Refused">Rows and files that were not read.</param>
/// <param name="Remarks">What was seen while the record was read.</param>
public sealed record AcceptanceReport(
    string PlanId, string? PlanTitle, string? Revision, string PlanHash, string ProgramVersion, AcceptanceScheme Scheme, ulong Seed, ShiftRecord Record, IReadOnlyList<AcceptanceLot> Lots, IReadOnlyList<GaugeReport> Gauges,
    IReadOnlyList<Problem> Refused, IReadOnlyList<Problem> Remarks)
{
    /// <summary>Unit in which stations are shown.</summary>
    public required Unit Length { get; init; }

    /// <summary>Laboratory whose results count; null: those of all that the record has.</summary>
    public string? Counts { get; init; }

    /// <summary>Laboratories that the cores of the record name, in ordinal order.</summary>
    public IReadOnlyList<string> Named => [.. Record.Cores.Select(core => core.Laboratory).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>Results of two laboratories, where the record has both.</summary>
    public IReadOnlyList<LaboratoryReport> Laboratories { get; init; } = [];
}
