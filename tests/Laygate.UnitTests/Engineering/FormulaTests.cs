using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Laygate.Engineering.Formulas;

namespace Laygate.UnitTests.Engineering;

/// <summary>Polices every formula: symbol, expression, source and range, and documented symbols and units of inputs and result.</summary>
public class FormulaTests
{
    private static readonly string[] Rooms = ["Laygate.Engineering.Layers", "Laygate.Engineering.Supply", "Laygate.Engineering.Rolling"];
    private static readonly XDocument Documentation = XDocument.Load(Path.ChangeExtension(typeof(FormulaAttribute).Assembly.Location, ".xml"));

    public static TheoryData<string> Formulas()
    {
        var data = new TheoryData<string>();
        foreach (var method in Methods().Where(method => method.GetCustomAttribute<FormulaAttribute>() is not null))
        {
            data.Add(Name(method));
        }

        return data;
    }

    [Fact]
    public void Every_public_function_of_the_formula_rooms_is_marked()
    {
        var unmarked = Methods().Where(method => Rooms.Contains(method.DeclaringType!.Namespace) && method.GetCustomAttribute<FormulaAttribute>() is null);
        Assert.Empty(unmarked.Select(Name));
        Assert.True(Methods().Count(method => method.GetCustomAttribute<FormulaAttribute>() is not null) > 20);
    }

    [Theory]
    [MemberData(nameof(Formulas))]
    public void Says_what_a_reader_needs_to_check_it(string name)
    {
        var method = Methods().Single(method => Name(method) == name);
        var formula = method.GetCustomAttribute<FormulaAttribute>()!;
        Assert.All(new[] { formula.Symbol, formula.Expression, formula.Source, formula.Range }, text => Assert.False(string.IsNullOrWhiteSpace(text)));
        Assert.StartsWith(formula.Symbol + " = ", formula.Expression, StringComparison.Ordinal);
        Assert.True(formula.Range.Contains("no result", StringComparison.Ordinal) || formula.Range.Contains(';'), "The range must say what happens outside.");
        Assert.True(Nullable.GetUnderlyingType(method.ReturnType) is not null, "Outside its range a formula gives no result.");
    }

    [Theory]
    [MemberData(nameof(Formulas))]
    public void Documents_symbol_and_unit_of_each_input_and_of_the_result(string name)
    {
        var method = Methods().Single(method => Name(method) == name);
        var member = Member(method);
        foreach (var parameter in method.GetParameters().Where(parameter => !parameter.ParameterType.IsEnum))
        {
            var text = member.Elements("param").Single(param => param.Attribute("name")!.Value == parameter.Name).Value;
            Assert.Matches(new Regex(@"([\p{L}0-9Δρ]+, [\p{L}0-9/²³°]+)(:| |\.|,|$)", RegexOptions.ExplicitCapture, Patience.Longest), text);
        }

        Assert.Matches(new Regex(@"^[\p{L}0-9ρ]+, [\p{L}0-9/²³]+;", RegexOptions.ExplicitCapture, Patience.Longest), member.Element("returns")!.Value);
    }

    private static IEnumerable<MethodInfo> Methods() => typeof(FormulaAttribute).Assembly.GetTypes()
        .Where(type => type.IsAbstract && type.IsSealed)
        .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly))
        .Where(method => method.DeclaringType!.IsPublic);

    private static string Name(MethodInfo method) =>
        $"{method.DeclaringType!.FullName}.{method.Name}({string.Join(',', method.GetParameters().Select(parameter => parameter.Name))})";

    private static XElement Member(MethodInfo method)
    {
        var prefix = $"M:{method.DeclaringType!.FullName}.{method.Name}(";
        var names = method.GetParameters().Select(parameter => parameter.Name!).ToList();
        return Documentation.Descendants("member").Single(member =>
            member.Attribute("name")!.Value.StartsWith(prefix, StringComparison.Ordinal)
            && member.Elements("param").Select(param => param.Attribute("name")!.Value).SequenceEqual(names, StringComparer.Ordinal));
    }
}
