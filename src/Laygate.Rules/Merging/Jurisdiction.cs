namespace Laygate.Rules.Merging;

/// <summary>ISO 3166 codes: a country such as <c>US</c>, or a part of it such as <c>US-WA</c>.</summary>
public static class Jurisdiction
{
    /// <summary>The word of a plan or specification that speaks for no place.</summary>
    public const string None = "none";

    /// <summary>Whether a place lies in another or is the same.</summary>
    public static bool LiesIn(string place, string within) =>
        string.Equals(place, within, StringComparison.Ordinal) || place.StartsWith(within + "-", StringComparison.Ordinal);

    /// <summary>Whether one lies in the other.</summary>
    public static bool Overlap(string one, string other) => LiesIn(one, other) || LiesIn(other, one);
}
