using System.Text;
using Laygate.Checking;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Plans;

/// <summary>
/// A course that no run of a plan lays, because another shift lays it, takes nothing of this shift and is not judged in it; below what is laid it is what
/// is laid upon. Held on a base plan of the rules whose two hot courses are made two lifts on two nights.
/// </summary>
public sealed class CourseOfAnotherShiftTests
{
    private static readonly PlanTools Tools = new();

    private static readonly string Base = Encoding.UTF8.GetString(Repository.Bytes("rules/bases/pair.yaml"));

    [Theory]
    [InlineData("SUP-001", "course:lower")]
    [InlineData("SUP-003", "feeder:feeder")]
    [InlineData("SUP-004", "paver:twin")]
    [InlineData("SUP-061", "pair:lower+upper")]
    [InlineData("CON-001", "course:lower")]
    [InlineData("CON-002", "course:lower")]
    [InlineData("SUP-002", "trucks:lower-trucks")]
    [InlineData("SUP-040", "plant:plant-lower")]
    [InlineData("MIX-003", "mix:ac16")]
    [InlineData("BON-005", "bond-coat:tack")]
    public void Nothing_is_judged_that_another_shift_does(string rule, string address)
    {
        Assert.Contains(Findings(Base), finding => Is(finding, rule, address));
        var upper = Findings(UpperOnly);
        Assert.DoesNotContain(upper, finding => Is(finding, rule, address) && finding.Outcome != Outcome.NotApplicable);
    }

    [Fact]
    public void No_finding_of_the_later_shift_is_about_what_the_earlier_one_takes()
    {
        string[] gone = ["course:lower", "mix:ac16", "plant:plant-lower", "trucks:lower-trucks", "bond-coat:tack"];
        Assert.DoesNotContain(Findings(UpperOnly), finding => gone.Contains(finding.Address, StringComparer.Ordinal));
        Assert.DoesNotContain(Findings(UpperOnly), finding => finding.Missing.Any(input => gone.Contains(input.Address, StringComparer.Ordinal)));
    }

    [Fact]
    public void The_lower_course_of_the_night_before_is_what_is_laid_upon()
    {
        var findings = Findings(UpperOnly);
        // 17 September 20:30 less 17 September 04:00, by hand.
        Assert.Equal(16.5, Assert.Single(findings, finding => Is(finding, "JOB-002", "existing")).Value!.Number!.Value, 6);
        // On dry crushed rock a thin mat stays hot long; on 70 mm of asphalt it does not, whether that is stated as a layer that lies there or as the course
        // of the night before. Fresh and old asphalt differ by some per cent in the assumptions (judgement: less than a tenth of the window).
        var (onCourse, onLayer, onRock) = (Window(Findings(Bare(UpperOnly))), Window(Findings(Bare(OnStatedLayers))), Window(Findings(Bare(OnStatedLayers).Replace(Fresh, string.Empty, StringComparison.Ordinal))));
        Assert.Equal(onLayer, onCourse, 0.1 * onLayer);
        Assert.True(onRock > 1.2 * onLayer, $"{onRock} min on rock, {onLayer} min on asphalt");
    }

    [Fact]
    public void A_course_without_a_run_and_without_a_moment_fails()
    {
        var finding = Assert.Single(Findings(UpperOnly.Replace(LaidAt, string.Empty, StringComparison.Ordinal)), finding => finding.Rule is "JOB-001");
        Assert.Equal(Status.Fail, finding.Status);
        Assert.Equal(Line(UpperOnly, "  - id: lower\n"), finding.Position!.Line);
        Assert.Equal(Status.Pass, Assert.Single(Findings(UpperOnly), one => one.Rule is "JOB-001").Status);
    }

    [Fact]
    public void A_run_that_lays_the_course_denies_the_moment()
    {
        var problem = Assert.Single(Run(Base.Replace("    tonnage: 678 t\n", "    tonnage: 678 t\n" + LaidAt, StringComparison.Ordinal)).Problems);
        Assert.Contains("`laid_at` says that another shift does", problem.Message, StringComparison.Ordinal);
    }

    private const string LaidAt = "    laid_at: 2027-09-17T04:00\n";

    private static string UpperOnly { get; } = Replaced(
        Base,
        ("    tonnage: 678 t\n", "    tonnage: 678 t\n" + LaidAt),
        ("    laid: hot-on-hot\n    on: lower\n    distance: 2.9 m\n", "    laid: separately\n"),
        ("    lower_temperature_lowest: { value: 140 °C, place: course-mean }\n", string.Empty),
        ("    courses: [lower, upper]\n    paver: twin\n", "    courses: [upper]\n    paver: twin\n"),
        ("below: upper, applied: no }", "below: upper, applied: yes }"));

    // The lower course as the uppermost of the layers that lie there, and nothing else of it.
    private static string OnStatedLayers => Replaced(
        UpperOnly[..UpperOnly.IndexOf("  - id: lower\n", StringComparison.Ordinal)] + UpperOnly[UpperOnly.IndexOf("  - id: upper\n", StringComparison.Ordinal)..],
        ("  layers:\n", "  layers:\n" + Fresh),
        ("    courses: [lower, upper]\n", "    courses: [upper]\n"),
        (LineOf("      - { course: lower, kind:"), string.Empty),
        (LineOf("      - { course: lower, capacity:"), string.Empty),
        (LineOf("  - { id: tack,"), string.Empty),
        (LineOf("  - { id: trial-lower,"), string.Empty));

    private const string Fresh = "    - { id: fresh, material: asphalt, thickness: 70 mm }\n";

    // The crushed rock alone below.
    private static string Bare(string plan) => Replaced(plan, (LineOf("    - { id: old-asphalt,"), string.Empty));

    private static string LineOf(string start)
    {
        var at = Base.IndexOf(start, StringComparison.Ordinal);
        return Base[at..(Base.IndexOf('\n', at) + 1)];
    }

    private static string Replaced(string text, params (string Old, string New)[] changes) => changes.Aggregate(text, (now, change) =>
    {
        Assert.True(change.Old.Length == 0 || now.Contains(change.Old, StringComparison.Ordinal), $"The plan has no `{change.Old}`.");
        return now.Replace(change.Old, change.New, StringComparison.Ordinal);
    });

    private static double Window(IReadOnlyList<Finding> findings) =>
        Assert.Single(findings, finding => Is(finding, "ROL-001", "course:upper")).Limit!.High!.Number!.Value;

    private static int Line(string text, string part) => text[..text.IndexOf(part, StringComparison.Ordinal)].Count(letter => letter == '\n') + 1;

    private static bool Is(Finding finding, string rule, string address) =>
        string.Equals(finding.Rule, rule, StringComparison.Ordinal) && string.Equals(finding.Address, address, StringComparison.Ordinal);

    private static IReadOnlyList<Finding> Findings(string text)
    {
        var result = Run(text);
        Assert.Empty(result.Problems);
        return Assert.Single(result.Reports).Findings;
    }

    private static FileResult Run(string text) =>
        new PlanCheck(Repository.Bound(), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true }, tools: Tools).Run("plan.yaml", Encoding.UTF8.GetBytes(text));
}
