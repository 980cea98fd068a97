using System.Globalization;
using System.Text;
using Laygate.Reporting.Text;

namespace Laygate.Service.Pages;

/// <summary>A file of a submission as a page shows it.</summary>
/// <param name="Name">Its name, as it is to be shown.</param>
/// <param name="Lines">Its lines.</param>
/// <param name="Prefix">What stands before the number of a line in the name of its place on the page.</param>
public sealed record TextFile(string Name, IReadOnlyList<string> Lines, string Prefix)
{
    private string OwnName { get; init; } = Name;

    /// <summary>Whether it is the plan.</summary>
    public bool IsPlan => Prefix is "L";

    /// <summary>The way to it below the address of its submission.</summary>
    public string Way => string.Join('/', OwnName.Split('/').Select(Uri.EscapeDataString));

    /// <summary>The plan and the files that came with it.</summary>
    internal static IReadOnlyList<TextFile> Of(string name, byte[] text, IEnumerable<(string Name, byte[] Bytes)> others) =>
    [
        new(PlainText.Show(name), PlanLines.Of(text), "L") { OwnName = name },
        .. others.Select((file, index) => new TextFile(PlainText.Show(file.Name), PlanLines.Of(file.Bytes), string.Create(CultureInfo.InvariantCulture, $"F{index + 1}L")) { OwnName = file.Name }),
    ];

    /// <summary>Whether a place names this file; one that names none means the plan.</summary>
    public bool Is(string? file) => file is null ? IsPlan : string.Equals(file, OwnName, StringComparison.Ordinal);

    /// <summary>Name of the place of a line on the page.</summary>
    public string Place(int line) => Prefix + line.ToString(CultureInfo.InvariantCulture);
}

/// <summary>The text of a plan by lines, as it can be shown.</summary>
internal static class PlanLines
{
    private static readonly string[] Ends = ["\r\n", "\n", "\r"];

    /// <summary>Lines; what could hide or turn text is shown as its code.</summary>
    public static IReadOnlyList<string> Of(byte[] text) => [.. Encoding.UTF8.GetString(text).TrimStart('\uFEFF').Split(Ends, StringSplitOptions.None).Select(PlainText.Show)];
}
