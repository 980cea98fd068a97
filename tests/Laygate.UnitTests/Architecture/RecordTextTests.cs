using System.Reflection;

namespace Laygate.UnitTests.Architecture;

/// <summary>
/// The text of a record names its public properties, computed ones too. A property that makes another record of the same
/// kind would make that text without end: a message of a failing test, a log line or a debugger would overflow the stack.
/// </summary>
public sealed class RecordTextTests
{
    [Theory]
    [InlineData("Laygate.Model")]
    [InlineData("Laygate.Engineering")]
    [InlineData("Laygate.Rules")]
    [InlineData("Laygate.Exchange")]
    [InlineData("Laygate.Reading")]
    [InlineData("Laygate.Checking")]
    [InlineData("Laygate.Reporting")]
    public void No_record_names_itself_in_its_text(string room)
    {
        var records = Assembly.Load(room).GetTypes().Where(IsRecord).ToList();
        Assert.NotEmpty(records);
        Assert.Empty(records.Select(record => Way(record, record, [])).OfType<string>());
    }

    [Fact]
    public void A_record_that_names_itself_is_seen() => Assert.Equal("Endless.Next", Way(typeof(Endless), typeof(Endless), []));

    private static string? Way(Type from, Type wanted, HashSet<Type> seen)
    {
        foreach (var property in from.GetProperties(BindingFlags.Instance | BindingFlags.Public).Where(property => property.GetIndexParameters().Length == 0))
        {
            foreach (var record in Shown(property.PropertyType).Where(IsRecord))
            {
                if (record == wanted)
                {
                    return $"{from.Name}.{property.Name}";
                }

                if (seen.Add(record) && Way(record, wanted, seen) is { } inner)
                {
                    return $"{from.Name}.{property.Name}: {inner}";
                }
            }
        }

        return null;
    }

    private static IEnumerable<Type> Shown(Type type) => Nullable.GetUnderlyingType(type) is { } inner ? Shown(inner)
        : type is { IsGenericType: true, Namespace: "System" } && type.Name.StartsWith("ValueTuple", StringComparison.Ordinal) ? type.GetGenericArguments().SelectMany(Shown)
        : [type];

    private static bool IsRecord(Type type) =>
        type.GetMethod("PrintMembers", BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.DeclaredOnly) is not null;

    private sealed record Endless(int Number)
    {
        public Endless Next => this with { Number = Number + 1 };
    }
}
