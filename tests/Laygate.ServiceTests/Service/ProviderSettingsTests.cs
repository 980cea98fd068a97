using System.Security.Claims;
using Laygate.Register;
using Laygate.Service.Access;
using Laygate.Service.Settings;

namespace Laygate.ServiceTests.Service;

/// <summary>Settings of an identity provider that cannot work are refused at start; what its claims mean.</summary>
public sealed class ProviderSettingsTests
{
    [Theory]
    [InlineData("Authority needs Laygate:Audience", "https://identity.example", "", "")]
    [InlineData("Authority must be the https address", "http://identity.example", "a", "")]
    [InlineData("Authority must be the https address", "identity.example", "a", "")]
    [InlineData("Authority must be the https address", "ftp://127.0.0.1", "", "c")]
    [InlineData("ClientId needs Laygate:Authority", "", "", "c")]
    [InlineData("", "https://identity.example", "a", "")]
    [InlineData("", "https://identity.example", "", "c")]
    [InlineData("", "http://127.0.0.1:5000", "a", "c")]
    [InlineData("", "", "", "")]
    public void An_address_an_audience_and_an_id_go_together(string why, string authority, string audience, string client) =>
        Refused(why, new ServiceSettings { Authority = authority, Audience = audience, ClientId = client });

    [Fact]
    public void What_contradicts_itself_is_refused()
    {
        Refused("ClientSecret needs Laygate:ClientId", new ServiceSettings { ClientSecret = "s" });
        Refused("one scope an entry", new ServiceSettings { Scopes = ["a b"] });
        Refused("must each name a claim", new ServiceSettings { NameClaim = " " });
        Refused("Named twice: staff", new ServiceSettings { ReviewerNames = ["staff"], SubmitterNames = ["office", "staff"] });
        Refused("no empty entry", new ServiceSettings { ReviewerNames = [""] });
        Refused("SessionIdleMinutes is longer", new ServiceSettings { SessionIdleMinutes = 90, SessionHours = 1 });
        Refused("SessionHours is 0; it must be between 1 and 168", new ServiceSettings { SessionHours = 0 });
    }

    [Theory]
    [InlineData(null, "")]
    [InlineData(null, "visitor")]
    [InlineData(null, "2")]
    [InlineData(Role.Reviewer, "Reviewer")]
    [InlineData(Role.Administrator, "submitter administrator reviewer")]
    public void Without_names_of_the_provider_the_words_count(Role? role, string claims) => Assert.Equal(role, Of(claims, new ServiceSettings())?.Role);

    [Theory]
    [InlineData(null, "administrator")]
    [InlineData(null, "STAFF")]
    [InlineData(Role.Reviewer, "visitor staff")]
    [InlineData(Role.Submitter, "visitor")]
    public void With_names_of_the_provider_these_alone_count(Role? role, string claims) => Assert.Equal(role, Of(claims, new ServiceSettings { ReviewerNames = ["staff"], SubmitterNames = ["visitor"] })?.Role);

    private static Caller? Of(string roles, ServiceSettings settings) =>
        ProviderCallers.Of(new ClaimsPrincipal(new ClaimsIdentity([new System.Security.Claims.Claim("sub", "p"), .. roles.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(role => new System.Security.Claims.Claim("role", role))])), settings);

    private static void Refused(string why, ServiceSettings settings)
    {
        var result = new SettingsCheck().Validate(null, settings);
        Assert.Equal(why.Length > 0, result.Failed);
        Assert.Contains(why, result.FailureMessage ?? string.Empty, StringComparison.Ordinal);
    }
}
