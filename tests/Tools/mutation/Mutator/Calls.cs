using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Laygate.Mutation;

/// <summary>Mutants of calls that have a counterpart.</summary>
internal static class Calls
{
    private static readonly Dictionary<string, string> Counterparts = new(StringComparer.Ordinal)
    {
        ["Min"] = "Max",
        ["Max"] = "Min",
        ["MinBy"] = "MaxBy",
        ["MaxBy"] = "MinBy",
        ["Any"] = "All",
        ["All"] = "Any",
        ["First"] = "Last",
        ["Last"] = "First",
        ["FirstOrDefault"] = "LastOrDefault",
        ["LastOrDefault"] = "FirstOrDefault",
        ["OrderBy"] = "OrderByDescending",
        ["OrderByDescending"] = "OrderBy",
        ["ThenBy"] = "ThenByDescending",
        ["Skip"] = "Take",
        ["Take"] = "Skip",
        ["SkipWhile"] = "TakeWhile",
        ["TakeWhile"] = "SkipWhile",
        ["Floor"] = "Ceiling",
        ["Ceiling"] = "Floor",
    };

    /// <summary>The counterpart in its place; a filter, an order or a repetition that is dropped.</summary>
    public static IEnumerable<Mutant> Of(InvocationExpressionSyntax place)
    {
        if (place.Expression is not MemberAccessExpressionSyntax { Name: IdentifierNameSyntax name } access || !Places.MayStandTwice(place))
        {
            yield break;
        }

        if (Counterparts.TryGetValue(name.Identifier.Text, out var other))
        {
            yield return Write.Other(place, "call", place.WithExpression(access.WithName(SyntaxFactory.IdentifierName(other))).ToString());
        }

        if (name.Identifier.Text is "Where" or "OfType" or "Distinct" or "DistinctBy" or "Reverse" or "Concat" or "Append" or "Prepend")
        {
            yield return Write.Other(place, "call", access.Expression.ToString());
        }
    }
}
