using Laygate.Cli.Arguments;
using Laygate.Cli.Files;
using Laygate.Model.Plans;
using Laygate.Reading.RuleFiles;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;

namespace Laygate.Cli.Checking;

/// <summary>A rule book that is ready for the plans under one set of settings, and from when they count as failed.</summary>
/// <param name="Session">The rule book, or why there is none.</param>
/// <param name="FailOn">From which kind of finding on a plan counts as failed.</param>
internal sealed record GovernedSession(CheckSession Session, FailOn FailOn)
{
    /// <summary>Whether what is not assessed counts like a failure.</summary>
    public bool NotAssessedFails { get; init; }

    /// <summary>Files and folders besides the plan on which its findings rest, as full paths.</summary>
    public IReadOnlyList<string> RestsOn { get; init; } = [];
}

/// <summary>Opens one rule book for each set of settings that a run meets. Settings and command are laid over each other so that the stricter holds.</summary>
internal sealed class CheckSessions(ICheckPipeline pipeline, CheckArguments arguments, string version)
{
    private readonly SettingsOnDisk settings = new();
    private readonly Dictionary<string, GovernedSession> opened = new(StringComparer.Ordinal);

    /// <summary>Why rules, departures or settings could not be read.</summary>
    public IReadOnlyList<Problem> Problems => [.. opened.Values.SelectMany(governed => governed.Session.Problems).Distinct()];

    /// <summary>The rules in force for any plan of the run, each once.</summary>
    public IReadOnlyList<RuleInForce> RulesInForce() =>
        [.. opened.OrderBy(governed => governed.Key, StringComparer.Ordinal).SelectMany(governed => governed.Value.Session.Rules()).DistinctBy(rule => rule.Id, StringComparer.Ordinal)];

    /// <summary>The plans of the run: those of the command, or those that the settings of this folder name.</summary>
    /// <exception cref="ArgumentProblem">Neither names one.</exception>
    public IReadOnlyList<string> Plans()
    {
        if (arguments.Files.Count > 0)
        {
            return arguments.Files;
        }

        var here = settings.For(Directory.GetCurrentDirectory());
        if (here is { Problems.Count: > 0 })
        {
            _ = For(Directory.GetCurrentDirectory());
            return [];
        }

        return here?.Settings is { Plans.Count: > 0 } named
            ? named.Plans
            : throw new ArgumentProblem("No file is named. Write for example: laygate check plan.yaml");
    }

    /// <summary>The session for a plan.</summary>
    /// <param name="input">The plan.</param>
    /// <param name="isOnly">Whether the run has no other.</param>
    public GovernedSession For(PlanInput input, bool isOnly) => For(FolderOf(input), isOnly && input.Identity is not "-" ? input : null);

    /// <summary>The folder whose settings hold for a plan; for standard input the folder of the process.</summary>
    public static string FolderOf(PlanInput input) => input.Identity is "-"
        ? Directory.GetCurrentDirectory()
        : Path.GetDirectoryName(Path.GetFullPath(input.Identity)) ?? Directory.GetCurrentDirectory();

    private GovernedSession For(string folder, PlanInput? only = null)
    {
        var found = settings.For(folder);
        var key = found?.File ?? string.Empty;
        if (!opened.TryGetValue(key, out var session))
        {
            opened[key] = session = Open(found, only);
        }

        return session;
    }

    private GovernedSession Open(FoundSettings? found, PlanInput? only)
    {
        if (found is { Problems: { Count: > 0 } problems })
        {
            return new GovernedSession(new CheckSession(null, problems), FailOn.Fail);
        }

        var asked = found?.Settings;
        var request = new CheckRequest(
            [.. (asked?.Rules ?? []).Concat(arguments.Rules).Distinct(StringComparer.Ordinal)], Later(asked?.Stage, arguments.Stage), arguments.Date, version)
        {
            Departures = arguments.Departures.Count > 0 ? arguments.Departures : asked?.Departures ?? [],
            Remedies = arguments.Remedies,
            Outlook = arguments.Outlook || arguments.ForPage,
            Page = arguments.ForPage,
            Quick = arguments.Quick,
            Baseline = arguments.WithoutBaseline ? null : arguments.Baseline ?? asked?.Baseline,
            Settings = found?.File,
            Only = only,
            Since = arguments.Previous is { } previous && !File.Exists(previous) ? previous : null,
        };
        return new GovernedSession(pipeline.Open(request), Stricter(asked, arguments.FailOn))
        {
            NotAssessedFails = asked?.NotAssessedFails == true,
            RestsOn = RestsOn(request),
        };
    }

    private static List<string> RestsOn(CheckRequest request) =>
        [.. request.Rules.Concat(request.Departures).Append(request.Baseline).Append(request.Settings).OfType<string>().Where(Path.Exists).Select(Path.GetFullPath)];

    private static Stage? Later(Stage? one, Stage? other) => one > other || other is null ? one : other;

    private static FailOn Stricter(RepositorySettings? asked, FailOn? command) => (asked, command) switch
    {
        ({ FailOnWarn: true }, _) or (_, FailOn.Warn) => FailOn.Warn,
        (null, { } own) => own,
        _ => FailOn.Fail,
    };
}
