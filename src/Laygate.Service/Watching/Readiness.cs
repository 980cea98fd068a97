using Laygate.Register;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace Laygate.Service.Watching;

/// <summary>Ready: the database answers, and the process is not about to stop.</summary>
internal sealed class Readiness(RegisterDatabase database, IHostApplicationLifetime lifetime) : IHealthCheck
{
    public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default) =>
        !lifetime.ApplicationStopping.IsCancellationRequested && await database.AnswersAsync(cancellationToken)
            ? HealthCheckResult.Healthy()
            : HealthCheckResult.Unhealthy();
}

/// <summary>Headers that keep a browser from doing what a page did not ask for.</summary>
internal static class SecurityHeaders
{
    private const string Policy = "default-src 'none'; style-src 'self'; img-src 'self' data:; form-action 'self'; base-uri 'none'";
    private const string Framed = "; frame-ancestors 'none'";

    // Set when the answer starts, because an error clears what was set before.
    public static Task Add(HttpContext context, RequestDelegate next)
    {
        context.Response.OnStarting(() =>
        {
            Set(context.Response.Headers, context.Items[typeof(SecurityHeaders)] as string ?? Policy);
            return Task.CompletedTask;
        });
        return next(context);
    }

    /// <summary>Sets the policy of a page that carries its own style sheet.</summary>
    public static void Use(HttpContext context, string policy) => context.Items[typeof(SecurityHeaders)] = policy;

    private static void Set(IHeaderDictionary headers, string policy)
    {
        headers.ContentSecurityPolicy = policy + Framed;
        headers.XContentTypeOptions = "nosniff";

        // Not "no-referrer": with that a browser hides the origin of our own forms.
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), geolocation=(), microphone=()";
    }
}
