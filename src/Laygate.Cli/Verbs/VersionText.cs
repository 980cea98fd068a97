using System.Text;
using Laygate.Cli.Checking;

namespace Laygate.Cli.Verbs;

/// <summary>Version of the program with the editions of its rule book.</summary>
internal static class VersionText
{
    /// <summary>The first line is the program alone; the rule book follows, one line per specification.</summary>
    public static string Of(string version)
    {
        var text = new StringBuilder($"laygate {version}\n");
        if (RuleBookOnDisk.Open([]).Pack is { } pack)
        {
            text.Append(FormattableString.Invariant($"{pack.General.Title} {pack.General.Edition}: {pack.General.Rules.Count} rules, rule files {pack.ContentHash[..12]}\n"));
            foreach (var specification in pack.Specifications.Where(specification => !specification.IsUnread).OrderBy(specification => specification.Name, StringComparer.Ordinal))
            {
                text.Append(FormattableString.Invariant($"{specification.Name,-18} {specification.Title}, {specification.Edition}\n"));
            }

            var unread = pack.Specifications.Where(specification => specification.IsUnread).Select(specification => specification.Name).Order(StringComparer.Ordinal).ToList();
            text.Append(unread.Count > 0 ? $"Started from memory, nothing of them read, they only warn: {string.Join(", ", unread)}\n" : string.Empty);
        }

        return text.ToString();
    }
}
