using System.Reflection;
using Laygate.Model.Measures;

namespace Laygate.UnitTests.Architecture;

/// <summary>The arrows between the rooms never turn back, and each package stays in its room.</summary>
public sealed class ArrowTests
{
    private static readonly Dictionary<string, string[]> Allowed = new(StringComparer.Ordinal)
    {
        ["Laygate.Model"] = [],
        ["Laygate.Engineering"] = ["Laygate.Model", "MathNet.Numerics"],
        ["Laygate.Rules"] = ["Laygate.Engineering", "Laygate.Model"],
        ["Laygate.Exchange"] = ["Laygate.Rules", "Laygate.Engineering", "Laygate.Model"],
        ["Laygate.Checking"] = ["Laygate.Reading", "Laygate.Rules", "Laygate.Engineering", "Laygate.Model"],
        ["Laygate.Reading"] =
            ["Laygate.Exchange", "Laygate.Rules", "Laygate.Engineering", "Laygate.Model", "YamlDotNet", "NJsonSchema", "NJsonSchema.Annotations", "Newtonsoft.Json", "FluentValidation", "Sep", "NodaTime"],
        ["Laygate.Reporting"] =
            ["Laygate.Exchange", "Laygate.Rules", "Laygate.Engineering", "Laygate.Model", "OxyPlot", "Microsoft.AspNetCore.Components", "Microsoft.AspNetCore.Components.Web", "Microsoft.Extensions.Logging.Abstractions"],
    };

    public static TheoryData<string> Rooms => [.. Allowed.Keys];

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_refers_only_to_what_the_design_allows(string room)
    {
        var foreign = Assembly.Load(room).GetReferencedAssemblies()
            .Select(name => name.Name!)
            .Where(name => !name.StartsWith("System", StringComparison.Ordinal) && name is not "netstandard" and not "mscorlib")
            .Except(Allowed[room], StringComparer.Ordinal);
        Assert.Empty(foreign);
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void Nothing_mutable_is_static(string room)
    {
        var mutable = Assembly.Load(room).GetTypes()
            .Where(type => !IsGenerated(type))
            .SelectMany(type => type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly))
            .Where(field => !field.IsLiteral && !IsGenerated(field) && (!field.IsInitOnly || IsMutableCollection(field.FieldType)))
            .Select(field => $"{field.DeclaringType}.{field.Name}");
        Assert.Empty(mutable);
    }

    [Fact]
    public void Plan_records_cannot_be_changed()
    {
        var settable = Assembly.Load("Laygate.Model").GetExportedTypes()
            .Where(type => type.Namespace == "Laygate.Model.Plans")
            .SelectMany(type => type.GetProperties())
            .Where(property => property.SetMethod is { } set
                && !set.ReturnParameter.GetRequiredCustomModifiers().Any(modifier => modifier.Name == "IsExternalInit"))
            .Select(property => $"{property.DeclaringType}.{property.Name}");
        Assert.Empty(settable);
    }

    [Fact]
    public void Results_have_no_behaviour()
    {
        string[] ofRecords = ["ToString", "GetHashCode", "Equals", "Deconstruct", "<Clone>$", "op_Equality", "op_Inequality"];
        var methods = Assembly.Load("Laygate.Rules").GetExportedTypes()
            .Where(type => type.Namespace == "Laygate.Rules.Results" && !type.IsEnum)
            .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(method => !ofRecords.Contains(method.Name, StringComparer.Ordinal)
                && !method.Name.StartsWith("get_", StringComparison.Ordinal) && !method.Name.StartsWith("set_", StringComparison.Ordinal))
            .Select(method => $"{method.DeclaringType}.{method.Name}");
        Assert.Empty(methods);
    }

    private static bool IsGenerated(MemberInfo member) =>
        member.Name.Contains('<', StringComparison.Ordinal) || member.DeclaringType?.Name.Contains('<', StringComparison.Ordinal) == true
        || member.GetCustomAttributes().Any(attribute => attribute.GetType().Name is "CompilerGeneratedAttribute" or "GeneratedCodeAttribute")
        || member.DeclaringType?.GetCustomAttributes().Any(attribute => attribute.GetType().Name == "GeneratedCodeAttribute") == true;

    private static bool IsMutableCollection(Type type) =>
        type.IsGenericType && type.GetGenericTypeDefinition() is var open
        && (open == typeof(List<>) || open == typeof(Dictionary<,>) || open == typeof(HashSet<>) || open == typeof(Queue<>));
}
