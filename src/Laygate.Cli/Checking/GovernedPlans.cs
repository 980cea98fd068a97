using Laygate.Cli.Arguments;
using Laygate.Cli.Files;
using Laygate.Cli.Output;
using Laygate.Reading.Parts;
using Laygate.Rules.Results;

namespace Laygate.Cli.Checking;

/// <summary>A plan and the session that checks it.</summary>
/// <param name="Input">The plan.</param>
/// <param name="Governed">A session with a rule book.</param>
internal sealed record GovernedPlan(PlanInput Input, GovernedSession Governed)
{
    /// <summary>Files of parts that it uses, as full paths.</summary>
    /// <remarks>What has no length, such as a pipe, is not read for this: it can be read but once.</remarks>
    public IReadOnlyList<string> Uses => Input.Identity is not "-" && new FileInfo(Input.Identity) is { Exists: true, Length: > 0 } && PlanBytes.Read(Input).Bytes is { } bytes
        ? [.. WholePlan.FilesOf(Input.Name, bytes, new PartFilesOnDisk()).Select(Path.GetFullPath)]
        : [];

    /// <summary>Finds its earlier state; null where none is compared.</summary>
    public Func<EarlierPlan>? Earlier { get; init; }

    /// <summary>Reads and checks it, and compares it with its earlier state where there is one and both can be read.</summary>
    public (FileResult Result, ComparisonResult? Changes) Check()
    {
        var (bytes, problem) = PlanBytes.Read(Input);
        if (bytes is null)
        {
            return (new FileResult(Input.Name, [], [problem!]), null);
        }

        var result = Governed.Session.Check!(Input.Name, bytes);
        return (result, Earlier is null || result.Problems.Count > 0 ? null : Compare(Earlier(), bytes));
    }

    private ComparisonResult? Compare(EarlierPlan earlier, byte[] bytes) => earlier.Problem is { } problem
        ? new ComparisonResult(earlier.Name, Input.Name, [], [problem])
        : Governed.Session.Compare?.Invoke(earlier.Name, earlier.Bytes, Input.Name, bytes);
}

/// <summary>Finds the plans of a run.</summary>
internal static class GovernedPlans
{
    /// <summary>The plans in the given order; those whose rules could not be read are left out, the sessions know why.</summary>
    /// <exception cref="ArgumentProblem">No plan is named, or there is no such revision.</exception>
    public static IReadOnlyList<GovernedPlan> Of(CheckSessions sessions, CheckArguments arguments, Streams streams)
    {
        var inputs = new PlanFiles(streams.Input, arguments.StdinName).Find(sessions.Plans());
        // A pipe can be read but once, and the only plan is asked for twice: beside the rules, and by the check.
        inputs = inputs is [{ Read: { } read } only] ? [Once(only, read)] : inputs;
        var all = inputs
            .Select(input => new GovernedPlan(input, sessions.For(input, inputs.Count == 1)))
            .Where(plan => plan.Governed.Session.Check is not null)
            .ToList();
        if (arguments.ChangedSince is not { } revision)
        {
            return all;
        }

        var changed = new Revisions().ChangedSince(revision);
        var chosen = all.FindAll(plan => plan.Input.Problem is not null || IsTouched(plan, changed));
        streams.Error.WriteLine(FormattableString.Invariant($"laygate: {chosen.Count} of {all.Count} plans changed since {revision}."));
        return chosen;
    }

    private static PlanInput Once(PlanInput input, Func<byte[]> read)
    {
        var bytes = new Lazy<byte[]>(read);
        return input with { Read = () => bytes.Value };
    }

    private static bool IsTouched(GovernedPlan plan, IReadOnlySet<string> changed) =>
        changed.Contains(plan.Input.Identity)
        || plan.Uses.Any(changed.Contains)
        || plan.Governed.RestsOn.Any(path => changed.Contains(path) || (Directory.Exists(path) && changed.Any(file => file.StartsWith(path + Path.DirectorySeparatorChar, StringComparison.Ordinal))));
}
