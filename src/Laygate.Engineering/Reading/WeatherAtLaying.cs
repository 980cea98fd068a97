using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Reading;

/// <summary>Weather over the hours in which is laid, else the envelope.</summary>
internal static class WeatherAtLaying
{
    private const string Address = "weather";

    /// <summary>The hours from the one that contains the start of laying to its end; null when the stated hours do not cover it.</summary>
    public static IReadOnlyList<WeatherHour>? Hours(QuantityContext context)
    {
        var clock = PlanView.Of(context).Clock;
        if (context.Plan.Weather?.Hours is not { Count: > 0 } stated || clock.Start is not { } start || clock.End is not { } end)
        {
            return null;
        }

        var hours = stated.OrderBy(hour => clock.At(hour.At)).ToList();
        var first = hours.FindLastIndex(hour => clock.At(hour.At) <= start);
        var last = hours.FindLastIndex(hour => clock.At(hour.At) < end);
        var step = hours.Count > 1 ? clock.At(hours[^1].At) - clock.At(hours[^2].At) : TimeSpan.FromHours(1);
        return first >= 0 && last >= first && clock.At(hours[^1].At) + step >= end ? hours.GetRange(first, last - first + 1) : null;
    }

    /// <summary>Lowest or highest stated value while laying.</summary>
    /// <param name="context">The context.</param>
    /// <param name="read">Reads an hour.</param>
    /// <param name="envelope">The value of the envelope, and its key.</param>
    /// <param name="highest">Highest instead of lowest.</param>
    public static Answer Extreme(
        QuantityContext context, Func<WeatherHour, IMeasure?> read, (IMeasure? Value, string Key) envelope, bool highest)
    {
        if (Hours(context) is { } hours)
        {
            return OverHours(hours, read, highest);
        }

        return envelope.Value is not null
            ? Answers.Measure(envelope.Value, new InputReference(Address, $"envelope.{envelope.Key}"))
            : NoWeather(context, envelope.Key);
    }

    /// <summary>Why no weather is to be had: hours that do not cover the shift, hours without a shift, or nothing at all.</summary>
    public static Answer NoWeather(QuantityContext context, string envelopeKey)
    {
        var envelope = new InputReference(Address, $"envelope.{envelopeKey}");
        if (context.Plan.Weather?.Hours is not { Count: > 0 })
        {
            return Answer.Missing(envelope);
        }

        var clock = PlanView.Of(context).Clock;
        return clock.Start is null || clock.End is null
            ? Answer.Missing(ShiftTimes.Missing(context.Plan.Shift))
            : Answer.None(AbsenceReason.NotComputable, Note.Of(NoteIds.NoHourInShift), new InputReference(Address, "hours"));
    }

    private static Answer OverHours(IReadOnlyList<WeatherHour> hours, Func<WeatherHour, IMeasure?> read, bool highest)
    {
        var input = new InputReference(Address, "hours");
        var values = hours.Select(read).ToList();
        if (values.Exists(value => value is null))
        {
            return Answer.Missing(input);
        }

        return Answers.Measure(highest ? values.MaxBy(value => value!.Si) : values.MinBy(value => value!.Si), input);
    }
}

/// <summary>Keys of the shift that are still missing.</summary>
internal static class ShiftTimes
{
    /// <summary>Missing keys among date, start and end.</summary>
    public static InputReference[] Missing(Shift? shift, bool end = true) =>
    [
        .. new (string Key, bool Given)[] { ("date", shift?.Date is not null), ("start", shift?.Start is not null), ("end", !end || shift?.End is not null) }
            .Where(field => !field.Given)
            .Select(field => new InputReference("shift", field.Key)),
    ];
}
