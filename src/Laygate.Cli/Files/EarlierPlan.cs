using Laygate.Cli.Arguments;
using Laygate.Rules.Results;

namespace Laygate.Cli.Files;

/// <summary>The earlier state of one input.</summary>
/// <param name="Name">Its name, as it is to be shown.</param>
/// <param name="Bytes">Its bytes; null when there was no such file, or when it cannot be read.</param>
/// <param name="Problem">Why it cannot be read; null when it can.</param>
internal sealed record EarlierPlan(string Name, byte[]? Bytes, Problem? Problem);

/// <summary>Finds earlier states: another file for the only plan of a run, or a git revision for any number of plans.</summary>
internal sealed class EarlierPlans
{
    private readonly string previous;
    private readonly Revisions? revisions;

    /// <summary>Prepares it.</summary>
    /// <param name="previous">Name of a file; a git revision where there is no such file.</param>
    /// <param name="plans">How many plans are checked.</param>
    /// <exception cref="ArgumentProblem">It is neither, or one file for several plans.</exception>
    public EarlierPlans(string previous, int plans)
    {
        this.previous = previous;
        if (!File.Exists(previous))
        {
            revisions = Repository(previous);
            revisions.Require(previous);
        }
        else if (plans > 1)
        {
            throw new ArgumentProblem("--previous names one file, but several plans are checked. Name a git revision, or check one plan.");
        }
    }

    /// <summary>How to find the earlier state of an input, when it is asked for.</summary>
    /// <exception cref="ArgumentProblem">Standard input has none; there is no such revision.</exception>
    public Func<EarlierPlan> Of(PlanInput input)
    {
        if (revisions is null)
        {
            return OfFile;
        }

        if (input.Identity is "-")
        {
            throw new ArgumentProblem("Standard input has no earlier revision: name a file with --previous.");
        }

        return () => new EarlierPlan($"{input.Name} at {previous}", revisions.Show(previous, input.Identity), null);
    }

    private EarlierPlan OfFile()
    {
        var (bytes, problem) = PlanBytes.Read(new PlanInput(previous, Path.GetFullPath(previous), () => File.ReadAllBytes(previous), null));
        return new EarlierPlan(previous, bytes, problem);
    }

    private static Revisions Repository(string previous)
    {
        try
        {
            return new Revisions();
        }
        catch (ArgumentProblem problem)
        {
            throw new ArgumentProblem($"There is no file `{previous}` for --previous. {problem.Message}");
        }
    }
}
