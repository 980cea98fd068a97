using System.Collections.Frozen;
using System.Globalization;
using Laygate.Engineering.Records;
using Laygate.Reporting.Text;

namespace Laygate.Reporting.Records;

/// <summary>Figures of a record with the digits that a site works with.</summary>
internal static class LedgerNumbers
{
    // Decimals by unit: scales print 0.01 t, stations are read to 1 m, and nobody lays to a tenth of a millimetre; that digit is there to compare. Judgement.
    private static readonly FrozenDictionary<string, int> Decimals = new Dictionary<string, int>(StringComparer.Ordinal)
    {
        ["t"] = 0,
        ["short ton"] = 0,
        ["m"] = 0,
        ["ft"] = 0,
        ["mm"] = 1,
        ["cm"] = 2,
        ["in"] = 2,
        ["t/m"] = 3,
        ["lb/ft"] = 0,
        ["kg/m2"] = 1,
        ["lb/yd2"] = 1,
        ["min"] = 0,
        ["t/h"] = 0,
        ["short ton/h"] = 0,
        ["m2"] = 0,
        ["yd2"] = 0,
        ["t/m3"] = 3,
        ["lb/ft3"] = 1,
        ["%"] = 2,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The value with its unit.</summary>
    public static string Text(LedgerFigure figure) => Text(figure, figure.Si);

    /// <summary>Another value of the same kind with its unit; a dash where there is none.</summary>
    public static string Text(LedgerFigure figure, double? si) => si is { } value ? Figures.WithUnit(Bare(figure, value), figure.Unit.Spelling) : "–";

    /// <summary>The number without its unit.</summary>
    public static string Bare(LedgerFigure figure, double si, int more = 0)
    {
        var rounded = Math.Round(figure.Unit.FromSi(si), Decimals.GetValueOrDefault(figure.Unit.Spelling, 2) + more, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("F" + (Decimals.GetValueOrDefault(figure.Unit.Spelling, 2) + more).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    /// <summary>The value with its unit and its uncertainty.</summary>
    public static string WithUncertainty(LedgerFigure figure) => figure.UncertaintySi is { } u
        ? Figures.WithUnit($"{Bare(figure, figure.Si)} ± {Bare(figure, u)}", figure.Unit.Spelling)
        : Text(figure);

    /// <summary>The value with its unit and its range, where the two ends differ as shown.</summary>
    public static string WithRange(LedgerFigure figure) => figure is { LowSi: { } low, HighSi: { } high } && !string.Equals(Bare(figure, low), Bare(figure, high), StringComparison.Ordinal)
        ? $"{Text(figure)} ({Bare(figure, low)} to {Bare(figure, high)})"
        : Text(figure);

    /// <summary>A load in whole units, rounded up: the last one is never made smaller than what is missing.</summary>
    public static string Load(LedgerFigure figure) => Figures.WithUnit(Math.Ceiling(figure.Number - 1e-6).ToString(CultureInfo.InvariantCulture), figure.Unit.Spelling);

    /// <summary>A time of day.</summary>
    public static string Time(DateTimeOffset at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A moment with date and offset.</summary>
    public static string Moment(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture);

    /// <summary>A number of things.</summary>
    public static string Count(int count, string one, string many) => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");
}
