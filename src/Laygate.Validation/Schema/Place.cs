using System.Globalization;
using System.Runtime.InteropServices;
using Laygate.Validation.Reading;

namespace Laygate.Validation.Schema;

/// <summary>Where in a document a check stands: how to call it, and where to point when something is missing.</summary>
/// <param name="Label">How to call the value in a message: <c>`width`</c>, <c>entry 2 of `runs`</c>, <c>the plan</c>.</param>
/// <param name="Anchor">The key, or the first key of a list entry.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Place(string Label, TextSpan Anchor)
{
    public bool IsEntry { get; init; }

    public static Place Top(YamlToken root, string name) => new($"the {name}", TokenNames.Head(root).Span);

    public static Place Of(ScalarToken key) => new(TokenNames.Quote(key.Text), key.Span);

    public Place Entry(YamlToken item, int index) => new(
        string.Create(CultureInfo.InvariantCulture, $"entry {index + 1} of {Label}"), TokenNames.Head(item).Span)
    { IsEntry = true };

    /// <summary>The label at the beginning of a sentence.</summary>
    public string Capital => string.Concat(Label[..1].ToUpperInvariant(), Label[1..]);
}

/// <summary>A problem with what the checker must know about it.</summary>
/// <param name="Problem">The problem.</param>
/// <param name="IsMissingValue">Whether a key has no value.</param>
/// <param name="Weight">How much it speaks against an alternative of a schema.</param>
internal sealed record Found(ReadingProblem Problem, bool IsMissingValue = false, int Weight = 1);
