using Laygate.Cli.Arguments;
using Laygate.Cli.Output;
using Laygate.Reporting.Terminal;

namespace Laygate.Cli.Verbs;

/// <summary>The forms in which commands about a shift give their result.</summary>
internal static class RecordForms
{
    public const string Terminal = "terminal";
    public const string Json = "json";
    public const string Html = "html";

    /// <summary>The form that was asked for; the first of those that there are, where none was.</summary>
    /// <exception cref="ArgumentProblem">There is no such form.</exception>
    public static string Read(string? given, params string[] forms) =>
        given is null ? forms[0] : forms.Contains(given, StringComparer.Ordinal) ? given : throw Values.NotKnown("--format", given, forms);

    /// <summary>The result in a form.</summary>
    /// <param name="streams">Where it goes, which says whether in colour.</param>
    /// <param name="form">The form.</param>
    /// <param name="lines">Makes the lines of a terminal.</param>
    /// <param name="json">Writes JSON; null where there is none.</param>
    /// <param name="page">Writes a page; null where there is none.</param>
    public static byte[] Bytes(Streams streams, string form, Func<IReadOnlyList<TerminalLine>> lines, Action<Stream>? json = null, Action<Stream>? page = null)
    {
        using var stream = new MemoryStream();
        if ((form is Json ? json : form is Html ? page : null) is { } write)
        {
            write(stream);
        }
        else
        {
            using var writer = new StreamWriter(stream, Streams.Utf8, leaveOpen: true) { NewLine = "\n" };
            TerminalWriter.Write(writer, streams.Colour, lines());
        }

        return stream.ToArray();
    }
}
