using System.Globalization;
using Laygate.Model.Measures;

namespace Laygate.Reading.Measures;

/// <summary>Why a text is no measure of the dimension that is needed.</summary>
/// <param name="Message">What is wrong, as a sentence.</param>
/// <param name="Hint">What to write instead, as a sentence.</param>
public sealed record MeasureProblem(string Message, string Hint);

/// <summary>Reads a measure, a number and a unit such as <c>45 mm</c>, and writes it the same way.</summary>
public static class MeasureReader
{
    /// <summary>Reads a measure of the dimension that <typeparamref name="T"/> stands for.</summary>
    /// <param name="text">The text.</param>
    /// <param name="problem">Why it is no such measure; null when it is one.</param>
    /// <typeparam name="T">The dimension.</typeparam>
    /// <returns>The measure in the unit as stated, or null.</returns>
    public static Measure<T>? Read<T>(string text, out MeasureProblem? problem)
        where T : IDimension
    {
        var found = Read(text, T.Of, out problem);
        return found is var (number, unit) ? new Measure<T>(number, unit) : null;
    }

    /// <summary>Reads a measure of a dimension that is known only when it is read, for example a limit in a rule file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="dimension">The dimension that is needed; not <see cref="Dimension.None"/>, see <see cref="ReadNumber"/>.</param>
    /// <param name="problem">Why it is no such measure; null when it is one.</param>
    /// <returns>The number and the unit as stated, or null.</returns>
    public static (double Number, Unit Unit)? Read(string text, Dimension dimension, out MeasureProblem? problem)
    {
        var found = Find(text, dimension);
        problem = found is null ? MeasureMistakes.Explain(text, dimension) : null;
        return found;
    }

    /// <summary>Whether a text is a measure of a dimension. Explains nothing, so that an explanation may ask it about the form it offers.</summary>
    internal static bool IsMeasure(string text, Dimension dimension) => Find(text, dimension) is not null;

    /// <summary>Reads a number without a unit, in the form in which measures write theirs.</summary>
    /// <param name="text">The text.</param>
    /// <param name="problem">Why it is no such number; null when it is one.</param>
    public static double? ReadNumber(string text, out MeasureProblem? problem)
    {
        var isNumber = MeasureText.IsBareNumber(text);
        problem = isNumber ? null : MeasureMistakes.Explain(text, Dimension.None);
        return isNumber ? Number(text) : null;
    }

    /// <summary>Why a text is no measure of a dimension.</summary>
    /// <param name="text">The text.</param>
    /// <param name="dimension">The dimension that is needed.</param>
    /// <returns>The problem; null when the text is such a measure.</returns>
    public static MeasureProblem? Explain(string text, Dimension dimension)
    {
        _ = Read(text, dimension, out var problem);
        return problem;
    }

    /// <summary>Writes a measure so that it reads back as the same number and unit. Numbers that were not read from a text are cut to six decimals.</summary>
    /// <param name="measure">The measure; its number is finite.</param>
    public static string Write(IMeasure measure) => $"{WriteNumber(measure.Number)} {measure.Unit.Spelling}";

    /// <summary>Writes the number of a measure in plain digits with at most six decimals.</summary>
    /// <param name="number">A finite number.</param>
    public static string WriteNumber(double number)
    {
        var text = number.ToString("F6", CultureInfo.InvariantCulture).TrimEnd('0').TrimEnd('.');
        return text is "-0" ? "0" : text;
    }

    private static (double Number, Unit Unit)? Find(string text, Dimension dimension) =>
        MeasureText.Split(text) is var (number, spelling) && UnitTable.Find(spelling) is { } unit && unit.Dimension == dimension
            ? (Number(number), unit)
            : null;

    private static double Number(string digits) =>
        double.Parse(digits, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
}
