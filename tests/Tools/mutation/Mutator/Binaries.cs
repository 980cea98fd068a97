using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Laygate.Mutation;

/// <summary>Mutants of operators between two operands.</summary>
internal static class Binaries
{
    private static readonly Dictionary<SyntaxKind, (string Kind, string[] Others)> Changes = new()
    {
        [SyntaxKind.LessThanExpression] = ("relation", ["<=", ">="]),
        [SyntaxKind.LessThanOrEqualExpression] = ("relation", ["<", ">"]),
        [SyntaxKind.GreaterThanExpression] = ("relation", [">=", "<="]),
        [SyntaxKind.GreaterThanOrEqualExpression] = ("relation", [">", "<"]),
        [SyntaxKind.EqualsExpression] = ("relation", ["!="]),
        [SyntaxKind.NotEqualsExpression] = ("relation", ["=="]),
        [SyntaxKind.AddExpression] = ("arithmetic", ["-"]),
        [SyntaxKind.SubtractExpression] = ("arithmetic", ["+"]),
        [SyntaxKind.MultiplyExpression] = ("arithmetic", ["/"]),
        [SyntaxKind.DivideExpression] = ("arithmetic", ["*"]),
        [SyntaxKind.ModuloExpression] = ("arithmetic", ["*"]),
        [SyntaxKind.LogicalAndExpression] = ("logic", ["||"]),
        [SyntaxKind.LogicalOrExpression] = ("logic", ["&&"]),
    };

    /// <summary>Mutants of one operator; none of texts that are joined.</summary>
    public static IEnumerable<Mutant> Of(BinaryExpressionSyntax place, SemanticModel types)
    {
        if (!Places.MayStandTwice(place))
        {
            yield break;
        }

        if (place.IsKind(SyntaxKind.CoalesceExpression) && place.Right is not ThrowExpressionSyntax)
        {
            yield return Write.Other(place, "default", $"({place.Right})");
        }

        if (!Changes.TryGetValue(place.Kind(), out var change) || IsText(place, types))
        {
            yield break;
        }

        foreach (var other in change.Others)
        {
            yield return Write.Other(place, change.Kind, $"{place.Left} {other} {place.Right}");
        }
    }

    /// <summary>Adding becomes taking away, multiplying becomes dividing.</summary>
    public static IEnumerable<Mutant> OfAssignment(AssignmentExpressionSyntax place, SemanticModel types)
    {
        var other = place.Kind() switch
        {
            SyntaxKind.AddAssignmentExpression when types.GetTypeInfo(place.Left).Type?.SpecialType != SpecialType.System_String => "-=",
            SyntaxKind.SubtractAssignmentExpression => "+=",
            SyntaxKind.MultiplyAssignmentExpression => "/=",
            SyntaxKind.DivideAssignmentExpression => "*=",
            _ => null,
        };
        if (other is not null && Places.MayStandTwice(place))
        {
            yield return new Mutant(place.Parent!, "arithmetic", Write.Short($"{place} → {other}"), (on, was) =>
                SyntaxFactory.ParseStatement($"if ({on}) {{ {place.Left} {other} {place.Right}; }} else {{ {was} }}"));
        }
    }

    private static bool IsText(BinaryExpressionSyntax place, SemanticModel types) =>
        place.IsKind(SyntaxKind.AddExpression) && types.GetTypeInfo(place).Type?.SpecialType == SpecialType.System_String;
}
