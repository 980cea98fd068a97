using System.Runtime.InteropServices;

namespace Laygate.Reading.Yaml;

/// <summary>A stretch of a text file.</summary>
/// <param name="Line">First line, counted from 1.</param>
/// <param name="Column">First column, counted from 1 in UTF-16 units.</param>
/// <param name="EndLine">Last line, counted from 1.</param>
/// <param name="EndColumn">Column just behind the last character, counted from 1 in UTF-16 units.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct TextSpan(int Line, int Column, int EndLine, int EndColumn) : IComparable<TextSpan>
{
    /// <summary>The very beginning of a file; used where a file holds nothing to point at.</summary>
    public static TextSpan FileStart => new(1, 1, 1, 1);

    /// <summary>The file that it stands in, as it is to be shown, where that is another one than the file that was asked for; null: the same.</summary>
    public string? File { get; init; }

    /// <inheritdoc />
    public int CompareTo(TextSpan other) =>
        string.CompareOrdinal(File, other.File) is not 0 and var files
            ? files
            : (Line, Column, EndLine, EndColumn).CompareTo((other.Line, other.Column, other.EndLine, other.EndColumn));

    /// <summary>Whether one span begins (or, beginning alike, ends) before another.</summary>
    public static bool operator <(TextSpan left, TextSpan right) => left.CompareTo(right) < 0;

    /// <summary>Whether one span begins (or, beginning alike, ends) behind another.</summary>
    public static bool operator >(TextSpan left, TextSpan right) => left.CompareTo(right) > 0;

    /// <summary>Whether one span does not come behind another.</summary>
    public static bool operator <=(TextSpan left, TextSpan right) => left.CompareTo(right) <= 0;

    /// <summary>Whether one span does not come before another.</summary>
    public static bool operator >=(TextSpan left, TextSpan right) => left.CompareTo(right) >= 0;

    /// <summary>From the start of this span to the end of another.</summary>
    /// <param name="end">The span that ends the stretch.</param>
    public TextSpan To(TextSpan end) => this with { EndLine = end.EndLine, EndColumn = end.EndColumn };
}
