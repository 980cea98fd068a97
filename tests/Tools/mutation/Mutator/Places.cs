using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Laygate.Mutation;

/// <summary>Finds what can change in one file.</summary>
public static class Places
{
    /// <summary>All mutants of a file in the order of the text.</summary>
    public static IEnumerable<Mutant> In(SyntaxNode root, SemanticModel types) =>
        root.DescendantNodes().Where(node => !IsConstantText(node)).SelectMany(node => node switch
        {
            BinaryExpressionSyntax binary => Binaries.Of(binary, types),
            LiteralExpressionSyntax literal => Literals.Of(literal, types),
            VariableDeclarationSyntax { Parent: FieldDeclarationSyntax field } => Literals.OfConstant(field),
            PrefixUnaryExpressionSyntax unary => Conditions.OfUnary(unary),
            AssignmentExpressionSyntax { Parent: ExpressionStatementSyntax } assignment => Binaries.OfAssignment(assignment, types),
            IsPatternExpressionSyntax pattern => Conditions.OfPattern(pattern),
            InvocationExpressionSyntax call => Calls.Of(call),
            IfStatementSyntax or ConditionalExpressionSyntax or WhileStatementSyntax or WhenClauseSyntax => Conditions.Of(node),
            ReturnStatementSyntax or ArrowExpressionClauseSyntax => Statements.OfResult(node, types),
            ExpressionStatementSyntax or ContinueStatementSyntax or BreakStatementSyntax or ThrowStatementSyntax => Statements.OfRemoval((StatementSyntax)node),
            _ => [],
        });

    /// <summary>Whether a second copy of the expression may stand beside the first: it declares no name.</summary>
    public static bool MayStandTwice(SyntaxNode node) =>
        !node.DescendantNodesAndSelf().Any(inner => inner is DeclarationPatternSyntax or SingleVariableDesignationSyntax or DeclarationExpressionSyntax or RefExpressionSyntax or StackAllocArrayCreationExpressionSyntax);

    /// <summary>A place whose text must be known to the compiler, or that says how a message is worded.</summary>
    private static bool IsConstantText(SyntaxNode node) => node.Ancestors().Any(outer =>
        outer is AttributeSyntax or CaseSwitchLabelSyntax or ParameterSyntax or EnumMemberDeclarationSyntax or InterpolatedStringExpressionSyntax or PatternSyntax
        || outer is FieldDeclarationSyntax field && field.Modifiers.Any(SyntaxKind.ConstKeyword) && node is not VariableDeclarationSyntax
        || outer is LocalDeclarationStatementSyntax local && local.Modifiers.Any(SyntaxKind.ConstKeyword));
}
