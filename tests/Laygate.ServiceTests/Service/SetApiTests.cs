using System.IO.Compression;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Laygate.Register;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Service;

/// <summary>A plan with the files that it uses, as an archive or as a form with files.</summary>
public sealed class SetApiTests(OneService one) : IClassFixture<OneService>
{
    private const string Plan = "format: 1\nuses: [../firm/parts.yaml]\nplan: { id: night, stage: concept, title: Night }\ncourses: [{ id: upper, mix: mix-a, thickness: 45 mm }]\nrolling: { rollers: [r7] }\n";
    private const string Parts = "parts: 1\nrollers:\n  - { id: r7, kind: tandem, mode: vibration, speed: 20 km/h }\n";

    private static readonly (string Name, string Text)[] Set = [("jobs/night.yaml", Plan), ("firm/parts.yaml", Parts)];

    [Fact]
    public async Task A_set_is_checked_in_either_form_and_a_finding_names_its_file()
    {
        foreach (var content in new HttpContent[] { Archive(Set), Form(Set) })
        {
            using var answer = await one.Ada.PostAsync("/api/v1/checks?quick=true", content);
            Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
            var file = (await RunningService.JsonAsync(answer)).GetProperty("files")[0];
            Assert.Equal("jobs/night.yaml", file.GetProperty("file").GetString());
            var report = file.GetProperty("reports")[0];
            Assert.Equal("firm/parts.yaml", report.GetProperty("uses")[0].GetProperty("file").GetString());
            var finding = report.GetProperty("findings").EnumerateArray().First(found => found.GetProperty("rule").GetString() is "ROL-026");
            Assert.Equal(("firm/parts.yaml", 3), (finding.GetProperty("position").GetProperty("file").GetString(), finding.GetProperty("position").GetProperty("line").GetInt32()));
        }
    }

    [Fact]
    public async Task What_came_in_is_given_back_byte_for_byte()
    {
        var zip = Zip(Set);
        using var answer = await one.Ada.PostAsync("/api/v1/submissions?file_name=night.zip", Zipped(zip));
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        var id = (await RunningService.JsonAsync(answer)).GetProperty("id").GetString()!;
        var screened = await RunningService.ScreenedAsync(one.Ada, id);
        Assert.Equal(("screened", "jobs/night.yaml", 1, "night.zip"), (screened.GetProperty("state").GetString(), screened.GetProperty("file_name").GetString(), screened.GetProperty("files").GetInt32(), screened.GetProperty("archive").GetString()));
        Assert.Equal(zip, await one.Ada.GetByteArrayAsync($"/api/v1/submissions/{id}/archive"));
        Assert.Equal(Plan, await one.Ada.GetStringAsync($"/api/v1/submissions/{id}/text"));
        Assert.Equal(Parts, await one.Ada.GetStringAsync($"/api/v1/submissions/{id}/files/firm/parts.yaml"));
        Assert.Equal(Plan, await one.Reviewer.GetStringAsync($"/api/v1/submissions/{id}/files/jobs/night.yaml"));
        using var list = await one.Ada.GetAsync($"/api/v1/submissions/{id}/files");
        var files = (await RunningService.JsonAsync(list)).EnumerateArray().ToList();
        Assert.Equal(["jobs/night.yaml", "firm/parts.yaml"], files.Select(file => file.GetProperty("name").GetString()!), StringComparer.Ordinal);
        Assert.Equal([true, false], files.Select(file => file.GetProperty("plan").GetBoolean()));
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(Encoding.UTF8.GetBytes(Parts))), files[1].GetProperty("hash").GetString());

        var export = (await one.Ada.GetStringAsync("/api/v1/submissions/export?search=night.zip")).Split('\n')[0];
        using var line = JsonDocument.Parse(export);
        Assert.Equal(2, line.RootElement.GetProperty("files").GetArrayLength());

        foreach (var part in new[] { "/files", "/files/firm/parts.yaml", "/archive" })
        {
            await CheckApiTests.RefusedAsync(await one.Bo.GetAsync($"/api/v1/submissions/{id}{part}"), 404);
            await CheckApiTests.RefusedAsync(await one.Nobody.GetAsync($"/api/v1/submissions/{id}{part}"), 401);
        }

        await CheckApiTests.RefusedAsync(await one.Ada.GetAsync($"/api/v1/submissions/{id}/files/firm/other.yaml"), 404);
    }

    [Fact]
    public async Task A_form_has_no_archive_and_a_plan_by_itself_neither()
    {
        using var answer = await one.Ada.PostAsync("/api/v1/submissions", Form(Set));
        var id = (await RunningService.JsonAsync(answer)).GetProperty("id").GetString()!;
        await CheckApiTests.RefusedAsync(await one.Ada.GetAsync($"/api/v1/submissions/{id}/archive"), 404);
        Assert.Equal(Parts, await one.Ada.GetStringAsync($"/api/v1/submissions/{id}/files/firm/parts.yaml"));
        var alone = await RunningService.SubmitAsync(one.Ada, "a: 1");
        using var list = await one.Ada.GetAsync($"/api/v1/submissions/{alone}/files");
        Assert.Equal("plan.yaml", Assert.Single((await RunningService.JsonAsync(list)).EnumerateArray()).GetProperty("name").GetString());
    }

    [Fact]
    public async Task The_stored_report_stands_again_and_so_does_the_sheet()
    {
        using var answer = await one.Ada.PostAsync("/api/v1/submissions", Archive(Set));
        var id = (await RunningService.JsonAsync(answer)).GetProperty("id").GetString()!;
        await RunningService.ScreenedAsync(one.Ada, id);
        using var request = new HttpRequestMessage(HttpMethod.Get, $"/api/v1/submissions/{id}/report");
        request.Headers.Accept.ParseAdd("text/html");
        using var page = await one.Ada.SendAsync(request);
        Assert.DoesNotContain("This is the report as it was stored", await page.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        using var sheet = await one.Ada.GetAsync($"/api/v1/submissions/{id}/sheet?draft=true");
        Assert.Equal(HttpStatusCode.OK, sheet.StatusCode);
    }

    [Fact]
    public async Task The_plan_is_named_by_the_query_or_by_its_part_of_the_form()
    {
        (string, string)[] two = [.. Set, ("jobs/other.yaml", Plan.Replace("id: night", "id: other", StringComparison.Ordinal))];
        await RefusedAsync(await one.Ada.PostAsync("/api/v1/checks?quick=true", Archive(two)), "2 files are plans");
        Assert.Equal("jobs/other.yaml", await CheckedAsync("?quick=true&plan=jobs/other.yaml", Archive(two)));
        Assert.Equal("jobs/other.yaml", await CheckedAsync("?quick=true&plan=jobs/other.yaml", Form(two)));
        Assert.Equal("jobs/night.yaml", await CheckedAsync("?quick=true", Form(two, plan: "jobs/night.yaml")));
        await RefusedAsync(await one.Ada.PostAsync("/api/v1/checks?plan=none.yaml", Archive(two)), "There is no file `none.yaml`");
        await CheckApiTests.RefusedAsync(await one.Ada.PostAsync("/api/v1/checks?plan=jobs/night.yaml", Form(two, plan: "jobs/night.yaml")), 400);
        await CheckApiTests.RefusedAsync(await one.Ada.PostAsync("/api/v1/checks", new MultipartFormDataContent { { new StringContent(Plan), "plan" } }), 400);
    }

    [Fact]
    public async Task Nothing_of_a_set_that_cannot_be_used_is_kept()
    {
        await RefusedAsync(await one.Ada.PostAsync("/api/v1/submissions?file_name=unusable.zip", Archive([.. Set, ("../x.yaml", "a: 1")])), "leads out of the set");
        await RefusedAsync(await one.Ada.PostAsync("/api/v1/submissions?file_name=unusable.zip", Zipped("no archive"u8.ToArray())), "This is no ZIP archive.");
        await RefusedAsync(await one.Ada.PostAsync("/api/v1/submissions?file_name=unusable.zip", Archive([("a.yaml", new string('a', 1 << 20))])), "100 times");
        await CheckApiTests.RefusedAsync(await one.Ada.PostAsync("/api/v1/submissions?file_name=unusable.zip", Zipped(new byte[(4 << 20) + 1])), 413);
        await CheckApiTests.RefusedAsync(await one.Ada.PostAsync("/api/v1/submissions?file_name=unusable.zip", RunningService.Yaml(Zip(Set))), 415);
        using var list = await one.Reviewer.GetAsync("/api/v1/submissions?search=unusable.zip");
        Assert.Empty((await RunningService.JsonAsync(list)).GetProperty("items").EnumerateArray());
    }

    [Fact]
    public async Task A_problem_in_a_file_names_it()
    {
        using var answer = await one.Ada.PostAsync("/api/v1/checks", Archive([Set[0], ("firm/parts.yaml", Parts.Replace("tandem", "tandm", StringComparison.Ordinal))]));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var error = (await RunningService.JsonAsync(answer)).GetProperty("errors")[0];
        Assert.Equal(("firm/parts.yaml", 3), (error.GetProperty("file").GetString(), error.GetProperty("line").GetInt32()));
    }

    [Fact]
    public async Task The_page_folds_the_files_and_a_finding_leads_to_its_line()
    {
        using var rita = one.Running.Client(await one.Running.KeyAsync("Reader of sets", Role.Reviewer));
        rita.DefaultRequestHeaders.Accept.ParseAdd("text/html");
        using var answer = await one.Ada.PostAsync("/api/v1/submissions", Archive(Set));
        var id = (await RunningService.JsonAsync(answer)).GetProperty("id").GetString()!;
        await RunningService.ScreenedAsync(one.Ada, id);
        var page = await rita.GetStringAsync($"/submissions/{id}");
        Assert.Contains("<a href=\"#F1L3\">firm/parts.yaml, line 3</a>", page, StringComparison.Ordinal);
        Assert.Contains("<li id=\"F1L3\" class=\"", page, StringComparison.Ordinal);
        Assert.Contains("<details class=\"file\">", page, StringComparison.Ordinal);
        Assert.Contains($"href=\"/submissions/{id}/files/firm/parts.yaml\"", page, StringComparison.Ordinal);
        Assert.Equal(Parts, await rita.GetStringAsync($"/submissions/{id}/files/firm/parts.yaml"));
        Assert.Equal(Zip(Set).Length, (await rita.GetByteArrayAsync($"/submissions/{id}/archive")).Length);

        using var later = await one.Ada.PostAsync($"/api/v1/submissions?revision_of={id}", Archive([Set[0], ("firm/parts.yaml", Parts.Replace("20 km/h", "4 km/h", StringComparison.Ordinal))]));
        var revision = (await RunningService.JsonAsync(later)).GetProperty("id").GetString()!;
        var beside = await rita.GetStringAsync($"/submissions/{revision}/beside/{id}");
        Assert.Contains("firm/parts.yaml: 2 lines differ", beside, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Several_files_are_chosen_in_the_form_of_the_page()
    {
        using var browser = one.Running.Client();
        browser.DefaultRequestHeaders.Add("Cookie", await one.Running.CookieAsync(one.Running.Administrator));
        browser.DefaultRequestHeaders.Accept.ParseAdd("text/html");
        var html = await browser.GetStringAsync("/");
        var at = html.IndexOf("name=\"token\" value=\"", StringComparison.Ordinal) + "name=\"token\" value=\"".Length;
        var token = html[at..html.IndexOf('"', at)];

        // A browser names chosen files without their folders.
        using var checkedPage = await browser.PostAsync("/check", Chosen(token, ("night.yaml", Plan), ("parts.yaml", Parts)));
        var page = await checkedPage.Content.ReadAsStringAsync();
        Assert.Contains("<a href=\"#F1L3\">parts.yaml, line 3</a>", page, StringComparison.Ordinal);
        using var refused = await browser.PostAsync("/check", Chosen(token, ("night.yaml", Plan), ("other.yaml", Plan)));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("2 files are plans", await refused.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_job_of_several_shifts_comes_with_its_parts()
    {
        const string job = """
            job: 1
            uses: [../firm/parts.yaml]
            plan: { id: ferry-lane, stage: concept }
            shift: { start: "20:00", end: "03:30", zone: "+02:00" }
            courses:
              - { id: surface, mix: surface-mix, thickness: 40 mm, laid: separately }
            runs:
              - { id: left, courses: [surface], from: 0 m, to: 900 m, width: 3.5 m }
              - { id: right, courses: [surface], from: 0 m, to: 900 m, width: 3.5 m }
            rolling: { rollers: [r7] }
            shifts:
              - { id: night-1, date: 2031-06-09, runs: [left] }
              - { id: night-2, date: 2031-06-10, runs: [right] }
            """;
        (string, string)[] set = [("jobs/ferry-lane.yaml", job), Set[1]];
        using var checkedJob = await one.Ada.PostAsync("/api/v1/checks?quick=true", Archive(set));
        Assert.True(checkedJob.IsSuccessStatusCode, await checkedJob.Content.ReadAsStringAsync());
        Assert.Equal(3, (await RunningService.JsonAsync(checkedJob)).GetProperty("files")[0].GetProperty("reports").GetArrayLength());
        using var answer = await one.Ada.PostAsync("/api/v1/submissions", Archive(set));
        var id = (await RunningService.JsonAsync(answer)).GetProperty("id").GetString()!;
        Assert.Equal("screened", (await RunningService.ScreenedAsync(one.Ada, id)).GetProperty("state").GetString());
        using var page = one.Running.Client(await one.Running.KeyAsync("Reader of jobs", Role.Reviewer));
        page.DefaultRequestHeaders.Accept.ParseAdd("text/html");
        Assert.Contains("firm/parts.yaml, line 3", await page.GetStringAsync($"/submissions/{id}"), StringComparison.Ordinal);
        using var sheet = await one.Ada.GetAsync($"/api/v1/submissions/{id}/sheet?draft=true");
        Assert.Equal(HttpStatusCode.OK, sheet.StatusCode);
    }

    private static MultipartFormDataContent Chosen(string token, params (string Name, string Text)[] files)
    {
        var form = new MultipartFormDataContent { { new StringContent(token), "token" }, { new StringContent("check"), "do" }, { new StringContent(string.Empty), "plan" } };
        foreach (var (name, text) in files)
        {
            form.Add(new StringContent(text), "file", name);
        }

        return form;
    }

    private async Task<string> CheckedAsync(string query, HttpContent content)
    {
        using var answer = await one.Ada.PostAsync("/api/v1/checks" + query, content);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        return (await RunningService.JsonAsync(answer)).GetProperty("files")[0].GetProperty("file").GetString()!;
    }

    private static async Task RefusedAsync(HttpResponseMessage answer, string why)
    {
        using (answer)
        {
            Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
            Assert.Contains(why, (await RunningService.JsonAsync(answer)).GetProperty("errors")[0].GetProperty("detail").GetString(), StringComparison.Ordinal);
        }
    }

    private static ByteArrayContent Archive((string Name, string Text)[] files) => Zipped(Zip(files));

    private static ByteArrayContent Zipped(byte[] bytes) => new(bytes) { Headers = { ContentType = new MediaTypeHeaderValue("application/zip") } };

    private static MultipartFormDataContent Form((string Name, string Text)[] files, string? plan = null)
    {
        var form = new MultipartFormDataContent();
        foreach (var (name, text) in files)
        {
            form.Add(new StringContent(text), string.Equals(name, plan, StringComparison.Ordinal) ? "plan" : "file", name);
        }

        return form;
    }

    private static byte[] Zip((string Name, string Text)[] files)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true, Encoding.UTF8))
        {
            foreach (var (name, text) in files)
            {
                var entry = zip.CreateEntry(name);
                entry.LastWriteTime = new DateTimeOffset(2027, 5, 14, 0, 0, 0, TimeSpan.Zero);
                using var writer = new StreamWriter(entry.Open());
                writer.Write(text);
            }
        }

        return bytes.ToArray();
    }
}
