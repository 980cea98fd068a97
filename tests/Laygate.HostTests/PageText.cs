using System.Text.RegularExpressions;

namespace Laygate.HostTests;

/// <summary>Looks for patterns in the text of a page.</summary>
internal static class PageText
{
    private static readonly TimeSpan Longest = Patience.Longest;

    /// <summary>All matches: the first group where the pattern has one, else the whole.</summary>
    public static IReadOnlyList<string> All(string page, string pattern) =>
        [.. new Regex(pattern, RegexOptions.Singleline | RegexOptions.CultureInvariant, Longest).Matches(page).Select(match => match.Groups.Count > 1 ? match.Groups[1].Value : match.Value)];

    public static int Count(string page, string words) => page.Split(words, StringSplitOptions.None).Length - 1;

    public static string Without(string page, string pattern) =>
        new Regex(pattern, RegexOptions.Singleline | RegexOptions.CultureInvariant, Longest).Replace(page, string.Empty);
}
