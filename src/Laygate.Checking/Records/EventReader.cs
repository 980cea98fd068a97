using System.Globalization;
using Laygate.Engineering.Onward;
using Laygate.Model.Measures;
using Laygate.Reading.Measures;
using Laygate.Reading.Plans.Consistency;
using Laygate.Rules.Results;

namespace Laygate.Checking.Records;

/// <summary>Reads events; what cannot be read is said under the name of its option.</summary>
/// <param name="momentOf">Reads a moment, with or without date and offset; null where it is none.</param>
internal sealed class EventReader(Func<string, DateTimeOffset?> momentOf)
{
    /// <summary>More trucks in one group than any site has: judgement, ten times a large fleet.</summary>
    private const int MostTrucks = 200;

    private readonly List<Problem> problems = [];

    /// <summary>What could not be read.</summary>
    public IReadOnlyList<Problem> Problems => problems;

    /// <summary>Reads the events.</summary>
    public OnwardEvents Read(EventTexts texts) => new()
    {
        Closing = Moment("--closing", texts.Closing),
        Plant = Plant(texts.PlantDown),
        RainAt = Moment("--rain", texts.Rain),
        StandsUntil = Moment("--stands-until", texts.StandsUntil),
        Speed = Speed(texts.Speed),
        EndsAt = EndAt(texts.EndAt),
        Trucks = Trucks(texts.Trucks),
        RollersLost = [.. texts.RollersLost.Distinct(StringComparer.Ordinal)],
        Air = Possibly<Temperature>("--air", texts.Air, Dimension.Temperature, Possible.Air),
        Base = Possibly<Temperature>("--base", texts.Base, Dimension.Temperature, Possible.Ground),
        Wind = Possibly<Speed>("--wind", texts.Wind, Dimension.Speed, Possible.Wind),
    };

    /// <summary>That a text is no moment, and how one is written.</summary>
    /// <param name="option">The option under which it stands.</param>
    /// <param name="text">The text.</param>
    public static Problem NoMoment(string option, string text) => new(option, $"`{text}` is no moment.", "Write it as 2027-05-15T01:40, with or without an offset, or as 01:40 of the shift.", null);

    private DateTimeOffset? Moment(string option, string? text)
    {
        if (text is null)
        {
            return null;
        }

        var moment = momentOf(text);
        if (moment is null)
        {
            problems.Add(NoMoment(option, text));
        }

        return moment;
    }

    private PlantDown? Plant(string? text)
    {
        if (text is null)
        {
            return null;
        }

        if (Pair("--plant-down", text, "plant-a=02:40") is not var (plant, until))
        {
            return null;
        }

        return until is "end" ? new PlantDown(plant, null) : Moment("--plant-down", until) is { } at ? new PlantDown(plant, at) : null;
    }

    private (string? Run, double Station)? EndAt(string? text)
    {
        var at = text?.IndexOf('=', StringComparison.Ordinal) ?? -1;
        return Measure("--end-at", at > 0 ? text![(at + 1)..].Trim() : text, Dimension.Length) is var (number, unit) ? (at > 0 ? text![..at].Trim() : null, unit.ToSi(number)) : null;
    }

    private Dictionary<string, int> Trucks(IReadOnlyList<string> texts)
    {
        var trucks = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var text in texts)
        {
            if (Pair("--trucks", text, "binder-trucks=12") is not var (group, count))
            {
                continue;
            }

            if (int.TryParse(count, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number <= MostTrucks)
            {
                trucks[group] = number;
            }
            else
            {
                Say("--trucks", $"`{count}` is no number of trucks from 0 to {MostTrucks.ToString(CultureInfo.InvariantCulture)}.", null);
            }
        }

        return trucks;
    }

    private (string Name, string Value)? Pair(string option, string text, string example)
    {
        var at = text.IndexOf('=', StringComparison.Ordinal);
        if (at > 0 && at < text.Length - 1)
        {
            return (text[..at].Trim(), text[(at + 1)..].Trim());
        }

        Say(option, $"`{text}` names no value.", $"Write for example {option} {example}.");
        return null;
    }

    private double? Speed(string? text)
    {
        var speed = Possibly<Speed>("--speed", text, Dimension.Speed, Possible.PaverSpeed);
        if (speed is 0)
        {
            Say("--speed", "At a speed of 0 nothing is laid.", "Say with --stands-until how long the paver stands.");
        }

        return speed;
    }

    // What cannot be in a plan cannot be tonight.
    private double? Possibly<T>(string option, string? text, Dimension dimension, Possible possible)
        where T : IDimension
    {
        if (Measure(option, text, dimension) is not var (number, unit))
        {
            return null;
        }

        var stated = new Measure<T>(number, unit);
        if (dimension != Dimension.Temperature && number < 0)
        {
            Say(option, $"`{text}` is below 0.", null);
        }
        else if (!possible.Has(stated.Si))
        {
            Say(option, possible.Message(option, stated), possible.Hint(stated));
        }
        else
        {
            return stated.Si;
        }

        return null;
    }

    private (double Number, Unit Unit)? Measure(string option, string? text, Dimension dimension)
    {
        if (text is null)
        {
            return null;
        }

        if (MeasureReader.Read(text, dimension, out var problem) is { } read)
        {
            return read;
        }

        Say(option, problem!.Message, problem.Hint);
        return null;
    }

    private void Say(string option, string message, string? hint) => problems.Add(new Problem(option, message, hint, null));
}
