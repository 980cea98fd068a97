using System.Globalization;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards;

/// <summary>Figures and times as a crew reads them, in its language.</summary>
internal sealed class CardNumbers(CardTexts texts, SiteSheet sheet)
{
    /// <summary>Whether the plan states another language than that of the card, or none where the card is not in English.</summary>
    public bool IsForeign => sheet.Language is { Length: > 0 } own ? !own.StartsWith(texts.Language, StringComparison.OrdinalIgnoreCase) : texts.Language is not "en";

    /// <summary>A figure with its range.</summary>
    public string Of(SheetFigure figure) => figure.Value is { } value ? Of(value, figure.Kind is FigureKind.Stated or FigureKind.Limit) : texts["none"];

    /// <summary>A figure, and in brackets where it comes from.</summary>
    public string Known(SheetFigure figure) => figure.Value is null ? texts["none"] : $"{Of(figure)} ({Kind(figure.Kind)})";

    /// <summary>A value with its range.</summary>
    public string Of(ShownValue value, bool exact)
    {
        if (value.Number is not { } number)
        {
            return PlainText.Show(value.Text ?? "—");
        }

        if (IsWholeHours(value))
        {
            return Figures.WithUnit(Rounding.Plain(number / 60), "h");
        }

        var kind = exact ? RoundingKind.Exact : value.Unit switch
        {
            "min" => RoundingKind.Minutes,
            "°C" or "C" or "°F" or "F" or "K" => RoundingKind.Temperature,
            _ => RoundingKind.General,
        };
        var band = value is { Low: { } from, High: { } to } ? Math.Abs(to - from) : 0;
        var text = Figures.WithUnit(Local(Rounding.Text(number, kind, 0, band)), value.Unit);
        return value is { Low: { } low, High: { } high } && band > 0
            ? $"{text} ({texts["band", Local(Rounding.Text(low, kind, 0, band)), Local(Rounding.Text(high, kind, 0, band))]})"
            : text;
    }

    /// <summary>Where a figure comes from.</summary>
    public string Kind(FigureKind kind) => texts[kind switch
    {
        FigureKind.Stated => "kind.stated",
        FigureKind.Computed => "kind.computed",
        FigureKind.Assumed => "kind.assumed",
        _ => "kind.limit",
    }];

    /// <summary>To a whole unit.</summary>
    public static string Whole(ShownValue? value) => value?.Number is { } number
        ? Figures.WithUnit(Math.Round(number, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture), value.Unit)
        : "—";

    /// <summary>To a tenth.</summary>
    public string Tenth(ShownValue value) => Figures.WithUnit(Local(Rounding.Plain(Math.Round(value.Number ?? 0, 1, MidpointRounding.AwayFromZero))), value.Unit);

    /// <summary>A time of day; with its day where it is not that of the start.</summary>
    public string Time(DateTimeOffset? at) => at is not { } time ? "—"
        : sheet.ShiftStart is { } start && start.Date == time.Date ? time.ToString("HH:mm", CultureInfo.InvariantCulture) : Short(time);

    /// <summary>The same to five minutes, for computed moments; a latest one is never rounded up.</summary>
    public string About(DateTimeOffset at, bool down) =>
        Time(new DateTimeOffset((at.Ticks + (down ? 0 : TimeSpan.TicksPerMinute * 5 / 2)) / (TimeSpan.TicksPerMinute * 5) * (TimeSpan.TicksPerMinute * 5), at.Offset));

    // The head of the card has the year.
    private string Short(DateTimeOffset at) => $"{Weekday(at)} {at.ToString(texts.Language is "de" ? "dd.MM. HH:mm" : "MM-dd HH:mm", CultureInfo.InvariantCulture)}";

    private string Weekday(DateTimeOffset at) => texts[$"day.{((int)at.DayOfWeek).ToString(CultureInfo.InvariantCulture)}"];

    /// <summary>Day and time.</summary>
    public string Day(DateTimeOffset at) => $"{Weekday(at)} {at.ToString(texts.Language is "de" ? "dd.MM.yyyy HH:mm" : "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)}";

    /// <summary>A day.</summary>
    public string Day(DateOnly day) => day.ToString(texts.Language is "de" ? "dd.MM.yyyy" : "yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>What a limit asks for.</summary>
    public string Limit(ShownLimit limit)
    {
        var text = (limit.Low, limit.High) switch
        {
            ({ Number: null } words, null) => (words.Text ?? "—").Split(", ").Select(Condition).Aggregate((one, other) => texts["or", one, other]),
            ({ } low, { } high) => texts["limit.between", End(limit, low, up: true), End(limit, high, up: false)],
            ({ } low, null) => texts[limit.LowExclusive ? "limit.more" : "limit.least", End(limit, low, up: true)],
            (null, { } high) => texts[limit.HighExclusive ? "limit.less" : "limit.most", End(limit, high, up: false)],
            _ => "—",
        };
        return limit.Quantity is null ? text : texts["limit.quantity", text];
    }

    // Nobody on site counts 1440 minutes.
    private static bool IsWholeHours(ShownValue value) => value is { Unit: "min", Low: null, Number: >= 180 and var minutes } && minutes % 60 == 0;

    private string Condition(string word) => texts.Find($"condition.{word}") is { Length: > 0 } known ? known : PlainText.Show(word);

    /// <summary>Decimals as the language writes them (German: a comma, DIN 1333).</summary>
    public string Local(string number) => texts.Language is "de" ? number.Replace('.', ',') : number;

    // A limit that its source states in another unit is rounded to the safe side, never to one that allows more.
    private string End(ShownLimit limit, ShownValue end, bool up)
    {
        if (limit is not { Quantity: null, Stated: not null } || end.Number is not { } number || IsWholeHours(end))
        {
            return Of(end, limit.Quantity is null);
        }

        // The noise of the conversion must not move an end that is a tenth already.
        var tenths = Math.Round(number * 10, 6);
        return Figures.WithUnit(Local(Rounding.Plain((up ? Math.Ceiling(tenths) : Math.Floor(tenths)) / 10)), end.Unit);
    }
}
