using System.Globalization;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>Words for laying hour by hour and for workable weather.</summary>
internal static class OutlookWords
{
    /// <summary>Go, caution or no-go.</summary>
    public static string Of(LayingVerdict verdict) => verdict switch
    {
        LayingVerdict.Go => "go",
        LayingVerdict.Caution => "caution",
        _ => "no-go",
    };

    /// <summary>A side of the weather.</summary>
    public static string Of(WeatherAxis axis) => axis switch
    {
        WeatherAxis.Air => "lowest air",
        WeatherAxis.Base => "lowest base",
        _ => "highest wind at the mat",
    };

    /// <summary>A moment in local time.</summary>
    public static string Time(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A limit that does not pass, with value and limit.</summary>
    public static string Of(BrokenLimit broken)
    {
        var name = $"{PlainText.Show(broken.Finding.Title)} ({PlainText.Show(broken.Finding.Rule)}, {PlainText.Show(broken.Finding.Address)})";
        if (broken.Value is not { } value || broken.Limit is not { } limit)
        {
            return name;
        }

        var end = limit.Low ?? limit.High;
        var tight = broken.OnExpectedValuesOnly ? ", met on expected values only" : string.Empty;
        return end is null ? name : $"{name}: {Number(value)} against {(limit.Low is null ? "at most" : "at least")} {Number(end)}{tight}";
    }

    /// <summary>A value to three digits.</summary>
    public static string Number(ShownValue value) => value.Number is { } number
        ? Figures.WithUnit(Rounding.Text(number, value.Unit is "°C" or "°F" or "C" or "F" or "K" ? RoundingKind.Temperature : RoundingKind.General, 0), value.Unit)
        : PlainText.Show(value.Text ?? string.Empty);
}
