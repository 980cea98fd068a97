using System.Text.Json;
using Laygate.Engineering.Quantities;

namespace Laygate.Reporting.Json;

/// <summary>How a value was found, as JSON.</summary>
internal static class JsonWorking
{
    public static void Write(Utf8JsonWriter json, Working? working)
    {
        if (working is null)
        {
            json.WriteNull("working");
            return;
        }

        json.WriteStartObject("working");
        json.WriteStartArray("inputs");
        foreach (var input in working.Inputs)
        {
            json.WriteStartObject();
            json.WriteString("symbol", input.Symbol);
            json.WriteString("quantity", input.Quantity);
            json.WriteString("address", input.Address);
            JsonParts.Number(json, "number", input.Number);
            json.WriteString("unit", input.Unit);
            json.WriteString("text", input.Text);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        Steps(json, working.Steps);
        JsonParts.Assumptions(json, working.Assumptions);
        json.WriteEndObject();
    }

    private static void Steps(Utf8JsonWriter json, IReadOnlyList<WorkingStep> steps)
    {
        json.WriteStartArray("steps");
        foreach (var step in steps)
        {
            json.WriteStartObject();
            json.WriteString("symbol", step.Symbol);
            json.WriteString("expression", step.Expression);
            JsonParts.Number(json, "number", step.Number);
            json.WriteString("unit", step.Unit);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
