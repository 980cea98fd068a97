using CsCheck;
using Xunit.Sdk;

namespace Laygate.UnitTests;

/// <summary>
/// Tries a property on random cases that are the same in every run. The library's own <c>Sample</c> takes a seed for its first case only and draws the others anew.
/// </summary>
internal static class RandomCases
{
    private const uint Stream = 1;

    /// <summary>Calls <paramref name="property"/> with <paramref name="count"/> cases; the first that fails is named with its number and its values.</summary>
    public static void Hold<T>(this Gen<T> cases, Action<T> property, int count = 100)
    {
        var random = new PCG(Stream, 20261130);
        for (var number = 0; number < count; number++)
        {
            var value = cases.Generate(random, null, out _);
            try
            {
                property(value);
            }
            catch (Exception found)
            {
#pragma warning disable RS0030 // Only its words are used, which draw nothing.
                throw new XunitException($"Case {number}: {Check.Print(value)}", found);
#pragma warning restore RS0030
            }
        }
    }

    /// <inheritdoc cref="Hold{T}"/>
    public static void Hold<T1, T2>(this Gen<(T1 First, T2 Second)> cases, Action<T1, T2> property, int count = 100) =>
        cases.Hold(value => property(value.First, value.Second), count);

    /// <inheritdoc cref="Hold{T}"/>
    public static void Hold<T1, T2, T3>(this Gen<(T1 First, T2 Second, T3 Third)> cases, Action<T1, T2, T3> property, int count = 100) =>
        cases.Hold(value => property(value.First, value.Second, value.Third), count);

    /// <inheritdoc cref="Hold{T}"/>
    public static void Hold<T1, T2, T3, T4, T5>(this Gen<(T1 First, T2 Second, T3 Third, T4 Fourth, T5 Fifth)> cases, Action<T1, T2, T3, T4, T5> property, int count = 100) =>
        cases.Hold(value => property(value.First, value.Second, value.Third, value.Fourth, value.Fifth), count);
}
