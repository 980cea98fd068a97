using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Laygate.Register;
using Laygate.Service.Checking;
using Laygate.ServiceTests.Shared;
using Microsoft.Extensions.DependencyInjection;

namespace Laygate.ServiceTests.Service;

/// <summary>What is stored stays readable in every form, whatever becomes of rules, departures and program.</summary>
public sealed class StoredFormTests(OneService one) : IClassFixture<OneService>, IDisposable
{
    private static readonly string[] Accepts = ["application/json", "application/sarif+json", "text/html", "text/markdown"];

    private readonly string folder = Directory.CreateTempSubdirectory("laygate-stored-").FullName;

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_report_comes_in_the_form_that_the_caller_takes()
    {
        var id = await ScreenedAsync(one.Ada, "quay-road-hot-on-hot.yaml");
        var json = await FormAsync(one.Ada, id, "application/json");
        Assert.Equal(json, await one.Ada.GetStringAsync($"/api/v1/submissions/{id}/report"));
        using var report = JsonDocument.Parse(json);
        var counts = report.RootElement.GetProperty("files")[0].GetProperty("reports")[0].GetProperty("counts");

        using var sarif = JsonDocument.Parse(await FormAsync(one.Ada, id, "application/sarif+json"));
        Assert.Equal("2.1.0", sarif.RootElement.GetProperty("version").GetString());
        Assert.Equal(
            counts.GetProperty("failed").GetInt32() + counts.GetProperty("warned").GetInt32(),
            sarif.RootElement.GetProperty("runs")[0].GetProperty("results").GetArrayLength());
        Assert.StartsWith("# Plan check\n", await FormAsync(one.Ada, id, "text/markdown"), StringComparison.Ordinal);
        var page = await FormAsync(one.Ada, id, "text/html");
        Assert.Contains("<svg", page, StringComparison.Ordinal);
        Assert.Contains("All inputs as read", page, StringComparison.Ordinal);
        Assert.DoesNotContain("role=\"note\"", page, StringComparison.Ordinal);

        using var request = Asking(HttpMethod.Get, $"/api/v1/submissions/{id}/report", "application/pdf");
        await CheckApiTests.RefusedAsync(await one.Ada.SendAsync(request), 406);
        foreach (var accept in Accepts)
        {
            using var foreign = Asking(HttpMethod.Get, $"/api/v1/submissions/{id}/report", accept);
            using var refused = await one.Bo.SendAsync(foreign);
            Assert.Equal(HttpStatusCode.NotFound, refused.StatusCode);
            using var seen = Asking(HttpMethod.Get, $"/api/v1/submissions/{id}/report", accept);
            using var reviewed = await one.Reviewer.SendAsync(seen);
            Assert.Equal(HttpStatusCode.OK, reviewed.StatusCode);
            Assert.Contains("Accept", reviewed.Headers.Vary, StringComparer.Ordinal);
        }
    }

    [Fact]
    public async Task The_site_sheet_of_a_submission_comes_as_text_or_cards()
    {
        var id = await ScreenedAsync(one.Ada, "quay-road-hot-on-hot.yaml");
        Assert.Contains("tamarel-quay-road-east", await FormAsync(one.Ada, id, "text/markdown", "sheet"), StringComparison.Ordinal);
        Assert.Contains("lang=\"de\"", await FormAsync(one.Ada, id, "text/html", "sheet?language=de"), StringComparison.Ordinal);
        using var foreign = await one.Bo.GetAsync($"/api/v1/submissions/{id}/sheet");
        await CheckApiTests.RefusedAsync(foreign, 404);
        using var language = await one.Ada.GetAsync($"/api/v1/submissions/{id}/sheet?language=xx");
        await CheckApiTests.RefusedAsync(language, 400);
    }

    [Fact]
    public async Task A_failing_plan_has_a_sheet_only_as_a_draft_and_an_unreadable_one_none()
    {
        var failing = await ScreenedAsync(one.Ada, "moor-road-thin-overlay.yaml");
        using var refused = await one.Ada.GetAsync($"/api/v1/submissions/{failing}/sheet");
        await CheckApiTests.RefusedAsync(refused, 409);
        Assert.Contains("DRAFT", await FormAsync(one.Ada, failing, "text/markdown", "sheet?draft=true"), StringComparison.Ordinal);
        var unreadable = await RunningService.SubmitAsync(one.Ada, "plan: [");
        await RunningService.ScreenedAsync(one.Ada, unreadable);
        using var none = await one.Ada.GetAsync($"/api/v1/submissions/{unreadable}/sheet");
        await CheckApiTests.RefusedAsync(none, 422);
        Assert.Contains("Could not be read", await FormAsync(one.Ada, unreadable, "text/html"), StringComparison.Ordinal);
        Assert.Contains("Cannot be read", await FormAsync(one.Ada, unreadable, "text/markdown"), StringComparison.Ordinal);
        using var sarif = JsonDocument.Parse(await FormAsync(one.Ada, unreadable, "application/sarif+json"));
        Assert.False(sarif.RootElement.GetProperty("runs")[0].GetProperty("invocations")[0].GetProperty("executionSuccessful").GetBoolean());
    }

    /// <summary>Report, plots and cards of the screening, byte for byte, whatever rules, departures and the time that a check may take have become.</summary>
    [FactOfFullRun]
    public async Task Whatever_has_changed_the_documents_of_the_screening_stay_as_they_were_printed()
    {
        string key;
        string id;
        string failing;
        Dictionary<string, string> before;
        await using (var service = await RunningService.StartAsync(folder))
        {
            key = service.Administrator;
            using var client = service.Client(key);
            id = await ScreenedAsync(client, "quay-road-hot-on-hot.yaml");
            failing = await ScreenedAsync(client, "moor-road-thin-overlay.yaml");
            before = await PrintedAsync(client, id, failing);
            Assert.Contains("<svg", before["report"], StringComparison.Ordinal);
            Assert.Contains("All inputs as read", before["report"], StringComparison.Ordinal);
            Assert.Contains("DRAFT", before["draft"], StringComparison.Ordinal);
        }

        await using var changed = await RunningService.StartAsync(folder, "Rules:0=us-wa", "CheckSeconds=0.1");
        using var later = changed.Client(key);
        Assert.Equal(before, await PrintedAsync(later, id, failing));
        Assert.Equal(before["report"], await PageAsync(later, $"/submissions/{id}/report", HttpStatusCode.OK));
        Assert.Equal(before["de"], await PageAsync(later, $"/submissions/{id}/sheet?language=de", HttpStatusCode.OK));

        // Another screening has documents of its own; those of the first stay.
        using var again = await later.PostAsJsonAsync($"/api/v1/submissions/{id}/screenings", new { reason = "other rules" });
        await RunningService.ScreenedAsync(later, id);
        Assert.Equal(before["report"], await FormAsync(later, id, "text/html", "report?screening=1"));
        Assert.NotEqual(before["report"], await FormAsync(later, id, "text/html"), StringComparer.Ordinal);
    }

    private static async Task<Dictionary<string, string>> PrintedAsync(HttpClient client, string id, string failing) => new(StringComparer.Ordinal)
    {
        ["report"] = await FormAsync(client, id, "text/html"),
        ["en"] = await FormAsync(client, id, "text/html", "sheet"),
        ["de"] = await FormAsync(client, id, "text/html", "sheet?language=de"),
        ["text"] = await FormAsync(client, id, "text/markdown", "sheet"),
        ["plain"] = await FormAsync(client, id, "text/plain", "sheet"),
        ["draft"] = await FormAsync(client, failing, "text/html", "sheet?draft=true"),
        ["failing"] = await FormAsync(client, failing, "text/html"),
    };

    // As an earlier version screened it, which kept the report alone.
    private async Task<(string Key, string Id, T Seen)> ScreenedEarlierAsync<T>(Func<HttpClient, string, Task<T>> look)
    {
        await using var service = await RunningService.StartAsync(folder, "Workers=0");
        using var client = service.Client(service.Administrator);
        var id = await RunningService.SubmitAsync(client, RunningService.Plan());
        var queue = service.Services.GetRequiredService<Screenings>();
        var claim = (await queue.ClaimAsync("earlier", default))!;
        var result = service.Services.GetRequiredService<Screening>().Run(claim, default);
        Assert.True(await queue.CompleteAsync(claim, result with { Documents = [], Pictures = null, Queue = null }, default));
        return (service.Administrator, id, await look(client, id));
    }

    [FactOfFullRun]
    public async Task After_the_rules_have_changed_every_form_still_says_what_was_stored()
    {
        var (key, id, before) = await ScreenedEarlierAsync(FormsAsync);
        Assert.Contains("<svg", before["text/html"], StringComparison.Ordinal);

        await using var changed = await RunningService.StartAsync(folder, "Rules:0=us-wa");
        using var later = changed.Client(key);
        var after = await FormsAsync(later, id);
        Assert.Equal(before["application/json"], after["application/json"]);
        Assert.Equal(before["application/sarif+json"], after["application/sarif+json"]);
        Assert.Equal(before["text/markdown"], after["text/markdown"]);
        NoPlots(after["text/html"], "the rules have changed since the screening");
        Assert.Contains("Findings by subject", after["text/html"], StringComparison.Ordinal);
        NoPlots(await PageAsync(later, $"/submissions/{id}/report", HttpStatusCode.OK), "the rules have changed since the screening");
        using var sheet = await later.GetAsync($"/api/v1/submissions/{id}/sheet");
        Assert.Contains("the rules have changed", await sheet.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        await CheckApiTests.RefusedAsync(sheet, 409);
        Assert.Contains("the rules have changed", await PageAsync(later, $"/submissions/{id}/sheet", HttpStatusCode.Conflict), StringComparison.Ordinal);

        // Screened again, the two reports are compared as two states of a plan are, and plots and sheet are there again.
        using var again = await later.PostAsJsonAsync($"/api/v1/submissions/{id}/screenings", new { reason = "other rules" });
        await RunningService.ScreenedAsync(later, id);
        using var answer = await later.GetAsync($"/api/v1/submissions/{id}/changes");
        var changes = await RunningService.JsonAsync(answer);
        Assert.True(changes.GetProperty("book_changed").GetBoolean());
        var kinds = changes.GetProperty("findings").EnumerateArray().Select(finding => finding.GetProperty("kind").GetString()).ToHashSet(StringComparer.Ordinal);
        Assert.Subset(new HashSet<string?>(["new", "gone", "changed"], StringComparer.Ordinal), kinds);
        Assert.NotEmpty(kinds);
        Assert.Contains("<svg", await FormAsync(later, id, "text/html"), StringComparison.Ordinal);
        NoPlots(await FormAsync(later, id, "text/html", "report?screening=1"), "the rules have changed since the screening");
    }

    [FactOfFullRun]
    public async Task After_departures_were_added_the_page_says_so_and_the_sheet_is_refused()
    {
        var (key, id, (before, rule, address)) = await ScreenedEarlierAsync(async (client, known) =>
        {
            using var report = JsonDocument.Parse(await FormAsync(client, known, "application/json"));
            var warned = report.RootElement.GetProperty("files")[0].GetProperty("reports")[0].GetProperty("findings").EnumerateArray()
                .First(finding => finding.GetProperty("status").GetString() == "warn" && finding.GetProperty("severity").ValueKind == JsonValueKind.Null);
            return (await FormAsync(client, known, "text/markdown"), warned.GetProperty("rule").GetString()!, warned.GetProperty("address").GetString()!);
        });

        var departures = Path.Combine(folder, "departures.yaml");
        await File.WriteAllTextAsync(departures, $"departures:\n  - {{id: dep-001, rule: {rule}, address: \"{address}\", reason: r, compensating_measure: c, asked_by: a, approved_by: b, approved_on: 2020-01-01, expires_on: 2099-01-01}}\n");
        await using var changed = await RunningService.StartAsync(folder, "Departures:0=" + departures);
        using var later = changed.Client(key);
        Assert.Equal(before, await FormAsync(later, id, "text/markdown"));
        NoPlots(await FormAsync(later, id, "text/html"), "judged otherwise than the report says");
        using var sheet = await later.GetAsync($"/api/v1/submissions/{id}/sheet");
        await CheckApiTests.RefusedAsync(sheet, 409);
    }

    [Fact]
    public async Task When_checking_again_takes_too_long_the_page_comes_without_plots_and_the_sheet_not_at_all()
    {
        var (key, id, _) = await ScreenedEarlierAsync((_, _) => Task.FromResult(0));
        await using var hurried = await RunningService.StartAsync(folder, "CheckSeconds=0.1");
        using var later = hurried.Client(key);

        // On a busy machine the clock may be noticed only when the check is done: then it is answered, and the next one may be called off.
        var page = string.Empty;
        await Patience.UntilAsync(async () => (page = await FormAsync(later, id, "text/html")).Contains("are left out", StringComparison.Ordinal), "a page whose plots take too long");
        NoPlots(page, "takes longer than a request may");
        HttpResponseMessage? sheet = null;
        await Patience.UntilAsync(async () => (sheet = await later.GetAsync($"/api/v1/submissions/{id}/sheet")).StatusCode == HttpStatusCode.ServiceUnavailable, "a sheet that takes too long");
        Assert.Contains("CheckSeconds", await sheet!.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        await CheckApiTests.RefusedAsync(sheet, 503);
    }

    [Fact]
    public async Task A_report_of_another_version_of_the_program_is_read_in_every_form()
    {
        await using var service = await RunningService.StartAsync(null, "Workers=0");
        using var client = service.Client(service.Administrator);
        var earlier = await File.ReadAllBytesAsync(Path.Combine(SourceTree.Root, "tests", "Laygate.UnitTests", "Reading", "Reports", "report-of-2026-11-25.json"));
        var id = await StoreAsync(service, client, earlier, "0.0.9");
        Assert.Equal(Encoding.UTF8.GetString(earlier), await FormAsync(client, id, "application/json"));
        Assert.Contains("dep-002", await FormAsync(client, id, "text/markdown"), StringComparison.Ordinal);
        Assert.Contains("LAY-001", await FormAsync(client, id, "application/sarif+json"), StringComparison.Ordinal);

        // Laying hour by hour stands in the report itself.
        var page = await FormAsync(client, id, "text/html");
        NoPlots(page, "the program has changed since the screening");
        Assert.Contains("<table class=\"hours\">", page, StringComparison.Ordinal);
        using var sheet = await client.GetAsync($"/api/v1/submissions/{id}/sheet");
        await CheckApiTests.RefusedAsync(sheet, 409);
    }

    [Fact]
    public async Task Bytes_that_are_no_report_are_answered_as_they_are_and_in_no_other_form()
    {
        await using var service = await RunningService.StartAsync(null, "Workers=0");
        using var client = service.Client(service.Administrator);
        var id = await StoreAsync(service, client, "{\"odd\": true}"u8.ToArray(), CheckDesk.Version);
        Assert.Equal("{\"odd\": true}", await FormAsync(client, id, "application/json"));
        foreach (var accept in Accepts[1..])
        {
            using var request = Asking(HttpMethod.Get, $"/api/v1/submissions/{id}/report", accept);
            await CheckApiTests.RefusedAsync(await client.SendAsync(request), 409);
        }
    }

    [Fact]
    public async Task The_page_of_a_submission_leads_to_every_form()
    {
        var key = await one.Running.KeyAsync("Ada", Role.Submitter);
        using var client = one.Running.Client(key);
        var id = await ScreenedAsync(client, "quay-road-hot-on-hot.yaml");
        var html = await PageAsync(client, $"/submissions/{id}", HttpStatusCode.OK);
        foreach (var (path, type) in new[] { ("report", "text/html"), ("report/json", "application/json"), ("report/sarif", "application/sarif+json"), ("report/markdown", "text/markdown"), ("sheet?language=en", "text/html"), ("sheet?language=de", "text/html") })
        {
            Assert.Contains($"href=\"/submissions/{id}/{path}\"", html, StringComparison.Ordinal);
            using var answer = await client.GetAsync($"/submissions/{id}/{path}");
            Assert.Equal((HttpStatusCode.OK, type), (answer.StatusCode, answer.Content.Headers.ContentType!.MediaType));
            using var foreign = await one.Bo.GetAsync($"/submissions/{id}/{path}");
            Assert.Equal(HttpStatusCode.NotFound, foreign.StatusCode);
        }

        using var odd = await client.GetAsync($"/submissions/{id}/report/pdf");
        Assert.Equal(HttpStatusCode.NotFound, odd.StatusCode);
    }

    private static void NoPlots(string page, string why)
    {
        Assert.DoesNotContain("class=\"plot\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("All inputs as read", page, StringComparison.Ordinal);
        Assert.Contains("are left out", page, StringComparison.Ordinal);
        Assert.Contains(why, page, StringComparison.Ordinal);
    }

    // What a worker of another version would have stored.
    private static async Task<string> StoreAsync(RunningService service, HttpClient client, byte[] report, string version)
    {
        var id = await RunningService.SubmitAsync(client, RunningService.Plan("moor-road-thin-overlay.yaml"));
        var queue = service.Services.GetRequiredService<Screenings>();
        var claim = (await queue.ClaimAsync("earlier", default))!;
        var book = service.Services.GetRequiredService<CheckDesk>().Book.Hash;
        Assert.True(await queue.CompleteAsync(claim, new ScreeningResult(report, true, book, version, new ReportCounts(0, 0, 0, 0, 0, 0), null), default));
        return id;
    }

    private static async Task<string> ScreenedAsync(HttpClient client, string example)
    {
        var id = await RunningService.SubmitAsync(client, RunningService.Plan(example));
        await RunningService.ScreenedAsync(client, id);
        return id;
    }

    private static async Task<Dictionary<string, string>> FormsAsync(HttpClient client, string id)
    {
        var forms = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var accept in Accepts)
        {
            forms[accept] = await FormAsync(client, id, accept);
        }

        return forms;
    }

    private static async Task<string> FormAsync(HttpClient client, string id, string accept, string what = "report")
    {
        using var request = Asking(HttpMethod.Get, $"/api/v1/submissions/{id}/{what}", accept);
        using var answer = await client.SendAsync(request);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.IsSuccessStatusCode, text);
        Assert.Equal(accept, answer.Content.Headers.ContentType!.MediaType);
        return text;
    }

    private static async Task<string> PageAsync(HttpClient client, string page, HttpStatusCode status)
    {
        using var request = Asking(HttpMethod.Get, page, "text/html");
        using var answer = await client.SendAsync(request);
        Assert.Equal(status, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync();
    }

    private static HttpRequestMessage Asking(HttpMethod method, string address, string accept)
    {
        var request = new HttpRequestMessage(method, address);
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue(accept));
        return request;
    }
}
