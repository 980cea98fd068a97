namespace Laygate.Reporting.Terminal;

/// <summary>What a piece of text is, so that a terminal may colour it. Every meaning is also in the words.</summary>
public enum TextStyle
{
    /// <summary>Plain text.</summary>
    Plain,

    /// <summary>A heading.</summary>
    Heading,

    /// <summary>Less important.</summary>
    Quiet,

    /// <summary>Fail.</summary>
    Fail,

    /// <summary>Warn.</summary>
    Warn,

    /// <summary>Pass.</summary>
    Pass,

    /// <summary>Not decided: not assessed, needs a person, open, departed.</summary>
    Undecided,
}

/// <summary>A piece of text with its style.</summary>
/// <param name="Style">Style.</param>
/// <param name="Text">Text without control characters.</param>
public readonly record struct TextSpan(TextStyle Style, string Text);

/// <summary>One line of terminal output.</summary>
/// <param name="Spans">Pieces from left to right.</param>
public sealed record TerminalLine(IReadOnlyList<TextSpan> Spans)
{
    /// <summary>The line without styles.</summary>
    public string Text => string.Concat(Spans.Select(span => span.Text));
}

/// <summary>How a report is shown on a terminal.</summary>
/// <param name="Width">Columns of the terminal; lines are at least 40 and at most 100 columns wide.</param>
/// <param name="All">Whether passes, what does not apply and properties of the model are listed one by one.</param>
public sealed record TerminalSettings(int Width, bool All = false)
{
    /// <summary>Whether each finding is shown in full; otherwise a plan takes at most 60 lines.</summary>
    public bool Full { get; init; }

    /// <summary>The findings that alone are shown, in full; null for all of them.</summary>
    public FindingChoice? Explain { get; init; }

    /// <summary>Whether the short form is meant.</summary>
    internal bool IsBrief => !Full && !All && Explain is null;
}
