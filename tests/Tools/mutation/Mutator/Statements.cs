using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Laygate.Mutation;

/// <summary>Mutants of whole statements and of results.</summary>
internal static class Statements
{
    /// <summary>The statement is left out.</summary>
    public static IEnumerable<Mutant> OfRemoval(StatementSyntax place) =>
        Places.MayStandTwice(place)
            ? [new Mutant(place, "statement", $"{Write.Short(place)} → left out", (on, was) => SyntaxFactory.ParseStatement($"if (!{on}) {{ {was} }}"))]
            : [];

    /// <summary>
    /// A result is what its type has when nothing is said: no value, nothing in the list, zero; a yes is a no.
    /// A result that may not be null is left alone: its null would be noticed by the first reader, and would only flatter the score.
    /// </summary>
    public static IEnumerable<Mutant> OfResult(SyntaxNode place, SemanticModel types)
    {
        var result = place is ReturnStatementSyntax statement ? statement.Expression : ((ArrowExpressionClauseSyntax)place).Expression;
        if (result is null or ThrowExpressionSyntax or LiteralExpressionSyntax or DefaultExpressionSyntax or RefExpressionSyntax
            || Owner(place, types) is not { } type)
        {
            yield break;
        }

        if (type.SpecialType == SpecialType.System_Boolean)
        {
            yield return Write.Around(result, "result", $"{Write.Short(result)} → not so", (on, was) => $"({on} ^ ({was}))");
        }
        else if (Empty(type, result) is { } empty)
        {
            yield return Write.Around(result, "result", $"{Write.Short(result)} → {empty}", (on, was) => $"({on} ? {empty} : {was})");
        }
    }

    private static string? Empty(ITypeSymbol type, ExpressionSyntax result) => type switch
    {
        { NullableAnnotation: NullableAnnotation.Annotated } or { OriginalDefinition.SpecialType: SpecialType.System_Nullable_T } => "null",
        { SpecialType: SpecialType.System_String } or { SpecialType: SpecialType.System_Void } => null,
        INamedTypeSymbol { IsGenericType: true, TypeArguments.Length: 1 } list when IsList(list) && result is not CollectionExpressionSyntax { Elements.Count: 0 } => $"(({type.ToDisplayString(SymbolDisplayFormat.FullyQualifiedFormat)})[])",
        IArrayTypeSymbol => $"(({type.ToDisplayString(SymbolDisplayFormat.FullyQualifiedFormat)})[])",
        { IsValueType: true } => "default",
        _ => null,
    };

    private static bool IsList(INamedTypeSymbol type) => type.Name is "IEnumerable" or "IReadOnlyList" or "List" or "IReadOnlyCollection" or "IList" or "ImmutableArray";

    private static ITypeSymbol? Owner(SyntaxNode place, SemanticModel types)
    {
        var owner = place.Ancestors().First(node => node is BaseMethodDeclarationSyntax or LocalFunctionStatementSyntax or AnonymousFunctionExpressionSyntax or BasePropertyDeclarationSyntax or AccessorDeclarationSyntax or CompilationUnitSyntax);
        return owner switch
        {
            AnonymousFunctionExpressionSyntax lambda => (types.GetSymbolInfo(lambda).Symbol as IMethodSymbol)?.ReturnType,
            AccessorDeclarationSyntax accessor => (types.GetDeclaredSymbol(accessor) as IMethodSymbol)?.ReturnType,
            BasePropertyDeclarationSyntax property => (types.GetDeclaredSymbol(property) as IPropertySymbol)?.Type,
            CompilationUnitSyntax => null,
            _ => (types.GetDeclaredSymbol(owner) as IMethodSymbol) is { } method && !method.IsAsync && !IsIterator(owner) ? method.ReturnType : null,
        };
    }

    private static bool IsIterator(SyntaxNode owner) => owner.DescendantNodes().Any(node => node is YieldStatementSyntax);
}
