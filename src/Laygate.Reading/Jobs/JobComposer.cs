using System.Globalization;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Reading.Jobs;

/// <summary>A job as plans: one for what all shifts have in common, and one for each shift.</summary>
/// <param name="Whole">The job as a plan of no shift, with all runs; null where it cannot be put together.</param>
/// <param name="Shifts">Its shifts in the order of the file, each with its plan.</param>
/// <param name="Used">Files of parts, with what was taken from each.</param>
/// <param name="Problems">Why it cannot be put together.</param>
internal sealed record ComposedJob(MapToken? Whole, IReadOnlyList<(string Id, MapToken Plan)> Shifts, IReadOnlyList<UsedFile> Used, IReadOnlyList<ReadingProblem> Problems);

/// <summary>
/// Makes a plan for each shift of a job: what the job states, what the shift states over it, and of runs, joints and orders only what is the shift's.
/// A course that another shift lays stays, with the moment at which it is laid. Behind this, nothing knows of several shifts but what judges the job.
/// </summary>
internal sealed class JobComposer
{
    private readonly List<ReadingProblem> problems = [];
    private readonly MapToken job;
    private readonly IReadOnlyList<ShiftEntry> shifts;

    private JobComposer(MapToken job)
    {
        this.job = job;
        var common = job["shift"] as MapToken;
        shifts = [.. ((ListToken)job[JobKeys.Shifts]!).Items.Cast<MapToken>().Select(entry => Entry(entry, common))];
    }

    /// <summary>Puts the plans of a job together.</summary>
    /// <param name="job">A job that its schema accepts.</param>
    /// <param name="file">Its file, as it is shown.</param>
    /// <param name="files">The host's files.</param>
    /// <param name="tools">What is needed where it uses files of parts.</param>
    public static ComposedJob Compose(MapToken job, string file, IPartFiles files, PartTools tools)
    {
        var composer = new JobComposer(job);
        composer.CheckNames();
        var common = new MapToken([new MapEntry(Overlay.Key("format", job.Find(JobKeys.Job)!.Key.Span), new ScalarToken("1", ScalarStyle.Plain, job[JobKeys.Job]!.Span)), .. job.Entries.Where(entry => entry.Key.Text is not (JobKeys.Job or JobKeys.Shifts or JobKeys.Lots or "shift"))], job.Span);
        var parts = PlanComposer.Of([common, .. composer.shifts.Select(Differences)], file, files, tools);
        var plans = parts.Plans;
        composer.problems.AddRange(parts.Problems);
        if (composer.problems.Count > 0)
        {
            return new ComposedJob(null, [], parts.Used, composer.problems);
        }

        List<(string Id, MapToken Plan)> made = [.. composer.shifts.Select((shift, index) => (shift.Id.Text, parts.WithMeasures(composer.PlanOf(shift, plans[0], plans[index + 1]))))];
        var nodes = made.Sum(one => one.Plan.NodeCount);
        if (nodes > JobKeys.MostNodes)
        {
            composer.problems.Add(new ReadingProblem(
                string.Create(CultureInfo.InvariantCulture, $"Written out, the shifts hold {nodes:N0} keys and values; at most {JobKeys.MostNodes:N0} are read."), job.Find(JobKeys.Shifts)!.Key.Span, "Split the job into two."));
        }

        return new ComposedJob(parts.WithMeasures(plans[0]), made, parts.Used, composer.problems);
    }

    private static ShiftEntry Entry(MapToken entry, MapToken? common)
    {
        var own = new MapToken([.. entry.Entries.Where(one => JobKeys.Times.Contains(one.Key.Text, StringComparer.Ordinal))], entry.Span);
        return new ShiftEntry((ScalarToken)entry["id"]!, entry, common is null ? own : Overlay.Over(common, own), [.. ((ListToken)entry[JobKeys.Runs]!).Items.Cast<ScalarToken>()]);
    }

    private static MapToken Differences(ShiftEntry shift) => new(
        [.. shift.Entry.Entries.Where(entry => entry.Key.Text is not ("id" or JobKeys.Runs or JobKeys.Without) && !JobKeys.Times.Contains(entry.Key.Text, StringComparer.Ordinal))], shift.Entry.Span);

    private void CheckNames()
    {
        var runs = Names(job[JobKeys.Runs]);
        var seen = new Dictionary<string, ScalarToken>(StringComparer.Ordinal);
        foreach (var shift in shifts)
        {
            if (!seen.TryAdd(shift.Id.Text, shift.Id))
            {
                Wrong(shift.Id, $"There is another shift {TokenNames.Quote(shift.Id.Text)} in line {seen[shift.Id.Text].Span.Line.ToString(CultureInfo.InvariantCulture)}.", "Give one of the two another id.");
            }

            foreach (var run in shift.Runs.Where(run => !runs.Contains(run.Text)))
            {
                var near = NearestNames.Of(run.Text, runs);
                Wrong(run, $"There is no run {TokenNames.Quote(run.Text)} among the `runs` of the job.", near.Count > 0 ? NearestNames.Asked(near) : $"Known: {string.Join(", ", runs.Take(20).Select(name => $"`{name}`"))}.");
            }

            foreach (var key in new[] { "date", "start", "end" }.Where(key => shift.Times[key] is null))
            {
                Wrong(shift.Id, $"The shift {TokenNames.Quote(shift.Id.Text)} has no `{key}`.", key is "date" ? "Write for example `date: 2031-06-12`." : $"State it here, or for every shift under `shift` of the job: `{key}: {(key is "start" ? "20:45" : "04:30")}`.");
            }

            foreach (var key in shift.Entry.Entries.Select(entry => entry.Key).Where(key => JobKeys.OfTheJob.Contains(key.Text, StringComparer.Ordinal)))
            {
                Wrong(key, $"A shift cannot state {TokenNames.Quote(key.Text)}.", key.Text is "shift" ? "Write date and times beside the id of the shift." : "State it for the job.");
            }

            if ((shift.Entry["plan"] as MapToken)?.Find("id") is { } named)
            {
                Wrong(named.Key, "The id of a shift's plan follows from the job and the shift.", "Leave it out.");
            }
        }
    }

    private void Wrong(ScalarToken at, string message, string hint) => problems.Add(new ReadingProblem(message, at.Span, hint));

    private static HashSet<string> Names(YamlToken? list) => (list as ListToken)?.Items.Select(PositionedToken.Name).OfType<string>().ToHashSet(StringComparer.Ordinal) ?? [];

    private MapToken PlanOf(ShiftEntry shift, MapToken common, MapToken differences)
    {
        var plan = Overlay.Over(common, differences);
        plan = Overlay.Without(plan, (shift.Entry[JobKeys.Without] as ListToken)?.Items.OfType<ScalarToken>() ?? [], problems);
        var ids = shift.Runs.Select(run => run.Text).ToHashSet(StringComparer.Ordinal);
        var identity = (MapToken)plan["plan"]!;
        plan = Overlay.With(plan, "plan", Named(identity, shift));
        plan = Overlay.With(plan, "shift", shift.Times);
        plan = Overlay.With(plan, JobKeys.Runs, RunsOf(plan, shift));
        plan = Overlay.With(plan, "joints", ShiftJoints.Of(plan["joints"], ids, Earlier(shift), Names(job[JobKeys.Runs])));
        return Overlay.With(plan, "courses", new ShiftCourses(shifts, common).Of(plan["courses"], shift, differences["courses"]));
    }

    // So that neither a list of reports nor a card leaves open which shift it is about.
    private static MapToken Named(MapToken identity, ShiftEntry shift)
    {
        var named = Overlay.With(identity, "id", new ScalarToken($"{(identity["id"] as ScalarToken)?.Text}-{shift.Id.Text}", ScalarStyle.Plain, shift.Id.Span));
        return identity["title"] is ScalarToken { IsNull: false } title ? Overlay.With(named, "title", title with { Text = $"{title.Text}, shift {shift.Id.Text}", Style = ScalarStyle.Quoted }) : named;
    }

    private HashSet<string> Earlier(ShiftEntry shift) =>
        shifts.Where(other => other.Begins < shift.Begins).SelectMany(other => other.Runs).Select(run => run.Text).ToHashSet(StringComparer.Ordinal);

    private static ListToken? RunsOf(MapToken plan, ShiftEntry shift)
    {
        if (plan[JobKeys.Runs] is not ListToken all)
        {
            return null;
        }

        var byId = all.Items.ToLookup(PositionedToken.Name, StringComparer.Ordinal);
        return new ListToken([.. shift.Runs.SelectMany(run => byId[run.Text].Take(1))], all.Span);
    }
}
