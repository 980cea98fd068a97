using System.Globalization;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>Where in a text something stands, in words: with the file where that is not the plan itself.</summary>
internal static class Places
{
    /// <summary>The line, such as <c>line 12</c>, with the file of parts before it where the value stands in one.</summary>
    public static string Line(Position position) =>
        $"{(position.File is { } file ? $"{PlainText.Show(file)} " : string.Empty)}line {position.Line.ToString(CultureInfo.InvariantCulture)}";

    /// <summary>The line behind a comma; empty where there is none.</summary>
    public static string After(Position? position) => position is null ? string.Empty : $", {Line(position)}";

    /// <summary>File, line and column as editors and terminals open them.</summary>
    /// <param name="file">The file that is spoken of.</param>
    /// <param name="position">Where; null: the file as a whole.</param>
    public static string Full(string file, Position? position) => position is null
        ? file
        : string.Create(CultureInfo.InvariantCulture, $"{position.File ?? file}:{position.Line}:{position.Column}");

    /// <summary>The files that a plan uses, with the number of parts taken from each; empty where it uses none.</summary>
    public static string Uses(Report report) => report.Uses.Count == 0 ? string.Empty : "Uses " + string.Join(", ", report.Uses.Select(used =>
        string.Create(CultureInfo.InvariantCulture, $"{PlainText.Show(used.File)} ({used.Parts.Count} {(used.Parts.Count == 1 ? "part" : "parts")}, {used.Hash[..Math.Min(12, used.Hash.Length)]})"))) + ".";

    /// <summary>The same in a few words: the file where there is one, else how many; empty where it uses none.</summary>
    public static string UsesInBrief(Report report) => report.Uses.Count < 2 ? Uses(report) : $"Uses {Taken(report)}; --full lists them";

    /// <summary>How many parts of how many files.</summary>
    public static string Taken(Report report) => (report.Uses.Sum(used => used.Parts.Count), report.Uses.Count) switch
    {
        var (parts, files) => string.Create(CultureInfo.InvariantCulture, $"{parts} {(parts == 1 ? "part" : "parts")} of {files} {(files == 1 ? "file" : "files")}"),
    };
}
