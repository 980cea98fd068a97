using System.Globalization;
using FluentValidation;
using FluentValidation.Results;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Measures;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>A group of keys under examination: collects what is wrong with its values.</summary>
internal sealed class PlanPart(ValidationContext<Plan> context, string path)
{
    private const double AbsoluteZero = -273.15;

    // Values in different units may differ by rounding only.
    private const double Rounding = 1e-9;

    /// <summary>A group inside this one.</summary>
    public PlanPart Inside(string key) => new(context, Path(key));

    /// <summary>The entries of a list inside this group, each with its own place.</summary>
    public IEnumerable<(T Item, PlanPart Where)> Each<T>(string key, IReadOnlyList<T>? items) =>
        (items ?? []).Select((item, index) => (item, new PlanPart(context, string.Create(CultureInfo.InvariantCulture, $"{Path(key)}[{index}]"))));

    /// <summary>The value of a key cannot be so.</summary>
    public void Fail(string key, string message, string? hint = null) =>
        context.AddFailure(new ValidationFailure(Path(key), message) { CustomState = hint });

    /// <summary>A measure that is more than nothing.</summary>
    public void Positive(string key, IMeasure? measure)
    {
        if (measure is { Number: <= 0 })
        {
            Fail(key, $"`{key}` is {MeasureReader.Write(measure)}; it must be more than zero.");
        }
    }

    /// <summary>A measure that may be nothing but not less.</summary>
    public void NotNegative(string key, IMeasure? measure)
    {
        if (measure is { Number: < 0 })
        {
            Fail(key, $"`{key}` is {MeasureReader.Write(measure)}; it cannot be negative.");
        }
    }

    /// <summary>A count that has a least value.</summary>
    public void AtLeast(string key, int? count, int least)
    {
        if (count < least)
        {
            Fail(key, string.Create(CultureInfo.InvariantCulture, $"`{key}` is {count}; it must be at least {least}."));
        }
    }

    /// <summary>A part of a whole, from nothing to all of it.</summary>
    public void Share(string key, Measure<Ratio>? share)
    {
        if (share is { Si: < 0 or > 1 })
        {
            Fail(key, $"`{key}` is {MeasureReader.Write(share)}; it must lie between 0 % and 100 %.");
        }
    }

    /// <summary>A part of a whole that is more than nothing.</summary>
    public void PositiveShare(string key, Measure<Ratio>? share)
    {
        if (share is { Si: <= 0 or > 1 })
        {
            Fail(key, $"`{key}` is {MeasureReader.Write(share)}; it must be more than 0 % and at most 100 %.");
        }
    }

    /// <summary>A temperature that exists.</summary>
    public void Temperature(string key, IMeasure? temperature)
    {
        if (temperature is not null && temperature.Si < AbsoluteZero - Rounding)
        {
            Fail(key, $"`{key}` is {MeasureReader.Write(temperature)}, which is below absolute zero.");
        }
    }

    /// <summary>A value that can be at all; one that another check refuses already is not refused twice.</summary>
    public void CanBe(string key, IMeasure? measure, Possible possible)
    {
        if (measure is null || possible.Has(measure.Si))
        {
            return;
        }

        var isTemperature = measure.Unit.Dimension == Dimension.Temperature;
        if (isTemperature ? measure.Si < AbsoluteZero - Rounding : measure.Number <= 0)
        {
            return;
        }

        Fail(key, possible.Message(key, measure), possible.Hint(measure));
    }

    /// <summary>A temperature at a place.</summary>
    public void Placed(string key, PlacedTemperature? placed)
    {
        if (placed is null)
        {
            return;
        }

        Inside(key).Temperature("value", placed.Value);
        Inside(key).CanBe("value", placed.Value, Possible.Asphalt);
    }

    /// <summary>A band of temperatures.</summary>
    public void Band(string key, TemperatureBand? band, Possible possible)
    {
        if (band is null)
        {
            return;
        }

        var inside = Inside(key);
        inside.Temperature("lowest", band.Lowest);
        inside.Temperature("expected", band.Expected);
        inside.Temperature("highest", band.Highest);
        inside.CanBe("lowest", band.Lowest, possible);
        inside.CanBe("expected", band.Expected, possible);
        inside.CanBe("highest", band.Highest, possible);
        inside.Ascending(("lowest", band.Lowest), ("expected", band.Expected), ("highest", band.Highest));
    }

    /// <summary>Values of which each, where it is stated, is at least the one stated before it.</summary>
    public void Ascending(params ReadOnlySpan<(string Key, IMeasure? Measure)> chain)
    {
        (string Key, IMeasure Measure)? before = null;
        foreach (var (key, measure) in chain)
        {
            if (measure is null)
            {
                continue;
            }

            if (before is var (lowKey, low) && IsLess(measure, low))
            {
                Fail(key, $"`{key}` is {MeasureReader.Write(measure)}, less than `{lowKey}` with {MeasureReader.Write(low)}.", "Correct one of the two.");
            }

            before = (key, measure);
        }
    }

    /// <summary>Two values of which the second must be more than the first.</summary>
    public void Less(string lowKey, IMeasure? low, string highKey, IMeasure? high)
    {
        if (low is null || high is null || IsLess(low, high))
        {
            return;
        }

        Fail(highKey, $"`{highKey}` is {MeasureReader.Write(high)}; it must be more than `{lowKey}` with {MeasureReader.Write(low)}.", "Correct one of the two.");
    }

    /// <summary>Whether a value is less than another by more than rounding.</summary>
    public static bool IsLess(IMeasure left, IMeasure right) =>
        left.Si < right.Si - (Rounding * Math.Max(1, Math.Abs(right.Si)));

    private string Path(string key) => path.Length == 0 ? key : $"{path}.{key}";
}
