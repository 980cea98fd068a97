namespace Laygate.Tests;

/// <summary>A test that only the full run asks for, since it takes many seconds; elsewhere it is skipped and says so.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class FactOfFullRunAttribute : FactAttribute
{
    /// <summary>Skips outside the full run.</summary>
    public FactOfFullRunAttribute() => Skip = FullRun.IsAsked ? null! : $"Takes many seconds: {FullRun.HowToAsk}";
}
