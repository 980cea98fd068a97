using Laygate.Engineering.Quantities;
using Laygate.Engineering.Timeline;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.PlanViews;

/// <summary>What the stated hours say about a time of laying.</summary>
/// <param name="Table">The hours; null where the plan states none, or no time of laying.</param>
/// <param name="Parts">Parts of the time over which they speak.</param>
/// <param name="Hours">The weather wherever it bends in these parts, their ends included: between two of them lies a straight line.</param>
/// <param name="Outside">What they leave out; null where they speak about the whole time.</param>
/// <param name="Bridged">A long gap that a straight line bridges; null where there is none.</param>
internal sealed record WeatherAtLaying(WeatherTable? Table, IReadOnlyList<WeatherPart> Parts, IReadOnlyList<WeatherHour> Hours, Note? Outside, Note? Bridged)
{
    private const string Address = "weather";

    /// <summary>Weather while anything is laid.</summary>
    public static WeatherAtLaying Of(QuantityContext context) => Of(context, LayingSpan.Of(context, pass: null));

    /// <summary>Weather over one time of laying.</summary>
    public static WeatherAtLaying Of(QuantityContext context, LayingSpan? span)
    {
        if (span is null || WeatherTable.Of(context) is not { } table)
        {
            return new WeatherAtLaying(null, [], [], null, null);
        }

        var parts = table.Within(span.First, span.Last);
        return new WeatherAtLaying(table, parts, [.. parts.SelectMany(table.Bends).Select(table.At)], WeatherGaps.Outside(table, parts, span), WeatherGaps.Bridged(table, span));
    }

    /// <summary>Lowest or highest value while laying: at the stated hours and at the ends of the time of laying.</summary>
    /// <param name="context">The context.</param>
    /// <param name="read">Reads an hour.</param>
    /// <param name="key">Its key in an hour.</param>
    /// <param name="envelope">The value of the envelope, and its key.</param>
    /// <param name="highest">Highest instead of lowest.</param>
    public static Answer Extreme(
        QuantityContext context, Func<WeatherHour, IMeasure?> read, string key, (IMeasure? Value, string Key) envelope, bool highest)
    {
        var laying = Of(context);
        if (laying.Hours.Count == 0)
        {
            return envelope.Value is not null
                ? Answers.Measure(envelope.Value, new InputReference(Address, $"envelope.{envelope.Key}"))
                : NoWeather(context, envelope.Key);
        }

        var values = laying.Hours.Select(read).ToList();
        if (values.Exists(value => value is null))
        {
            return Answer.Missing(OfEachHour(key));
        }

        var extreme = highest ? values.MaxBy(value => value!.Si) : values.MinBy(value => value!.Si);
        if (laying.Outside is null || envelope.Value is not { } rest)
        {
            return Answers.Measure(extreme, new InputReference(Address, "hours")) with { Partial = laying.Outside, Note = laying.Bridged };
        }

        // What the hours leave out, the envelope covers.
        return (highest ? rest.Si > extreme!.Si : rest.Si < extreme!.Si)
            ? Answers.Measure(rest, new InputReference(Address, $"envelope.{envelope.Key}"))
            : Answers.Measure(extreme, new InputReference(Address, "hours"));
    }

    /// <summary>A key that hours of weather lack.</summary>
    /// <param name="key">The key in an hour.</param>
    public static InputReference OfEachHour(string key) => new(Address, $"hours.{key}");

    /// <summary>Notes which keys some of the hours lack.</summary>
    /// <param name="calculation">Where it is noted.</param>
    /// <param name="keys">Keys with what stands behind them.</param>
    /// <returns>Whether any is lacking.</returns>
    public bool Lacks(Calculation calculation, params (string Key, Func<WeatherHour, IMeasure?> Read)[] keys)
    {
        var lacking = keys.Where(key => Hours.Any(hour => key.Read(hour) is null)).Select(key => OfEachHour(key.Key)).ToList();
        calculation.Miss(lacking);
        return lacking.Count > 0;
    }

    /// <summary>Why no weather is to be had: hours that do not cover the shift, hours without a shift, or nothing at all.</summary>
    public static Answer NoWeather(QuantityContext context, string envelopeKey)
    {
        var envelope = new InputReference(Address, $"envelope.{envelopeKey}");
        if (context.Plan.Weather?.Hours is not { Count: > 0 })
        {
            return Answer.Missing(envelope);
        }

        if (LayingSpan.Of(context, pass: null) is not { } span)
        {
            // All keys may be there and yet leave no time, as when a clock change swallows the shift.
            return ShiftTimes.Missing(context.Plan.Shift) is { Length: > 0 } missing
                ? Answer.Missing(missing)
                : Answer.None(AbsenceReason.OutsideRange, Note.Of(NoteIds.OutsideFormula, ("quantity", "shift.duration"), ("numbers", "start, end and clock change"), ("range", "an end after the start")), new InputReference("shift", "end"));
        }

        return Answer.None(AbsenceReason.NotComputable, WeatherGaps.Outside(WeatherTable.Of(context)!, [], span)!, new InputReference(Address, "hours"));
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
