using System.Text;
using Laygate.Checking;
using Laygate.Checking.Records;
using Laygate.Model.Plans;
using Laygate.Reading.Parts;
using Laygate.Reading.RuleFiles;
using Laygate.Reporting.Records;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Examples;

/// <summary>What was learnt from the invented records of the job of three shifts, and that naming what was learnt never loosens a finding of any example.</summary>
public sealed class LearntExampleTests
{
    private const string Job = "examples/cressing-lane/job.yaml";
    private const string Stored = "examples/cressing-lane/parts/night-works-2027.yaml";

    // Conductivities and temperatures behind the screed at and beyond the ends of what is assumed: cold and fast, hot and slow, and mixed.
    private static readonly (int Share, int Kelvins)[] Corners = [(60, -8), (60, 8), (145, -8), (145, 8)];

    public static TheoryData<string> Plans => ["quay-road-hot-on-hot", "moor-road-thin-overlay", "county-route-us", "concept-fifteen-lines"];

    [Theory]
    [MemberData(nameof(Plans))]
    public void Naming_what_was_learnt_turns_no_finding_from_missed_to_met(string example)
    {
        var before = Outcomes($"examples/{example}.yaml", string.Empty);
        foreach (var (share, kelvins) in Corners)
        {
            var after = Outcomes($"examples/{example}.yaml", Learnt(before.Mixes, share, kelvins));
            foreach (var (at, finding) in before.Findings.Where(one => one.Value.Outcome == Outcome.Missed))
            {
                Assert.True(after.Findings[at].Outcome != Outcome.Met, $"{at} with {share} % and {kelvins} K: {finding.Value?.Number} became {after.Findings[at].Value?.Number}");
            }

            Assert.All(before.Findings, one => Assert.True(after.Findings[one.Key].Outcome == one.Value.Outcome || one.Value.Outcome == Outcome.Met, $"{one.Key} with {share} % and {kelvins} K: {one.Value.Outcome} became {after.Findings[one.Key].Outcome}"));
        }
    }

    // So that the test above can fail: what is learnt to the worse does turn findings of the examples.
    [Fact]
    public void What_was_learnt_to_the_worse_does_count()
    {
        var before = Outcomes("examples/quay-road-hot-on-hot.yaml", string.Empty);
        var after = Outcomes("examples/quay-road-hot-on-hot.yaml", Learnt(before.Mixes, 145, -8));
        // The window is the limit of the last densifying pass.
        Assert.True(Window(after) < Window(before) - 1, $"{Window(before)} min became {Window(after)} min");

        static double Window((IReadOnlyList<string> Mixes, Dictionary<string, Finding> Findings) of) => of.Findings["ROL-001 course:upper"].Limit!.High!.Number!.Value;
    }

    /// <summary>The stored file is what its records teach, but for the line for editors and the hash of the plan: the plan was revised afterwards.</summary>
    [Fact]
    public void The_stored_file_is_what_the_records_teach()
    {
        var report = Learning.Of([Shift("monday"), Shift("tuesday")], "night-works-2027", new DateOnly(2026, 11, 29));
        Assert.NotNull(report.Values);
        Assert.Equal(WithoutPlans(Encoding.UTF8.GetString(Repository.Bytes(Stored))), WithoutPlans(LearntYaml.Of(report.Values)));
        Approved.Match(string.Join('\n', LearnLines.Of(report, "night-works-2027.yaml").Select(line => line.Text.TrimEnd())), "cressing-lane.learnt");
    }

    [Fact]
    public void One_shift_teaches_nothing_and_says_why()
    {
        var report = Learning.Of([Shift("monday")], "x", new DateOnly(2026, 11, 29));
        Assert.Null(report.Values);
        Assert.StartsWith("Nothing is learnt: 2 shifts at least need temperatures", LearnLines.Of(report, "x.yaml")[0].Text, StringComparison.Ordinal);
    }

    private static string WithoutPlans(string text) => string.Join('\n', text.Split('\n').Where(line => !line.Contains("plan_hash", StringComparison.Ordinal) && !line.StartsWith("# yaml-language-server:", StringComparison.Ordinal)));

    private static RecordedShift Shift(string name)
    {
        var folder = new FolderOfRepository(Path.Combine(Repository.Root, "examples/cressing-lane/records", name));
        var (shift, problems) = RecordedShift.Open(new PlanTools(), Job, Repository.Bytes(Job), new Repository.PartsOfRepository(), folder);
        Assert.Empty(problems);
        return shift!;
    }

    private static (IReadOnlyList<string> Mixes, Dictionary<string, Finding> Findings) Outcomes(string file, string added)
    {
        byte[] bytes = [.. Repository.Bytes(file), .. Encoding.UTF8.GetBytes(added)];
        var settings = new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true, Parts = new Repository.PartsOfRepository() };
        var tools = new PlanTools();
        var result = new PlanCheck(Repository.Bound(), settings, tools: tools).Run(file, bytes);
        Assert.True(result.Problems.Count == 0, string.Join('\n', result.Problems.Select(problem => $"{problem.Message} {problem.Position?.Line}")));
        var plan = tools.Reader.Read(file, bytes, settings.Parts).Plans[0].Plan;
        return ([.. plan.Mixes.Select(mix => mix.Id)], Assert.Single(result.Reports).Findings.ToDictionary(finding => $"{finding.Rule} {finding.Address}", StringComparer.Ordinal));
    }

    private static string Learnt(IReadOnlyList<string> mixes, int share, int kelvins) =>
        FormattableString.Invariant($"\nlearnt: [{{ id: tried, mixes: [{string.Join(", ", mixes)}], shifts: 3, conductivity: {{ value: {share} %, low: {share - 5} %, high: {share + 5} % }}, laying: {{ value: {kelvins} K, low: {kelvins - 1} K, high: {kelvins + 1} K }} }}]\n");
}
