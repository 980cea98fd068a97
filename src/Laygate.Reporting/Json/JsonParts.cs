using System.Globalization;
using System.Text.Json;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Json;

/// <summary>Pieces that several parts of the JSON report share.</summary>
internal static class JsonParts
{
    /// <summary>A number with 12 significant digits: full precision without the noise of binary fractions; null when it is missing or not finite.</summary>
    public static void Number(Utf8JsonWriter json, string name, double? number)
    {
        if (number is { } known && double.IsFinite(known))
        {
            json.WriteNumber(name, Rounding.Kept(known));
        }
        else
        {
            json.WriteNull(name);
        }
    }

    /// <summary>A day.</summary>
    public static void Day(Utf8JsonWriter json, string name, DateOnly? day) =>
        json.WriteString(name, day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));

    /// <summary>A value, or one end of a limit.</summary>
    public static void Value(Utf8JsonWriter json, string name, ShownValue? value)
    {
        if (value is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        Number(json, "number", value.Number);
        json.WriteString("unit", value.Unit);
        Number(json, "low", value.Low);
        Number(json, "high", value.High);
        json.WriteString("text", value.Text);
        json.WriteString("place", value.Place is { } place ? Words.Of(place) : null);
        json.WriteEndObject();
    }

    /// <summary>A place in a file.</summary>
    public static void Position(Utf8JsonWriter json, Position? position)
    {
        if (position is null)
        {
            json.WriteNull("position");
            return;
        }

        json.WriteStartObject("position");
        json.WriteNumber("line", position.Line);
        json.WriteNumber("column", position.Column);
        json.WriteNumber("end_line", position.EndLine);
        json.WriteNumber("end_column", position.EndColumn);
        json.WriteEndObject();
    }

    /// <summary>An input by address and key.</summary>
    public static void Input(Utf8JsonWriter json, InputReference input)
    {
        json.WriteString("address", input.Address);
        json.WriteString("key", input.Key);
    }

    /// <summary>Places in the plan where something would be stated.</summary>
    public static void Missing(Utf8JsonWriter json, IReadOnlyList<InputReference> inputs)
    {
        json.WriteStartArray("missing");
        foreach (var input in inputs)
        {
            json.WriteStartObject();
            Input(json, input);
            json.WriteString("state", Names.Of(input));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>Remarks: id and arguments for programs, the sentence for people.</summary>
    public static void Notes(Utf8JsonWriter json, IReadOnlyList<Note> notes)
    {
        json.WriteStartArray("notes");
        foreach (var note in notes)
        {
            json.WriteStartObject();
            json.WriteString("id", note.Id);
            json.WriteString("text", NoteWords.Of(note));
            json.WriteStartObject("arguments");
            foreach (var argument in note.Arguments.DistinctBy(argument => argument.Name, StringComparer.Ordinal))
            {
                Value(json, argument.Name, new ShownValue(argument.Number, argument.Unit ?? string.Empty, Text: argument.Text));
            }

            json.WriteEndObject();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>Assumptions that were used.</summary>
    public static void Assumptions(Utf8JsonWriter json, IReadOnlyList<AssumptionUse> uses)
    {
        json.WriteStartArray("assumptions");
        foreach (var use in uses)
        {
            json.WriteStartObject();
            json.WriteString("id", use.Id);
            json.WriteString("address", use.Address);
            Number(json, "number", use.Number);
            json.WriteString("unit", use.Unit);
            json.WriteString("evidence", Words.Of(use.Evidence));
            json.WriteString("source", use.Source);
            json.WriteString("stands_for", use.StandsFor is { } input ? Names.Of(input) : null);
            InPlaceOf(json, use.StandsFor);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void InPlaceOf(Utf8JsonWriter json, InputReference? input)
    {
        if (input is null)
        {
            json.WriteNull("input");
            return;
        }

        json.WriteStartObject("input");
        Input(json, input);
        json.WriteEndObject();
    }

    /// <summary>Why something could not be read.</summary>
    public static void Problems(Utf8JsonWriter json, IReadOnlyList<Problem> problems)
    {
        json.WriteStartArray("problems");
        foreach (var problem in problems)
        {
            json.WriteStartObject();
            json.WriteString("file", problem.File);
            json.WriteString("message", problem.Message);
            json.WriteString("hint", problem.Hint);
            Position(json, problem.Position);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
