using System.Globalization;
using System.Runtime.InteropServices;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Schema;

/// <summary>Where in a document a check stands: how to call it, and where to point when something is missing.</summary>
/// <param name="Label">How to call the value in a message: <c>`width`</c>, <c>entry 2 of `runs`</c>, <c>the plan</c>.</param>
/// <param name="Anchor">The key, or the first key of a list entry.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct NamedPlace(string Label, TextSpan Anchor)
{
    /// <summary>Whether it is an entry of a list, which has no key.</summary>
    public bool IsEntry { get; init; }

    /// <summary>Whether it is the whole document.</summary>
    public bool IsTop { get; init; }

    public static NamedPlace Top(YamlToken root, string name) => new($"the {name}", TokenNames.Head(root).Span) { IsTop = true };

    public static NamedPlace Of(ScalarToken key) => new(TokenNames.Quote(key.Text), key.Span);

    public NamedPlace Entry(YamlToken item, int index) => new(
        string.Create(CultureInfo.InvariantCulture, $"entry {index + 1} of {Label}"), TokenNames.Head(item).Span)
    { IsEntry = true };

    /// <summary>The label at the beginning of a sentence.</summary>
    public string Capital => string.Concat(Label[..1].ToUpperInvariant(), Label[1..]);
}

/// <summary>A problem with what the checker must know about it.</summary>
/// <param name="Problem">The problem.</param>
/// <param name="IsMissingValue">Whether a key has no value.</param>
/// <param name="Fit">How it speaks against an alternative of a schema.</param>
internal sealed record Found(ReadingProblem Problem, bool IsMissingValue = false, Misfit Fit = Misfit.Detail)
{
    /// <summary>The same problem seen from the map or list around it.</summary>
    public Found FromOutside() => this with { Fit = Fit == Misfit.OtherWord ? Misfit.OtherForm : Misfit.Detail };
}

/// <summary>How much a problem tells about whether an alternative of a schema was meant.</summary>
internal enum Misfit
{
    /// <summary>The alternative may be meant; something in it is wrong.</summary>
    Detail,

    /// <summary>A value differs from the one word allowed for it; such a word often tells the form of what is around it.</summary>
    OtherWord,

    /// <summary>Another alternative is meant.</summary>
    OtherForm,
}
