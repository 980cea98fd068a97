using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.UnitTests.Reading.Yaml;

namespace Laygate.UnitTests.Reading.Schema;

/// <summary>A small schema with every construct, and documents for it. All figures invented.</summary>
internal static class SchemaSample
{
    public const string Json = """
        {
          "$schema": "http://json-schema.org/draft-07/schema#",
          "title": "plan",
          "type": "object",
          "additionalProperties": false,
          "required": ["id", "courses"],
          "properties": {
            "id": { "title": "name", "type": "string", "pattern": "^[a-z0-9]+(-[a-z0-9]+)*$", "description": "The name of the plan. Kept for ever.", "examples": ["south-ramp"] },
            "start": { "title": "time of day", "type": "string", "pattern": "^([01][0-9]|2[0-3]):[0-5][0-9]$", "examples": ["22:30"] },
            "courses": { "type": "array", "minItems": 1, "maxItems": 3, "items": { "$ref": "#/definitions/course" } },
            "codes": { "type": "array", "uniqueItems": true, "items": { "type": "string" } },
            "screed": { "type": "object", "additionalProperties": false, "properties": { "width": { "allOf": [{ "$ref": "#/definitions/length" }], "examples": ["3.50 m"] } } },
            "limits": { "type": "object", "additionalProperties": false, "patternProperties": { "^[a-z]+$": { "$ref": "#/definitions/length" } } },
            "supply": { "oneOf": [{ "$ref": "#/definitions/plant" }, { "$ref": "#/definitions/silo" }] },
            "slope": { "anyOf": [{ "$ref": "#/definitions/length" }, { "title": "share", "type": "string", "pattern": "^[0-9.]+ %$", "examples": ["2.5 %"] }, { "type": "array", "minItems": 2, "items": { "$ref": "#/definitions/length" } }] },
            "part": { "$ref": "#/definitions/part" }
          },
          "definitions": {
            "length": { "title": "length", "type": "string", "pattern": "^[+-]?[0-9]+(\\.[0-9]+)? (mm|m|in)$", "examples": ["40 mm"] },
            "course": {
              "type": "object", "additionalProperties": false, "required": ["id", "thickness"],
              "properties": {
                "id": { "type": "string", "minLength": 1, "maxLength": 20 },
                "mix": { "type": "string" },
                "thickness": { "allOf": [{ "$ref": "#/definitions/length" }], "description": "Thickness after rolling. Stated on the drawing." },
                "night": { "enum": ["yes", "no"] },
                "mode": { "enum": ["separately", "hot_on_warm", "hot_on_hot"] },
                "passes": { "type": "integer", "minimum": 1, "exclusiveMaximum": 50 },
                "factor": { "type": "number", "maximum": 1.5, "exclusiveMinimum": 0 }
              }
            },
            "plant": { "title": "plant", "type": "object", "additionalProperties": false, "required": ["kind", "output"], "properties": { "kind": { "enum": ["plant"] }, "output": { "type": "string" } } },
            "silo": { "title": "silo", "type": "object", "additionalProperties": false, "required": ["kind", "content", "outlet"], "properties": { "kind": { "enum": ["silo"] }, "content": { "type": "string" }, "outlet": { "type": "string" } } },
            "part": { "type": "object", "additionalProperties": false, "properties": { "name": { "type": "string", "not": { "enum": ["none"], "description": "The word none names nothing." } }, "parts": { "type": "array", "items": { "$ref": "#/definitions/part" } } } }
          }
        }
        """;

    public const string Valid = """
        id: south-ramp
        start: 22:30
        courses:
          - id: binder
            thickness: 80 mm
            mode: separately
            passes: 8
            factor: 1.25
          - {id: wearing, thickness: 1.5 in}
        codes: [a, b]
        screed:
          width: 3.50 m
        limits: {low: 1 m}
        supply: {kind: silo, content: x, outlet: y}
        slope: [1 m, 2 m]
        part: {name: a, parts: [{name: b, parts: []}]}
        """;

    public static readonly LoadedSchema Schema = SchemaLoader.Load(Json);

    public static IReadOnlyList<ReadingProblem> Check(string text) => SchemaChecker.Check(ReadingTestHelper.Document(text), Schema);
}
