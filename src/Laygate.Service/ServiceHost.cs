using System.Text.Json;
using System.Text.Json.Serialization;
using Laygate.Register;
using Laygate.Service.Access;
using Laygate.Service.Administration;
using Laygate.Service.Api;
using Laygate.Service.Checking;
using Laygate.Service.Pages;
using Laygate.Service.Replacing;
using Laygate.Service.Settings;
using Laygate.Service.Telling;
using Laygate.Service.Watching;
using Laygate.Service.Work;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;
using OpenTelemetry;
using OpenTelemetry.Metrics;
using OpenTelemetry.Trace;
using Serilog;
using Serilog.Events;
using Serilog.Formatting.Compact;

namespace Laygate.Service;

/// <summary>Puts the service together.</summary>
internal static class ServiceHost
{
    /// <summary>Where it listens when nothing else is said: this machine only.</summary>
    public const string UsualAddress = "http://127.0.0.1:5080";

    /// <summary>Most bytes of any request: a set of files with what a form puts around it.</summary>
    public const int LargestForm = Laygate.Reading.Sets.SetLimits.Bytes + (64 << 10);

    /// <summary>Builds the service without starting it.</summary>
    /// <param name="args">Arguments of the host, such as <c>--Laygate:Data=…</c>.</param>
    /// <param name="change">Changes what the service is made of, for tests.</param>
    public static WebApplication Build(string[] args, Action<IServiceCollection>? change = null)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { Args = args, ContentRootPath = AppContext.BaseDirectory });
        if (builder.Configuration["urls"] is null && builder.Configuration["http_ports"] is null)
        {
            builder.WebHost.UseUrls(UsualAddress);
        }

        var settings = Settings(builder.Configuration);
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = LargestForm;
        });
        builder.Services.AddOptions<ServiceSettings>().BindConfiguration(ServiceSettings.Section).ValidateOnStart();
        builder.Services.AddSingleton<IValidateOptions<ServiceSettings>, SettingsCheck>();
        AddLogs(builder);
        AddMeasures(builder);
        AddRegister(builder.Services);
        builder.AddAccess(settings);
        AddWeb(builder.Services, settings);
        change?.Invoke(builder.Services);
        var app = builder.Build();
        Map(app);
        return app;
    }

    /// <summary>Whether callers reach the service over TLS as far as its settings say: it ends TLS itself, or is told what the proxy before it does.</summary>
    public static bool SpeaksTls(IConfiguration configuration) =>
        string.Equals(configuration["FORWARDEDHEADERS_ENABLED"], "true", StringComparison.OrdinalIgnoreCase)
        || configuration["urls"]?.Contains("https://", StringComparison.OrdinalIgnoreCase) == true
        || configuration["https_ports"] is { Length: > 0 }
        || configuration.GetSection("Kestrel:Endpoints").GetChildren().Any(endpoint => endpoint["Url"]?.StartsWith("https://", StringComparison.OrdinalIgnoreCase) == true);

    private static ServiceSettings Settings(ConfigurationManager configuration)
    {
        try
        {
            return configuration.GetSection(ServiceSettings.Section).Get<ServiceSettings>() ?? new ServiceSettings();
        }
        catch (InvalidOperationException error)
        {
            // A word where a number or one of a few words belongs.
            throw new InvalidDataException(error.Message, error);
        }
    }

    private static void AddLogs(WebApplicationBuilder builder) => builder.Host.UseSerilog((_, logs) => logs
        .MinimumLevel.Information()
        .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
        .MinimumLevel.Override("Microsoft.Hosting.Lifetime", LogEventLevel.Information)

        // Both quote what they work on: texts of plans in commands, and what an exception says.
        .MinimumLevel.Override("Microsoft.EntityFrameworkCore", LogEventLevel.Fatal)
        .MinimumLevel.Override("Microsoft.AspNetCore.Diagnostics.ExceptionHandlerMiddleware", LogEventLevel.Fatal)

        // It quotes what a provider or a stranger sends; a line of our own says what happened. Of the other, that its keys lie in the register as they are is known.
        .MinimumLevel.Override("Microsoft.AspNetCore.Authentication.OpenIdConnect", LogEventLevel.Fatal)
        .MinimumLevel.Override("Microsoft.AspNetCore.DataProtection", LogEventLevel.Error)
        .Enrich.FromLogContext()
        .WithoutPaths()
        .WriteTo.Console(new RenderedCompactJsonFormatter()));

    private static void AddMeasures(WebApplicationBuilder builder)
    {
        builder.Services.AddSingleton<Telemetry>();
        var telemetry = builder.Services.AddOpenTelemetry()
            .WithMetrics(metrics => metrics.AddMeter(Telemetry.Name).AddAspNetCoreInstrumentation())
            .WithTracing(traces => traces.AddSource(Telemetry.Name).AddAspNetCoreInstrumentation(options => options.EnrichWithHttpResponse = (activity, response) =>
            {
                // A path may hold what somebody pasted into it; the pattern of the route says enough.
                activity.SetTag("url.path", RequestLog.Route(response.HttpContext));
                activity.SetTag("url.query", null);
            }));
        if (builder.Configuration["OTEL_EXPORTER_OTLP_ENDPOINT"] is { Length: > 0 })
        {
            telemetry.UseOtlpExporter();
        }
    }

    private static void AddRegister(IServiceCollection services)
    {
        services.TryAddSingleton(TimeProvider.System);
        services.TryAddSingleton<ISecretSource, SystemSecrets>();
        services.TryAddSingleton<IMoments, NoMoments>();
        services.AddSingleton(provider => Store(provider.GetRequiredService<IOptions<ServiceSettings>>().Value));
        services.AddSingleton<RegisterDatabase>();
        services.AddSingleton<SubmissionRegister>();
        services.AddSingleton<RegisterReader>();
        services.AddSingleton<Screenings>();
        services.AddSingleton<AccessKeys>();
        services.AddSingleton<Sessions>();
        services.AddSingleton<KeptForms>();
        services.AddSingleton<FormRescue>();
        services.AddSingleton<CheckDesk>();
        services.AddSingleton<CheckPool>();
        services.AddSingleton<Screening>();
        services.AddSingleton<StoredReports>();
        services.AddSingleton<Comments>();
        services.AddSingleton<ShiftRecords>();
        services.AddSingleton<AuditReader>();
        services.AddSingleton<AuditArchive>();
        services.AddSingleton<RegisterStatistics>();
        services.AddSingleton<StatisticsDesk>();
        services.AddSingleton<PreviewDesk>();
        services.AddSingleton<FindingTalk>();
        services.AddSingleton<DetailPages>();
        services.AddSingleton<ReviewDesk>();
        services.AddSingleton<AdministrationDesk>();
        services.AddSingleton<QueuePages>();
        services.AddSingleton<Bell>();
        services.AddSingleton<NameRules>();
        services.AddSingleton<INameReplacer, NameReplacer>();
        services.AddSingleton<Retention>();
        services.AddHostedService<RetentionWorker>();
        services.AddSingleton<Subscriptions>();
        services.AddSingleton<OutgoingNotices>();
        services.AddSingleton<WebhookSender>();
        services.AddSingleton<MailSender>();
        services.AddSingleton<NoticeSender>();
        services.AddSingleton<NoticeDesk>();
        services.AddHostedService<NoticeWorker>();
        services.AddHostedService<ScreeningWorker>();
        services.AddHostedService<InboxWatcher>();
        services.AddHostedService<QueueWatch>();
    }

    private static RegisterSettings Store(ServiceSettings settings) => (settings.Database.Length > 0
        ? new RegisterSettings(Engine.PostgreSql, settings.Database)
        : new RegisterSettings(Engine.Sqlite, Path.Combine(settings.Data, "register.db"))) with
    {
        Lease = TimeSpan.FromSeconds(settings.LeaseSeconds),
        MaxFailures = settings.MaxFailures,
        AcceptFailing = settings.AcceptFailing,
        OwnDecisions = settings.OwnDecisions,
        SessionIdle = TimeSpan.FromMinutes(settings.SessionIdleMinutes),
        SessionLength = TimeSpan.FromHours(settings.SessionHours),
    };

    private static void AddWeb(IServiceCollection services, ServiceSettings settings)
    {
        services.AddSingleton(_ => Written.Blocks());
        services.AddProblemDetails();
        services.AddExceptionHandler(options => options.ExceptionHandler = Refusals.WriteAsync);
        services.AddHealthChecks().AddCheck<Readiness>("register");
        services.AddOpenApi("v1", OpenApiSetup.Configure);
        services.AddRazorComponents();

        // Forms guard themselves, so nothing rests on keys that replicas would have to share and a disk would have to hold; only the way through a provider does.
        if (settings.ClientId.Length > 0)
        {
            ProviderSignIn.AddKeyRing(services);
        }
        else
        {
            services.AddDataProtection().UseEphemeralDataProtectionProvider();
        }

        services.ConfigureHttpJsonOptions(options =>
        {
            options.SerializerOptions.PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower;
            options.SerializerOptions.RespectNullableAnnotations = true;
            options.SerializerOptions.RespectRequiredConstructorParameters = true;
            options.SerializerOptions.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
            options.SerializerOptions.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower, allowIntegerValues: false));
        });
        services.Configure<HostOptions>(options => options.ShutdownTimeout = TimeSpan.FromSeconds(25));
    }

    private static void Map(WebApplication app)
    {
        app.Use(SecurityHeaders.Add);

        // Outside the handler of errors: there a refusal has the status that its caller sees.
        app.UseSerilogRequestLogging(RequestLog.Configure);
        app.Use(RequestLog.Break);
        app.UseExceptionHandler();
        app.Use(Border.Scheme);
        app.Use(Border.Texts);
        app.UseStatusCodePages(async pages => await (await PageResults.ForStatusAsync(pages.HttpContext)).ExecuteAsync(pages.HttpContext));
        app.Use(Heads.Ask);
        app.UseRouting();
        app.Use(RequestLog.Keep);
        app.Use(Heads.Answer);
        app.Use(Border.Cookies);

        // The way back from a provider is answered before anybody is known: its rate is counted by address.
        app.UseWhen(context => context.Request.Path.StartsWithSegments(ProviderSignIn.Back, StringComparison.Ordinal), way => way.UseRateLimiter());
        app.UseAuthentication();
        app.UseRateLimiter();
        app.UseAuthorization();
        app.MapHealthChecks("/healthz/live", new HealthCheckOptions { Predicate = _ => false });
        app.MapHealthChecks("/healthz/ready");
        app.MapOpenApi("/openapi/{documentName}.json");
        var api = app.MapGroup("/api/v1").ProducesProblem(StatusCodes.Status429TooManyRequests).ProducesProblem(StatusCodes.Status503ServiceUnavailable);
        api.MapChecks();
        api.MapSubmissions();
        api.MapKnowledge();
        api.MapKeys();
        api.MapAdministration();
        api.MapNotices();
        api.MapRetention();
        app.MapPages();
    }
}
