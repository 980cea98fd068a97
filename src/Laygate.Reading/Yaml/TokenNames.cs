namespace Laygate.Reading.Yaml;

/// <summary>Plain words for tokens in messages.</summary>
public static class TokenNames
{
    private const int LongestQuote = 60;

    /// <summary>What a token is, with its article: "a list", "the number `3`".</summary>
    /// <param name="token">The token.</param>
    public static string Of(YamlToken token) => token switch
    {
        MapToken => "a group of keys",
        ListToken => "a list",
        ScalarToken { Kind: ScalarKind.Null } => "nothing",
        ScalarToken { Kind: ScalarKind.WholeNumber or ScalarKind.DecimalNumber } number => $"the number {Quote(number.Text)}",
        ScalarToken text => $"the text {Quote(text.Text)}",
        _ => "something else",
    };

    /// <summary>A text between back-ticks, on one line and not longer than a message can bear.</summary>
    /// <param name="text">Any text of the file.</param>
    public static string Quote(string text)
    {
        var line = text.ReplaceLineEndings(" ").Replace('`', '\'');
        return line.Length <= LongestQuote ? $"`{line}`" : $"`{Cut(line)}…`";
    }

    /// <summary>The token to point at: a scalar itself, else the first key or entry, so that marks stay short.</summary>
    /// <param name="token">The token.</param>
    public static YamlToken Head(YamlToken token) => token switch
    {
        MapToken { Entries: [var first, ..] } => first.Key,
        ListToken { Items: [var first, ..] } => Head(first),
        _ => token,
    };

    private static string Cut(string line) =>
        line[..(char.IsHighSurrogate(line[LongestQuote - 1]) ? LongestQuote - 1 : LongestQuote)];
}
