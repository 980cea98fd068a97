using Laygate.FuzzTests.Fuzzing.Targets;
using Laygate.ServiceTests.Shared;

namespace Laygate.FuzzTests.Fuzzing;

/// <summary>All ways into the program.</summary>
internal sealed class TargetList : IAsyncDisposable
{
    private readonly Lazy<RunningService> service = new(() => RunningService.StartAsync(null, "RequestsPerMinute=1000000").GetAwaiter().GetResult());

    /// <summary>Prepares them; the service starts with the first input for it.</summary>
    public TargetList() => All = Of(SeedFiles.Plans());

    private IReadOnlyList<Target> Of(SeedSet plans) =>
    [
        new PlanTarget(isMany: false, plans), new PlanTarget(isMany: true, plans), new RuleTarget(), new SpecificationTarget(), new SourcesTarget(), new CasesTarget(), new DepartureTarget(), new SettingsTarget(),
        new PartTarget(), new SetTarget(), new ImportTarget(ImportFile.Mapping), new ImportTarget(ImportFile.Table), new ImportTarget(ImportFile.Forecast),
        new RecordTarget(isMapping: true), new RecordTarget(isMapping: false),
        new BaselineTarget(), new ReportTarget(), new ComparisonTarget(plans), new VerificationTarget(), new HttpTarget(isJson: false, service), new HttpTarget(isJson: true, service),
        new CommandTarget("command plan", "plan.yaml", 5, SeedFiles.SmallPlans()), new CommandTarget("command settings", "laygate.yaml", 2, SeedFiles.CommandSettings()),
        new CommandTarget("command rules", "rules.yaml", 2, SeedFiles.Specifications()), new CommandTarget("command departures", "departures.yaml", 2, SeedFiles.Departures()),
        new CommandTarget("command baseline", "known.json", 2, SeedFiles.Baselines()),
    ];

    /// <summary>The targets.</summary>
    public IReadOnlyList<Target> All { get; }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        foreach (var target in All.OfType<IDisposable>())
        {
            target.Dispose();
        }

        if (service.IsValueCreated)
        {
            await service.Value.DisposeAsync();
        }
    }
}
