using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Laygate.Mutation;

/// <summary>Builds mutants.</summary>
internal static class Write
{
    /// <summary>An expression that is another one while the switch is on.</summary>
    public static Mutant Other(ExpressionSyntax place, string kind, string other) =>
        new(place, kind, $"{Short(place)} → {Short(other)}", (on, was) => SyntaxFactory.ParseExpression($"({on} ? {other} : {was})"));

    /// <summary>The same, with a text made from the switch and from the place as it stands.</summary>
    public static Mutant Around(SyntaxNode place, string kind, string change, Func<string, string, string> text) =>
        new(place, kind, change, (on, was) => SyntaxFactory.ParseExpression(text(on.ToString(), was.ToString())));

    /// <summary>A text in one line of at most 90 characters.</summary>
    public static string Short(SyntaxNode node) => Short(node.ToString());

    /// <inheritdoc cref="Short(SyntaxNode)"/>
    public static string Short(string text)
    {
        var line = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return line.Length > 90 ? line[..87] + "..." : line;
    }
}
