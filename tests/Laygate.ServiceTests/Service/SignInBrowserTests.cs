using Laygate.Register;
using Laygate.ServiceTests.Shared;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace Laygate.ServiceTests.Service;

/// <summary>Signing in at a provider in a real browser, for which provider and service are two sites (localhost and 127.0.0.1): cookies and policies are as they would be.</summary>
public sealed class SignInBrowserTests(ProviderService one) : IClassFixture<ProviderService>
{
    [SkippableFact]
    public async Task From_a_link_through_the_provider_to_the_submission_and_out_again_without_scripts()
    {
        using var sam = one.Running.Client(await one.Running.KeyAsync("Sam's office", Role.Submitter));
        var id = await RunningService.SubmitAsync(sam, RunningService.Plan("moor-road-thin-overlay.yaml"));
        await RunningService.ScreenedAsync(sam, id);
        var chromium = Needs.Chromium();
        Assertions.SetDefaultExpectTimeout(Patience.Milliseconds);
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = chromium, Args = ["--no-sandbox", "--disable-dev-shm-usage"], Timeout = Patience.Milliseconds });
        await using var context = await browser.NewContextAsync(new() { JavaScriptEnabled = false, BaseURL = one.Running.Address.ToString() });
        context.SetDefaultTimeout(Patience.Milliseconds);
        var page = await context.NewPageAsync();
        await page.GotoAsync($"/submissions/{id}?sort=shift");
        await page.GetByRole(AriaRole.Link, new() { Name = "Sign in with your organisation" }).ClickAsync();
        await AsAsync(page, "rita");
        await Assertions.Expect(page.GetByText("Rita of the office (reviewer)")).ToBeVisibleAsync();
        Assert.EndsWith($"/submissions/{id}?sort=shift", page.Url, StringComparison.Ordinal);

        // The text of the decision outlives a comment on a finding, and the end of the session.
        var decision = page.GetByLabel("Comment", new() { Exact = true });
        await decision.FillAsync("Say how long.");
        await page.GetByText("Write on this finding").First.ClickAsync();
        await page.Locator(".write textarea").First.FillAsync("Which one?");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write, waits for an answer" }).First.ClickAsync();
        await Assertions.Expect(page.Locator(".thread").First).ToContainTextAsync("Which one?");
        await Assertions.Expect(decision).ToHaveValueAsync("Say how long.");
        var cookie = (await context.CookiesAsync()).Single(one => string.Equals(one.Name, "laygate", StringComparison.Ordinal));
        Assert.True(cookie.HttpOnly);
        await EndAsync(cookie.Value);
        await decision.FillAsync("Say how long, in min.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Return", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Your session has ended");
        await page.GetByRole(AriaRole.Link, new() { Name = "Sign in with your organisation" }).ClickAsync();
        await Assertions.Expect(decision).ToHaveValueAsync("Say how long, in min.");
        Assert.EndsWith($"/submissions/{id}?state=open&sort=shift", page.Url, StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Button, new() { Name = "Return", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync("Recorded.");

        // Out here and at the provider; the copy of the cookie is dead.
        var copy = (await context.CookiesAsync()).Single(one => string.Equals(one.Name, "laygate", StringComparison.Ordinal)).Value;
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("You are signed out, here and at your organisation.");
        await context.AddCookiesAsync([new() { Name = "laygate", Value = copy, Url = one.Running.Address.ToString() }]);
        var dead = await page.GotoAsync($"/submissions/{id}");
        Assert.Equal(401, dead!.Status);
        await page.GetByRole(AriaRole.Link, new() { Name = "Sign in with your organisation" }).ClickAsync();
        await Assertions.Expect(page.GetByLabel("Name")).ToBeVisibleAsync();
    }

    [SkippableFact]
    public async Task The_pages_of_signing_in_pass_an_accessibility_checker_wide_and_narrow()
    {
        var chromium = Needs.Chromium();
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = chromium, Args = ["--no-sandbox", "--disable-dev-shm-usage"], Timeout = Patience.Milliseconds });
        foreach (var width in new[] { 1280, 320 }.Usual(2))
        {
            await using var context = await browser.NewContextAsync(new() { BypassCSP = true, BaseURL = one.Running.Address.ToString(), ViewportSize = new() { Width = width, Height = 800 } });
            context.SetDefaultTimeout(Patience.Milliseconds);
            var page = await context.NewPageAsync();
            await LookAsync(page, "/submissions", width);
            await LookAsync(page, "/sign-in?left=true", width);
            await LookAsync(page, "/sign-in/back?code=x&state=y", width);
            await page.GotoAsync("/sign-in/provider?to=/administration");
            await AsAsync(page, "adam");
            await LookAsync(page, "/administration", width);
            await page.GotoAsync("/screenings");
            await page.GotoAsync("/");
            await page.GetByLabel("Plan").FillAsync("format: 1 # half written");
            await EndAsync((await context.CookiesAsync()).Single(one => string.Equals(one.Name, "laygate", StringComparison.Ordinal)).Value);
            await page.GetByRole(AriaRole.Button, new() { Name = "Check", Exact = true }).ClickAsync();
            await LookAsync(page, null, width);
            await page.GetByRole(AriaRole.Link, new() { Name = "Sign in with your organisation" }).ClickAsync();
            await Assertions.Expect(page.GetByLabel("Plan")).ToHaveValueAsync("format: 1 # half written");
            await LookAsync(page, null, width);
        }
    }

    private static async Task AsAsync(IPage page, string who)
    {
        Assert.True(await page.GetByLabel("Name").CountAsync() == 1, $"not at the provider: {page.Url} {await page.ContentAsync()}");
        await page.GetByLabel("Name").FillAsync(who);
        await page.GetByRole(AriaRole.Button, new() { Name = "Go on" }).ClickAsync();
    }

    private async Task EndAsync(string secret)
    {
        var sessions = one.Running.Services.GetRequiredService<Sessions>();
        await sessions.EndAsync((await sessions.FindAsync(secret, default))!.Id, false, default);
    }

    private static async Task LookAsync(IPage page, string? address, int width)
    {
        if (address is not null)
        {
            await page.GotoAsync(address);
        }

        await page.EvaluateAsync(await File.ReadAllTextAsync(Needs.Tool("axe-core/axe.min.js")));
        var wrong = await page.EvaluateAsync<string[]>("async () => (await globalThis.axe.run({ resultTypes: ['violations'] })).violations.map(one => `${one.id}: ${one.help} (${one.nodes.slice(0, 2).map(node => node.html).join(', ')})`)");
        Assert.True(wrong.Length == 0, $"{page.Url}: {string.Join("; ", wrong)}");
        var overflow = await page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.True(overflow <= 0, $"{page.Url} is {overflow} px wider than a screen of {width} px");
        if (Environment.GetEnvironmentVariable("LAYGATE_PICTURES") is { Length: > 0 } folder)
        {
            var name = new Uri(page.Url).AbsolutePath.Replace('/', '_');
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"signin{name} {width} {Directory.GetFiles(folder).Length}.png"), FullPage = true });
        }
    }
}
