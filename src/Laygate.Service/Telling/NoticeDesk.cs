using System.Net;
using Laygate.Register;
using Laygate.Service.Settings;
using Microsoft.Extensions.Options;
using MimeKit;

namespace Laygate.Service.Telling;

/// <summary>A webhook at the one moment when its secret is shown.</summary>
/// <param name="Webhook">The webhook.</param>
/// <param name="Secret">What its requests are signed with.</param>
public sealed record SetWebhook(Subscription Webhook, string Secret);

/// <summary>Takes what people ask for, and refuses addresses that the settings do not allow.</summary>
internal sealed class NoticeDesk(Subscriptions subscriptions, MailSender mails, IOptions<ServiceSettings> options)
{
    private readonly ServiceSettings settings = options.Value;

    /// <summary>Whether there is a mail server.</summary>
    public bool HasMail => mails.IsOn;

    /// <summary>Domains to which mails may go; empty: any.</summary>
    public IReadOnlyList<string> Domains => settings.Mail.Domains;

    /// <summary>Begins a subscription by mail.</summary>
    /// <exception cref="RefusedException">There is no mail server, or the address cannot be used; or the register refuses it.</exception>
    public Task<Subscription> AddMailAsync(string? address, IReadOnlyList<NoticeEvent> events, string? contract, Caller caller, CancellationToken cancel)
    {
        if (!HasMail)
        {
            throw new RefusedException(Refusal.WrongState, "There is no mail server in the settings of the service. Ask who runs it.");
        }

        var given = address?.Trim() ?? string.Empty;
        if (!MailboxAddress.TryParse(given, out var box) || !string.Equals(box.Address, given, StringComparison.Ordinal) || box.Domain.Length == 0 || given.Any(char.IsControl))
        {
            throw new RefusedException(Refusal.BadRequest, "Give the address alone, such as office@example.org.");
        }

        return Domains.Count > 0 && !Domains.Contains(box.Domain, StringComparer.OrdinalIgnoreCase)
            ? throw new RefusedException(Refusal.BadRequest, $"Notices go to addresses of these domains only: {string.Join(", ", Domains)}.")
            : subscriptions.AddAsync(new NewSubscription(Channel.Mail, given, events, contract), caller, cancel);
    }

    /// <summary>Sets a webhook.</summary>
    /// <exception cref="RefusedException">The address or the secret cannot be used, or the register refuses it.</exception>
    public async Task<SetWebhook> AddWebhookAsync(string? address, string? secret, IReadOnlyList<NoticeEvent> events, string? contract, Caller caller, CancellationToken cancel)
    {
        var given = string.IsNullOrWhiteSpace(secret) ? WebhookSignature.NewSecret() : secret.Trim();
        if (!WebhookSignature.IsSecret(given))
        {
            throw new RefusedException(Refusal.BadRequest, "A secret is whsec_ followed by 24 to 64 bytes in Base64. Leave it empty, and the service makes one.");
        }

        var target = Target(address?.Trim() ?? string.Empty);
        return new SetWebhook(await subscriptions.AddAsync(new NewSubscription(Channel.Webhook, target, events, contract, given), caller, cancel), given);
    }

    private string Target(string address)
    {
        if (!Uri.TryCreate(address, UriKind.Absolute, out var uri) || uri.Scheme is not ("http" or "https") || uri.UserInfo.Length > 0 || uri.Fragment.Length > 0 || uri.Host.Length == 0)
        {
            throw new RefusedException(Refusal.BadRequest, "Give the whole address, such as https://office.example.org/hook, without a name, a password or a #.");
        }

        if (uri.Scheme is "http" && !settings.Webhooks.PlainHttp)
        {
            throw new RefusedException(Refusal.BadRequest, "The settings allow https only.");
        }

        if (settings.Webhooks.Hosts.Count > 0 && !settings.Webhooks.Hosts.Contains(uri.IdnHost, StringComparer.OrdinalIgnoreCase))
        {
            throw new RefusedException(Refusal.BadRequest, $"The settings allow these hosts only: {string.Join(", ", settings.Webhooks.Hosts)}.");
        }

        // A name is judged at each connection: it may lead elsewhere by then.
        return IPAddress.TryParse(uri.Host.Trim('[', ']'), out var ip) && !settings.Webhooks.PrivateAddresses && !OutwardAddresses.IsPublic(ip)
            ? throw new RefusedException(Refusal.BadRequest, "This address is not public, which the settings do not allow.")
            : uri.AbsoluteUri;
    }
}
