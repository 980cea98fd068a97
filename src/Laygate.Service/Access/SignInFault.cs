using Microsoft.IdentityModel.Protocols.OpenIdConnect;
using Microsoft.IdentityModel.Tokens;

namespace Laygate.Service.Access;

/// <summary>Why somebody could not sign in at the provider.</summary>
/// <param name="Reason">For the log, in a word or two.</param>
/// <param name="Status">Status of the answer.</param>
/// <param name="Title">What happened.</param>
/// <param name="Detail">What to do.</param>
internal sealed record SignInFault(string Reason, int Status, string Title, string Detail)
{
    public static readonly SignInFault Denied = new(
        "denied", StatusCodes.Status403Forbidden, "Not signed in", "The provider did not let you in, or you called it off there. Try again, or ask whoever looks after the accounts of your organisation.");

    public static readonly SignInFault NoRole = new(
        "no role", StatusCodes.Status403Forbidden, "No role here", "The provider knows you, but gives you no role in Laygate. Ask whoever looks after the accounts of your organisation to make you a submitter, a reviewer or an administrator of Laygate. Then sign in again.");

    public static readonly SignInFault NoSubject = new(
        "no subject", StatusCodes.Status502BadGateway, "Not signed in", "The provider does not say who you are. Tell your administrator of Laygate: its answer lacks the claim sub.");

    public static readonly SignInFault Unreachable = new(
        "unreachable", StatusCodes.Status503ServiceUnavailable, "The provider does not answer", "Try again in a minute. Who has a key can sign in with that meanwhile.");

    private static readonly SignInFault Stale = new(
        "not ours", StatusCodes.Status400BadRequest, "Start again", "This way of signing in was used already, took longer than 15 minutes, or began in another browser. Sign in again from here.");

    private static readonly SignInFault Spent = new(
        "code refused", StatusCodes.Status400BadRequest, "Start again", "The provider no longer takes the code of this signing in: it was used already or took too long. Sign in again from here.");

    private static readonly SignInFault Client = new(
        "client refused", StatusCodes.Status502BadGateway, "The provider refuses Laygate", "Tell your administrator of Laygate: at the provider, the client id, its secret, the scopes or the address to lead back to are not what the settings say.");

    private static readonly SignInFault Clock = new(
        "clock", StatusCodes.Status502BadGateway, "The clocks differ", "The answer of the provider is out of date, or ahead of the time here. Try again. If that does not help, tell your administrator of Laygate: the clock of the provider and that of this service differ by more than five minutes.");

    private static readonly SignInFault Untrusted = new(
        "untrusted", StatusCodes.Status502BadGateway, "Not signed in", "The answer of the provider cannot be trusted: it is for somebody else, from somebody else, or not signed as it should be. Sign in again. If it happens again, tell your administrator of Laygate.");

    private static readonly SignInFault Provider = new(
        "provider's error", StatusCodes.Status502BadGateway, "Not signed in", "The provider reports an error of its own. Try again. If it happens again, ask whoever looks after the accounts of your organisation.");

    /// <summary>What an exception of the way through the provider means.</summary>
    public static SignInFault Of(Exception? error)
    {
        for (var cause = error; cause is not null; cause = cause.InnerException)
        {
            if (Known(cause) is { } fault)
            {
                return fault;
            }
        }

        // The library says of a way that is not its own only that its state or its cookie is not there.
        return error is null or Microsoft.AspNetCore.Authentication.AuthenticationFailureException ? Stale : Provider;
    }

    private static SignInFault? Known(Exception cause) => cause switch
    {
        SecurityTokenExpiredException or SecurityTokenNotYetValidException or SecurityTokenNoExpirationException or SecurityTokenInvalidLifetimeException => Clock,
        OpenIdConnectProtocolInvalidNonceException => Untrusted,
        OpenIdConnectProtocolException said => OfCode(said.Data["error"] as string),
        SecurityTokenException or ArgumentException => Untrusted,
        HttpRequestException or IOException or TaskCanceledException or System.Net.Sockets.SocketException => Unreachable,
        InvalidOperationException { Message: var text } when text.StartsWith("IDX20803", StringComparison.Ordinal) => Unreachable,
        _ => null,
    };

    // OAuth 2.0 (RFC 6749), 4.1.2.1 and 5.2; OpenID Connect Core 1.0, 3.1.2.6.
    private static SignInFault OfCode(string? code) => code switch
    {
        "access_denied" or "login_required" or "interaction_required" or "consent_required" or "account_selection_required" => Denied,
        "invalid_grant" => Spent,
        "invalid_client" or "unauthorized_client" or "invalid_scope" or "invalid_request" or "unsupported_response_type" => Client,
        "temporarily_unavailable" => Unreachable,
        null => Untrusted,
        _ => Provider,
    };
}
