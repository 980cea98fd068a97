using Laygate.Model.Measures;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Measures;

/// <summary>Words what is wrong with a text that should be a measure, and shows the right form.</summary>
internal static class MeasureMistakes
{
    /// <summary>The first mistake of a text that is no measure of a dimension.</summary>
    public static MeasureProblem Explain(string text, Dimension dimension)
    {
        if (dimension == Dimension.None)
        {
            return NoUnitNeeded(text);
        }

        if (string.IsNullOrWhiteSpace(text))
        {
            return new MeasureProblem($"{Needed(dimension)} is needed here, not an empty text.", Form(dimension));
        }

        if (text.Length > MeasureText.Longest)
        {
            return new MeasureProblem($"{Needed(dimension)} is needed here, not {TokenNames.Of(Token(text))}.", Form(dimension));
        }

        if (MeasureText.Split(text) is { } parts)
        {
            return UnitMistakes.Explain(parts.Number, parts.Unit, dimension);
        }

        return Points(text) ?? BareNumber(text, dimension) ?? Trap(text, dimension) ?? Order(text, dimension) ?? Other(text, dimension);
    }

    private static MeasureProblem NoUnitNeeded(string text)
    {
        if (MeasureText.Split(text) is { } parts)
        {
            return new MeasureProblem($"{TokenNames.Quote(text)} has a unit; a number without a unit is needed here.", $"Write `{parts.Number}` alone.");
        }

        var trap = ScalarTraps.Explain(text);
        var why = trap is null ? string.Empty : $": {trap.Explanation}";
        var right = trap?.RightForm is { } form && MeasureText.IsBareNumber(form) ? form : "3";
        return new MeasureProblem($"{TokenNames.Quote(text)} is not a number without a unit{why}.", $"Write the digits alone, such as `{right}`.");
    }

    private static MeasureProblem? Points(string text) =>
        MeasureText.Loosely(text) is var (number, _) && number.Count(letter => letter == '.') > 1
            ? new MeasureProblem($"{TokenNames.Quote(text)} has more than one point in its number.", "Keep one decimal point, and write thousands without a mark.")
            : null;

    private static MeasureProblem? BareNumber(string text, Dimension dimension) =>
        MeasureText.IsBareNumber(text)
            ? new MeasureProblem($"{TokenNames.Quote(text)} has no unit; {MeasureDimensions.Noun(dimension)} is needed here.", $"Write the unit behind the number, such as `{text} {UnitTable.Of(dimension).First().Spelling}`; {UnitMistakes.Known(dimension)}.")
            : null;

    private static MeasureProblem? Trap(string text, Dimension dimension) =>
        ScalarTraps.Explain(text) is { } trap
            ? new MeasureProblem($"{TokenNames.Quote(text)} is not {MeasureDimensions.Noun(dimension)}: {trap.Explanation}.", Hint(trap.RightForm, dimension))
            : null;

    // The repair of a number says nothing about its unit; only a form that is right altogether is offered.
    private static string Hint(string? right, Dimension dimension) =>
        right is not null && MeasureReader.IsMeasure(right, dimension) ? $"Write `{right}`." : Form(dimension);

    private static MeasureProblem? Order(string text, Dimension dimension) =>
        text.Split(' ') is [var unit, var number] && MeasureText.IsBareNumber(number) && UnitTable.Find(unit) is not null
            ? new MeasureProblem($"{TokenNames.Quote(text)} has its unit before the number.", Hint($"{number} {unit}", dimension))
            : null;

    private static MeasureProblem Other(string text, Dimension dimension) =>
        new($"{TokenNames.Quote(text)} is not {MeasureDimensions.Noun(dimension)}.", Form(dimension));

    private static string Form(Dimension dimension) =>
        $"Write a number, one blank and a unit, such as `{MeasureDimensions.Example(dimension)}`.";

    private static string Needed(Dimension dimension)
    {
        var noun = MeasureDimensions.Noun(dimension);
        return string.Concat(noun[..1].ToUpperInvariant(), noun[1..]);
    }

    private static ScalarToken Token(string text) => new(text, ScalarStyle.Quoted, TextSpan.FileStart);
}
