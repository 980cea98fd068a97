using Laygate.Service.Access;
using Serilog;
using Serilog.AspNetCore;
using Serilog.Core;
using Serilog.Events;

namespace Laygate.Service.Watching;

/// <summary>One line for each request: method, pattern of the route, status, time and the id of the caller. Nothing that the request says gets in.</summary>
internal static class RequestLog
{
    private const string None = "none";
    private static readonly string[] Methods = ["GET", "HEAD", "POST", "DELETE", "PUT", "PATCH", "OPTIONS"];

    public static void Configure(RequestLoggingOptions options)
    {
        options.MessageTemplate = "{RequestMethod} {Route} {StatusCode} in {Elapsed:0.0} ms for {Caller}";
        options.GetMessageTemplateProperties = Properties;
        options.GetLevel = (context, _, _) =>
            context.Request.Path.StartsWithSegments("/healthz", StringComparison.Ordinal) ? LogEventLevel.Debug
            : context.Response.StatusCode >= StatusCodes.Status500InternalServerError ? LogEventLevel.Error
            : LogEventLevel.Information;
    }

    /// <summary>The pattern of the route that was found, such as <c>/api/v1/submissions/{id}</c>; <c>none</c> when none was.</summary>
    public static string Route(HttpContext context) => context.Items[typeof(RequestLog)] as string ?? None;

    /// <summary>Keeps the pattern of the route: an error takes the endpoint away before the line is written.</summary>
    public static Task Keep(HttpContext context, RequestDelegate next)
    {
        context.Items[typeof(RequestLog)] = (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText is { } pattern ? "/" + pattern.Trim('/') : null;
        return next(context);
    }

    /// <summary>Ends a request whose answer broke off under way, so that nobody above writes down what the error says.</summary>
    public static async Task Break(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context);
        }
#pragma warning disable CA1031 // Whatever it is: part of the answer is sent, so nothing can be answered any more.
        catch (Exception error) when (context.Response.HasStarted)
#pragma warning restore CA1031
        {
            Log.RequestFailed(context.RequestServices.GetRequiredService<ILogger<Telemetry>>(), error.GetType().Name);
            context.Abort();
        }
    }

    /// <summary>Takes what the platform adds to every line of a request: its path.</summary>
    public static LoggerConfiguration WithoutPaths(this LoggerConfiguration logs) => logs.Enrich.With(new Without("RequestPath"));

    private static IEnumerable<LogEventProperty> Properties(HttpContext context, string path, double elapsed, int status) =>
    [
        new("RequestMethod", new ScalarValue(Methods.FirstOrDefault(method => string.Equals(method, context.Request.Method, StringComparison.Ordinal)) ?? "other")),
        new("Route", new ScalarValue(Route(context))),
        new("StatusCode", new ScalarValue(status)),
        new("Elapsed", new ScalarValue(elapsed)),
        new("Caller", new ScalarValue(Callers.Of(context.User)?.Id ?? None)),
    ];

    private sealed class Without(string name) : ILogEventEnricher
    {
        public void Enrich(LogEvent logEvent, ILogEventPropertyFactory propertyFactory) => logEvent.RemovePropertyIfPresent(name);
    }
}

/// <summary>Whatever can be read can be asked for its head: the same answer without its body (RFC 9110, 9.3.2).</summary>
internal static class Heads
{
    /// <summary>Lets the route of GET be found.</summary>
    public static Task Ask(HttpContext context, RequestDelegate next)
    {
        if (HttpMethods.IsHead(context.Request.Method))
        {
            context.Items[typeof(Heads)] = true;
            context.Request.Method = HttpMethods.Get;
        }

        return next(context);
    }

    /// <summary>Once the route is found it is a request for the head again, and the server sends no body.</summary>
    public static Task Answer(HttpContext context, RequestDelegate next)
    {
        if (context.Items.ContainsKey(typeof(Heads)))
        {
            context.Request.Method = HttpMethods.Head;
        }

        return next(context);
    }
}
