using System.Security.Claims;
using Laygate.Register;
using Laygate.Service.Settings;

namespace Laygate.Service.Access;

/// <summary>Whom an identity provider names, the same whether a program sends its token or a person comes from its page: so nobody is two callers.</summary>
internal static class ProviderCallers
{
    // OpenID Connect Core 1.0, 2: a subject has at most 255 characters.
    private const int LongestSubject = 255;

    /// <summary>The caller; null when the claims name no subject, or no role of ours.</summary>
    public static Caller? Of(ClaimsPrincipal user, ServiceSettings settings) => Subject(user) is { } id && RoleOf(user, settings) is { } role
        ? new Caller("token:" + id, CallerText.Shown(user.FindFirstValue(settings.NameClaim) is { Length: > 0 } name ? name : id), role)
        : null;

    /// <summary>The subject; null when there is none that can be kept.</summary>
    public static string? Subject(ClaimsPrincipal user) => user.FindFirstValue("sub") is { Length: > 0 and <= LongestSubject } id && CallerText.IsLine(id) ? id : null;

    // Who has several roles has the one that may most.
    private static Role? RoleOf(ClaimsPrincipal user, ServiceSettings settings) => user.FindAll(settings.RoleClaim).Select(claim => RoleOf(claim.Value, settings)).Max();

    private static Role? RoleOf(string word, ServiceSettings settings) => !settings.MapsRoles ? Callers.RoleOf(word)
        : settings.AdministratorNames.Contains(word, StringComparer.Ordinal) ? Role.Administrator
        : settings.ReviewerNames.Contains(word, StringComparer.Ordinal) ? Role.Reviewer
        : settings.SubmitterNames.Contains(word, StringComparer.Ordinal) ? Role.Submitter
        : null;
}
