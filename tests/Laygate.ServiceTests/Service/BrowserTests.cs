using Laygate.Register;
using Laygate.ServiceTests.Shared;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace Laygate.ServiceTests.Service;

/// <summary>The pages in a real browser, from paste to decision, without scripts; and through an accessibility checker.</summary>
[Long]
public sealed class BrowserTests(OneService one) : IClassFixture<OneService>
{
    // 390 px a telephone, 1280 px a desk.
    private static readonly int[] Widths = [.. new[] { 1280, 390 }.Usual(2)];

    [SkippableFact]
    public async Task From_paste_to_decision_without_scripts()
    {
        Needs.Chromium();
        await using var session = await SessionAsync();
        await using var context = await session.ContextAsync(new() { JavaScriptEnabled = false, BaseURL = one.Running.Address.ToString() });
        var page = await context.NewPageAsync();
        await SignInAsync(page, await one.Running.KeyAsync("Ada", Role.Submitter));
        await page.GetByLabel("Plan").FillAsync(RunningService.Plan());
        await page.GetByRole(AriaRole.Button, new() { Name = "Check", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Vibration on a stiff skin over a hot core" })).ToBeVisibleAsync();
        var line = 1 + Array.FindIndex(RunningService.Plan().Split('\n'), text => text.Contains("id: r4", StringComparison.Ordinal));
        await page.GetByRole(AriaRole.Link, new() { Name = $"line {line}", Exact = true }).First.ClickAsync();
        await Assertions.Expect(page.Locator($"#L{line}")).ToBeInViewportAsync();
        await Assertions.Expect(page.Locator($"#L{line}.warn .word")).ToBeVisibleAsync();
        Assert.True(await page.Locator("svg.plot").CountAsync() >= 4, "plots");
        await page.Locator(".finding", new() { HasText = "Vibration on a stiff skin" }).Locator("summary").ClickAsync();
        await page.Locator(".finding a[href^='#p1-plot']").First.ClickAsync();
        await Assertions.Expect(page.Locator("figure:target")).ToBeInViewportAsync();

        await page.GotoAsync("/");
        await page.GetByLabel("Plan").FillAsync(RunningService.Plan());
        await page.GetByText("Only the site sheet").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Site sheet" }).ClickAsync();
        await Assertions.Expect(page.Locator("article.card h2").First).ToContainTextAsync("Shift manager");

        await page.GotoAsync("/");
        await page.GetByLabel("Plan").FillAsync(RunningService.Plan());
        await page.GetByRole(AriaRole.Button, new() { Name = "Report for print" }).ClickAsync();
        await Assertions.Expect(page.Locator("svg.plot").First).ToBeVisibleAsync();

        await page.GotoAsync("/");
        await page.GetByLabel("Plan").FillAsync(RunningService.Plan());
        await page.GetByRole(AriaRole.Button, new() { Name = "Check", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Submit for review" }).ClickAsync();
        var address = page.Url;
        await ScreenedAsync(page);
        await page.GetByRole(AriaRole.Link, new() { Name = "for print", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("svg.plot").First).ToBeVisibleAsync();
        await page.GoBackAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "cards in English" }).ClickAsync();
        await Assertions.Expect(page.Locator("article.card h2").First).ToContainTextAsync("Shift manager");
        await page.GoBackAsync();
        await page.GetByLabel("File, or several").SetInputFilesAsync(new FilePayload { Name = "rev.yaml", MimeType = "application/yaml", Buffer = System.Text.Encoding.UTF8.GetBytes(RunningService.Plan() + "# mended\n") });
        await page.GetByRole(AriaRole.Button, new() { Name = "Submit the revision" }).ClickAsync();
        await ScreenedAsync(page);
        var revised = page.Url;
        Assert.NotEqual(address, revised, StringComparer.Ordinal);
        await page.GetByRole(AriaRole.Link, new() { Name = "Set beside revision 1" }).ClickAsync();
        await Assertions.Expect(page.Locator("tr.differs")).ToHaveCountAsync(1);
        await page.GetByRole(AriaRole.Link, new() { Name = "To the first" }).ClickAsync();
        await Assertions.Expect(page.Locator(".change:target tr.differs")).ToBeInViewportAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await SignInAsync(page, await one.Running.KeyAsync("Rita", Role.Reviewer));
        await page.GotoAsync("/submissions");
        await page.GetByLabel("Search").FillAsync("quay road");
        await page.GetByRole(AriaRole.Button, new() { Name = "Filter" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Quay Road East" }).First.ClickAsync();
        var opened = page.Url.Split('?')[0];
        await page.GetByRole(AriaRole.Button, new() { Name = "Accept with departures" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Say why");
        await page.GetByLabel("Comment", new() { Exact = true }).FillAsync("Grit within 12 min.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Accept with departures" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync("Recorded.");
        await page.GotoAsync(opened);
        await Assertions.Expect(page.Locator(".decided")).ToContainTextAsync("Accepted with departures by Rita");
        await Assertions.Expect(page.Locator(".decided")).ToContainTextAsync("Grit within 12 min.");
    }

    [SkippableFact]
    public async Task The_pages_pass_an_accessibility_checker_wide_and_narrow()
    {
        Needs.Chromium();
        using var api = one.Running.Client(await one.Running.KeyAsync("Axel", Role.Administrator));
        var id = await RunningService.SubmitAsync(api, RunningService.Plan("moor-road-thin-overlay.yaml"));
        await RunningService.ScreenedAsync(api, id);
        var revision = await RunningService.SubmitAsync(api, RunningService.Plan("moor-road-thin-overlay.yaml") + "# x\n", $"?revision_of={id}");
        await RunningService.ScreenedAsync(api, revision);
        using var form = new MultipartFormDataContent { { new StringContent(RunningService.Plan("concept-fifteen-lines.yaml") + "uses: [parts.yaml]\nrolling: { rollers: [r7] }\n"), "plan", "plan.yaml" }, { new StringContent("parts: 1\nrollers: [{ id: r7, kind: tandem, mode: vibration, speed: 20 km/h }]\n"), "file", "parts.yaml" } };
        using var sent = await api.PostAsync("/api/v1/submissions", form);
        var set = (await RunningService.JsonAsync(sent)).GetProperty("id").GetString()!;
        await RunningService.ScreenedAsync(api, set);
        using var written = await api.PostAsync($"/api/v1/submissions/{revision}/comments", new StringContent("{\"rule\":\"SAF-083\",\"address\":\"site\",\"text\":\"Which step?\"}", System.Text.Encoding.UTF8, "application/json"));
        Assert.True(written.IsSuccessStatusCode);
        await GiveUpANoticeAsync(api, revision);
        var unreadable = await RunningService.SubmitAsync(api, "plan: [");
        await RunningService.ScreenedAsync(api, unreadable);
        var reviewer = await one.Running.KeyAsync("Rea", Role.Reviewer);
        await using var session = await SessionAsync();
        foreach (var width in Widths)
        {
            // The checker runs as a script, which the policy of the pages forbids.
            await using var context = await session.ContextAsync(new() { BypassCSP = true, BaseURL = one.Running.Address.ToString(), ViewportSize = new() { Width = width, Height = 800 } });
            var page = await context.NewPageAsync();
            await CheckAsync(page, "/sign-in");
            await SignInAsync(page, api.DefaultRequestHeaders.Authorization!.Parameter!);
            foreach (var button in new[] { "Check", "Report for print", "Site sheet" })
            {
                await page.GotoAsync("/");

                // The documents for print are checked at full length where they are made; here only what the service does with them.
                await page.GetByLabel("Plan").FillAsync(string.Equals(button, "Check", StringComparison.Ordinal) ? RunningService.Plan() : RunningService.Plan("concept-fifteen-lines.yaml"));
                await page.EvaluateAsync("document.querySelectorAll('details').forEach(part => part.open = true)");
                await page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).ClickAsync();
                await page.WaitForURLAsync("**/check");
                await LookAsync(page, $"{button} {width}");
                await PictureAsync(page, $"{button} {width}");
                await FitsAsync(page, button, width);
            }

            foreach (var address in new[] { "/administration", "/administration/notices", "/administration/retention", "/notices" })
            {
                await CheckAsync(page, address);
                await PictureAsync(page, $"{address.Replace('/', '_')} {width}");
                await FitsAsync(page, address, width);
            }

            await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
            await SignInAsync(page, reviewer);
            await page.GotoAsync($"/submissions/{revision}?sort=shift");
            await page.GetByRole(AriaRole.Button, new() { Name = "Return", Exact = true }).ClickAsync();
            await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToBeVisibleAsync();
            await LookAsync(page, $"refused {width}");
            await FitsAsync(page, "refused", width);
            foreach (var address in new[] { "/", "/statistics", "/screenings", "/rules", "/rules/LAY-001", "/submissions", $"/submissions/{id}", $"/submissions/{revision}/beside/{id}", $"/submissions/{set}", $"/submissions/{revision}?sort=shift", $"/submissions/{unreadable}", "/submissions?state=any&earlier=true&sort=worst", "/nothing" })
            {
                await CheckAsync(page, address);
                await PictureAsync(page, $"{address.Replace('/', '_')} {width}");
                await FitsAsync(page, address, width);
            }
        }
    }

    /// <summary>The example that fails for the most reasons, before anything is unfolded. The bounds are our judgement of what a reviewer with forty submissions still reads.</summary>
    [SkippableTheory]
    [InlineData(1280, 8)]
    [InlineData(390, 14)]
    public async Task The_page_of_a_submission_is_short_and_keeps_finding_and_line_in_view_together(int width, int screens)
    {
        Needs.Chromium();
        const int height = 800;
        using var api = one.Running.Client(await one.Running.KeyAsync("Moor", Role.Submitter));
        var id = await RunningService.SubmitAsync(api, RunningService.Plan("moor-road-thin-overlay.yaml"));
        await RunningService.ScreenedAsync(api, id);
        await using var session = await SessionAsync();
        await using var context = await session.ContextAsync(new() { JavaScriptEnabled = false, BaseURL = one.Running.Address.ToString(), ViewportSize = new() { Width = width, Height = height } });
        var page = await context.NewPageAsync();
        await SignInAsync(page, await one.Running.KeyAsync("Rita", Role.Reviewer));
        await page.GotoAsync($"/submissions/{id}");
        var body = (await page.Locator("html").BoundingBoxAsync())!;
        Assert.InRange(body.Height, 1, screens * height);
        Assert.True(await page.Locator("svg.plot").CountAsync() >= 4, "plots are shown on the page");

        // Folded findings open when the mark at their line is followed.
        await page.Locator(".lines .warn a.word").First.ClickAsync();
        await Assertions.Expect(page.Locator(".finding:target")).ToBeInViewportAsync();
        await page.GotoAsync($"/submissions/{id}");
        var shown = page.Locator("section > .findings > .finding");
        for (var at = 0; at < await shown.CountAsync(); at++)
        {
            var finding = shown.Nth(at);
            var link = finding.GetByRole(AriaRole.Link, new() { NameRegex = new("^line [0-9]+$", System.Text.RegularExpressions.RegexOptions.None, Patience.Longest) });
            if (await link.CountAsync() == 0)
            {
                continue;
            }

            if (width < 960)
            {
                // No room beside it: the line itself stands in the finding.
                await Assertions.Expect(finding.Locator(".excerpt code")).ToBeVisibleAsync();
                continue;
            }

            await link.ClickAsync();
            await Assertions.Expect(page.Locator(".lines li:target")).ToBeInViewportAsync(new() { Ratio = 1 });
            await Assertions.Expect(finding.Locator("h4")).ToBeInViewportAsync(new() { Ratio = 1 });
        }
    }

    [SkippableFact]
    public async Task Keyboard_alone_reaches_content_and_decision()
    {
        Needs.Chromium();
        await using var session = await SessionAsync();
        await using var context = await session.ContextAsync(new() { BaseURL = one.Running.Address.ToString() });
        var page = await context.NewPageAsync();
        await page.GotoAsync("/sign-in");
        await page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(page.GetByText("To the content")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        await page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(page.GetByLabel("Key")).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync(await one.Running.KeyAsync("Kay", Role.Submitter));
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.GetByText("Kay (submitter)")).ToBeVisibleAsync();
    }

    [SkippableFact]
    public async Task Keyboard_alone_decides_and_whatever_is_focused_is_seen()
    {
        Needs.Chromium();
        using var api = one.Running.Client(await one.Running.KeyAsync("Kit", Role.Submitter));
        var id = await RunningService.SubmitAsync(api, RunningService.Plan("concept-fifteen-lines.yaml"));
        await RunningService.ScreenedAsync(api, id);
        await using var session = await SessionAsync();
        await using var context = await session.ContextAsync(new() { JavaScriptEnabled = false, BaseURL = one.Running.Address.ToString(), ViewportSize = new() { Width = 1280, Height = 800 } });
        var page = await context.NewPageAsync();
        await SignInAsync(page, await one.Running.KeyAsync("Rita", Role.Reviewer));
        await page.GotoAsync($"/submissions/{id}");
        var decide = page.GetByRole(AriaRole.Link, new() { Name = "Decide", Exact = true });
        await TabAsync(page, decide);
        await page.Keyboard.PressAsync("Enter");
        await TabAsync(page, page.GetByLabel("Comment", new() { Exact = true }));
        await page.Keyboard.TypeAsync("Say more.");
        await TabAsync(page, page.GetByRole(AriaRole.Button, new() { Name = "Return", Exact = true }));
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".decided")).ToContainTextAsync("Say more.");
    }

    // Notices of each kind on the pages: asked for, and given up.
    private async Task GiveUpANoticeAsync(HttpClient api, string submission)
    {
        var (chief, subscriptions) = (new Caller("chief", "Chief", Role.Administrator), one.Running.Services.GetRequiredService<Subscriptions>());
        await subscriptions.AddAsync(new NewSubscription(Channel.Webhook, "https://127.0.0.1/a/long/way/that/a/narrow/screen/has/to/break/somewhere", [NoticeEvent.CommentOpen], null, "whsec_c2VjcmV0"), chief, default);
        using var asked = await api.PostAsync("/api/v1/notices", new StringContent("{\"address\":\"office@example.org\",\"events\":[\"returned\",\"screened_again\"],\"contract\":\"nowhere\"}", System.Text.Encoding.UTF8, "application/json"));
        Assert.True(asked.IsSuccessStatusCode, await asked.Content.ReadAsStringAsync());
        using var written = await api.PostAsync($"/api/v1/submissions/{submission}/comments", new StringContent("{\"rule\":\"SAF-083\",\"address\":\"site\",\"text\":\"And this one?\"}", System.Text.Encoding.UTF8, "application/json"));
        Assert.True(written.IsSuccessStatusCode);
        await using var context = one.Running.Services.GetRequiredService<RegisterDatabase>().Open();
        Assert.Equal(1, await context.Database.ExecuteSqlRawAsync("UPDATE notices SET state = 'Failed', reason = 'HTTP 500.', done_at = at"));
    }

    // Goes on by the tabulator until something is focused; all that is passed must be seen, not lie under what stays in view (WCAG 2.2, 2.4.11).
    private static async Task TabAsync(IPage page, ILocator until)
    {
        for (var press = 0; press < 60; press++)
        {
            await page.Keyboard.PressAsync("Tab");
            await Assertions.Expect(page.Locator(":focus")).ToBeInViewportAsync();
            if (await until.EvaluateAsync<bool>("element => element === document.activeElement"))
            {
                return;
            }
        }

        Assert.Fail("not reached by the keyboard");
    }

    private static async Task CheckAsync(IPage page, string address)
    {
        await page.GotoAsync(address);
        await LookAsync(page, address);
    }

    private static async Task FitsAsync(IPage page, string address, int width)
    {
        // WCAG 2.2, success criterion 1.4.10: no narrower than 320 px must a page fit.
        foreach (var narrow in width > 390 ? [width] : new[] { 320, width })
        {
            await page.SetViewportSizeAsync(narrow, 800);
            var overflow = await page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");
            Assert.True(overflow <= 0, $"{address} is {overflow} px wider than a screen of {narrow} px");
        }
    }

    // For eyes: LAYGATE_PICTURES names a folder.
    private static async Task PictureAsync(IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("LAYGATE_PICTURES") is { Length: > 0 } folder)
        {
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png"), FullPage = true });
        }
    }

    // The public checker itself, asked for what is wrong alone: to describe each sound element takes most of its time. Colours do not change with the width, and
    // take half of the rest.
    private static async Task LookAsync(IPage page, string address)
    {
        await page.EvaluateAsync(await File.ReadAllTextAsync(Needs.Tool("axe-core/axe.min.js")));
        var isWide = page.ViewportSize!.Width == Widths[0];
        var wrong = await page.EvaluateAsync<string[]>("async isWide => (await globalThis.axe.run({ resultTypes: ['violations'], rules: { 'color-contrast': { enabled: isWide } } })).violations.map(one => `${one.id}: ${one.help} (${one.nodes.slice(0, 2).map(node => node.html).join(', ')})`)", isWide);
        Assert.True(wrong.Length == 0, $"{address}: {string.Join("; ", wrong)}");
    }

    private static async Task SignInAsync(IPage page, string key)
    {
        await page.GotoAsync("/sign-in");
        await page.GetByLabel("Key").FillAsync(key);
        await page.GetByRole(AriaRole.Main).GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
    }

    private static async Task ScreenedAsync(IPage page)
    {
        await Patience.UntilAsync(
            async () =>
            {
                try
                {
                    await page.ReloadAsync();
                    return await page.GetByText("It waits to be screened").CountAsync() == 0;
                }
                catch (PlaywrightException problem) when (problem.Message.Contains("Not attached to an active page", StringComparison.Ordinal))
                {
                    return false; // The page was just loading itself anew.
                }
            },
            "the screening");
        await Assertions.Expect(page.Locator(".facts").GetByText("screened", new() { Exact = true })).ToBeVisibleAsync();
    }

    private static async Task<Session> SessionAsync()
    {
        var chromium = Needs.Chromium();
        Assertions.SetDefaultExpectTimeout(Patience.Milliseconds);
        var playwright = await Playwright.CreateAsync();
        return new Session(playwright, await playwright.Chromium.LaunchAsync(new() { ExecutablePath = chromium, Args = ["--no-sandbox", "--disable-dev-shm-usage"], Timeout = Patience.Milliseconds }));
    }

    private sealed record Session(IPlaywright Playwright, IBrowser Browser) : IAsyncDisposable
    {
        public async Task<IBrowserContext> ContextAsync(BrowserNewContextOptions options)
        {
            var context = await Browser.NewContextAsync(options);
            context.SetDefaultTimeout(Patience.Milliseconds);
            context.SetDefaultNavigationTimeout(Patience.Milliseconds);
            return context;
        }

        public async ValueTask DisposeAsync()
        {
            await Browser.DisposeAsync();
            Playwright.Dispose();
        }
    }
}
