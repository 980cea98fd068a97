using System.Text;
using System.Text.RegularExpressions;
using Laygate.Checking;
using Laygate.Reading.Parts;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Plans;

/// <summary>A job of several shifts: each shift is checked as its plan would be, and nothing of one shift is in another.</summary>
public sealed partial class JobTests
{
    private static readonly PlanTools Tools = new();

    [Theory]
    [InlineData("rules/bases/single.yaml")]
    [InlineData("rules/bases/pair.yaml")]
    [InlineData("examples/county-route-us.yaml")]
    [InlineData("examples/moor-road-thin-overlay.yaml")]
    [InlineData("examples/quay-road-hot-on-hot.yaml")]
    public void A_job_of_one_shift_checks_to_the_findings_of_its_plan(string path)
    {
        var plan = Encoding.UTF8.GetString(Repository.Bytes(path));
        var job = AsJob(plan);
        var result = Run(job, path);
        var shift = Findings(result.Reports[1]);
        Assert.Equal(Findings(Assert.Single(Run(plan, path).Reports)), shift, StringComparer.Ordinal);

        // And so does the plan that `expand` prints of the shift.
        var (text, _, problems) = WholePlan.Of(path, Encoding.UTF8.GetBytes(job), new Repository.PartsOfRepository(), "only");
        Assert.Empty(problems);
        Assert.Equal(shift, Findings(Assert.Single(Run(text!).Reports)), StringComparer.Ordinal);
        Assert.Equal(result.Reports[1].PlanId, Run(text!).Reports[0].PlanId);
    }

    [Fact]
    public void Each_shift_of_a_job_checks_to_the_findings_of_the_plan_that_is_printed_of_it()
    {
        var bytes = Repository.Bytes("rules/bases/job.yaml");
        var result = Run(Encoding.UTF8.GetString(bytes));
        Assert.Equal(4, result.Reports.Count);
        foreach (var (shift, report) in result.Job!.Shifts.Zip(result.Reports.Skip(1)))
        {
            var (text, _, _) = WholePlan.Of("job.yaml", bytes, new NoPartFiles(), shift.Id);
            Assert.Equal(Findings(Assert.Single(Run(text!).Reports)), Findings(report), StringComparer.Ordinal);
        }
    }

    [Fact]
    public void The_summary_says_when_each_shift_lays_what()
    {
        var job = Run(Encoding.UTF8.GetString(Repository.Bytes("rules/bases/job.yaml"))).Job!;
        Assert.Equal(["night-1", "night-2", "night-3"], job.Shifts.Select(shift => shift.Id), StringComparer.Ordinal);
        // 2 · 3.6 m · 1000 m · 60 mm · 2.45 t/m3 and 3.5 m · 1000 m · 40 mm · 2.40 t/m3, by hand.
        Assert.Equal([1058.4, 336, 336], job.Shifts.Select(shift => Math.Round(shift.Mass!.Number!.Value, 6)));
        Assert.Equal([("2031-06-09", "ac16", 1058.4), ("2031-06-10", "ac11", 336), ("2031-06-11", "ac11", 336)], job.Days.Select(day => ($"{day.Day:yyyy-MM-dd}", day.Mix, Math.Round(day.Mass.Number!.Value, 6))));
        Assert.Equal(new DateTimeOffset(2031, 6, 10, 3, 0, 0, TimeSpan.FromHours(2)), job.Shifts[0].Ends);
    }

    [Fact]
    public void The_summary_says_which_lot_is_open_after_which_shift()
    {
        var lot = Assert.Single(Run(Encoding.UTF8.GetString(Repository.Bytes("rules/bases/job.yaml"))).Job!.Lots);
        // 336 t a night, as above; in sublots of 200 t two are begun after the first night and four after the second, by hand.
        Assert.Equal([("night-2", 336, 2, 2, true), ("night-3", 672, 4, 0, false)], lot.After.Select(after => (after.Shift, Math.Round(after.SoFar!.Number!.Value, 6), after.Sublots!.Value, after.TestsLeft!.Value, after.IsOpen)));
        Assert.Equal("night-3", lot.EndsIn);
    }

    [Fact]
    public void What_one_lot_has_taken_of_a_shift_is_not_there_for_the_next()
    {
        var text = Encoding.UTF8.GetString(Repository.Bytes("rules/bases/job.yaml"));
        text = text[..text.IndexOf("lots:", StringComparison.Ordinal)] + """
            lots:
              - { id: two, course: surface, begins_in: night-2, ends_in: night-3 }
              - { id: one, course: surface, begins_in: night-2, size: 200 t }
              - { id: by-length, course: surface, test: cores, begins_in: night-2, size: 1500 m }
            tests: [{ id: cores, kind: density }]

            """;
        var lots = Run(text.Replace("{ id: two, course: surface, begins_in: night-2,", "{ id: two, course: surface, begins_in: night-3,", StringComparison.Ordinal)).Job!.Lots;
        // The first is full with 200 t of the 336 t of its night; the other has the third night for itself; a lot for another test is none of their business.
        Assert.Equal([("night-2", 200, false)], Steps(lots[1]));
        Assert.Equal([("night-3", 336, false)], Steps(lots[0]));
        Assert.Equal([("night-2", 1000, true), ("night-3", 1500, false)], Steps(lots[2]));

        // Begun in one night, the one that the job lists first has it all.
        Assert.Equal([("night-2", 336, true), ("night-3", 672, false)], Steps(Run(text).Job!.Lots[0]));
        Assert.Equal([("night-2", 0, true), ("night-3", 0, true)], Steps(Run(text).Job!.Lots[1]));
    }

    private static IEnumerable<(string, double, bool)> Steps(LotOfJob lot) => lot.After.Select(after => (after.Shift, Math.Round(after.SoFar!.Number!.Value, 6), after.IsOpen));

    [Fact]
    public void No_finding_of_a_shift_is_about_a_course_that_another_one_lays()
    {
        var result = Run(Encoding.UTF8.GetString(Repository.Bytes("rules/bases/job.yaml")));
        Assert.DoesNotContain(result.Reports[1].Findings, finding => finding.Address is "course:surface" or "mix:ac11");
        Assert.DoesNotContain(result.Reports[2].Findings, finding => finding.Address is "course:binder" or "mix:ac16");
        Assert.Contains(result.Reports[2].Findings, finding => finding.Rule is "JOB-002" && finding.Status == Status.Pass);
        Assert.All(result.Reports[0].Findings, finding => Assert.StartsWith("JOB-", finding.Rule, StringComparison.Ordinal));
    }

    // Whatever a finding says but where it stands; the id of the plan of a shift is its own.
    private static List<string> Findings(Report report) => [.. report.Findings.Select(finding =>
        $"{finding.Rule} {finding.Address} {finding.Outcome} {finding.Status} {finding.Value} {finding.Limit?.Low} {finding.Limit?.High} {string.Join(' ', finding.Missing)} {string.Join(' ', finding.Notes.Where(note => !note.Arguments.Any(argument => argument.Name is "at")).Select(note => note.Id))}")];

    private static string AsJob(string plan)
    {
        var shift = Block().Match(plan);
        var inline = Inline().Match(plan);
        Assert.True(shift.Success || inline.Success);
        var keys = inline.Success ? inline.Groups["keys"].Value.Trim() : string.Join(", ", shift.Groups["keys"].Value.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Trim()));
        var runs = string.Join(", ", EachRun().Matches(RunsBlock().Match(plan).Value).Select(run => run.Groups["id"].Value));
        return plan.Replace("format: 1\n", "job: 1\n", StringComparison.Ordinal).Replace(inline.Success ? inline.Value : shift.Value, string.Empty, StringComparison.Ordinal)
            + $"\nshifts:\n  - {{ id: only, runs: [{runs}], {keys} }}\n";
    }

    private static FileResult Run(string text, string file = "plan.yaml")
    {
        var result = new PlanCheck(Repository.Bound(), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true, Parts = new Repository.PartsOfRepository() }, tools: Tools).Run(file, Encoding.UTF8.GetBytes(text));
        Assert.True(result.Problems.Count == 0, string.Join('\n', result.Problems.Select(problem => $"{problem.Position?.Line}: {problem.Message}")));
        return result;
    }

    [GeneratedRegex(@"^shift:\n(?<keys>(?:  .*\n)+)", RegexOptions.Multiline, 1000)]
    private static partial Regex Block();

    [GeneratedRegex(@"^shift: \{(?<keys>.*)\}\n", RegexOptions.Multiline, 1000)]
    private static partial Regex Inline();

    [GeneratedRegex(@"^runs:\n(?:  .*\n)+", RegexOptions.Multiline, 1000)]
    private static partial Regex RunsBlock();

    [GeneratedRegex(@"^  - (?:\{ )?id: (?<id>[^\s,]+)", RegexOptions.Multiline, 1000)]
    private static partial Regex EachRun();
}
