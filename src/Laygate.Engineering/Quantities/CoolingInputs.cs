using System.Globalization;
using Laygate.Engineering.Cooling;
using Laygate.Engineering.Mat;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Inputs and answers that all quantities of a cooling mat share.</summary>
internal static class CoolingInputs
{
    /// <summary>Gathers stack and weather; returns the answer where something is missing.</summary>
    public static Answer? Gather(Calculation calculation, PavingPass pass, MatQuestion question)
    {
        var context = calculation.Context;
        new MatReader(context, calculation).Read(pass);
        new MatWeatherReader(context, calculation).Read(pass, question);
        return calculation.Stopped;
    }

    /// <summary>The answer from a band.</summary>
    public static Answer Result(
        Calculation calculation, string quantity, string symbol, string expression, MatFound found, double longest)
    {
        Show(calculation, found.Weather);
        if (found.Band is not { } band)
        {
            return Failed(found.Failure, calculation);
        }

        if (band.Ends is not { } ends)
        {
            return Answer.None(
                AbsenceReason.OutsideRange,
                new Note(NoteIds.NotReached, [new NoteArgument("quantity", quantity), new NoteArgument("within", null, longest / 3600, "h"), new NoteArgument("numbers", calculation.Numbers)]),
                calculation.FirstStated);
        }

        var answer = calculation.Result(quantity, symbol, expression, ends.Expected, ends.Low, ends.High);
        return answer with { Samples = band.Samples };
    }

    /// <summary>The answer where nothing could be solved.</summary>
    public static Answer Failed(CoolingFailure? failure, Calculation? calculation = null) => Answer.None(
        AbsenceReason.OutsideRange,
        Note.Of(NoteIds.CoolingFailed, ("reason", failure is { } known ? Words.Of(known.Kind) : "no-result"), ("numbers", calculation?.Numbers ?? "what is stated")),
        calculation?.FirstStated);

    /// <summary>Shows the temperature of the base at a depth that tells what the day or night before left.</summary>
    private static void ShowBelow(Calculation calculation, MatWeather weather, bool us)
    {
        if (calculation.Below?.At(weather) is not { Source: not BaseSource.Assumed } profile)
        {
            return;
        }

        var (depth, place) = us ? (4 * 0.0254, "4 in") : (0.1, "100 mm");
        var known = profile.Source == BaseSource.Stated ? "from base_at_depth" : "left by the days before, as computed";
        calculation.Show($"Tb({place})", $"base {place} down, {known}", "weather", weather.Base + profile.At(depth), UnitTable.Find(us ? "°F" : "°C"));
    }

    /// <summary>Shows the moment and the weather with which the answer was found.</summary>
    private static void Show(Calculation calculation, MatWeather? weather)
    {
        if (weather is null)
        {
            return;
        }

        var us = calculation.Context.System == UnitSystem.UnitedStates;
        if (weather.Start is { } start)
        {
            calculation.Show("laid", Working.WorstMoment, "weather", start.ToString("yyyy-MM-dd'T'HH:mmzzz", CultureInfo.InvariantCulture));
        }

        calculation.Show("Ta", "air", "weather", weather.AirAtStart, UnitTable.Find(us ? "°F" : "°C"));
        calculation.Show("Tb", "base", "weather", weather.Base, UnitTable.Find(us ? "°F" : "°C"));
        ShowBelow(calculation, weather, us);
        calculation.Show("v", "wind at mat", "weather", weather.WindAtStart, UnitTable.Find(us ? "mph" : "m/s"));
    }
}
