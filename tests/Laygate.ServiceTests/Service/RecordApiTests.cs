using System.IO.Compression;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Service;

/// <summary>The record of a shift beside its plan: kept byte for byte, shown to whoever may see the plan, refused as a set of files is.</summary>
public sealed class RecordApiTests(OneService one) : IClassFixture<OneService>
{
    /// <summary>A small record of any plan.</summary>
    internal static readonly (string Name, string Text)[] Small =
    [
        ("record.yaml", "format: 1\nrecord: { about: Invented for a test. }\nfiles:\n  - file: stops.csv\n    holds: stops\n    encoding: utf-8\n    delimiter: comma\n    decimal_mark: point\n    zone: +02:00\n    columns:\n      - { column: from, quantity: from }\n      - { column: to, quantity: to }\n"),
        ("stops.csv", "from,to\n2027-05-14 22:48,2027-05-14 22:55\n"),
    ];

    [Fact]
    public async Task A_record_is_kept_byte_for_byte_and_shown()
    {
        var id = await RunningService.SubmitAsync(one.Ada, RunningService.Plan("quay-road-hot-on-hot.yaml"), "?file_name=plan.yaml");
        foreach (var (content, number) in new (HttpContent Content, int Number)[] { (Form(Small), 1), (Archive(Small), 2) })
        {
            using var handed = await one.Ada.PostAsync($"/api/v1/submissions/{id}/records", content);
            Assert.True(handed.StatusCode == HttpStatusCode.Created, await handed.Content.ReadAsStringAsync());
            Assert.Equal(number, (await RunningService.JsonAsync(handed)).GetProperty("record").GetInt32());
        }

        Assert.Equal(Small[1].Text, await one.Reviewer.GetStringAsync($"/api/v1/submissions/{id}/records/2/files/stops.csv"));
        using var list = await one.Reviewer.GetAsync($"/api/v1/submissions/{id}/records");
        var records = (await RunningService.JsonAsync(list)).EnumerateArray().ToList();
        Assert.Equal([1, 2], records.Select(record => record.GetProperty("record").GetInt32()));
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(Encoding.UTF8.GetBytes(Small[1].Text))), records[0].GetProperty("files")[1].GetProperty("hash").GetString());
        using var ledger = JsonDocument.Parse(await one.Reviewer.GetStringAsync($"/api/v1/submissions/{id}/records/1/ledger"));
        Assert.Equal(1, ledger.RootElement.GetProperty("stops").GetProperty("count").GetInt32());
        Assert.Contains("Invented for a test.", await one.Reviewer.GetStringAsync($"/submissions/{id}/records/1/held"), StringComparison.Ordinal);
        Assert.Contains("Invented for a test.", await one.Reviewer.GetStringAsync($"/submissions/{id}/records/1/ledger"), StringComparison.Ordinal);
        Assert.Contains($"<a href=\"/submissions/{id}\">Back to the submission</a>", await one.Reviewer.GetStringAsync($"/submissions/{id}/records/1/ledger"), StringComparison.Ordinal);
        Assert.Contains($"/submissions/{id}/records/1/held", await one.Reviewer.GetStringAsync($"/submissions/{id}"), StringComparison.Ordinal);
        var export = (await one.Ada.GetStringAsync("/api/v1/submissions/export")).Split('\n').First(line => line.Contains(id, StringComparison.Ordinal));
        using var exported = JsonDocument.Parse(export);
        Assert.Equal(2, exported.RootElement.GetProperty("records").GetArrayLength());
        Assert.Contains(exported.RootElement.GetProperty("history").EnumerateArray(), entry => entry.GetProperty("event").GetString() is "recorded");
        foreach (var part in new[] { "/records", "/records/1/files/stops.csv", "/records/1/ledger", "/records/1/held" })
        {
            await CheckApiTests.RefusedAsync(await one.Bo.GetAsync($"/api/v1/submissions/{id}{part}"), 404);
        }
    }

    [Fact]
    public async Task What_is_no_record_is_refused_and_nothing_is_kept()
    {
        var id = await RunningService.SubmitAsync(one.Ada, RunningService.Plan("concept-fifteen-lines.yaml"), "?file_name=plan.yaml");
        (HttpContent Content, int Status)[] sent =
        [
            (Form([Small[1]]), 422), // No mapping.
            (Form([("record.yaml", "files: [\n"), Small[1]]), 422),
            (Form([("../record.yaml", Small[0].Text)]), 422),
            (Archive([("a/record.yaml", Small[0].Text), ("b/record.yaml", Small[0].Text)]), 422),
            (RunningService.Yaml("a: 1"), 415),
        ];
        foreach (var (content, status) in sent)
        {
            using var answer = await one.Ada.PostAsync($"/api/v1/submissions/{id}/records", content);
            Assert.Equal(status, (int)answer.StatusCode);
        }

        Assert.Equal("[]", await one.Ada.GetStringAsync($"/api/v1/submissions/{id}/records"));
        using var foreign = await one.Bo.PostAsync($"/api/v1/submissions/{id}/records", Form(Small));
        Assert.Equal(HttpStatusCode.NotFound, foreign.StatusCode);
    }

    internal static MultipartFormDataContent Form((string Name, string Text)[] files)
    {
        var form = new MultipartFormDataContent();
        foreach (var (name, text) in files)
        {
            form.Add(new ByteArrayContent(Encoding.UTF8.GetBytes(text)), "file", name);
        }

        return form;
    }

    private static ByteArrayContent Archive((string Name, string Text)[] files)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in files)
            {
                using var stream = zip.CreateEntry(name).Open();
                stream.Write(Encoding.UTF8.GetBytes(text));
            }
        }

        var content = new ByteArrayContent(bytes.ToArray());
        content.Headers.ContentType = new MediaTypeHeaderValue("application/zip");
        return content;
    }
}
