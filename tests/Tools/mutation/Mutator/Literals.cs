using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Laygate.Mutation;

/// <summary>Mutants of written numbers and of true and false; texts are left alone.</summary>
internal static class Literals
{
    /// <summary>A whole number by one up and down; a number that is measured or computed with, by a tenth up and down.</summary>
    public static IEnumerable<Mutant> Of(LiteralExpressionSyntax place, SemanticModel types) => place.Kind() switch
    {
        SyntaxKind.TrueLiteralExpression => [Write.Other(place, "constant", "false")],
        SyntaxKind.FalseLiteralExpression => [Write.Other(place, "constant", "true")],
        SyntaxKind.NumericLiteralExpression => Neighbours(Value(place, types)).Select(other => Write.Other(place, "constant", other)),
        _ => [],
    };

    /// <summary>A constant of a number becomes a property that the switch changes.</summary>
    public static IEnumerable<Mutant> OfConstant(FieldDeclarationSyntax field)
    {
        var text = field.Declaration;
        if (!field.Modifiers.Any(SyntaxKind.ConstKeyword) || text.Variables is not [{ Initializer: { } value } variable]
            || text.Type.ToString() is not ("double" or "int"))
        {
            yield break;
        }

        var (up, down) = text.Type.ToString() == "int" ? ("+ 1", "- 1") : ("* 1.1", "* 0.9");
        foreach (var change in new[] { up, down })
        {
            yield return new Mutant(field, "constant", $"{variable.Identifier} = {Write.Short(value.Value)} → {change}", (on, _) =>
                SyntaxFactory.ParseMemberDeclaration(
                    $"{string.Join(' ', field.Modifiers.Where(word => !word.IsKind(SyntaxKind.ConstKeyword)))} static {text.Type} {variable.Identifier} => {on} ? ({value.Value}) {change} : {value.Value};")!);
        }
    }

    private static object? Value(LiteralExpressionSyntax place, SemanticModel types) =>
        types.GetTypeInfo(place).ConvertedType?.SpecialType == SpecialType.System_Double ? Convert.ToDouble(place.Token.Value, CultureInfo.InvariantCulture) : place.Token.Value;

    private static IEnumerable<string> Neighbours(object? value) => value switch
    {
        int whole => [(whole + 1).ToString(CultureInfo.InvariantCulture), $"({whole - 1})"],
        double number when number == 0 => ["1.0"],
        double number => [Text(number * 1.1), Text(number * 0.9)],
        _ => [],
    };

    private static string Text(double number) => $"{number.ToString("G12", CultureInfo.InvariantCulture)}d";
}
