using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Laygate.Mutation;

/// <summary>Mutants of conditions.</summary>
internal static class Conditions
{
    private static readonly Dictionary<string, string> Relations = new(StringComparer.Ordinal)
    {
        ["<"] = "<=",
        ["<="] = "<",
        [">"] = ">=",
        [">="] = ">",
    };

    /// <summary>The condition of a branch or a loop is negated; where it declares a name it is always, or never, true.</summary>
    public static IEnumerable<Mutant> Of(SyntaxNode place)
    {
        var condition = place switch
        {
            IfStatementSyntax one => one.Condition,
            ConditionalExpressionSyntax one => one.Condition,
            WhileStatementSyntax one => one.Condition,
            _ => ((WhenClauseSyntax)place).Condition,
        };
        if (Places.MayStandTwice(condition))
        {
            yield return Write.Around(condition, "condition", $"{Write.Short(condition)} → not so", (on, was) => $"({on} ^ ({was}))");
            yield break;
        }

        yield return Write.Around(condition, "condition", $"{Write.Short(condition)} → always", (on, was) => $"({was} || {on})");
        yield return Write.Around(condition, "condition", $"{Write.Short(condition)} → never", (on, was) => $"({was} && !{on})");
    }

    /// <summary>A negation or a minus goes.</summary>
    public static IEnumerable<Mutant> OfUnary(PrefixUnaryExpressionSyntax place)
    {
        if (place.IsKind(SyntaxKind.LogicalNotExpression))
        {
            yield return Write.Around(place, "condition", $"{Write.Short(place)} → without the negation", (on, was) => $"({on} ^ {was})");
        }
        else if (place.IsKind(SyntaxKind.UnaryMinusExpression) && Places.MayStandTwice(place))
        {
            yield return Write.Other(place, "arithmetic", place.Operand.ToString());
        }
    }

    /// <summary>A relation inside a pattern moves by its boundary.</summary>
    public static IEnumerable<Mutant> OfPattern(IsPatternExpressionSyntax place)
    {
        if (!Places.MayStandTwice(place))
        {
            yield break;
        }

        foreach (var relation in place.Pattern.DescendantNodesAndSelf().OfType<RelationalPatternSyntax>())
        {
            var moved = place.Pattern.ToString().Remove(relation.SpanStart - place.Pattern.SpanStart, relation.OperatorToken.Span.Length)
                .Insert(relation.SpanStart - place.Pattern.SpanStart, Relations[relation.OperatorToken.Text]);
            yield return Write.Other(place, "relation", $"{place.Expression} is {moved}");
        }
    }
}
