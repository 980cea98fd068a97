using System.Globalization;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sheet;

/// <summary>Figures and times as a crew needs them: no more digits than they deserve, and where they come from.</summary>
internal static class SheetNumbers
{
    /// <summary>A figure with its unit and, in brackets, whether it is stated, computed, assumed or a limit; a dash where there is none.</summary>
    public static string Of(SheetFigure figure) => figure.Value is null ? "—" : $"{Value(figure)} ({Kind(figure.Kind)})";

    /// <summary>A figure with its unit only.</summary>
    public static string Value(SheetFigure figure) => figure.Value is { } value
        ? Value(value, figure.Kind is FigureKind.Stated or FigureKind.Limit ? RoundingKind.Exact : KindOf(value))
        : "—";

    /// <summary>A computed value.</summary>
    public static string Computed(ShownValue value) => Value(value, KindOf(value));

    /// <summary>A station or length along the mat, to whole metres or feet.</summary>
    public static string Along(ShownValue? value) =>
        value?.Number is { } number ? $"{Whole(number)} {value.Unit}" : "—";

    /// <summary>The size of a load, to a tenth.</summary>
    public static string Load(ShownValue value) =>
        $"{Rounding.Plain(Math.Round(value.Number ?? 0, 1, MidpointRounding.AwayFromZero))} {value.Unit}";

    /// <summary>A tonnage, to whole tons.</summary>
    public static string Mass(SheetFigure figure) => figure.Value is { Number: { } number } value
        ? $"{(figure.Kind == FigureKind.Stated ? Rounding.Plain(number) : Whole(number))} {value.Unit} ({Kind(figure.Kind)})"
        : "—";

    /// <summary>Where a figure comes from.</summary>
    public static string Kind(FigureKind kind) => kind switch
    {
        FigureKind.Stated => "stated",
        FigureKind.Computed => "computed",
        FigureKind.Assumed => "assumed",
        _ => "limit",
    };

    /// <summary>A clock time; the day is written out where it is not the day on which the shift starts.</summary>
    public static string Time(DateTimeOffset? at, DateTimeOffset? shift) => at is not { } time ? "—"
        : shift is { } start && time.Date == start.Date
            ? time.ToString("HH:mm", CultureInfo.InvariantCulture)
            : time.ToString("ddd yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A clock time to five minutes: computed moments deserve no more.</summary>
    public static string About(DateTimeOffset? at, DateTimeOffset? shift, bool down = false) => Time(at is { } time ? Five(time, down) : null, shift);

    /// <summary>Minutes, whole.</summary>
    public static string Minutes(SheetFigure figure) => figure.Value is { Number: { } number } value ? $"{Whole(number)} {value.Unit} ({Kind(figure.Kind)})" : "—";

    private static DateTimeOffset Five(DateTimeOffset time, bool down) =>
        new(((time.Ticks + (down ? 0 : TimeSpan.TicksPerMinute * 5 / 2)) / (TimeSpan.TicksPerMinute * 5)) * TimeSpan.TicksPerMinute * 5, time.Offset);

    private static string Whole(double number) => Rounding.Plain(Math.Round(number, MidpointRounding.AwayFromZero));

    private static string Value(ShownValue value, RoundingKind kind)
    {
        if (value.Number is not { } number)
        {
            return MarkdownText.Of(value.Text);
        }

        var band = value is { Low: { } from, High: { } to } ? Math.Abs(to - from) : 0;
        var ends = value is { Low: { } low, High: { } high }
            ? $", between {Rounding.Text(low, kind, 0, band)} and {Rounding.Text(high, kind, 0, band)}"
            : string.Empty;
        var unit = value.Unit.Length > 0 ? " " + value.Unit : string.Empty;
        var expected = kind == RoundingKind.Exact ? Rounding.Plain(number) : Rounded(number, value.Unit, kind, band);
        return $"{expected}{unit}{ends}";
    }

    // What a crew can set or read: millimetres, tenths of a metre per minute, and no more.
    private static string Rounded(double number, string unit, RoundingKind kind, double band) => unit switch
    {
        "mm" => Whole(number),
        "m/min" or "t" or "short ton" or "m" => Tenth(number),
        "min" when band == 0 => Tenth(number),
        _ => Rounding.Text(number, kind, 0, band),
    };

    private static string Tenth(double number) => Rounding.Plain(Math.Round(number, 1, MidpointRounding.AwayFromZero));

    private static RoundingKind KindOf(ShownValue value) => value.Unit switch
    {
        "min" when value.Low is not null => RoundingKind.Minutes,
        "°C" or "C" or "°F" or "F" or "K" => RoundingKind.Temperature,
        _ => RoundingKind.General,
    };
}
