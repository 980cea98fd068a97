using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Laygate.Mutation;

/// <summary>One change of one place, made so that a switch can turn it on: the place as it is stays the other branch.</summary>
/// <param name="Node">The node that changes.</param>
/// <param name="Operator">The kind of change, such as "boundary".</param>
/// <param name="Change">The change in words, "a &lt; b → a &lt;= b".</param>
/// <param name="Wrap">Writes the switched place; gets the switch, such as <c>Mutant.On(7)</c>, and the place as other switches have left it.</param>
public sealed record Mutant(SyntaxNode Node, string Operator, string Change, Func<ExpressionSyntax, SyntaxNode, SyntaxNode> Wrap)
{
    /// <summary>Number of the switch; 0 until it is in the sample.</summary>
    public int Id { get; init; }

    /// <summary>The switch of this mutant as an expression.</summary>
    public ExpressionSyntax Switch => SyntaxFactory.ParseExpression($"global::LaygateMutation.Mutant.On({Id})");

    /// <summary>Line of the place, from 1.</summary>
    public int Line => Node.GetLocation().GetLineSpan().StartLinePosition.Line + 1;
}
