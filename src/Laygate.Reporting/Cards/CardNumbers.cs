using System.Globalization;
using System.Text.RegularExpressions;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards;

/// <summary>Figures and times as a crew reads them, in its language. Targets are rounded to the nearest, limits to the safe side.</summary>
internal sealed partial class CardNumbers(CardTexts texts, SiteSheet sheet)
{
    private static readonly TimeSpan FiveMinutes = TimeSpan.FromMinutes(5);

    /// <summary>Whether the plan states another language than that of the card, or none where the card is not in English.</summary>
    public bool IsForeign => sheet.Language is { Length: > 0 } own ? !own.StartsWith(texts.Language, StringComparison.OrdinalIgnoreCase) : texts.Language is not "en";

    /// <summary>A figure with its range.</summary>
    public string Of(SheetFigure figure) => figure.Value is { } value ? Of(value, figure.Kind is FigureKind.Stated or FigureKind.Limit) : texts["none"];

    /// <summary>A value with its range, to the nearest.</summary>
    public string Of(ShownValue value, bool exact)
    {
        if (value.Number is not { } number)
        {
            return PlainText.Show(value.Text ?? "—");
        }

        if (IsWholeHours(value))
        {
            return WithUnit(Rounding.Plain(number / 60), "h");
        }

        var kind = exact ? RoundingKind.Exact : value.Unit switch
        {
            "min" => RoundingKind.Minutes,
            "°C" or "C" or "°F" or "F" or "K" => RoundingKind.Temperature,
            _ => RoundingKind.General,
        };
        var band = value is { Low: { } from, High: { } to } ? Math.Abs(to - from) : 0;
        var text = WithUnit(Local(Rounding.Text(number, kind, 0, band)), value.Unit);
        return value is { Low: { } low, High: { } high } && band > 0
            ? $"{text} ({texts["band", Local(Rounding.Text(low, kind, 0, band)), Local(Rounding.Text(high, kind, 0, band))]})"
            : text;
    }

    /// <summary>A value that must not be exceeded, or not be fallen short of: rounded to the safe side, with the end of its range that is worse.</summary>
    /// <param name="value">The value.</param>
    /// <param name="up">Whether a higher one is safe.</param>
    public string Safe(ShownValue value, bool up)
    {
        if (value.Number is not { } number)
        {
            return Of(value, exact: true);
        }

        if (IsWholeHours(value))
        {
            return WithUnit(Rounding.Plain(number / 60), "h");
        }

        var expected = WithUnit(Local(Rounding.Plain(ToSafe(number, value.Unit, up))), value.Unit);
        var worse = up ? value.High : value.Low;
        return worse is { } end && ToSafe(end, value.Unit, up) is var bad && !bad.Equals(ToSafe(number, value.Unit, up))
            ? texts["limit.worse", expected, WithUnit(Local(Rounding.Plain(bad)), value.Unit)]
            : expected;
    }

    /// <summary>To a whole unit.</summary>
    public static string Whole(ShownValue? value) => value?.Number is { } number
        ? WithUnit(Math.Round(number, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture), value.Unit)
        : "—";

    /// <summary>A head of a column whose cells have no unit.</summary>
    public static string In(string head, string unit) => unit.Length == 0 ? head : $"{head} ({PlainText.Show(unit)})";

    /// <summary>To a tenth, without the unit.</summary>
    public string Bare(ShownValue value) => Local(Bare(value, 1));

    /// <summary>To some decimals, without the unit.</summary>
    public static string Bare(ShownValue value, int decimals) => Rounding.Plain(Math.Round(value.Number ?? 0, decimals, MidpointRounding.AwayFromZero));

    /// <summary>What a hand can set: whole millimetres, other units to what they deserve.</summary>
    public static string Fine(ShownValue value, CardNumbers numbers) => value.Unit is "mm" ? Whole(value) : numbers.Of(value, exact: false);

    /// <summary>To a tenth; feet are whole.</summary>
    public string Tenth(ShownValue value) => value.Unit is "ft" ? Whole(value) : WithUnit(Local(Rounding.Plain(Math.Round(value.Number ?? 0, 1, MidpointRounding.AwayFromZero))), value.Unit);

    /// <summary>A time of day; with its day where it is not that of the start.</summary>
    public string Time(DateTimeOffset? at) => at is not { } time ? "—"
        : sheet.ShiftStart is { } start && start.Date == time.Date ? Clock(time) : Short(time);

    /// <summary>A time in a list: the day stands where it changes.</summary>
    public string TimeAfter(DateTimeOffset? at, DateTimeOffset? before) => at is { } time && before is { } other && time.Date == other.Date ? Clock(time) : Time(at);

    /// <summary>The same to five minutes, for computed moments; a latest one is never rounded up.</summary>
    public string About(DateTimeOffset at, bool down) =>
        Time(new DateTimeOffset((at.Ticks + (down ? 0 : FiveMinutes.Ticks / 2)) / FiveMinutes.Ticks * FiveMinutes.Ticks, at.Offset));

    /// <summary>Day and time.</summary>
    public string Day(DateTimeOffset at) => $"{Weekday(at)} {at.ToString(texts.Language is "de" ? "dd.MM.yyyy HH:mm" : "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)}";

    /// <summary>A day.</summary>
    public string Day(DateOnly day) => day.ToString(texts.Language is "de" ? "dd.MM.yyyy" : "yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>What a limit asks for: in the unit of its source first, then, to the safe side, in that of the plan.</summary>
    public string Limit(ShownLimit limit)
    {
        var own = Ends(limit, limit.Low is null ? null : End(limit, limit.Low, up: true), limit.High is null ? null : End(limit, limit.High, up: false));
        if (limit is not { Quantity: null, Stated: { Length: > 0 } stated })
        {
            return (limit.Low ?? limit.High) is { Unit: "K", Low: null, Number: { } kelvin } && IsFahrenheit
                ? $"{own} ({WithUnit(Rounding.Plain(ToStep(kelvin * 1.8, 0.1, up: limit.Low is not null)), "°F")})"
                : own;
        }

        var ends = stated.Split(" to ").Select(Source).ToList();
        var first = limit is { Low: not null, High: not null } && ends.Count == 2 ? Ends(limit, ends[0], ends[1]) : limit.Low is not null ? Ends(limit, ends[0], null) : Ends(limit, null, ends[^1]);
        var second = limit is { Low: { } low, High: { } high } ? texts["limit.between", End(limit, low, up: true), End(limit, high, up: false)] : End(limit, (limit.Low ?? limit.High)!, up: limit.Low is not null);
        return $"{first} ({second})";
    }

    /// <summary>Decimals as the language writes them (German: a comma, DIN 1333).</summary>
    public string Local(string number) => texts.Language is "de" ? number.Replace('.', ',') : number;

    // A crew whose thermometer shows °F reads a difference in °F too.
    private bool IsFahrenheit => sheet.Mixes.SelectMany(mix => new[] { mix.Lowest, mix.Expected, mix.Highest, mix.RefuseBelow }).Append(sheet.Opening.Below).Any(figure => figure.Value?.Unit is "°F" or "F");

    private string Ends(ShownLimit limit, string? low, string? high) => (low, high) switch
    {
        ({ } words, null) when limit.Low?.Number is null => words.Split(", ").Select(Condition).Aggregate((one, other) => texts["or", one, other]),
        ({ } from, { } to) => texts["limit.between", from, to],
        ({ } from, null) => texts[limit.LowExclusive ? "limit.more" : "limit.least", from],
        (null, { } to) => texts[limit.HighExclusive ? "limit.less" : "limit.most", to],
        _ => "—",
    };

    // A limit that its source states in another unit is rounded to the safe side, never to one that allows more; so is one that the plan computes.
    private string End(ShownLimit limit, ShownValue end, bool up)
    {
        if (end.Number is not { } number)
        {
            return end.Text ?? "—";
        }

        if (limit.Quantity is not null && end.Low is not null)
        {
            return Safe(end, up);
        }

        return limit.Quantity is null && limit.Stated is null || IsWholeHours(end)
            ? Of(end, exact: true)
            : WithUnit(Local(Rounding.Plain(ToStep(number, 0.1, up))), end.Unit);
    }

    // As the source writes it: 55 F, 40 °C, 10.
    private string Source(string stated) => SourceFigure().Match(stated) is { Success: true } figure
        ? WithUnit(Local(figure.Groups["number"].Value), figure.Groups["unit"].Value)
        : PlainText.Show(stated);

    private static double ToSafe(double number, string unit, bool up) => ToStep(number, unit switch
    {
        "min" => Math.Abs(number) < 20 ? 1 : 5,
        "h" => Math.Abs(number) < 3 ? 0.5 : 1,
        "°C" or "C" or "°F" or "F" or "K" or "mm" => 1,
        "m/min" or "t" or "short ton" or "m" => 0.1,
        _ => Math.Pow(10, Math.Floor(Math.Log10(Math.Max(1e-6, Math.Abs(number)))) - 1),
    }, up);

    // The noise of a conversion must not move an end that is a whole step already.
    private static double ToStep(double number, double step, bool up)
    {
        var steps = Math.Round(number / step, 6);
        return Math.Round((up ? Math.Ceiling(steps) : Math.Floor(steps)) * step, 9);
    }

    // A difference in kelvin is one in degrees Celsius, and people read those.
    private static string WithUnit(string number, string unit) => Glued(number, unit switch
    {
        "K" or "C" => "°C",
        "F" => "°F",
        "kg/m2" => "kg/m²",
        "g/m2" => "g/m²",
        "lb/yd2" => "lb/yd²",
        "gal/yd2" => "gal/yd²",
        _ => unit,
    });

    // A unit of two words may be broken between them: columns are narrow.
    private static string Glued(string number, string unit) => unit.Length == 0 ? number : $"{number}{PlainText.Glue}{PlainText.Show(unit)}";

    // Within a week the weekday tells the day; the head of the card has the date.
    private string Short(DateTimeOffset at) => sheet.ShiftStart is { } start && Math.Abs((at.Date - start.Date).TotalDays) < 6
        ? $"{Weekday(at)}{PlainText.Glue}{Clock(at)}"
        : $"{Weekday(at)} {at.ToString(texts.Language is "de" ? "dd.MM. HH:mm" : "MM-dd HH:mm", CultureInfo.InvariantCulture)}";

    private static string Clock(DateTimeOffset at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);

    private string Weekday(DateTimeOffset at) => texts[$"day.{((int)at.DayOfWeek).ToString(CultureInfo.InvariantCulture)}"];

    // Nobody on site counts 1440 minutes.
    private static bool IsWholeHours(ShownValue value) => value is { Unit: "min", Low: null, Number: >= 180 and var minutes } && minutes % 60 == 0;

    private string Condition(string word) => texts.Find($"condition.{word}") is { Length: > 0 } known ? known : PlainText.Show(word);

    [GeneratedRegex(@"^(?<number>-?[\d.]+) ?(?<unit>.*)$", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: Timeout.Infinite)]
    private static partial Regex SourceFigure();
}
