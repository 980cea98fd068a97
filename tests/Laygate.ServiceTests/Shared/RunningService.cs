using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Laygate.Register;
using Laygate.Service;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Laygate.ServiceTests.Shared;

/// <summary>The service inside the test's process, on a loopback port, with a register of its own.</summary>
internal sealed class RunningService : IAsyncDisposable
{
    private readonly string folder;
    private readonly bool ownsFolder;
    private readonly WebApplication app;

    private RunningService(WebApplication app, string folder, bool ownsFolder)
    {
        this.app = app;
        this.folder = folder;
        this.ownsFolder = ownsFolder;
    }

    public Uri Address => new(app.Urls.First());

    public IServiceProvider Services => app.Services;

    public string Administrator { get; private set; } = string.Empty;

    /// <summary>The text of an example that stands alone.</summary>
    public static string Plan(string name = "quay-road-hot-on-hot.yaml") => File.ReadAllText(WholePlans.PathOf(name));

    public static Task<RunningService> StartAsync(string? folder = null, params string[] settings) => StartAsync(folder, null, settings);

    public static async Task<RunningService> StartAsync(string? folder, Action<IServiceCollection>? change, params string[] settings)
    {
        var data = folder ?? Directory.CreateTempSubdirectory("laygate-service-").FullName;
        var built = ServiceHost.Build(["--urls=http://127.0.0.1:0", $"--Laygate:Data={data}", $"--Laygate:CheckSeconds=600", .. settings.Select(setting => "--Laygate:" + setting)], change);
        using var console = new StringWriter();
        await Commands.OpenAsync(built.Services, console, default);
        await built.StartAsync();
        var printed = console.ToString();
        return new RunningService(built, data, folder is null) { Administrator = printed.Length > 0 ? printed[printed.IndexOf(AccessKeys.Mark, StringComparison.Ordinal)..].Trim() : string.Empty };
    }

    /// <summary>A new key; an earlier one of the same name is revoked.</summary>
    public async Task<string> KeyAsync(string name, Role role)
    {
        var keys = Services.GetRequiredService<AccessKeys>();
        foreach (var earlier in (await keys.ListAsync(default)).Where(key => key.RevokedAt is null && string.Equals(key.Name, name, StringComparison.OrdinalIgnoreCase)))
        {
            await keys.RevokeAsync(earlier.Id, Caller.Machine, default);
        }

        return (await keys.IssueAsync(name, role, null, Caller.Machine, default)).Secret;
    }

    /// <summary>The cookie of a session that is opened with a key, as the header names it.</summary>
    public async Task<string> CookieAsync(string key)
    {
        using var client = Client();
        using var answer = await client.PostAsync("/sign-in", new FormUrlEncodedContent([KeyValuePair.Create("key", key)]));
        return answer.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
    }

    public HttpClient Client(string? key = null)
    {
        var client = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = Address, Timeout = Patience.Longest };
        if (key is not null)
        {
            client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key);
        }

        return client;
    }

    public static ByteArrayContent Yaml(string text) => Yaml(Encoding.UTF8.GetBytes(text));

    public static ByteArrayContent Yaml(byte[] text) => new(text) { Headers = { ContentType = new MediaTypeHeaderValue("application/yaml") } };

    /// <summary>Decides on a submission as it stands.</summary>
    public static async Task<HttpResponseMessage> DecideAsync(HttpClient client, string id, string decision, string comment)
    {
        using var read = await client.GetAsync($"/api/v1/submissions/{id}");
        using var request = new HttpRequestMessage(HttpMethod.Post, $"/api/v1/submissions/{id}/decision") { Content = JsonContent.Create(new { decision, comment }) };
        request.Headers.IfMatch.Add(read.Headers.ETag!);
        return await client.SendAsync(request);
    }

    /// <summary>The text of a page that must be there, as a reader sees it.</summary>
    public static async Task<string> PageAsync(HttpClient client, string address)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, address);
        request.Headers.Accept.ParseAdd("text/html");
        using var answer = await client.SendAsync(request);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());
    }

    /// <summary>Sends a form as a page does.</summary>
    public static async Task<HttpResponseMessage> PostFormAsync(HttpClient client, string address, params (string Name, string Value)[] fields)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, address) { Content = new FormUrlEncodedContent(fields.Select(field => KeyValuePair.Create(field.Name, field.Value))) };
        request.Headers.Accept.ParseAdd("text/html");
        return await client.SendAsync(request);
    }

    public static async Task<JsonElement> JsonAsync(HttpResponseMessage answer)
    {
        using var json = JsonDocument.Parse(await answer.Content.ReadAsByteArrayAsync());
        return json.RootElement.Clone();
    }

    /// <summary>Waits until a submission is no longer waiting, and returns it.</summary>
    public static async Task<JsonElement> ScreenedAsync(HttpClient client, string id)
    {
        for (var tries = 0; tries < 9000; tries++)
        {
            var one = await JsonAsync(await client.GetAsync($"/api/v1/submissions/{id}"));
            if (one.GetProperty("state").GetString() is not ("received" or "screening"))
            {
                return one;
            }

            await Task.Delay(100);
        }

        throw new TimeoutException("not screened within a minute");
    }

    public static async Task<string> SubmitAsync(HttpClient client, string plan, string query = "")
    {
        using var answer = await client.PostAsync("/api/v1/submissions" + query, Yaml(plan));
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        return (await JsonAsync(answer)).GetProperty("id").GetString()!;
    }

    public async Task StopAsync() => await app.StopAsync();

    public async ValueTask DisposeAsync()
    {
        await app.StopAsync();
        await app.DisposeAsync();
        if (ownsFolder)
        {
            Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
            Directory.Delete(folder, recursive: true);
        }
    }
}

/// <summary>One service for a class of tests, with a key for each role.</summary>
public sealed class OneService : IAsyncLifetime
{
    internal RunningService Running { get; private set; } = null!;

    internal HttpClient Ada { get; private set; } = null!;

    internal HttpClient Bo { get; private set; } = null!;

    internal HttpClient Reviewer { get; private set; } = null!;

    internal HttpClient Administrator { get; private set; } = null!;

    internal HttpClient Nobody { get; private set; } = null!;

    public async Task InitializeAsync()
    {
        Running = await RunningService.StartAsync(null, "RequestsPerMinute=100000", "Mail:Host=127.0.0.1", "Mail:Security=None", "Mail:From=laygate@example.org", "Retention:Years=1");
        Ada = Running.Client(await Running.KeyAsync("Ada of the class", Role.Submitter));
        Bo = Running.Client(await Running.KeyAsync("Bo of the class", Role.Submitter));
        Reviewer = Running.Client(await Running.KeyAsync("Rita of the class", Role.Reviewer));
        Administrator = Running.Client(Running.Administrator);
        Nobody = Running.Client();
    }

    public async Task DisposeAsync()
    {
        foreach (var client in new[] { Ada, Bo, Reviewer, Administrator, Nobody })
        {
            client.Dispose();
        }

        await Running.DisposeAsync();
    }
}
