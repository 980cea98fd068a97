using System.Reflection;
using Xunit.Sdk;

namespace Laygate.Tests;

/// <summary>A row of a theory that only the full run tries, since it takes seconds. Each theory keeps a row that every run tries.</summary>
/// <param name="data">Arguments of the test.</param>
[AttributeUsage(AttributeTargets.Method, AllowMultiple = true)]
internal sealed class InlineDataOfFullRunAttribute(params object?[] data) : DataAttribute
{
    /// <inheritdoc/>
    public override IEnumerable<object?[]> GetData(MethodInfo testMethod) => FullRun.IsAsked ? [data] : [];
}
