using Xunit.Abstractions;

namespace Laygate.Tests;

/// <summary>A class whose tests take longest: begun first, so that no core waits for it at the end.</summary>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class LongAttribute : Attribute;

/// <summary>Orders the classes of an assembly: those marked <see cref="LongAttribute"/> first, the others as they come.</summary>
public sealed class LongestFirst : ITestCollectionOrderer
{
    /// <inheritdoc/>
    public IEnumerable<ITestCollection> OrderTestCollections(IEnumerable<ITestCollection> testCollections) =>
        testCollections.OrderBy(collection => IsLong(collection.DisplayName) ? 0 : 1);

    // A class without a collection of its own is the collection "Test collection for" with its name.
    private static bool IsLong(string collection) =>
        typeof(LongestFirst).Assembly.GetType(collection[(collection.LastIndexOf(' ') + 1)..]) is { } type && type.IsDefined(typeof(LongAttribute), inherit: false);
}
