namespace Laygate.Service.Settings;

/// <summary>How the connection to a mail server is made safe.</summary>
public enum MailSecurity
{
    /// <summary>TLS from STARTTLS on; a server that does not offer it gets nothing (RFC 3207).</summary>
    StartTls,

    /// <summary>TLS from the first byte, usually on port 465 (RFC 8314).</summary>
    Tls,

    /// <summary>None: for a relay on the same machine or in a closed network.</summary>
    None,
}

/// <summary>The mail server through which notices go.</summary>
public sealed class MailSettings
{
    /// <summary>Name of the server; empty: there are no notices by mail.</summary>
    public string Host { get; set; } = string.Empty;

    /// <summary>Its port.</summary>
    public int Port { get; set; } = 587;

    /// <summary>How the connection is made safe.</summary>
    public MailSecurity Security { get; set; }

    /// <summary>Name under which the service signs in; empty: it does not.</summary>
    public string User { get; set; } = string.Empty;

    /// <summary>Its password; better kept in a file.</summary>
    public string Password { get; set; } = string.Empty;

    /// <summary>File that holds the password alone; white space around it does not count.</summary>
    public string PasswordFile { get; set; } = string.Empty;

    /// <summary>Address that notices come from.</summary>
    public string From { get; set; } = string.Empty;

    /// <summary>Domains to which notices may go; empty: any.</summary>
    public IReadOnlyList<string> Domains { get; set; } = [];

    /// <summary>Longest time for one mail, s.</summary>
    public double Seconds { get; set; } = 30;
}

/// <summary>Where webhooks may lead.</summary>
public sealed class WebhookSettings
{
    /// <summary>Hosts that webhooks may name; empty: any.</summary>
    public IReadOnlyList<string> Hosts { get; set; } = [];

    /// <summary>Whether plain http is allowed beside https.</summary>
    public bool PlainHttp { get; set; }

    /// <summary>Whether they may reach addresses of this machine and of networks that are not public.</summary>
    public bool PrivateAddresses { get; set; }

    /// <summary>Longest time for one request, s.</summary>
    public double Seconds { get; set; } = 15;
}
