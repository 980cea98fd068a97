using Laygate.Model.Measures;
using Laygate.Model.Records;
using Laygate.Reading.Yaml;
using NodaTime;

namespace Laygate.Reading.Records;

/// <summary>Order of day, month and year in the dates of a file.</summary>
internal enum DateOrder
{
    /// <summary>2027-05-14.</summary>
    YearMonthDay,

    /// <summary>14.05.2027.</summary>
    DayMonthYear,

    /// <summary>05/14/2027.</summary>
    MonthDayYear,
}

/// <summary>How a number of stations is written.</summary>
internal enum StationForm
{
    /// <summary>A plain number in the unit.</summary>
    Plain,

    /// <summary>12+500: kilometres and metres.</summary>
    KilometresAndMetres,

    /// <summary>118+50: hundreds of feet and feet.</summary>
    HundredsOfFeet,
}

/// <summary>One column of a file, or a value that all its rows share.</summary>
/// <param name="Index">Place of the quantity among those of the kind.</param>
/// <param name="Quantity">What it holds.</param>
/// <param name="Column">Name in the header; null where all rows share a value.</param>
/// <param name="Value">The value that all rows share.</param>
/// <param name="Unit">Unit of a number.</param>
/// <param name="Form">How a station is written.</param>
/// <param name="Words">Words of the file with those of the plan or of the closed list.</param>
/// <param name="At">Where it stands in the mapping.</param>
internal sealed record ColumnMapping(
    int Index, RowQuantity Quantity, string? Column, string? Value, Unit? Unit, StationForm Form, IReadOnlyDictionary<string, string> Words, TextSpan At)
{
    /// <summary>Last column of a grid; null for a single column.</summary>
    public string? LastColumn { get; init; }

    /// <summary>Unit of the offsets in the header of a grid.</summary>
    public Unit? HeaderUnit { get; init; }

    /// <summary>Offsets of a grid as its header has them, m.</summary>
    public IReadOnlyList<double> Offsets { get; init; } = [];
}

/// <summary>How one raw file is read; everything is declared.</summary>
internal sealed record FileMapping(string File, RecordKind Kind, TextSpan At)
{
    public char Delimiter { get; init; } = ',';

    public char DecimalMark { get; init; } = '.';

    /// <summary>Mark between thousands; null: none.</summary>
    public char? Grouping { get; init; }

    public string Encoding { get; init; } = "utf-8";

    /// <summary>Line of the header.</summary>
    public int Header { get; init; } = 1;

    /// <summary>Whether the row below the header says units.</summary>
    public bool UnitsRow { get; init; }

    public DateOrder Dates { get; init; }

    /// <summary>First day, where rows have times only.</summary>
    public DateOnly? Day { get; init; }

    /// <summary>Zone of times without an offset; null where the file has no times.</summary>
    public DateTimeZone? Zone { get; init; }

    /// <summary>Texts that stand for no reading.</summary>
    public IReadOnlyList<string> NoData { get; init; } = [];

    /// <summary>Whether the first of two tickets with one number and other content counts.</summary>
    public bool OriginalStands { get; init; }

    /// <summary>Division of the scale, kg; null where it is not declared.</summary>
    public double? Division { get; init; }

    public IReadOnlyList<ColumnMapping> Columns { get; init; } = [];
}

/// <summary>The mapping of a record.</summary>
internal sealed record RecordMapping(string? Plan, string? About, RecordUncertainty Uncertainty, double? Water, IReadOnlyList<FileMapping> Files)
{
    /// <summary>Whether it is that of a trial length.</summary>
    public bool IsTrial { get; init; }

    /// <summary>Laboratory whose results count for acceptance.</summary>
    public string? Laboratory { get; init; }
}
