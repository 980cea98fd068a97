using Laygate.Register;
using Laygate.Service.Checking;
using Laygate.Service.Settings;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.Extensions.Options;

namespace Laygate.Service;

/// <summary>The program: the service itself, and a few verbs beside it.</summary>
internal static class Commands
{
    private const string Help = """
        Laygate.Service                     run the service
        Laygate.Service health              ask the running service whether it is ready; 0: yes, 1: no
        Laygate.Service key NAME ROLE       issue a key (submitter, reviewer or administrator) and print it once
        Laygate.Service backup FILE         copy a SQLite register while it is in use
        Laygate.Service retention           replace names that are due by the settings; with --dry-run: only say which

        Settings: appsettings.json, or environment variables such as Laygate__Data. See docs/service.md.

        """;

    /// <summary>Runs what the arguments ask for.</summary>
    /// <returns>0: done; 1: not ready; 2: wrong arguments or settings; 3: it cannot run.</returns>
    public static async Task<int> RunAsync(string[] args)
    {
        try
        {
            return args switch
            {
                ["health"] => await HealthAsync(),
                ["key", var name, var role] when Access.Callers.RoleOf(role) is { } known => await KeyAsync(name, known),
                ["backup", var path] => await BackUpAsync(path),
                ["retention"] => await RetainAsync(dry: false),
                ["retention", "--dry-run"] => await RetainAsync(dry: true),
                ["--help"] or ["help"] => Explain(asked: true),
                _ when args.Length == 0 || args[0].StartsWith("--", StringComparison.Ordinal) => await ServeAsync(args),
                _ => Explain(asked: false),
            };
        }
        catch (Exception error) when (error is OptionsValidationException or InvalidDataException or RefusedException or IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync("Laygate.Service: " + error.Message);
            return 2;
        }
        catch (Exception error) when (RegisterDatabase.IsAway(error))
        {
            await Console.Error.WriteLineAsync($"Laygate.Service: the database does not answer ({error.GetType().Name}). Check Laygate:Database and whether the server runs.");
            return 3;
        }
        catch (Exception error) when (RegisterDatabase.IsOfDatabase(error))
        {
            await Console.Error.WriteLineAsync($"Laygate.Service: the database refuses what it is asked ({error.GetType().Name}: {error.GetBaseException().Message}). Check that it is one of this service and of no later version.");
            return 3;
        }
    }

    /// <summary>Brings the register up to date and prints the first administrator's key, if there has never been one.</summary>
    public static Task OpenAsync(IServiceProvider services, TextWriter console, CancellationToken cancel)
    {
        var keys = services.GetRequiredService<AccessKeys>();
        return services.GetRequiredService<RegisterDatabase>().MigrateAsync(
            async stop =>
            {
                // Under the lock: replicas that start together then have the same keys for the way through a provider.
                if (services.GetService<ProtectionKeys>() is not null)
                {
                    _ = services.GetRequiredService<IDataProtectionProvider>().CreateProtector("start").Protect([0]);
                }

                if (await keys.FirstAdministratorAsync(stop) is { } first)
                {
                    await console.WriteLineAsync($"First administrator's key, shown only now: {first.Secret}");
                }
            },
            cancel);
    }

    private static async Task<int> ServeAsync(string[] args)
    {
        await using var app = ServiceHost.Build(args);
        _ = app.Services.GetRequiredService<IOptions<ServiceSettings>>().Value;
        var desk = app.Services.GetRequiredService<CheckDesk>();
        var log = app.Services.GetRequiredService<ILogger<Telemetry>>();
        if (!ServiceHost.SpeaksTls(app.Configuration))
        {
            Log.CookieNotSecure(log);
        }

        await OpenPatientlyAsync(app);
        if (IsOpenToOthers(app.Services.GetRequiredService<IOptions<ServiceSettings>>().Value))
        {
            Log.DataOpen(log);
        }

        Log.Ready(log, desk.Book.Hash[..12], CheckDesk.Version);
        await app.RunAsync();
        return 0;
    }

    // A folder that was there before the service keeps its rights: it may be somebody else's, too.
    private static bool IsOpenToOthers(ServiceSettings settings) =>
        settings.Database.Length == 0 && !OperatingSystem.IsWindows() && (File.GetUnixFileMode(settings.Data) & ~(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute)) != UnixFileMode.None;

    // A database that starts at the same time may need a while.
    private static async Task OpenPatientlyAsync(WebApplication app)
    {
        for (var left = 30; ; left--)
        {
            try
            {
                await OpenAsync(app.Services, Console.Error, CancellationToken.None);
                return;
            }
            catch (Exception error) when (RegisterDatabase.IsAway(error) && left > 0)
            {
                Log.DatabaseAway(app.Services.GetRequiredService<ILogger<Telemetry>>(), error.GetType().Name);
                await Task.Delay(TimeSpan.FromSeconds(1));
            }
        }
    }

    private static async Task<int> HealthAsync()
    {
        var addresses = Environment.GetEnvironmentVariable("ASPNETCORE_URLS") is { Length: > 0 } urls ? urls : ServiceHost.UsualAddress;
        var address = addresses.Split(';')[0].Replace("://+", "://127.0.0.1", StringComparison.Ordinal).Replace("://*", "://127.0.0.1", StringComparison.Ordinal).Replace("://0.0.0.0", "://127.0.0.1", StringComparison.Ordinal);
        using var client = new HttpClient { Timeout = TimeSpan.FromSeconds(5) };
        try
        {
            using var answer = await client.GetAsync(new Uri(new Uri(address), "/healthz/ready"));
            return answer.IsSuccessStatusCode ? 0 : 1;
        }
        catch (Exception error) when (error is HttpRequestException or TaskCanceledException)
        {
            return 1;
        }
    }

    private static async Task<int> KeyAsync(string name, Role role)
    {
        await using var app = ServiceHost.Build([]);
        await OpenAsync(app.Services, Console.Error, CancellationToken.None);
        var issued = await app.Services.GetRequiredService<AccessKeys>().IssueAsync(name, role, null, Caller.Machine, CancellationToken.None);
        await Console.Out.WriteLineAsync(issued.Secret);
        return 0;
    }

    private static async Task<int> BackUpAsync(string path)
    {
        await using var app = ServiceHost.Build([]);
        await app.Services.GetRequiredService<RegisterDatabase>().BackUpAsync(path, CancellationToken.None);
        return 0;
    }

    private static async Task<int> RetainAsync(bool dry)
    {
        await using var app = ServiceHost.Build([]);
        await OpenAsync(app.Services, Console.Error, CancellationToken.None);
        var (rule, retention) = (app.Services.GetRequiredService<IOptions<ServiceSettings>>().Value.Retention.Rule, app.Services.GetRequiredService<Retention>());
        if (rule.Years == 0)
        {
            await Console.Out.WriteLineAsync("Nothing is ever replaced: Laygate:Retention:Years is 0.");
        }
        else if (dry)
        {
            var due = await retention.DueAsync(rule, CancellationToken.None);
            await Console.Out.WriteLineAsync(FormattableString.Invariant($"{due.Series.Count}{(due.Series.Count == Retention.Most ? " or more" : "")} series are due: {due.Series.Sum(one => one.Names)} entries with a name, {due.Series.Sum(one => one.Texts)} comments, {due.Series.Sum(one => one.Plans)} plans to search; {due.Keys} keys."));
        }
        else
        {
            var (series, keys) = await retention.ReplaceAsync(rule, CancellationToken.None);
            await Console.Out.WriteLineAsync(FormattableString.Invariant($"Replaced in {series} series and {keys} keys."));
        }

        return 0;
    }

    private static int Explain(bool asked)
    {
        (asked ? Console.Out : Console.Error).Write(Help);
        return asked ? 0 : 2;
    }
}
