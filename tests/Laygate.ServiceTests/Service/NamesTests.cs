using System.IO.Compression;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Laygate.Register;
using Laygate.ServiceTests.Shared;
using Microsoft.Extensions.DependencyInjection;

namespace Laygate.ServiceTests.Service;

/// <summary>Names inside plans, and in all that was made from them: gone from the whole database with every plain hash by which they could be tried, while the export still proves the rest.</summary>
[Collection(SharedStores.Name)]
public sealed class NamesTests(Stores stores) : IDisposable
{
    // Invented people; each stands at another kind of key, one in a comment of the text, one in letters that JSON and HTML write otherwise.
    private static readonly string[] People = ["Ötzi Wörn-Müller", "Q. D'Arcy", "Thea Brill", "Sandström", "Ludmila Ipsen", "+49 170 5550199", "Marit Zoltan"];

    private static readonly (string Name, string Text)[] Set =
    [
        ("night.yaml", """
            format: 1
            uses: [crew.yaml]
            plan:
              id: harrow-lane
              stage: concept
              title: Harrow Lane resurfacing, ring Thea Brill
              # Ludmila Ipsen has looked at this.
              prepared: { name: "Ötzi Wörn-Müller", role: works engineer, date: 2027-05-03 }
              checked: { name: Q. D'Arcy, role: quality manager, date: 2027-05-04 }
              people: [foreman]
            location: { jurisdiction: none }
            mixes: [{ id: ac11, kind: asphalt-concrete, gradation: fine, aggregate_size: { sieve: 11 mm, basis: upper-sieve } }]
            courses: [{ id: surface, kind: surface, mix: ac11, thickness: 45 mm, laid: separately }]
            runs: [{ id: all, from: 0 m, to: 900 m, width: 5.50 m }]
            pavers: [{ id: p1, speed: 4.0 m/min }]
            hold_points:
              - { id: base, before: laying, criterion: dry, evidence: form 1, owner: Thea Brill, released_by: site engineer }
              - id: last
                before: opening
                owner: >-
                  Ludmila
                  Ipsen
                released_by: Thea Brill
            contingencies: [{ id: rain, when: first drops, action: stop, decided_by: Sandström }]
            measures: [{ id: talk, kind: shift-briefing, what: briefing, where: gate, who: Sandström, when: "20:15" }]

            """),
        ("crew.yaml", "parts: 1\npeople:\n  - { id: foreman, role: paving foreman, name: Thea Brill, call: +49 170 5550199, deputy: 'Ludmila Ipsen' }\n"),
    ];

    private static readonly (string Name, string Text)[] Record =
    [
        ("record.yaml", "format: 1\nrecord: { about: Invented for a test. }\nfiles:\n  - file: hold.csv\n    holds: hold-points\n    encoding: windows-1252\n    delimiter: semicolon\n    decimal_mark: comma\n    zone: +02:00\n    columns:\n      - { column: punkt, quantity: hold_point }\n      - { column: zeit, quantity: at }\n      - { column: wer, quantity: by }\n      - { column: beleg, quantity: evidence }\n"),
        ("hold.csv", "punkt;zeit;wer;beleg\nbase;2027-05-14 20:35;\"Marit Zoltan\";Formular für 12\nlast;2027-05-14 21:35;foreman;\n"),
    ];

    private readonly AuditExport exports = new();

    public void Dispose() => exports.Dispose();

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Nothing_in_the_whole_database_names_them_and_the_export_proves_the_rest(Engine engine)
    {
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        var (clock, settings) = (new TestClock(), stores.New(engine));
        await using var running = await RunningService.StartAsync(
            engine == Engine.Sqlite ? Path.GetDirectoryName(settings.Connection) : null, services => services.AddSingleton<TimeProvider>(clock), engine == Engine.Sqlite ? [] : ["Database=" + settings.Connection]);
        using var works = running.Client(await running.KeyAsync("Works office", Role.Submitter));
        using var chief = running.Client(running.Administrator.Length > 0 ? running.Administrator : await running.KeyAsync("Chief", Role.Administrator));
        var id = await HandInAsync(works);
        var one = await RunningService.ScreenedAsync(works, id);
        Assert.Equal("screened", one.GetProperty("state").GetString());
        var before = await FactsAsync(chief, id);
        await DecideAsync(chief, id);

        var first = await exports.FetchAsync(chief, "first");
        var whole = exports.Verify(first);
        Assert.Equal(0, whole.Code);
        Assert.DoesNotContain("replaced", whole.Said, StringComparison.Ordinal);
        var database = running.Services.GetRequiredService<RegisterDatabase>();
        var everything = await WholeDatabase.ReadAsync(database);
        Assert.All(People, name => Assert.Contains(everything, value => value.Text.Contains(name, StringComparison.Ordinal)));
        var hashes = Hashes(first, one);
        Assert.Contains(everything, value => value.Where is "documents.bytes" && value.Text.Contains(hashes[0][..12], StringComparison.Ordinal));

        // First what would change, then why, then it is done.
        var found = await RunningService.JsonAsync(await chief.GetAsync($"/api/v1/retention/{id}"));
        Assert.Equal(People.Order(StringComparer.Ordinal), found.GetProperty("names").EnumerateArray().Select(name => name.GetString()!), StringComparer.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, (await chief.PostAsJsonAsync($"/api/v1/retention/{id}", new { reason = " " })).StatusCode);
        clock.Move(TimeSpan.FromDays(400));
        Assert.Equal((1, 0), await running.Services.GetRequiredService<Retention>().ReplaceAsync(new RetentionRule(1, Texts: false), default));

        List<string> words = [.. People, .. People.Select(name => name.ToLowerInvariant()), .. hashes, .. hashes.Select(hash => hash[..12])];
        var left = (await WholeDatabase.ReadAsync(database)).SelectMany(value => words.Where(word => value.Text.Contains(word, StringComparison.Ordinal)).Select(word => $"{value.Where}: {word}")).ToList();
        Assert.Empty(left);

        // Lines stay lines; a role is no name; what a record says of itself stays.
        var text = await chief.GetStringAsync($"/api/v1/submissions/{id}/text");
        Assert.Equal(Set[0].Text.Split('\n').Length, text.Split('\n').Length);
        Assert.Contains("prepared: { name: \"(name replaced)\", role: works engineer, date: 2027-05-03 }", text, StringComparison.Ordinal);
        Assert.Contains("released_by: site engineer }", text, StringComparison.Ordinal);
        Assert.Contains("title: Harrow Lane resurfacing, ring (name replaced)\n", text, StringComparison.Ordinal);
        Assert.Equal("punkt;zeit;wer;beleg\nbase;2027-05-14 20:35;\"(name replaced)\";Formular für 12\nlast;2027-05-14 21:35;foreman;\n", Encoding.GetEncoding(1252).GetString(await chief.GetByteArrayAsync($"/api/v1/submissions/{id}/records/1/files/hold.csv")));

        // Findings, numbers and places are those of the day, and the stored page is read as before.
        Assert.Equal(before, await FactsAsync(chief, id));
        var page = await RunningService.PageAsync(chief, $"/submissions/{id}");
        Assert.Contains("(name replaced)", page, StringComparison.Ordinal);
        Assert.Contains("(name replaced)", await RunningService.PageAsync(chief, $"/submissions/{id}/report"), StringComparison.Ordinal);
        Assert.Contains("no entry or comment names somebody", await RunningService.PageAsync(chief, $"/administration/retention/{id}"), StringComparison.Ordinal);

        // The books go on where the first export ended, and prove what stands: a number that is changed shows.
        var second = await exports.FetchAsync(chief, "second");
        var since = exports.Verify(second, Path.Combine(first, "heads.txt"));
        Assert.Equal(0, since.Code);
        Assert.Contains($"In {found.GetProperty("contents").GetArrayLength()} plans, records, reports and documents names were replaced", since.Said, StringComparison.Ordinal);
        var report = Directory.EnumerateFiles(Path.Combine(second, "content"), "*.json").First(file => File.ReadAllText(file).Contains("\"report_version\"", StringComparison.Ordinal));
        var kept = await File.ReadAllTextAsync(report);
        await File.WriteAllTextAsync(report, kept.Replace("45", "46", StringComparison.Ordinal));
        Assert.Contains("is not what was kept", exports.Verify(second).Said, StringComparison.Ordinal);
        await File.WriteAllTextAsync(report, kept);
        var list = Path.Combine(second, "contents.txt");
        var lines = await File.ReadAllLinesAsync(list);
        await File.WriteAllTextAsync(list, string.Concat(lines.Where(line => !line.Contains(Path.GetFileName(report), StringComparison.Ordinal)).Select(line => line + "\n")));
        Assert.Contains("is missing, and nothing says that it was replaced", exports.Verify(second).Said, StringComparison.Ordinal);
        foreach (var name in new[] { "history.jsonl", "comments.jsonl", "keys.jsonl", "contents.txt", "parts.txt" })
        {
            var written = await File.ReadAllTextAsync(Path.Combine(second, name));
            Assert.DoesNotContain(hashes, hash => written.Contains(hash, StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task An_administrator_has_them_replaced_on_the_page_with_a_reason()
    {
        await using var running = await RunningService.StartAsync();
        using var works = running.Client(await running.KeyAsync("Works office", Role.Submitter));
        using var chief = running.Client(running.Administrator);
        var id = await HandInAsync(works);
        await RunningService.ScreenedAsync(works, id);
        var way = $"/administration/retention/{id}";
        var open = await PostAsync(chief, way, ("comment", "Asked by a former foreman."));
        Assert.Contains("is not decided yet", open, StringComparison.Ordinal);
        Assert.Contains("Asked by a former foreman.", open, StringComparison.Ordinal);
        await DecideAsync(chief, id);
        Assert.Contains("Thea Brill", await RunningService.PageAsync(chief, way), StringComparison.Ordinal);
        Assert.Contains("Say why", await PostAsync(chief, way, ("comment", " ")), StringComparison.Ordinal);
        Assert.Contains("Done.", await PostAsync(chief, way, ("comment", "Asked by a former foreman."), ("texts", "true")), StringComparison.Ordinal);
        var history = await chief.GetStringAsync($"/api/v1/submissions/{id}/history");
        Assert.Contains("Asked by a former foreman.", history, StringComparison.Ordinal);
        Assert.DoesNotContain("Mend it.", history, StringComparison.Ordinal);
        Assert.False((await RunningService.JsonAsync(await chief.PostAsJsonAsync($"/api/v1/retention/{id}", new { reason = "again" }))).GetProperty("replaced").GetBoolean());
    }

    private static async Task<string> HandInAsync(HttpClient client)
    {
        var content = new ByteArrayContent(Zip());
        content.Headers.ContentType = new MediaTypeHeaderValue("application/zip");
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/v1/submissions?file_name=night.zip") { Content = content };
        request.Headers.Add("Idempotency-Key", "night-1");
        using var answer = await client.SendAsync(request);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        var id = (await RunningService.JsonAsync(answer)).GetProperty("id").GetString()!;
        using var form = new MultipartFormDataContent();
        foreach (var (name, text) in Record)
        {
            form.Add(new ByteArrayContent(name.EndsWith(".csv", StringComparison.Ordinal) ? Encoding.Latin1.GetBytes(text) : Encoding.UTF8.GetBytes(text)), "file", name);
        }

        await RunningService.ScreenedAsync(client, id);
        using var handed = await client.PostAsync($"/api/v1/submissions/{id}/records", form);
        Assert.True(handed.IsSuccessStatusCode, await handed.Content.ReadAsStringAsync());
        return id;
    }

    private static byte[] Zip()
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in Set)
            {
                using var stream = zip.CreateEntry(name).Open();
                stream.Write(Encoding.UTF8.GetBytes(text));
            }
        }

        return bytes.ToArray();
    }

    // Plain hashes of all that the first export holds, and of its lists; the plan's first.
    private static List<string> Hashes(string export, JsonElement one) =>
    [
        Hash(Encoding.UTF8.GetBytes(Set[0].Text)),
        one.GetProperty("text_hash").GetString()!,
        .. Directory.EnumerateFiles(Path.Combine(export, "content")).Where(file => People.Any(name => Plain(file).Contains(name, StringComparison.Ordinal)) || file.EndsWith(".zip", StringComparison.Ordinal)).Select(file => Hash(File.ReadAllBytes(file))),
        .. File.ReadLines(Path.Combine(export, "contents.txt")).Where(line => People.Any(name => Plain(Path.Combine(export, line.Split(' ')[2])).Contains(name, StringComparison.Ordinal))).Select(line => line.Split(' ')[1]),
    ];

    private static string Plain(string file) => WebUtility.HtmlDecode(File.ReadAllText(file, file.EndsWith(".csv", StringComparison.Ordinal) ? Encoding.Latin1 : Encoding.UTF8));

    private static string Hash(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    // All of a report that is no text of the plan: what was found where, with which numbers.
    private static async Task<string> FactsAsync(HttpClient client, string id)
    {
        using var report = JsonDocument.Parse(await client.GetStringAsync($"/api/v1/submissions/{id}/report"));
        var facts = new StringBuilder();
        Add(report.RootElement);
        return facts.ToString();

        void Add(JsonElement element)
        {
            switch (element.ValueKind)
            {
                case JsonValueKind.Object:
                    foreach (var member in element.EnumerateObject())
                    {
                        facts.Append(member.Name).Append(':');
                        Add(member.Value);
                    }

                    break;
                case JsonValueKind.Array:
                    foreach (var item in element.EnumerateArray())
                    {
                        Add(item);
                    }

                    break;
                case JsonValueKind.String:
                    var text = element.GetString()!;
                    facts.Append(People.Aggregate(Regex.Replace(text, "[0-9a-f]{64}", "#", RegexOptions.None, Patience.Longest), (said, name) => said.Replace(name, SaltedText.Name, StringComparison.Ordinal))).Append('\n');
                    break;
                default:
                    facts.Append(element.GetRawText()).Append('\n');
                    break;
            }
        }
    }

    private static async Task DecideAsync(HttpClient client, string id)
    {
        using var answer = await RunningService.DecideAsync(client, id, "returned", "Mend it.");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    private static async Task<string> PostAsync(HttpClient client, string address, params (string Name, string Value)[] fields)
    {
        using var answer = await RunningService.PostFormAsync(client, address, fields);
        return WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());
    }
}
