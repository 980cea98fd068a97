using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Plans;

/// <summary>Checks a document against the plan schema, and says about measures, dates and times what a pattern cannot say.</summary>
public static class PlanShape
{
    /// <summary>Checks one document.</summary>
    /// <param name="document">The document.</param>
    /// <param name="schema">The plan schema.</param>
    /// <returns>All problems in file order; the schema alone decides whether there is one.</returns>
    public static IReadOnlyList<ReadingProblem> Check(YamlDocument document, LoadedSchema schema)
    {
        var shape = SchemaChecker.Check(document, schema);
        if (shape.Count == 0)
        {
            return shape;
        }

        var explained = PlanMapper.Map(document).Problems.ToLookup(problem => problem.Position);
        return [.. shape.Select(problem => explained[problem.Position].FirstOrDefault() ?? problem)];
    }
}
