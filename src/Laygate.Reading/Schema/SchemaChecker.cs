using Laygate.Reading.Yaml;
using Newtonsoft.Json.Linq;
using NJsonSchema.Validation;

namespace Laygate.Reading.Schema;

/// <summary>Checks a document against a schema and words what is wrong for the person who wrote it.</summary>
public static class SchemaChecker
{
    /// <summary>Checks one document.</summary>
    /// <param name="document">The document.</param>
    /// <param name="schema">The schema.</param>
    /// <returns>The problems in document order, the first 100 if there are more; empty when the document has the right shape.</returns>
    public static IReadOnlyList<ReadingProblem> Check(YamlDocument document, LoadedSchema schema)
    {
        var errors = new JsonSchemaValidator().Validate(Json(document.Root), schema.Validator);
        if (errors.Count == 0 && !HoldsNothing(document.Root))
        {
            return [];
        }

        var walked = new SchemaWalker(schema).Walk(document.Root);
        // The validator decides. A key without a value is wrong even where a schema would let it pass.
        var problems = errors.Count > 0 ? walked : walked.Where(problem => problem.IsMissingValue).ToList();
        if (errors.Count > 0 && walked.Count == 0)
        {
            return ReadingProblems.InOrder(errors.Select(Unworded));
        }

        return ReadingProblems.InOrder(problems.Select(found => found.Problem));
    }

    /// <summary>Whether the validator accepts a document; for comparison with other validators.</summary>
    /// <param name="document">The document.</param>
    /// <param name="schema">The schema.</param>
    public static bool IsValid(YamlDocument document, LoadedSchema schema) =>
        new JsonSchemaValidator().Validate(Json(document.Root), schema.Validator).Count == 0;

    // Most documents are right: finding words for what is wrong costs as much as finding that nothing is.
    private static bool HoldsNothing(YamlToken token) => token switch
    {
        ScalarToken scalar => scalar.IsNull,
        MapToken map => map.Entries.Any(entry => HoldsNothing(entry.Value)),
        ListToken list => list.Items.Any(HoldsNothing),
        _ => false,
    };

    private static JToken Json(YamlToken root)
    {
        using var reader = new TokenJsonReader(root);
        return JToken.Load(reader);
    }

    // Only reached if the wording misses a case that the validator knows; better a rough message than none.
    private static ReadingProblem Unworded(ValidationError error) => new(
        $"This does not have the shape that is expected here ({error.Kind}, at `{error.Path}`).",
        new TextSpan(Math.Max(1, error.LineNumber), Math.Max(1, error.LinePosition), Math.Max(1, error.LineNumber), Math.Max(1, error.LinePosition) + 1));
}
