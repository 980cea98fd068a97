using System.Net;

namespace Laygate.ServiceTests.Shared;

/// <summary>A receiver of webhooks on a loopback port. It keeps what comes and answers as it is told.</summary>
internal sealed class HookReceiver : IDisposable
{
    private readonly HttpListener listener = new();
    private readonly Lock guard = new();
    private readonly List<(string? Id, string? Time, string? Signature, byte[] Body)> came = [];

    public HookReceiver()
    {
        Address = $"http://127.0.0.1:{ServiceProcess.FreePort()}/";
        listener.Prefixes.Add(Address);
        listener.Start();
        _ = ListenAsync();
    }

    public string Address { get; }

    /// <summary>What is answered; 0: nothing, the request is held for ever.</summary>
    public int Status { get; set; } = 204;

    public string? Location { get; set; }

    public IReadOnlyList<(string? Id, string? Time, string? Signature, byte[] Body)> Came
    {
        get
        {
            lock (guard)
            {
                return [.. came];
            }
        }
    }

    public void Dispose() => listener.Close();

    private async Task ListenAsync()
    {
        while (listener.IsListening)
        {
            try
            {
                var context = await listener.GetContextAsync();
                using var body = new MemoryStream();
                await context.Request.InputStream.CopyToAsync(body);
                lock (guard)
                {
                    came.Add((context.Request.Headers["webhook-id"], context.Request.Headers["webhook-timestamp"], context.Request.Headers["webhook-signature"], body.ToArray()));
                }

                if (Status != 0)
                {
                    context.Response.StatusCode = Status;
                    context.Response.RedirectLocation = Location;
                    context.Response.Close();
                }
            }
            catch (Exception error) when (error is HttpListenerException or ObjectDisposedException or InvalidOperationException)
            {
                return;
            }
        }
    }
}
