using System.Globalization;
using System.Threading.RateLimiting;
using Laygate.Register;
using Laygate.Service.Api;
using Laygate.Service.Settings;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.JwtBearer;
using Microsoft.IdentityModel.Tokens;

namespace Laygate.Service.Access;

/// <summary>Who may do what, and how often.</summary>
internal static class AccessSetup
{
    /// <summary>Policy: any known caller.</summary>
    public const string Known = "known";

    /// <summary>Policy: reviewers and administrators.</summary>
    public const string Reviewers = "reviewers";

    /// <summary>Policy: administrators.</summary>
    public const string Administrators = "administrators";

    /// <summary>Policy: any known caller, and anybody where the settings say so.</summary>
    public const string Checkers = "checkers";

    private const string Any = "Any";

    public static void AddAccess(this WebApplicationBuilder builder, ServiceSettings settings)
    {
        var authentication = builder.Services.AddAuthentication(Any)
            .AddPolicyScheme(Any, null, policy => policy.ForwardDefaultSelector = context => SchemeOf(context, settings))
            .AddScheme<AuthenticationSchemeOptions, KeyAuthentication>(KeyAuthentication.Name, null)
            .AddScheme<AuthenticationSchemeOptions, SessionAuthentication>(SessionAuthentication.Name, null);
        if (settings.ClientId.Length > 0)
        {
            ProviderSignIn.Add(authentication, builder.Services, settings, ServiceHost.SpeaksTls(builder.Configuration));
        }

        if (settings.TakesTokens)
        {
            authentication.AddJwtBearer(options => Tokens(options, settings));

            // After the platform has made the manager: it would accept keys that the provider has taken back for another hour.
            builder.Services.PostConfigure<JwtBearerOptions>(JwtBearerDefaults.AuthenticationScheme, options =>
            {
                if (options.ConfigurationManager is BaseConfigurationManager manager)
                {
                    manager.UseLastKnownGoodConfiguration = false;
                }
            });
        }

        builder.Services.AddAuthorizationBuilder()
            .AddPolicy(Known, policy => policy.RequireAssertion(context => Callers.Of(context.User) is not null))
            .AddPolicy(Reviewers, policy => policy.RequireAssertion(context => Callers.Of(context.User)?.SeesAll == true))
            .AddPolicy(Administrators, policy => policy.RequireAssertion(context => Callers.Of(context.User)?.Role == Role.Administrator))
            .AddPolicy(Checkers, policy => policy.RequireAssertion(context => settings.AnonymousChecks || Callers.Of(context.User) is not null));
        builder.Services.AddRateLimiter(limiter =>
        {
            limiter.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            limiter.OnRejected = (context, _) => Refuse(context.HttpContext, context.Lease);
            limiter.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context => Limit(context, settings));
        });
    }

    private static string SchemeOf(HttpContext context, ServiceSettings settings) =>
        context.Request.Headers.Authorization.Count == 0 ? SessionAuthentication.Name
        : settings.TakesTokens && KeyAuthentication.SecretOf(context.Request) is { Length: > 0 } secret && !secret.StartsWith(AccessKeys.Mark, StringComparison.Ordinal) ? JwtBearerDefaults.AuthenticationScheme
        : KeyAuthentication.Name;

    private static void Tokens(JwtBearerOptions options, ServiceSettings settings)
    {
        options.Authority = settings.Authority;
        options.Audience = settings.Audience;
        options.RequireHttpsMetadata = !settings.IsLoopbackAuthority;
        options.MapInboundClaims = false;

        // A new signing key is asked for when a token names it, though not at every such token; one that was taken back stops working soon.
        options.RefreshInterval = TimeSpan.FromSeconds(30);
        options.AutomaticRefreshInterval = TimeSpan.FromMinutes(10);
        options.TokenValidationParameters.ValidateAudience = true;
        options.Events = new JwtBearerEvents
        {
            OnTokenValidated = context =>
            {
                if (ProviderCallers.Of(context.Principal!, settings) is not { } caller)
                {
                    context.Fail("The token names no subject or no role of ours.");
                    return Task.CompletedTask;
                }

                context.Principal = Callers.Principal(caller, JwtBearerDefaults.AuthenticationScheme);
                return Task.CompletedTask;
            },
        };
    }

    private static RateLimitPartition<string> Limit(HttpContext context, ServiceSettings settings)
    {
        if (context.Request.Path.StartsWithSegments("/healthz", StringComparison.Ordinal))
        {
            return RateLimitPartition.GetNoLimiter("health");
        }

        var who = Callers.Of(context.User)?.Id ?? "address:" + context.Connection.RemoteIpAddress;
        return RateLimitPartition.GetTokenBucketLimiter(who, _ => new TokenBucketRateLimiterOptions
        {
            TokenLimit = settings.RequestsPerMinute,
            TokensPerPeriod = Math.Max(1, settings.RequestsPerMinute / 60),
            ReplenishmentPeriod = TimeSpan.FromSeconds(Math.Max(1, 60 / settings.RequestsPerMinute)),
            QueueLimit = 0,
        });
    }

    private static async ValueTask Refuse(HttpContext context, RateLimitLease lease)
    {
        var wait = lease.TryGetMetadata(MetadataName.RetryAfter, out var after) ? Math.Max(1, Math.Ceiling(after.TotalSeconds)) : 1;
        context.Response.Headers.RetryAfter = wait.ToString(CultureInfo.InvariantCulture);
        context.Response.StatusCode = StatusCodes.Status429TooManyRequests;
        await Refusals.Answer(context, StatusCodes.Status429TooManyRequests, "Too many requests", "Wait for the time in Retry-After, then go on more slowly.").ExecuteAsync(context);
    }
}
