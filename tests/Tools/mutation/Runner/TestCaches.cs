using System.Collections;
using System.Collections.Concurrent;
using System.Reflection;

namespace Laygate.Mutation;

/// <summary>
/// Tests share what is dear to compute, such as the reports of the examples. Between a run with a mutant and one without, what they keep is dropped;
/// bound rule books stay.
/// </summary>
internal static class TestCaches
{
    /// <summary>What holds the tests.</summary>
    public static readonly IReadOnlyList<Assembly> Assemblies = [.. new[] { "Unit", "Conformance", "Host" }.Select(kind => Assembly.Load($"Laygate.{kind}Tests"))];

    private static readonly Lazy<IReadOnlyList<IDictionary>> All = new(() =>
    [
        .. Assemblies.SelectMany(assembly => assembly.GetTypes()).Where(type => !type.ContainsGenericParameters)
            .SelectMany(type => type.GetFields(BindingFlags.Static | BindingFlags.NonPublic | BindingFlags.Public | BindingFlags.DeclaredOnly))
            .Where(field => field.FieldType is { IsGenericType: true } kind && kind.GetGenericTypeDefinition() == typeof(ConcurrentDictionary<,>)
                && !kind.ToString().Contains("RuleBook", StringComparison.Ordinal))
            .Select(field => (IDictionary)field.GetValue(null)!),
    ]);

    /// <summary>Drops what tests keep.</summary>
    public static void Drop()
    {
        foreach (var cache in All.Value)
        {
            cache.Clear();
        }
    }
}
