using System.Globalization;
using System.Net.Http.Headers;
using System.Net.Sockets;
using Laygate.Register;
using Laygate.Service.Settings;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using Microsoft.Extensions.Options;
using MimeKit;

namespace Laygate.Service.Telling;

/// <summary>What became of an attempt.</summary>
/// <param name="Why">Why it failed, in a few words of our own; null: it was taken.</param>
/// <param name="ForGood">Whether another attempt would end likewise.</param>
/// <param name="Gone">Whether the receiver wants no more.</param>
internal sealed record Delivery(string? Why = null, bool ForGood = false, bool Gone = false);

/// <summary>Sends notices as signed requests. No redirect is followed, no proxy and no cookie used, and nothing of an answer is read but its status.</summary>
internal sealed class WebhookSender : IDisposable
{
    private readonly HttpClient client;
    private readonly ServiceSettings settings;
    private readonly TimeProvider clock;

    public WebhookSender(IOptions<ServiceSettings> options, TimeProvider clock)
    {
        (settings, this.clock) = (options.Value, clock);
        var anyAddress = settings.Webhooks.PrivateAddresses;
        client = new HttpClient(new SocketsHttpHandler
        {
            AllowAutoRedirect = false,
            UseProxy = false,
            UseCookies = false,
            ActivityHeadersPropagator = null,
            MaxResponseHeadersLength = 16,
            MaxResponseDrainSize = 0,
            PooledConnectionLifetime = TimeSpan.FromMinutes(1),
            ConnectCallback = (context, cancel) => OutwardAddresses.ConnectAsync(context.DnsEndPoint, anyAddress, cancel),
        })
        {
            Timeout = TimeSpan.FromSeconds(settings.Webhooks.Seconds),
        };
    }

    public async Task<Delivery> SendAsync(NoticeClaim notice, CancellationToken cancel)
    {
        var body = NoticeText.Body(notice, settings.PublicAddress.TrimEnd('/'));
        var now = clock.GetUtcNow();
        using var request = new HttpRequestMessage(HttpMethod.Post, notice.To.Target) { Content = new ByteArrayContent(body) };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        request.Headers.UserAgent.Add(new ProductInfoHeaderValue("Laygate", null));
        request.Headers.Add(WebhookSignature.IdHeader, notice.Id);
        request.Headers.Add(WebhookSignature.TimeHeader, now.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture));
        request.Headers.Add(WebhookSignature.SignatureHeader, WebhookSignature.Of(notice.Secret!, notice.Id, now, body));
        try
        {
            using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, cancel);
            return Judge((int)answer.StatusCode);
        }
        catch (HttpRequestException error) when (error.InnerException is ForbiddenAddressException)
        {
            return new Delivery("The address is not public, which the settings do not allow.");
        }
        catch (HttpRequestException error)
        {
            return new Delivery(string.Create(CultureInfo.InvariantCulture, $"No answer: {error.HttpRequestError}."));
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            return new Delivery(string.Create(CultureInfo.InvariantCulture, $"No answer within {settings.Webhooks.Seconds} s."));
        }
    }

    public void Dispose() => client.Dispose();

    private static Delivery Judge(int status) => status switch
    {
        >= 200 and < 300 => new Delivery(),
        >= 300 and < 400 => new Delivery(string.Create(CultureInfo.InvariantCulture, $"HTTP {status}: a redirect, which is not followed.")),
        StatusCodes.Status410Gone => new Delivery("HTTP 410: the receiver wants no more. The webhook was ended.", ForGood: true, Gone: true),
        _ => new Delivery(string.Create(CultureInfo.InvariantCulture, $"HTTP {status}.")),
    };
}

/// <summary>Sends notices as mails of plain text.</summary>
internal sealed class MailSender(IOptions<ServiceSettings> options, TimeProvider clock)
{
    private readonly ServiceSettings settings = options.Value;

    /// <summary>Whether there is a mail server.</summary>
    public bool IsOn => settings.Mail.Host.Length > 0;

    /// <summary>The mail of a notice.</summary>
    public MimeMessage Message(NoticeClaim notice)
    {
        var address = settings.PublicAddress.TrimEnd('/');
        var from = MailboxAddress.Parse(settings.Mail.From);
        var message = new MimeMessage
        {
            Date = clock.GetUtcNow(),

            // The same with each attempt, so that a mailbox may drop what comes twice.
            MessageId = $"{notice.Id}@{from.Domain}",
            Subject = NoticeText.Subject(notice),
            Body = new TextPart("plain") { Text = NoticeText.Mail(notice, address) },
        };
        message.From.Add(from);
        message.To.Add(MailboxAddress.Parse(notice.To.Target));

        // RFC 3834: nothing answers by itself; RFC 2369: where to end it.
        message.Headers.Add(HeaderId.AutoSubmitted, "auto-generated");
        if (address.Length > 0)
        {
            message.Headers.Add(HeaderId.ListUnsubscribe, $"<{address}/notices>");
        }

        message.Prepare(EncodingConstraint.SevenBit);
        return message;
    }

    public async Task<Delivery> SendAsync(NoticeClaim notice, CancellationToken cancel)
    {
        if (!IsOn)
        {
            return new Delivery("There is no mail server in the settings.");
        }

        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        limit.CancelAfter(TimeSpan.FromSeconds(settings.Mail.Seconds));
        try
        {
            await DeliverAsync(Message(notice), limit.Token);
            return new Delivery();
        }
        catch (SmtpCommandException refused)
        {
            // 5xx is for good (RFC 5321, 4.2.1), where it is about this mail; anything else an administrator can mend.
            var forGood = (int)refused.StatusCode >= 500 && refused.ErrorCode is SmtpErrorCode.RecipientNotAccepted or SmtpErrorCode.MessageNotAccepted;
            return new Delivery(string.Create(CultureInfo.InvariantCulture, $"SMTP {(int)refused.StatusCode}: {What(refused.ErrorCode)}."), forGood);
        }
        catch (Exception error) when (error is IOException or SocketException or ProtocolException or ServiceNotConnectedException or NotSupportedException or AuthenticationException or SslHandshakeException or UnauthorizedAccessException)
        {
            return new Delivery(error switch
            {
                SslHandshakeException => "The mail server shows no certificate that is trusted here.",
                AuthenticationException => "The mail server does not take the name and the password.",
                NotSupportedException => "The mail server does not offer STARTTLS.",
                UnauthorizedAccessException => "The file with the password cannot be read.",
                _ => "The mail server does not answer.",
            });
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            return new Delivery(string.Create(CultureInfo.InvariantCulture, $"The mail server does not answer within {settings.Mail.Seconds} s."));
        }
    }

    private async Task DeliverAsync(MimeMessage message, CancellationToken cancel)
    {
        var mail = settings.Mail;

        // As the web client of the platform does: lists of revoked certificates are often out of reach in closed networks.
        using var client = new SmtpClient { CheckCertificateRevocation = false };
        await client.ConnectAsync(
            mail.Host,
            mail.Port,
            mail.Security switch { MailSecurity.StartTls => SecureSocketOptions.StartTls, MailSecurity.Tls => SecureSocketOptions.SslOnConnect, _ => SecureSocketOptions.None },
            cancel);
        if (mail.User.Length > 0)
        {
            var password = mail.PasswordFile.Length > 0 ? (await File.ReadAllTextAsync(mail.PasswordFile, cancel)).Trim() : mail.Password;
            await client.AuthenticateAsync(mail.User, password, cancel);
        }

        await client.SendAsync(message, cancel);
        try
        {
            await client.DisconnectAsync(quit: true, cancel);
        }
        catch (Exception error) when (error is IOException or ProtocolException or OperationCanceledException)
        {
            // It is taken already.
        }
    }

    private static string What(SmtpErrorCode code) => code switch
    {
        SmtpErrorCode.RecipientNotAccepted => "the recipient is not taken",
        SmtpErrorCode.SenderNotAccepted => "the sender is not taken",
        SmtpErrorCode.MessageNotAccepted => "the mail is not taken",
        _ => "refused",
    };
}
