using Microsoft.Extensions.Options;

namespace Laygate.Service.Settings;

/// <summary>Refuses settings that cannot work, when the service starts and not with the first request.</summary>
internal sealed class SettingsCheck : IValidateOptions<ServiceSettings>
{
    public ValidateOptionsResult Validate(string? name, ServiceSettings options)
    {
        List<string> wrong =
        [
            .. Range(nameof(options.Workers), options.Workers, 0, 64),
            .. Range(nameof(options.CheckSlots), options.CheckSlots, 1, 256),
            .. Range(nameof(options.CheckQueue), options.CheckQueue, 0, 10_000),
            .. Range(nameof(options.CheckSeconds), options.CheckSeconds, 0.1, 600),
            .. Range(nameof(options.ScreeningSeconds), options.ScreeningSeconds, 1, 3600),
            .. Range(nameof(options.ScreeningPatience), options.ScreeningPatience, 0, 3600),
            .. Range(nameof(options.LeaseSeconds), options.LeaseSeconds, 1, 3600),
            .. Range(nameof(options.MaxFailures), options.MaxFailures, 1, 100),
            .. Range(nameof(options.RequestsPerMinute), options.RequestsPerMinute, 1, 1_000_000),
            .. Range(nameof(options.InboxSettleSeconds), options.InboxSettleSeconds, 0.1, 600),
            .. When(string.IsNullOrWhiteSpace(options.Data), "Laygate:Data must name a folder that the service may write to."),
            .. When(options.Inbox.Length > 0 && !Directory.Exists(options.Inbox), "Laygate:Inbox names no folder."),
            .. When(options.Inbox.Length > 0 && !OperatingSystem.IsLinux(), "Laygate:Inbox works on Linux only: elsewhere files cannot be opened without following links."),
            .. When(!Enum.IsDefined(options.AcceptFailing), $"Laygate:AcceptFailing must be one of: {string.Join(", ", Enum.GetNames<Laygate.Register.FailingAcceptance>())}."),
            .. Range(nameof(options.SessionIdleMinutes), options.SessionIdleMinutes, 5, 1440),
            .. Range(nameof(options.SessionHours), options.SessionHours, 1, 168),
            .. When(options.SessionIdleMinutes > options.SessionHours * 60, "Laygate:SessionIdleMinutes is longer than Laygate:SessionHours; it must not be."),
            .. Provider(options),
            .. When(options.PublicAddress.Length > 0 && !(Uri.TryCreate(options.PublicAddress, UriKind.Absolute, out var address) && address.Scheme is "http" or "https" && address.Query.Length == 0), "Laygate:PublicAddress is no address such as https://plans.example.org."),
            .. Mail(options.Mail),
            .. Range("Retention:Years", options.Retention.Years, 0, 100),
            .. Range("Webhooks:Seconds", options.Webhooks.Seconds, 0.1, 60),
        ];
        return wrong.Count > 0 ? ValidateOptionsResult.Fail(wrong) : ValidateOptionsResult.Success;
    }

    private static List<string> Provider(ServiceSettings options)
    {
        string[] names = [.. options.SubmitterNames, .. options.ReviewerNames, .. options.AdministratorNames];
        var twice = names.GroupBy(name => name, StringComparer.Ordinal).Where(group => group.Count() > 1).Select(group => group.Key).ToList();
        return
        [
            .. When(options.Authority.Length > 0 && !IsProvider(options), "Laygate:Authority must be the https address of the provider, as its own documents name it; http only on this machine."),
            .. When(options.Authority.Length > 0 && options.Audience.Length == 0 && options.ClientId.Length == 0, "Laygate:Authority needs Laygate:Audience, or tokens made for others would be accepted; or Laygate:ClientId, for signing in on the page; or both."),
            .. When(options.Authority.Length == 0 && options.ClientId.Length > 0, "Laygate:ClientId needs Laygate:Authority, the address of the provider."),
            .. When(options.ClientId.Length == 0 && options.ClientSecret.Length > 0, "Laygate:ClientSecret needs Laygate:ClientId."),
            .. When(string.IsNullOrWhiteSpace(options.RoleClaim) || string.IsNullOrWhiteSpace(options.NameClaim), "Laygate:RoleClaim and Laygate:NameClaim must each name a claim."),
            .. When(options.Scopes.Any(scope => scope.Length == 0 || scope.Any(char.IsWhiteSpace)), "Laygate:Scopes holds one scope an entry, without spaces: Laygate__Scopes__0=…"),
            .. When(names.Any(string.IsNullOrWhiteSpace), "Laygate:SubmitterNames, ReviewerNames and AdministratorNames must hold no empty entry."),
            .. When(twice.Count > 0, $"Each name stands for one role only. Named twice: {string.Join(", ", twice)}."),
        ];
    }

    private static bool IsProvider(ServiceSettings options) =>
        Uri.TryCreate(options.Authority, UriKind.Absolute, out var address)
        && (string.Equals(address.Scheme, Uri.UriSchemeHttps, StringComparison.Ordinal) || (string.Equals(address.Scheme, Uri.UriSchemeHttp, StringComparison.Ordinal) && options.IsLoopbackAuthority));

    private static IEnumerable<string> Mail(MailSettings mail) =>
    [
        .. Range("Mail:Port", mail.Port, 1, 65_535),
        .. Range("Mail:Seconds", mail.Seconds, 0.1, 120),
        .. When(!Enum.IsDefined(mail.Security), $"Laygate:Mail:Security must be one of: {string.Join(", ", Enum.GetNames<MailSecurity>())}."),
        .. When(mail.Host.Length > 0 && !MimeKit.MailboxAddress.TryParse(mail.From, out _), "Laygate:Mail:From must be the address that notices come from."),
        .. When(mail.User.Length > 0 && mail.Security == MailSecurity.None, "Laygate:Mail:Security is None: the password would travel in the clear. Use StartTls or Tls, or a relay that asks for no password."),
        .. When(mail.User.Length > 0 && (mail.Password.Length > 0) == (mail.PasswordFile.Length > 0), "Laygate:Mail:User needs either Laygate:Mail:PasswordFile or Laygate:Mail:Password."),
        .. When(mail.PasswordFile.Length > 0 && !File.Exists(mail.PasswordFile), "Laygate:Mail:PasswordFile names no file."),
    ];

    private static string[] Range(string name, double value, double low, double high) =>
        When(!(value >= low && value <= high), FormattableString.Invariant($"Laygate:{name} is {value}; it must be between {low} and {high}."));

    private static string[] When(bool isWrong, string message) => isWrong ? [message] : [];
}
