using Laygate.Model.Plans;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Plans;

/// <summary>A mapped plan, or why there is none.</summary>
/// <param name="Plan">The plan; null when there is a problem, or when the document has not the shape of a plan.</param>
/// <param name="Positions">Where its values stand.</param>
/// <param name="Problems">All problems of this stage, in file order; what the shape is wrong in is for the schema to say.</param>
public sealed record PlanMapping(Plan? Plan, PlanPositions Positions, IReadOnlyList<ReadingProblem> Problems);

/// <summary>Turns a document that has the shape of the plan schema into a plan; the line for each key is written from the schema.</summary>
public static class PlanMapper
{
    /// <summary>Maps one document.</summary>
    /// <param name="document">A document that the plan schema accepts; any other gives no plan, never an exception.</param>
    public static PlanMapping Map(YamlDocument document) => Map(document, new MappingContext());

    /// <summary>Every key that the mapping of a document asks for, as a path with <c>[]</c> for list entries: <c>courses[].on</c>. Keys inside a group are asked for only where the document has the group.</summary>
    /// <param name="document">The document.</param>
    public static IReadOnlySet<string> KeysRead(YamlDocument document)
    {
        var keys = new HashSet<string>(StringComparer.Ordinal);
        Map(document, new MappingContext { KeysRead = keys });
        return keys;
    }

    private static PlanMapping Map(YamlDocument document, MappingContext context)
    {
        if (document.AsMap("plan", "format", out var problem) is not { } root)
        {
            return new PlanMapping(null, new PlanPositions(new MapToken([], document.Root.Span)), [problem!]);
        }

        var plan = KeyMapping.Plan(new Fields(root, string.Empty, context));
        return new PlanMapping(context.Problems.Count > 0 || context.IsMisshapen ? null : plan, new PlanPositions(root), [.. context.Problems.OrderBy(found => found.Position)]);
    }
}
