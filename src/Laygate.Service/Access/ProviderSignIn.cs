using Laygate.Register;
using Laygate.Service.Settings;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.OpenIdConnect;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.Extensions.Options;
using Microsoft.IdentityModel.Protocols.OpenIdConnect;

namespace Laygate.Service.Access;

/// <summary>
/// Signing in at an identity provider: OpenID Connect Core 1.0, 3.1 (authorization code), with PKCE (RFC 7636), by the platform's own library. The provider leads back
/// by a link with a query, so that the cookies of the way may be SameSite=Lax and no form of another site has to be let in; the code in it is good once, and only with
/// what this browser and this service hold.
/// </summary>
internal static class ProviderSignIn
{
    /// <summary>Name of the scheme.</summary>
    public const string Name = "Provider";

    /// <summary>Where the provider leads back to.</summary>
    public const string Back = "/sign-in/back";

    /// <summary>Where the provider leads back to after it has ended its own session.</summary>
    public const string Left = "/sign-in/left";

    /// <summary>Under which name a request carries the address at which the provider ends its session.</summary>
    public static readonly object EndAddress = new();

    private const string Anew = ".laygate.anew";

    /// <summary>What a signing in carries on its way.</summary>
    /// <param name="to">Where to go afterwards.</param>
    /// <param name="anew">Whether the provider asks who it is even where it knows.</param>
    public static AuthenticationProperties Way(string? to, bool anew) => new(anew ? new Dictionary<string, string?>(StringComparer.Ordinal) { [Anew] = "true" } : []) { RedirectUri = LocalAddress.Of(to) };

    public static void Add(AuthenticationBuilder authentication, IServiceCollection services, ServiceSettings settings, bool speaksTls)
    {
        authentication.AddOpenIdConnect(Name, options => Configure(options, settings, speaksTls));
        services.PostConfigure<OpenIdConnectOptions>(Name, options =>
        {
            if (options.ConfigurationManager is Microsoft.IdentityModel.Tokens.BaseConfigurationManager manager)
            {
                manager.UseLastKnownGoodConfiguration = false;
            }
        });
    }

    /// <summary>Shares the keys of the way between replicas, by the register.</summary>
    public static void AddKeyRing(IServiceCollection services)
    {
        services.AddSingleton<ProtectionKeys>();
        services.AddDataProtection().SetApplicationName("Laygate");
        services.AddSingleton<IConfigureOptions<KeyManagementOptions>>(provider => new ConfigureOptions<KeyManagementOptions>(options => options.XmlRepository = new KeyRing(provider.GetRequiredService<ProtectionKeys>())));
    }

    private static void Configure(OpenIdConnectOptions options, ServiceSettings settings, bool speaksTls)
    {
        options.Authority = settings.Authority;
        options.RequireHttpsMetadata = !settings.IsLoopbackAuthority;
        options.ClientId = settings.ClientId;
        options.ClientSecret = settings.ClientSecret.Length > 0 ? settings.ClientSecret : null;
        options.ResponseType = OpenIdConnectResponseType.Code;
        options.ResponseMode = OpenIdConnectResponseMode.Query;
        options.UsePkce = true;
        options.MapInboundClaims = false;
        options.SaveTokens = false;
        options.SignInScheme = SessionAuthentication.Name;
        options.CallbackPath = Back;
        options.SignedOutCallbackPath = Left;

        // A signing out that starts at the provider comes in a frame, to which browsers give no cookie of ours.
        options.RemoteSignOutPath = default;
        options.BackchannelTimeout = TimeSpan.FromSeconds(10);
        options.RefreshInterval = TimeSpan.FromSeconds(30);
        options.AutomaticRefreshInterval = TimeSpan.FromMinutes(10);
        options.ProtocolValidator.NonceLifetime = options.RemoteAuthenticationTimeout;
        options.Scope.Clear();
        foreach (var scope in settings.Scopes.Prepend("profile").Prepend("openid").Distinct(StringComparer.Ordinal))
        {
            options.Scope.Add(scope);
        }

        Claims(options, settings);
        Cookies(options, speaksTls);
        options.Events = ProviderEvents.Make(settings);
    }

    // By OpenID Connect Core 1.0, 5.4, a provider need not put the name into the token that it signs: it is asked for it.
    private static void Claims(OpenIdConnectOptions options, ServiceSettings settings)
    {
        options.GetClaimsFromUserInfoEndpoint = true;
        options.ClaimActions.Clear();
        foreach (var claim in new[] { settings.RoleClaim, settings.NameClaim }.Distinct(StringComparer.Ordinal))
        {
            options.ClaimActions.MapUniqueJsonKey(claim, claim);
        }
    }

    // These last from the way to the provider until the way back.
    private static void Cookies(OpenIdConnectOptions options, bool speaksTls)
    {
        foreach (var (cookie, name) in new[] { (options.CorrelationCookie, "laygate-way-"), (options.NonceCookie, "laygate-once-") })
        {
            cookie.SameSite = SameSiteMode.Lax;
            cookie.HttpOnly = true;
            cookie.SecurePolicy = speaksTls ? CookieSecurePolicy.Always : CookieSecurePolicy.SameAsRequest;
            cookie.Name = speaksTls ? "__Host-" + name : name;
            cookie.Path = "/";
        }
    }

    private sealed class KeyRing(ProtectionKeys keys) : Microsoft.AspNetCore.DataProtection.Repositories.IXmlRepository
    {
        public IReadOnlyCollection<System.Xml.Linq.XElement> GetAllElements() => [.. keys.List().Select(System.Xml.Linq.XElement.Parse)];

        public void StoreElement(System.Xml.Linq.XElement element, string friendlyName) => keys.Add(friendlyName, element.ToString(System.Xml.Linq.SaveOptions.DisableFormatting));
    }

    /// <summary>Whether a signing in asks the provider to ask again who it is.</summary>
    public static bool IsAnew(AuthenticationProperties way) => way.Items.ContainsKey(Anew);
}
