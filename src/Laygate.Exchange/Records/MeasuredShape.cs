using Laygate.Engineering.Measured;

namespace Laygate.Exchange.Records;

/// <summary>What <c>laygate measured --format json</c> writes. Keys may be added; none is renamed or removed under the same measured_version.</summary>
/// <param name="MeasuredVersion">Version of this shape.</param>
/// <param name="Program">Name of the program.</param>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Shifts">Shifts in the order in which they were named.</param>
/// <param name="Learnt">What they taught; null where nothing was to be learnt.</param>
/// <param name="NotCounted">Records below the folder that could not be used.</param>
public sealed record MeasuredShape(
    [property: Schema(Only = MeasuredShape.Version)] int MeasuredVersion, string Program, string ProgramVersion, IReadOnlyList<MeasuredShiftShape> Shifts, LearntShape? Learnt, IReadOnlyList<RowProblemShape> NotCounted)
{
    /// <summary>Version of the shape.</summary>
    public const int Version = 1;
}

/// <summary>Measured against computed temperatures of one shift.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Record">The record.</param>
/// <param name="Places">Places at which readings were compared.</param>
/// <param name="PlacesWithMeasuredLoads">Places whose load had its temperature measured.</param>
/// <param name="WeatherMeasured">Whether the weather was measured; else it is that of the plan.</param>
/// <param name="Groups">Skin, then inside: all readings, then by time after the screed.</param>
/// <param name="Readings">Readings beside their computed bands.</param>
/// <param name="NotCompared">Readings that are not compared, by reason.</param>
/// <param name="Refused">Rows and files that were not read.</param>
/// <param name="Learnt">Entries of what recorded shifts taught with which is computed, because the plan names them.</param>
public sealed record MeasuredShiftShape(
    RecordedPlanShape Plan, RecordShape Record, int Places, int PlacesWithMeasuredLoads, bool WeatherMeasured, IReadOnlyList<MeasuredGroupShape> Groups, IReadOnlyList<MeasuredReadingShape> Readings,
    IReadOnlyList<NotComparedShape> NotCompared, IReadOnlyList<RowProblemShape> Refused, IReadOnlyList<string> Learnt);

/// <summary>Readings of one kind over a time after the screed.</summary>
/// <param name="Skin">Whether they are of the skin.</param>
/// <param name="FromMin">From this time after the screed on, min; 0 for all.</param>
/// <param name="ToMin">Up to this time, min; null: without an end.</param>
/// <param name="Readings">How many.</param>
/// <param name="Places">At how many places.</param>
/// <param name="Inside">Share in the band, 0 to 1, with the 90 % limits that as many independent places would have.</param>
/// <param name="BiasK">Mean of measured less expected, K.</param>
/// <param name="DeviationK">Standard deviation of the differences, K; null for one reading.</param>
public sealed record MeasuredGroupShape(bool Skin, double FromMin, double? ToMin, int Readings, int Places, OnwardBandShape Inside, double BiasK, double? DeviationK);

/// <summary>A reading beside its computed band.</summary>
/// <param name="Row">Its row.</param>
/// <param name="Course">Course.</param>
/// <param name="DepthMm">Depth below the surface, mm; 0 for the skin.</param>
/// <param name="AgeMin">Time since the screed passed, min.</param>
/// <param name="MeasuredC">Measured, °C.</param>
/// <param name="ExpectedC">Expected, °C.</param>
/// <param name="LowC">5 % point, °C.</param>
/// <param name="HighC">95 % point, °C.</param>
/// <param name="Inside">Whether it lies in the band.</param>
public sealed record MeasuredReadingShape(RowShape Row, string Course, double? DepthMm, double AgeMin, double MeasuredC, double ExpectedC, double LowC, double HighC, bool Inside);

/// <summary>Readings that are not compared.</summary>
/// <param name="Reason">Why.</param>
/// <param name="Count">How many.</param>
/// <param name="Says">What to do, as a sentence.</param>
public sealed record NotComparedShape(NotCompared Reason, int Count, string Says);

/// <summary>What several shifts taught.</summary>
/// <param name="Id">Id of the entry that plans name.</param>
/// <param name="Stored">Whether it was written to the file.</param>
/// <param name="Says">What it comes to, in sentences.</param>
public sealed record LearntShape(string Id, bool Stored, IReadOnlyList<string> Says);
