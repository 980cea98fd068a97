namespace Laygate.Tests;

/// <summary>
/// What a usual run tries of lists whose every entry takes long. The full run (<c>LAYGATE_FULL_RUN</c>, set by <c>.ci/run</c>) tries all of them.
/// </summary>
internal static class FullRun
{
    /// <summary>How a test that is left out elsewhere is run.</summary>
    public const string HowToAsk = "set LAYGATE_FULL_RUN to 1, or run .ci/run.";

    /// <summary>Whether this is the full run.</summary>
    public static bool IsAsked => Environment.GetEnvironmentVariable("LAYGATE_FULL_RUN") is { Length: > 0 };

    /// <summary>All in the full run; otherwise the first one and each so-many-th after it, the same ones every time.</summary>
    /// <param name="all">All of them.</param>
    /// <param name="oneIn">Which share a usual run tries.</param>
    public static IEnumerable<T> Usual<T>(this IEnumerable<T> all, int oneIn) => IsAsked ? all : all.Where((_, index) => index % oneIn == 0);
}
