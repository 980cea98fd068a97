using Laygate.Checking;
using Laygate.Cli.Files;
using Laygate.Cli.Verbs;
using Laygate.Reading.Departures;
using Laygate.Rules.Results;

namespace Laygate.Cli.Checking;

/// <summary>The checks of a comparison: for each side and each set of settings one rule book, as <c>check</c> would open it.</summary>
internal sealed class ComparedBooks(CompareRequest request, string version)
{
    private readonly SettingsOnDisk settings = new();
    private readonly PlanTools tools = new();
    private readonly Dictionary<(string Settings, bool IsOld), (PlanCheck? Check, IReadOnlyList<Problem> Problems)> opened = [];

    /// <summary>From which kind of worse finding on the run counts as failed: as the command says, or as the settings of a plan where they are stricter. Nothing counts that the command does not ask for.</summary>
    public FailOn FailOn { get; private set; } = request.FailOn;

    /// <summary>The check for one side of a plan.</summary>
    /// <param name="input">The plan; the earlier state of a revision has the settings of the file as it is now.</param>
    /// <param name="isOld">Whether the earlier side is meant.</param>
    /// <returns>The check, or why there is none.</returns>
    public (PlanCheck? Check, IReadOnlyList<Problem> Problems) Of(PlanInput input, bool isOld)
    {
        var found = settings.For(CheckSessions.FolderOf(input));
        if (FailOn is FailOn.Fail && found?.Settings is { FailOnWarn: true })
        {
            FailOn = FailOn.Warn;
        }

        var key = (found?.File ?? string.Empty, isOld);
        if (!opened.TryGetValue(key, out var check))
        {
            opened[key] = check = Open(found, isOld ? request.OldRules : request.NewRules, new PartFilesOnDisk(isOld ? request.Since : null));
        }

        return check;
    }

    private (PlanCheck? Check, IReadOnlyList<Problem> Problems) Open(FoundSettings? found, IReadOnlyList<string> rules, PartFilesOnDisk parts)
    {
        if (found is { Problems: { Count: > 0 } wrong })
        {
            return (null, wrong);
        }

        var asked = found?.Settings;
        var (bound, _) = RuleBookOnDisk.Open([.. (asked?.Rules ?? []).Concat(rules).Distinct(StringComparer.Ordinal)]);
        if (bound.Book is null)
        {
            return (null, bound.Problems);
        }

        var departures = DepartureFiles.Load(asked?.Departures ?? [], bound.Book, new RuleFilesOnDisk());
        return departures.Problems.Count > 0
            ? (null, departures.Problems)
            : (new PlanCheck(bound.Book, new CheckSettings(asked?.Stage, request.Date, version) { SettingsFile = found?.File, Parts = parts }, departures.Departures, tools), []);
    }
}
