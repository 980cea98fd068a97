using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Laygate.Reading.Schema;

/// <summary>Writes schemas that are made from others.</summary>
internal static class SchemaText
{
    private static readonly JsonSerializerOptions Form = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text of a schema, as it stands in the folder <c>schemas</c>.</summary>
    public static string Of(JsonObject schema) => schema.ToJsonString(Form) + "\n";
}
