using System.Globalization;
using System.Text;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Reading.Jobs;

/// <summary>A job of several shifts is read as a plan for each shift, each value with the line at which it stands.</summary>
public sealed class JobReaderTests
{
    private const string Job = """
        job: 1
        plan: { id: ferry-lane, stage: concept }
        shift: { start: "20:00", end: "03:00", zone: "+02:00" }
        courses:
          - { id: binder, mix: ac16, thickness: 60 mm, tonnage: 1100 t }
          - { id: surface, mix: ac11, thickness: 40 mm, tonnage: 700 t }
        runs:
          - { id: binder-left, courses: [binder], from: 0 m, to: 900 m, width: 3.5 m }
          - { id: binder-right, courses: [binder], from: 0 m, to: 900 m, width: 3.5 m }
          - { id: top, courses: [surface], from: 0 m, to: 900 m, width: 7 m }
        rolling: { rollers: [{ id: r1, mass: 10 t }, { id: r2, mass: 8 t }] }
        joints:
          - { id: middle, kind: longitudinal, course: binder, run: binder-right, beside: binder-left }
          - { id: start, kind: transverse, course: surface, run: top }
        opening: { after: 3 h }
        shifts:
          - { id: n1, date: 2031-06-09, runs: [binder-left], courses: [{ id: binder, tonnage: 560 t }] }
          - { id: n2, date: 2031-06-10, end: "04:30", runs: [binder-right], without: ["roller:r2"] }
          - id: n3
            date: 2031-06-12
            start: "19:00"
            runs: [top]
            opening: { released_by: R. Moss }
            rolling: { rollers: [{ id: r2, mass: 9 t }, { id: r3, mass: 7 t }] }
        """;

    private const string Lots = "\nlots:\n  - { id: one, course: binder, begins_in: n1, ends_in: n2, size: 1500 t, sublot: 300 t, tests: 5 }";

    private static readonly PlanReader Reader = new();

    [Fact]
    public void Each_shift_has_its_own_times_runs_and_id()
    {
        var read = Read(Job);
        Assert.Equal(["n1", "n2", "n3"], read.Job!.Shifts, StringComparer.Ordinal);
        Assert.Equal(["ferry-lane-n1", "ferry-lane-n2", "ferry-lane-n3"], read.Plans.Select(plan => plan.Plan.Identity.Id), StringComparer.Ordinal);
        Assert.Equal([new DateOnly(2031, 6, 9), new(2031, 6, 10), new(2031, 6, 12)], read.Plans.Select(plan => plan.Plan.Shift!.Date!.Value));
        Assert.Equal([new TimeOnly(3, 0), new(4, 30), new(3, 0)], read.Plans.Select(plan => plan.Plan.Shift!.End!.Value));
        Assert.Equal(["binder-left", "binder-right", "top"], read.Plans.SelectMany(plan => plan.Plan.Runs).Select(run => run.Id), StringComparer.Ordinal);
    }

    [Fact]
    public void Courses_of_other_shifts_say_when_they_are_laid()
    {
        var plans = Read(Job).Plans;
        // On the third night the binder is there since the second, which ended last; on the first the surface is still to come.
        Assert.Equal("2031-06-11T04:30", At(plans[2], 0));
        Assert.Equal("2031-06-13T03:00", At(plans[0], 1));
        Assert.Null(plans[0].Plan.Courses[0].LaidAt);
        Assert.Null(plans[1].Plan.Courses[0].LaidAt);
        Assert.Equal(18, plans[2].Positions.Of("course:binder", "laid_at").Line); // Where the date of that shift stands.
    }

    [Fact]
    public void A_course_that_two_later_shifts_lay_is_there_from_the_first_of_them()
    {
        var text = Job.Replace("\nrolling: { rollers: [{ id: r1", "\n  - { id: top-2, courses: [surface], from: 900 m, to: 1000 m, width: 7 m }\nrolling: { rollers: [{ id: r1", StringComparison.Ordinal);
        Assert.Equal("2031-06-13T03:00", At(Read(text + "\n  - { id: n4, date: 2031-06-14, runs: [top-2] }").Plans[0], 1));
    }

    [Fact]
    public void Measures_that_apply_are_those_of_each_shift()
    {
        var text = Job.Replace("plan: { id", "uses: [firm.yaml]\nplan: { id", StringComparison.Ordinal).Replace("opening: { after", "measures: [that-apply]\nopening: { after", StringComparison.Ordinal)
            .Replace("runs: [binder-right],", "runs: [binder-right], measures: [{ id: own, kind: induction }], supply: { feeder: { id: f } },", StringComparison.Ordinal);
        var read = Reader.Read("job.yaml", Encoding.UTF8.GetBytes(text), new OneFile("parts: 1\nmeasures: [{ id: always }, { id: zones, applies_when: { feeder: yes } }]\n"));
        Assert.Empty(read.Problems);
        Assert.Equal(["always", "always zones own", "always"], read.Plans.Select(plan => string.Join(' ', plan.Plan.Measures.Select(measure => measure.Id))), StringComparer.Ordinal);
        Assert.Equal(["measures/always", "measures/zones"], read.Plans[0].Uses[0].Parts, StringComparer.Ordinal);
    }

    // 400 pavers of 100 stops each are more than 50,000 keys and values; the other two shifts name none.
    [Fact]
    public void A_part_that_one_shift_uses_again_and_again_cannot_grow_the_job_beyond_its_bounds()
    {
        var parts = $"parts: 1\npavers: [{{ id: p1, stops: [{string.Join(", ", Enumerable.Range(0, 100).Select(number => $"{{ id: s{number}, length: 1 min }}"))}] }}]\n";
        var many = string.Join(", ", Enumerable.Range(0, 400).Select(number => $"{{ part: p1, id: q{number} }}"));
        var text = Job.Replace("plan: { id", "uses: [firm.yaml]\nplan: { id", StringComparison.Ordinal).Replace("runs: [binder-right],", $"runs: [binder-right], pavers: [{many}],", StringComparison.Ordinal);
        Assert.Contains(Reader.Read("job.yaml", Encoding.UTF8.GetBytes(text), new OneFile(parts)).Problems, problem => problem.Message.Contains("more than 50,000 keys", StringComparison.Ordinal));
    }

    [Fact]
    public void A_file_that_only_one_shift_takes_a_part_from_is_a_file_of_the_job()
    {
        var files = new OneFile("parts: 1\nrollers: [{ id: r7, mass: 9 t }]\n") { IsEverywhere = true };
        Assert.Empty(WholePlan.FilesOf("job.yaml", Encoding.UTF8.GetBytes(Job), files));
        var text = Job.Replace("{ id: r3, mass: 7 t }", "r7", StringComparison.Ordinal);
        Assert.Equal(["firm.yaml"], WholePlan.FilesOf("job.yaml", Encoding.UTF8.GetBytes(text), files), StringComparer.Ordinal);
    }

    [Fact]
    public void What_a_shift_states_goes_first()
    {
        var plans = Read(Job).Plans;
        Assert.Equal("R. Moss", plans[2].Plan.Opening!.ReleasedBy);
        Assert.Equal(3, plans[2].Plan.Opening!.After!.Number); // A group is put together key by key.
        Assert.Equal([("r1", 10), ("r2", 9), ("r3", 7)], plans[2].Plan.Rolling!.Rollers.Select(roller => (roller.Id, roller.Mass!.Number))); // Entries by their ids.
        Assert.Equal(["r1"], plans[1].Plan.Rolling!.Rollers.Select(roller => roller.Id), StringComparer.Ordinal);
    }

    [Fact]
    public void The_order_of_a_course_that_several_shifts_lay_is_that_of_the_job()
    {
        var plans = Read(Job).Plans;
        Assert.Equal(560, plans[0].Plan.Courses[0].Tonnage!.Number); // Its own.
        Assert.Null(plans[1].Plan.Courses[0].Tonnage);
        Assert.Equal(700, plans[2].Plan.Courses[1].Tonnage!.Number); // Only this shift lays it.
    }

    [Fact]
    public void A_joint_between_two_shifts_is_made_by_the_later_one()
    {
        var plans = Read(Job).Plans;
        Assert.Empty(plans[0].Plan.Joints);
        Assert.Equal([("middle", "binder-right", null)], plans[1].Plan.Joints.Select(joint => (joint.Id, joint.Run, joint.Beside)));
        Assert.Equal([("start", "top", null)], plans[2].Plan.Joints.Select(joint => (joint.Id, joint.Run, joint.Beside)));
    }

    [Fact]
    public void Each_value_stands_where_it_was_written()
    {
        var read = Read(Job);
        Assert.Equal(23, read.Plans[2].Positions.Of("opening", "released_by").Line);
        Assert.Equal(15, read.Plans[2].Positions.Of("opening", "after").Line);
        Assert.Equal(18, read.Plans[1].Positions.Of("shift", "end").Line);
        Assert.Equal(3, read.Plans[0].Positions.Of("shift", "end").Line);
        Assert.Equal(18, read.Job!.Whole.Positions.Of("job-shift:n2", "date").Line);
        Assert.Equal(19, read.Job.Whole.Positions.Of("interval:n1+n3").Line);
    }

    [Fact]
    public void Lots_are_of_the_job_and_no_key_of_a_shift()
    {
        var read = Read(Job + Lots);
        var lot = Assert.Single(read.Job!.Lots);
        Assert.Equal(("one", "binder", "n1", "n2", 1500, 300, 5), (lot.Id, lot.Course, lot.BeginsIn, lot.EndsIn, lot.Size!.Number, lot.Sublot!.Number, lot.Tests));
        Assert.Equal(26, read.Job.Whole.Positions.Of("job-lot:one", "size").Line);
        Assert.All(read.Plans, plan => Assert.Null(plan.Root.Find("lots")));
        Assert.Empty(Read(Job).Job!.Lots);
    }

    [Theory]
    [InlineData("course: binder,", "course: bindr,", "There is no course among the `courses` of the job with the id `bindr`. Did you mean `binder`?")]
    [InlineData("course: binder,", "course: gravel,", "with the id `gravel`. Known: `binder`, `surface`.")]
    [InlineData("course: binder,", "course: binder, test: cores,", "with the id `cores`. State it first.")]
    [InlineData("begins_in: n1", "begins_in: n7", "There is no shift in the job with the id `n7`.")]
    [InlineData("ends_in: n2", "ends_in: n7", "There is no shift in the job with the id `n7`.")]
    [InlineData("course: binder,", "course: binder, test: cores,", "There is no test among the `tests` of the job with the id `cores`.")]
    [InlineData("size: 1500 t", "size: 0 t", "`size` of a lot is more than nothing.")]
    [InlineData("size: 1500 t", "size: 1500", "unit")]
    [InlineData("sublot: 300 t", "sublot: 300 m", "`size` and `sublot` of a lot are both masses or both lengths.")]
    [InlineData("tests: 5", "tests: 0", "at least 1")]
    [InlineData("tests: 5", "testz: 5", "testz")]
    [InlineData("tests: 5 }", "tests: 5 }\n  - { id: one, course: surface, begins_in: n3 }", "There is another lot `one` in line 26.")]
    public void A_slip_in_a_lot_is_told_with_its_line(string old, string @new, string said)
    {
        var text = Job + Lots.Replace(old, @new, StringComparison.Ordinal);
        var problems = Reader.Read("job.yaml", Encoding.UTF8.GetBytes(text), new NoPartFiles()).Problems;
        Assert.Contains(problems, problem => problem.Position!.Line >= 26 && $"{problem.Message} {problem.Hint}".Contains(said, StringComparison.Ordinal));
    }

    [Fact]
    public void A_shift_states_no_lots()
    {
        var text = Job.Replace("opening: { released_by: R. Moss }", "lots: [{ id: a, course: surface, begins_in: n3 }]", StringComparison.Ordinal);
        var problem = Assert.Single(Reader.Read("job.yaml", Encoding.UTF8.GetBytes(text), new NoPartFiles()).Problems);
        Assert.Contains("A shift cannot state `lots`.", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("runs: [binder-right]", "runs: [binder-rigth]", 18, "There is no run `binder-rigth` among the `runs` of the job. Did you mean `binder-right`?")]
    [InlineData("id: n2", "id: n1", 18, "There is another shift `n1` in line 17. Give one of the two another id.")]
    [InlineData("date: 2031-06-10, ", "", 18, "The shift `n2` has no `date`. Write for example `date: 2031-06-12`.")]
    [InlineData("date: 2031-06-10, ", "date: 2031-06-31, ", 18, "The calendar has no such day")]
    [InlineData("\"roller:r2\"", "\"roller:r9\"", 18, "The job has nothing that is called `roller:r9`. Did you mean `roller:r1` or `roller:r2`?")]
    [InlineData("\"roller:r2\"", "everything", 18, "The job has nothing that is called `everything`.")]
    [InlineData("opening: { released_by: R. Moss }", "openning: { released_by: R. Moss }", 23, "openning")]
    [InlineData("opening: { released_by: R. Moss }", "shift: { start: \"21:00\" }", 23, "A shift cannot state `shift`. Write date and times beside the id of the shift.")]
    [InlineData("opening: { released_by: R. Moss }", "plan: { id: other }", 23, "The id of a shift's plan follows from the job and the shift.")]
    [InlineData("runs: [top]", "runs: []", 22, "empty list")]
    [InlineData("runs: [top]", "runs: [top, top]", 22, "repeats entry 1")]
    [InlineData("thickness: 40 mm", "thickness: 40", 6, "unit")]
    [InlineData("shift: { start: \"20:00\", end: \"03:00\"", "shift: { start: \"20:00\"", 17, "The shift `n1` has no `end`.")]
    [InlineData("plan: { id: ferry-lane, stage: concept }", "plan: { id: ferry-lane, stage: concept }\nuses: [parts.yaml]", 3, "cannot be used")]
    [InlineData("job: 1", "job: 2", 1, "1")]
    public void A_slip_is_told_with_its_line(string old, string @new, int line, string said)
    {
        var problems = Reader.Read("job.yaml", Encoding.UTF8.GetBytes(Replaced(old, @new)), new NoPartFiles()).Problems;
        Assert.NotEmpty(problems);
        Assert.Contains(problems, problem => problem.Position!.Line == line && $"{problem.Message} {problem.Hint}".Contains(said, StringComparison.Ordinal));
    }

    [Fact]
    public void A_job_has_at_most_forty_shifts()
    {
        string Shifts(int count) => Job[..Job.IndexOf("  - { id: n1", StringComparison.Ordinal)]
            + string.Concat(Enumerable.Range(1, count).Select(number => string.Create(CultureInfo.InvariantCulture, $"  - {{ id: n{number}, date: {new DateOnly(2031, 6, 1).AddDays(number):yyyy-MM-dd}, runs: [top] }}\n")));
        Assert.Equal(40, Read(Shifts(40)).Plans.Count);
        var problem = Assert.Single(Reader.Read("job.yaml", Encoding.UTF8.GetBytes(Shifts(41)), new NoPartFiles()).Problems);
        Assert.Contains("40", problem.Message, StringComparison.Ordinal);
        Assert.Equal(16, problem.Position!.Line);
    }

    [Fact]
    public void A_job_that_is_too_large_written_out_is_refused()
    {
        // Each shift has every measure (17 keys and values) and document (9) of the job: 480 of both, 40 times, are more than 400,000.
        var measures = string.Concat(Enumerable.Range(1, 480).Select(number => $"  - {{ id: m{number}, kind: signals, what: a, where: b, who: c, when: d, checked: e, reference: f }}\n"))
            + "documents:\n" + string.Concat(Enumerable.Range(1, 480).Select(number => $"  - {{ id: d{number}, kind: other, title: t, edition: \"1\" }}\n"));
        var shifts = string.Concat(Enumerable.Range(1, 40).Select(number => string.Create(CultureInfo.InvariantCulture, $"  - {{ id: n{number}, date: {new DateOnly(2031, 6, 1).AddDays(number):yyyy-MM-dd}, runs: [top] }}\n")));
        var text = Job.Replace("shifts:\n", "measures:\n" + measures + "shifts:\n", StringComparison.Ordinal);
        text = text[..text.IndexOf("  - { id: n1,", StringComparison.Ordinal)] + shifts;
        var problem = Assert.Single(Reader.Read("job.yaml", Encoding.UTF8.GetBytes(text), new NoPartFiles()).Problems);
        Assert.StartsWith("Written out, the shifts hold ", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_job_is_alone_in_its_file()
    {
        var problem = Assert.Single(Reader.Read("job.yaml", Encoding.UTF8.GetBytes(Job + "\n---\nformat: 1\n"), new NoPartFiles()).Problems);
        Assert.Contains("one document", problem.Message, StringComparison.Ordinal);
    }

    private static string Replaced(string old, string @new)
    {
        Assert.Contains(old, Job, StringComparison.Ordinal);
        return Job.Replace(old, @new, StringComparison.Ordinal);
    }

    private static string? At(ReadPlan plan, int course) => plan.Plan.Courses[course].LaidAt?.Local.ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture);

    private static PlanFile Read(string text)
    {
        var read = Reader.Read("job.yaml", Encoding.UTF8.GetBytes(text), new NoPartFiles());
        Assert.True(read.Problems.Count == 0, string.Join('\n', read.Problems.Select(problem => $"{problem.Position!.Line}: {problem.Message}")));
        return read;
    }

    private sealed class OneFile(string text) : IPartFiles
    {
        public bool IsEverywhere { get; init; }

        public IReadOnlyList<NamedFile> Common(string plan) => IsEverywhere ? [new NamedFile("firm.yaml", new Position(1, 8, 1, 9) { File = "laygate.yaml" })] : [];

        public PartText Read(string from, string name) => new(name, Encoding.UTF8.GetBytes(text));
    }
}
