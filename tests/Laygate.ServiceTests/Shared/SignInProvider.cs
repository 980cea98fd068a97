using System.Security.Claims;
using System.Security.Cryptography;
using Microsoft.AspNetCore;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.IdentityModel.Tokens;
using OpenIddict.Abstractions;
using OpenIddict.Server.AspNetCore;
using static OpenIddict.Abstractions.OpenIddictConstants;

namespace Laygate.ServiceTests.Shared;

/// <summary>
/// An identity provider on loopback: OpenIddict, an implementation of OpenID Connect that is no part of the service, with codes that are good once, a page on
/// which people say who they are, and an end of its own sessions.
/// </summary>
internal sealed class SignInProvider : IAsyncDisposable
{
    public const string ClientId = "laygate-page";
    public const string ClientSecret = "a secret between the two of them";
    public const string Audience = "laygate";
    public const string Kid = "one";

    private readonly WebApplication app;
    private readonly SqliteConnection held;

    private SignInProvider(WebApplication app, SqliteConnection held, RSA key, string issuer) => (this.app, this.held, Key, Issuer) = (app, held, key, issuer);

    /// <summary>With what it signs, so that a test can sign what it never would.</summary>
    public RSA Key { get; }

    public string Issuer { get; }

    /// <summary>Who can sign in: subject, name and roles of each.</summary>
    public static IReadOnlyDictionary<string, (string Subject, string Name, string[] Roles)> People { get; } = new Dictionary<string, (string, string, string[])>(StringComparer.Ordinal)
    {
        ["sam"] = ("p-sam", "Sam", ["submitter"]),
        ["rita"] = ("p-rita", "Rita of the office", ["staff", "reviewer"]),
        ["olga"] = ("p-olga", "Olga", ["submitter", "reviewer"]),
        ["adam"] = ("p-adam", "Adam", ["administrator"]),
        ["gast"] = ("p-gast", "Gast", ["visitor"]),
        ["leer"] = ("p-leer", "Leer", []),
        ["verboten"] = ("p-no", "No", []),
    };

    public static async Task<SignInProvider> StartAsync()
    {
        // Another name than that of the service, so that a browser takes the two for two sites.
        var issuer = $"http://localhost:{ServiceProcess.FreePort()}";
        var store = $"Data Source=file:{Guid.NewGuid():N}?mode=memory&cache=shared";
        var connection = new SqliteConnection(store);
        await connection.OpenAsync();
        var key = RSA.Create(2048);
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseSetting("urls", issuer);
        builder.Services.AddDbContext<DbContext>(options => options.UseSqlite(store).UseOpenIddict());
        builder.Services.AddAuthentication(CookieAuthenticationDefaults.AuthenticationScheme).AddCookie(options => (options.LoginPath, options.Cookie.Name) = ("/who", "provider"));
        builder.Services.AddAuthorization();
        builder.Services.AddOpenIddict()
            .AddCore(options => options.UseEntityFrameworkCore().UseDbContext<DbContext>())
            .AddServer(options => Configure(options, issuer, key));
        var built = builder.Build();
        Map(built);
        await using (var scope = built.Services.CreateAsyncScope())
        {
            await scope.ServiceProvider.GetRequiredService<DbContext>().Database.EnsureCreatedAsync();
        }

        await built.StartAsync();
        return new SignInProvider(built, connection, key, issuer);
    }

    /// <summary>Makes a service known.</summary>
    public async Task RegisterAsync(Uri service, string id = ClientId, string? secret = ClientSecret)
    {
        await using var scope = app.Services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<IOpenIddictApplicationManager>().CreateAsync(new OpenIddictApplicationDescriptor
        {
            ClientId = id,
            ClientSecret = secret,
            ClientType = secret is null ? ClientTypes.Public : ClientTypes.Confidential,
            ConsentType = ConsentTypes.Implicit,
            RedirectUris = { new Uri(service, "/sign-in/back") },
            PostLogoutRedirectUris = { new Uri(service, "/sign-in/left") },
            Permissions =
            {
                Permissions.Endpoints.Authorization, Permissions.Endpoints.Token, Permissions.Endpoints.EndSession,
                Permissions.GrantTypes.AuthorizationCode, Permissions.GrantTypes.Password, Permissions.ResponseTypes.Code, Permissions.Scopes.Profile,
            },
            Requirements = { Requirements.Features.ProofKeyForCodeExchange },
        });
    }

    public async ValueTask DisposeAsync()
    {
        await app.DisposeAsync();
        await held.DisposeAsync();
        Key.Dispose();
    }

    private static void Configure(OpenIddictServerBuilder options, string issuer, RSA key)
    {
        options.SetIssuer(new Uri(issuer)).SetAuthorizationEndpointUris("authorize").SetTokenEndpointUris("token").SetUserInfoEndpointUris("userinfo").SetEndSessionEndpointUris("leave");
        options.AllowAuthorizationCodeFlow().RequireProofKeyForCodeExchange().AllowPasswordFlow();
        options.RegisterScopes(Scopes.Profile);
        options.AddSigningKey(new RsaSecurityKey(key) { KeyId = Kid }).AddEphemeralEncryptionKey().DisableAccessTokenEncryption();
        options.UseAspNetCore().EnableAuthorizationEndpointPassthrough().EnableTokenEndpointPassthrough().EnableUserInfoEndpointPassthrough().EnableEndSessionEndpointPassthrough().DisableTransportSecurityRequirement();
    }

    private static void Map(WebApplication app)
    {
        app.UseAuthentication();
        app.UseAuthorization();
        app.MapGet("/who", () => Results.Content("<!DOCTYPE html><html lang=\"en\"><title>Who are you?</title><form method=\"post\"><label>Name <input name=\"who\"></label><button>Go on</button></form></html>", "text/html"));
        app.MapPost("/who", (Delegate)WhoAsync);
        app.MapMethods("/authorize", ["GET", "POST"], (Delegate)AuthorizeAsync);
        app.MapPost("/token", (Delegate)TokenAsync);
        app.MapMethods("/userinfo", ["GET", "POST"], (Delegate)UserInfoAsync);
        app.MapMethods("/leave", ["GET", "POST"], (Delegate)LeaveAsync);
    }

    private static async Task<IResult> WhoAsync(HttpContext context)
    {
        var form = await context.Request.ReadFormAsync();
        await context.SignInAsync(new ClaimsPrincipal(new ClaimsIdentity([new Claim(ClaimTypes.Name, form["who"].ToString())], "who")));
        return Results.Redirect(context.Request.Query["ReturnUrl"].ToString());
    }

    private static async Task<IResult> LeaveAsync(HttpContext context)
    {
        await context.SignOutAsync(CookieAuthenticationDefaults.AuthenticationScheme);
        return Results.SignOut(new AuthenticationProperties { RedirectUri = "/" }, [OpenIddictServerAspNetCoreDefaults.AuthenticationScheme]);
    }

    private static async Task<IResult> AuthorizeAsync(HttpContext context)
    {
        var request = context.GetOpenIddictServerRequest()!;
        var known = await context.AuthenticateAsync(CookieAuthenticationDefaults.AuthenticationScheme);
        if (!known.Succeeded || request.HasPromptValue(PromptValues.Login))
        {
            var back = QueryString.Create(context.Request.Query.Where(pair => pair.Key is not Parameters.Prompt).Select(pair => KeyValuePair.Create(pair.Key, (string?)pair.Value.ToString())));
            return Results.Challenge(new AuthenticationProperties { RedirectUri = context.Request.Path + back }, [CookieAuthenticationDefaults.AuthenticationScheme]);
        }

        return Issue(known.Principal!.Identity!.Name!, request);
    }

    private static async Task<IResult> TokenAsync(HttpContext context)
    {
        var request = context.GetOpenIddictServerRequest()!;
        return request.IsPasswordGrantType() ? Issue(request.Username!, request)
            : Results.SignIn((await context.AuthenticateAsync(OpenIddictServerAspNetCoreDefaults.AuthenticationScheme)).Principal!, authenticationScheme: OpenIddictServerAspNetCoreDefaults.AuthenticationScheme);
    }

    private static async Task<IResult> UserInfoAsync(HttpContext context)
    {
        var user = (await context.AuthenticateAsync(OpenIddictServerAspNetCoreDefaults.AuthenticationScheme)).Principal!;
        return Results.Json(new Dictionary<string, string>(StringComparer.Ordinal) { [Claims.Subject] = user.GetClaim(Claims.Subject)!, [Claims.Name] = user.GetClaim(Claims.Name)! });
    }

    // The name stands in no token for the page: it is asked for (OpenID Connect Core 1.0, 5.4).
    private static IResult Issue(string who, OpenIddictRequest request)
    {
        if (!People.TryGetValue(who, out var person) || person.Subject is "p-no")
        {
            return Results.Forbid(
                new AuthenticationProperties(new Dictionary<string, string?>(StringComparer.Ordinal) { [OpenIddictServerAspNetCoreConstants.Properties.Error] = Errors.AccessDenied }),
                [OpenIddictServerAspNetCoreDefaults.AuthenticationScheme]);
        }

        var identity = new ClaimsIdentity("provider", Claims.Name, Claims.Role);
        identity.SetClaim(Claims.Subject, person.Subject).SetClaim(Claims.Name, person.Name).SetClaims(Claims.Role, [.. person.Roles]);
        identity.SetScopes(request.GetScopes()).SetResources(Audience);
        identity.SetDestinations(claim => claim.Type is Claims.Name ? [Destinations.AccessToken] : [Destinations.AccessToken, Destinations.IdentityToken]);
        return Results.SignIn(new ClaimsPrincipal(identity), authenticationScheme: OpenIddictServerAspNetCoreDefaults.AuthenticationScheme);
    }
}
