using Laygate.Engineering.Cooling;
using Laygate.Engineering.Mat;
using Laygate.Engineering.Reading;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Inputs and answers that all quantities of a cooling mat share.</summary>
internal static class CoolingInputs
{
    /// <summary>Gathers stack and weather; returns the answer where something is missing.</summary>
    public static Answer? Gather(Calculation calculation, PavingPass pass, CoolingQuestion question)
    {
        var context = calculation.Context;
        new MatReader(context, calculation).Read(pass);
        var weather = new MatWeatherReader(context, calculation).Read(question);
        if (calculation.Stopped is null && weather is [var first, ..])
        {
            var celsius = Model.Measures.UnitTable.Find(context.System == Model.Measures.UnitSystem.UnitedStates ? "°F" : "°C");
            calculation.Show("Tb", "base", "weather", first.Base, celsius);
            calculation.Show("Ta", "air", "weather", first.Points[0].Air, celsius);
        }

        return calculation.Stopped;
    }

    /// <summary>The answer from a band.</summary>
    public static Answer Result(
        Calculation calculation, string quantity, string symbol, string expression, CoolingFailure? failure, MatBand? band, double longest)
    {
        if (band is null)
        {
            return Answer.None(AbsenceReason.NotComputable, Note.Of(NoteIds.CoolingFailed, ("reason", failure is { } known ? Words.Of(known.Kind) : "no-result")));
        }

        if (band.Expected is not { } expected)
        {
            return Answer.None(AbsenceReason.NotComputable, new Note(
                NoteIds.NotReached, [new NoteArgument("quantity", quantity), new NoteArgument("within", null, longest / 3600, "h")]));
        }

        var answer = calculation.Result(quantity, symbol, expression, expected, Math.Min(band.Low, expected), Math.Max(band.High, expected));
        var condition = calculation.Context.Plan.Existing?.Condition;
        return condition is null or Moisture.Dry
            ? answer
            : answer with { Note = Note.Of(NoteIds.WaterNotIncluded, ("condition", Words.Of(condition.Value))) };
    }
}
