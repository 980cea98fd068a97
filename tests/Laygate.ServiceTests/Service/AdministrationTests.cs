using System.Net;
using System.Text.RegularExpressions;
using Laygate.Register;
using Laygate.ServiceTests.Shared;
using Microsoft.Extensions.DependencyInjection;

namespace Laygate.ServiceTests.Service;

/// <summary>Those who look after the register: keys, what other rules would change, counts, and an export that shows what was taken out.</summary>
public sealed class AdministrationTests : IDisposable
{
    private readonly AuditExport exports = new();

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        exports.Dispose();
    }

    [FactOfFullRun]
    public async Task An_export_is_verified_by_its_own_script_and_shows_what_was_changed_or_taken_out()
    {
        await using var running = await RunningService.StartAsync();
        using var ada = running.Client(await running.KeyAsync("Ada", Role.Submitter));
        using var chief = running.Client(running.Administrator);
        var id = await RunningService.SubmitAsync(ada, RunningService.Plan("concept-fifteen-lines.yaml"), "?file_name=ä%22b.yaml");
        await RunningService.ScreenedAsync(ada, id);

        // Text of a person that looks like a part of a line is none.
        var fake = $"\"digest\":\"{new string('a', 64)}\",\"before\":\"{new string('b', 64)}\" 'x' \\";
        using var returned = await RunningService.DecideAsync(chief, id, "returned", fake);
        Assert.Equal(HttpStatusCode.OK, returned.StatusCode);
        using (var handed = await ada.PostAsync($"/api/v1/submissions/{id}/records", RecordApiTests.Form(RecordApiTests.Small)))
        {
            Assert.True(handed.IsSuccessStatusCode, await handed.Content.ReadAsStringAsync());
        }

        var first = await exports.FetchAsync(chief, "first");
        Assert.Equal((0, ""), Verify(first));
        Assert.Contains("\"event\":\"returned\"", await File.ReadAllTextAsync(Path.Combine(first, "history.jsonl")), StringComparison.Ordinal);
        Assert.Contains(await ada.GetStringAsync($"/api/v1/submissions/{id}/text"), Directory.GetFiles(Path.Combine(first, "content"), "*.yaml").Select(File.ReadAllText), StringComparer.Ordinal);
        Assert.NotEmpty(Directory.GetFiles(Path.Combine(first, "content"), "*.html"));
        Assert.Equal(RecordApiTests.Small[1].Text, await File.ReadAllTextAsync(Directory.GetFiles(Path.Combine(first, "content"), "*.csv").Single()));

        using var accepted = await RunningService.DecideAsync(chief, id, "accepted_with_departures", "Seen.");
        Assert.Equal(HttpStatusCode.OK, accepted.StatusCode);
        var second = await exports.FetchAsync(chief, "second");
        var heads = Path.Combine(first, "heads.txt");
        Assert.Equal((0, ""), Verify(second, heads));
        Assert.Equal((0, ""), Verify(second, Path.Combine("first", "heads.txt"))); // From where it is called, not from where the script lies.
        Assert.Equal(2, Verify(second, Path.Combine("second", "none.txt")).Code);
        Assert.Equal(2, Verify(second, Path.Combine("second", "README.txt")).Code);
        Assert.StartsWith(await File.ReadAllTextAsync(Path.Combine(first, "history.jsonl")), await File.ReadAllTextAsync(Path.Combine(second, "history.jsonl")), StringComparison.Ordinal);

        var history = Path.Combine(second, "history.jsonl");
        var lines = await File.ReadAllLinesAsync(history);
        await File.WriteAllTextAsync(history, string.Concat(lines.Where((_, index) => index != 1).Select(line => line + "\n")));
        Assert.Contains("line 2: does not follow the line before it", Verify(second).Said, StringComparison.Ordinal);
        await File.WriteAllTextAsync(history, string.Concat(lines.Select(line => line.Replace("accepted_with_departures", "accepted", StringComparison.Ordinal) + "\n")));
        Assert.Contains("does not end as heads.txt says", Verify(second).Said, StringComparison.Ordinal);
        await File.WriteAllTextAsync(history, string.Concat(lines.Select(line => line + "\n")));
        var report = Directory.GetFiles(Path.Combine(second, "content"), "*.json").Single(file => File.ReadAllText(file).Contains("\"report_version\"", StringComparison.Ordinal));
        var kept = await File.ReadAllBytesAsync(report);
        await File.AppendAllTextAsync(report, " ");
        Assert.Contains("is not what was kept", Verify(second).Said, StringComparison.Ordinal);
        File.Delete(report);
        Assert.Contains("is missing", Verify(second).Said, StringComparison.Ordinal);
        await File.WriteAllBytesAsync(report, kept);
        Assert.Equal(0, Verify(second, heads).Code);

        // The end was taken out and the rest made to fit: only heads that were kept elsewhere show it.
        Assert.Equal(0, Verify(first).Code);
        Assert.Contains("the earlier export had", Verify(first, Path.Combine(second, "heads.txt")).Said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_export_after_names_were_replaced_goes_on_where_an_earlier_one_ended_and_holds_no_name()
    {
        var clock = new TestClock();
        await using var running = await RunningService.StartAsync(null, services => services.AddSingleton<TimeProvider>(clock));
        using var otto = running.Client(await running.KeyAsync("Otto Ünal", Role.Submitter));
        using var chief = running.Client(running.Administrator);
        var id = await RunningService.SubmitAsync(otto, RunningService.Plan("concept-fifteen-lines.yaml"));
        await RunningService.ScreenedAsync(otto, id);
        using var returned = await RunningService.DecideAsync(chief, id, "returned", "Otto said \"later\".\nHe did.");
        Assert.Equal(HttpStatusCode.OK, returned.StatusCode);
        var first = await exports.FetchAsync(chief, "first");
        Assert.Equal((0, ""), Verify(first));
        var names = (await File.ReadAllLinesAsync(Path.Combine(first, "parts.txt"))).Where(line => line.Contains("Otto", StringComparison.Ordinal)).ToList();
        Assert.Equal(3, names.Count); // Who submitted it, why it was returned, and the name of the key.

        clock.Move(TimeSpan.FromDays(6 * 365.25));
        var rule = new RetentionRule(5, Texts: true);
        var retention = running.Services.GetRequiredService<Retention>();
        Assert.Equal((1, 0), await retention.ReplaceAsync(rule, default));
        using (var page = await chief.GetAsync($"/api/v1/submissions/{id}/history"))
        {
            Assert.DoesNotContain("Otto", await page.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        foreach (var key in (await running.Services.GetRequiredService<AccessKeys>().ListAsync(default)).Where(key => key.Role == Role.Submitter))
        {
            await running.Services.GetRequiredService<AccessKeys>().RevokeAsync(key.Id, Caller.Machine, default);
        }

        clock.Move(TimeSpan.FromDays(6 * 365.25));
        Assert.Equal((0, 1), await retention.ReplaceAsync(rule, default));
        var second = await exports.FetchAsync(chief, "second");
        Assert.Equal((0, ""), Verify(second, Path.Combine(first, "heads.txt")));
        foreach (var file in new[] { "history.jsonl", "comments.jsonl", "keys.jsonl", "parts.txt" })
        {
            Assert.DoesNotContain("Otto", await File.ReadAllTextAsync(Path.Combine(second, file)), StringComparison.Ordinal);
        }

        // Digests stay in the books, salts are gone, and all else still has its text.
        var (books, parts) = (await File.ReadAllTextAsync(Path.Combine(second, "history.jsonl")) + await File.ReadAllTextAsync(Path.Combine(second, "keys.jsonl")), await File.ReadAllTextAsync(Path.Combine(second, "parts.txt")));
        Assert.All(names, line => Assert.Contains(line.Split(' ')[0], books, StringComparison.Ordinal));
        Assert.All(names, line => Assert.DoesNotContain(line.Split(' ')[0], parts, StringComparison.Ordinal));
        Assert.All(names, line => Assert.DoesNotContain(line.Split(' ')[1], parts, StringComparison.Ordinal));
        Assert.Contains("\"Laygate\"", parts, StringComparison.Ordinal);

        // A name that was taken out by somebody else, or written otherwise, shows.
        var whole = await File.ReadAllLinesAsync(Path.Combine(first, "parts.txt"));
        await File.WriteAllTextAsync(Path.Combine(first, "parts.txt"), string.Concat(whole.Except(names, StringComparer.Ordinal).Select(line => line + "\n")));
        Assert.Contains("the history says that 0 were replaced", Verify(first).Said, StringComparison.Ordinal);
        await File.WriteAllTextAsync(Path.Combine(first, "parts.txt"), string.Concat(whole.Select(line => line.Replace("Otto", "Emil", StringComparison.Ordinal) + "\n")));
        Assert.Contains("is not what was written", Verify(first).Said, StringComparison.Ordinal);
        await File.WriteAllTextAsync(Path.Combine(second, "history.jsonl"), string.Concat((await File.ReadAllLinesAsync(Path.Combine(second, "history.jsonl"))).Where(line => !line.Contains("names_replaced", StringComparison.Ordinal)).Select(line => line + "\n")));
        Assert.NotEqual(0, Verify(second).Code);
    }

    [FactOfFullRun]
    public async Task What_other_rules_would_change_is_shown_before_anything_is_screened_again()
    {
        string key, reviewer, id;
        await using (var before = await RunningService.StartAsync(exports.Folder))
        {
            (key, reviewer) = (await before.KeyAsync("Ada", Role.Submitter), await before.KeyAsync("Rita", Role.Reviewer));
            using var ada = before.Client(key);
            id = await RunningService.SubmitAsync(ada, RunningService.Plan("moor-road-thin-overlay.yaml"));
            await RunningService.ScreenedAsync(ada, id);
            using var rita = before.Client(reviewer);
            Assert.Equal(0, (await RunningService.JsonAsync(await rita.GetAsync("/api/v1/screenings/preview"))).GetProperty("count").GetInt32());
            Assert.Contains("Every open submission was screened under the rules", await RunningService.PageAsync(rita, "/screenings"), StringComparison.Ordinal);
        }

        await using var running = await RunningService.StartAsync(exports.Folder, "Rules:0=us-wa");
        using var client = running.Client(reviewer);
        var preview = await RunningService.JsonAsync(await client.GetAsync("/api/v1/screenings/preview"));
        Assert.Equal(1, preview.GetProperty("count").GetInt32());
        var item = preview.GetProperty("items")[0];
        Assert.Equal(id, item.GetProperty("id").GetString());
        Assert.DoesNotContain("0 worse, 0 better, 0 new, 0 gone.", item.GetProperty("changes").GetString(), StringComparison.Ordinal);
        Assert.Equal(0, (await RunningService.JsonAsync(await client.GetAsync("/api/v1/screenings/preview?skip=1"))).GetProperty("items").GetArrayLength());
        var page = await RunningService.PageAsync(client, "/screenings");
        Assert.Contains("One open submission was", page, StringComparison.Ordinal);
        using var silent = await RunningService.PostFormAsync(client, "/screenings", ("comment", " "));
        Assert.Equal(HttpStatusCode.BadRequest, silent.StatusCode);
        using var asked = await RunningService.PostFormAsync(client, "/screenings", ("comment", "New edition."));
        Assert.Contains("One submission waits", await asked.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        await RunningService.ScreenedAsync(client, id);

        // What was foretold is what came.
        var report = (await RunningService.JsonAsync(await client.GetAsync($"/api/v1/submissions/{id}"))).GetProperty("report");
        Assert.Equal(item.GetProperty("failed_now").GetInt32(), report.GetProperty("counts").GetProperty("failed").GetInt32());
    }

    [Fact]
    public async Task Counts_name_the_rules_that_plans_miss_and_who_had_plans_returned()
    {
        await using var running = await RunningService.StartAsync();
        using var ada = running.Client(await running.KeyAsync("Ada", Role.Submitter));
        using var rita = running.Client(await running.KeyAsync("Rita", Role.Reviewer));
        var id = await RunningService.SubmitAsync(ada, RunningService.Plan("moor-road-thin-overlay.yaml"));
        await RunningService.ScreenedAsync(ada, id);
        using var decided = await RunningService.DecideAsync(rita, id, "returned", "Mend it.");
        var counts = await RunningService.JsonAsync(await rita.GetAsync("/api/v1/statistics"));
        Assert.Equal((1, 0, 1), (counts.GetProperty("received").GetInt32(), counts.GetProperty("waiting").GetInt32(), counts.GetProperty("days").GetProperty("decided").GetInt32()));
        Assert.Equal(1, counts.GetProperty("submitters")[0].GetProperty("returned").GetInt32());
        var report = await RunningService.JsonAsync(await rita.GetAsync($"/api/v1/submissions/{id}/report"));
        var failing = report.GetProperty("files")[0].GetProperty("reports")[0].GetProperty("findings").EnumerateArray()
            .Where(finding => finding.GetProperty("status").GetString() == "fail").Select(finding => finding.GetProperty("rule").GetString()).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(failing!, counts.GetProperty("rules").EnumerateArray().Where(rule => rule.GetProperty("failed").GetInt32() == 1).Select(rule => rule.GetProperty("rule").GetString()).Order(StringComparer.Ordinal), StringComparer.Ordinal);
        var page = await RunningService.PageAsync(rita, "/statistics");
        Assert.Contains("<svg", page, StringComparison.Ordinal);
        Assert.Contains($"/rules/{failing[0]}", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<svg", await RunningService.PageAsync(rita, "/statistics?from=2001-01-01&until=2001-12-31"), StringComparison.Ordinal);
        using var turned = await rita.GetAsync("/api/v1/statistics?from=2027-01-02&until=2027-01-01");
        await CheckApiTests.RefusedAsync(turned, 400);
        using var last = await rita.GetAsync("/api/v1/statistics?until=9999-12-31");
        Assert.Equal(HttpStatusCode.OK, last.StatusCode);
        using var odd = await rita.GetAsync("/api/v1/statistics?from=soon");
        await CheckApiTests.RefusedAsync(odd, 400);
    }

    [Fact]
    public async Task Keys_are_issued_and_revoked_on_the_page_and_a_secret_is_shown_once()
    {
        await using var running = await RunningService.StartAsync();
        using var chief = running.Client(running.Administrator);
        using var odd = await RunningService.PostFormAsync(chief, "/administration/keys", ("name", "Works office"), ("role", "Chief"), ("ends", ""));
        Assert.Contains("Choose a role.", await odd.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        using var past = await RunningService.PostFormAsync(chief, "/administration/keys", ("name", "Works office"), ("role", "Reviewer"), ("ends", "2001-01-01"));
        Assert.Equal(HttpStatusCode.BadRequest, past.StatusCode);
        Assert.Contains("value=\"Works office\"", await past.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        using var issued = await RunningService.PostFormAsync(chief, "/administration/keys", ("name", "Works office"), ("role", "Reviewer"), ("ends", ""));
        var secret = Regex.Match(await issued.Content.ReadAsStringAsync(), "laygate_[0-9a-f]+_[A-Za-z0-9_-]+", RegexOptions.None, Patience.Longest).Value;
        using var office = running.Client(secret);
        Assert.Equal(HttpStatusCode.OK, (await office.GetAsync("/api/v1/submissions")).StatusCode);
        var page = await RunningService.PageAsync(chief, "/administration");
        Assert.DoesNotContain(secret, page, StringComparison.Ordinal);
        var way = Regex.Match(page, "<th scope=\"row\">Works office</th>.*?action=\"(?<way>[^\"]+)\"", RegexOptions.Singleline, Patience.Longest).Groups["way"].Value;
        using var revoked = await RunningService.PostFormAsync(chief, way);
        Assert.Equal(HttpStatusCode.Redirect, revoked.StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await office.GetAsync("/api/v1/submissions")).StatusCode);
        Assert.Contains("revoked ", await RunningService.PageAsync(chief, "/administration"), StringComparison.Ordinal);
    }

    // What it says when all is well is the business of whoever runs it.
    private (int Code, string Said) Verify(string export, string? heads = null) => exports.Verify(export, heads) is (not 0, _) wrong ? wrong : (0, string.Empty);
}
