using System.Buffers;
using System.Collections.Concurrent;
using MimeKit;
using SmtpServer;
using SmtpServer.ComponentModel;
using SmtpServer.Mail;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace Laygate.ServiceTests.Shared;

/// <summary>A mail server on a loopback port, made of the library SmtpServer. It keeps what comes and answers recipients as it is told.</summary>
internal sealed class PostOffice : IAsyncDisposable
{
    private readonly CancellationTokenSource stop = new();
    private readonly Task running;

    public PostOffice()
    {
        Port = ServiceProcess.FreePort();
        var services = new ServiceProvider();
        services.Add(new Box(this));
        services.Add(new Filter(this));
        running = new SmtpServer.SmtpServer(new SmtpServerOptionsBuilder().ServerName("localhost").Port(Port).Build(), services).StartAsync(stop.Token);
    }

    public int Port { get; }

    /// <summary>What is answered to a recipient; null: it is taken.</summary>
    public SmtpResponse? Refuses { get; set; }

    /// <summary>The mails as they came, byte for byte.</summary>
    public ConcurrentQueue<byte[]> Raw { get; } = new();

    public IReadOnlyList<MimeMessage> Mails => [.. Raw.Select(bytes => MimeMessage.Load(new MemoryStream(bytes)))];

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        try
        {
            await running;
        }
        catch (OperationCanceledException)
        {
            // As asked.
        }

        stop.Dispose();
    }

    private sealed class Box(PostOffice office) : MessageStore
    {
        public override Task<SmtpResponse> SaveAsync(ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
        {
            office.Raw.Enqueue(buffer.ToArray());
            return Task.FromResult(SmtpResponse.Ok);
        }
    }

    private sealed class Filter(PostOffice office) : MailboxFilter
    {
        public override Task<bool> CanDeliverToAsync(ISessionContext context, IMailbox to, IMailbox from, CancellationToken cancellationToken) =>
            office.Refuses is { } response ? throw new SmtpResponseException(response) : Task.FromResult(true);
    }
}
