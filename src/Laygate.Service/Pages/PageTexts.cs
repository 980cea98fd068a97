using System.Buffers.Text;
using System.Text;
using Laygate.Register;
using Microsoft.Extensions.Primitives;

namespace Laygate.Service.Pages;

/// <summary>
/// What is written on the page of a submission. All of it belongs to one form, so that whatever is sent brings the rest along: that stands on the page again, and none of
/// it is lost.
/// </summary>
/// <param name="Decision">The comment of a decision.</param>
/// <param name="Comments">The comments on findings.</param>
/// <param name="Name">Name of the plan in a set of files.</param>
internal sealed record PageTexts(string Decision, IReadOnlyDictionary<FindingKey, string> Comments, string Name)
{
    /// <summary>How the name of a field with a comment on a finding begins; the finding follows.</summary>
    public const string Said = "said.";

    /// <summary>How the name of a button begins that writes such a comment.</summary>
    public const string Open = "open.";

    /// <summary>A finding as part of the name of a field.</summary>
    public static string NameOf(FindingKey finding) => Base64Url.EncodeToString(Encoding.UTF8.GetBytes(string.Join('\n', finding.Plan, finding.Rule, finding.Address)));

    /// <summary>What the fields of the page hold.</summary>
    public static PageTexts Of(IEnumerable<KeyValuePair<string, StringValues>> fields)
    {
        var (decision, name, comments) = (string.Empty, string.Empty, new Dictionary<FindingKey, string>());
        foreach (var (key, value) in fields)
        {
            if (key is "comment")
            {
                decision = value.ToString();
            }
            else if (key is "name")
            {
                name = value.ToString();
            }
            else if (key.StartsWith(Said, StringComparison.Ordinal) && FindingOf(key[Said.Length..]) is { } finding)
            {
                comments[finding] = value.ToString();
            }
        }

        return new PageTexts(decision, comments, name);
    }

    /// <summary>What was kept of the page.</summary>
    public static PageTexts Of(IReadOnlyDictionary<string, string[]> kept) => Of(kept.Select(field => KeyValuePair.Create(field.Key, new StringValues(field.Value))));

    /// <summary>The finding on which a form writes, and whether it then waits for an answer; null where no button says so.</summary>
    public static (FindingKey Finding, bool LeavesOpen)? Pressed(IFormCollection form) =>
        form.Keys.FirstOrDefault(key => key.StartsWith(Open, StringComparison.Ordinal)) is { } pressed && FindingOf(pressed[Open.Length..]) is { } finding ? (finding, form[pressed] == "true") : null;

    /// <summary>What the page shows again.</summary>
    /// <param name="isKept">Whether it comes from before.</param>
    /// <param name="notDecided">Why a decision was not recorded; null: none was sent.</param>
    /// <param name="notWritten">The finding on which a comment was not written, and why not; null: none was sent.</param>
    public Drafts Drafts(bool isKept = false, string? notDecided = null, (FindingKey Finding, string Why)? notWritten = null) => new(
        notDecided is null && Decision.Length == 0 ? null : new DecisionDraft(notDecided, Decision),
        [
            .. Comments.Where(pair => pair.Value.Length > 0 && pair.Key != notWritten?.Finding).Select(pair => new CommentDraft(pair.Key, null, pair.Value)),
            .. notWritten is { } one ? [new CommentDraft(one.Finding, one.Why, Comments.GetValueOrDefault(one.Finding, string.Empty))] : Array.Empty<CommentDraft>(),
        ],
        Name,
        isKept && (Decision.Length > 0 || Name.Length > 0 || Comments.Values.Any(text => text.Length > 0)));

    private static FindingKey? FindingOf(string name)
    {
        if (!Base64Url.IsValid(name))
        {
            return null;
        }

        var parts = Encoding.UTF8.GetString(Base64Url.DecodeFromChars(name)).Split('\n');
        return parts is [var plan, var rule, var address] ? new FindingKey(plan, rule, address) : null;
    }
}
