using System.Text;
using Laygate.Checking;
using Laygate.Checking.Comparing;
using Laygate.Reading;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Gate;

/// <summary>Two states of the examples side by side.</summary>
public sealed class CompareTests
{
    private const string Example = Repository.WholeQuay;

    private static readonly string Text = Encoding.UTF8.GetString(Repository.Bytes(Example));

    [Fact]
    public void A_plan_and_itself_do_not_differ()
    {
        var plan = Compare(Text, Text);
        Assert.All(plan.Findings, change => Assert.Equal(ChangeKind.Unchanged, change.Kind));
        Assert.Empty(plan.Quantities);
        Assert.Empty(plan.Text);
    }

    [Fact]
    public void Comments_and_blank_lines_do_not_matter()
    {
        var plan = Compare(Text, "# a remark\n\n" + Text.Replace("\n  stage:", "\n  # another\n  stage:", StringComparison.Ordinal));
        Assert.All(plan.Findings, change => Assert.Equal(ChangeKind.Unchanged, change.Kind));
        Assert.Empty(plan.Text);
    }

    [Fact]
    public void A_faster_paver_is_named_behind_what_it_makes_worse()
    {
        var plan = Compare(Text, Edited("    speed: 2.6 m/min", "    speed: 3.4 m/min"));
        var text = Assert.Single(plan.Text);
        Assert.Equal(("pavers.twin.speed", "2.6 m/min", "3.4 m/min"), (text.Path, text.Old, text.New));
        var supply = Assert.Single(plan.Findings, change => change.Either is { Rule: "SUP-001", Address: "course:lower" });
        Assert.Equal((ChangeKind.Changed, ChangeDirection.Worse), (supply.Kind, supply.Direction));
        Assert.Equal([text], supply.Behind);
        Assert.Contains(plan.Quantities, change => change is { Quantity: "trucks.count_minimum" or "feeder.occupation" });
    }

    /// <summary>Tonnage is width, length, thickness and density; the window of a course follows its thickness: both stand behind the finding, though it asks for neither itself.</summary>
    [Theory]
    [InlineData("    width: 8.00 m", "    width: 8.40 m", "CON-001", "runs.quay.width")]
    [InlineData("    thickness: 85 mm", "    thickness: 88 mm", "CON-001", "courses.lower.thickness")]
    [InlineData("    thickness: 85 mm", "    thickness: 88 mm", "ROL-001", "courses.lower.thickness")]
    public void What_a_computed_quantity_was_made_from_is_named_behind_the_finding(string from, string to, string rule, string path)
    {
        var plan = Compare(Text, Edited(from, to));
        var change = Assert.Single(plan.Findings, change => change.Either.Rule == rule && change.Either.Address is "course:lower");
        Assert.Equal(ChangeKind.Changed, change.Kind);
        Assert.Equal(path, Assert.Single(change.Behind).Path);
    }

    [Fact]
    public void Silence_is_named_behind_what_can_no_longer_be_assessed()
    {
        var plan = Compare(Text, Edited("    age_limit: 120 min\ncourses:", "courses:"));
        var age = Assert.Single(plan.Findings, change => change.Either.Rule is "SUP-012" && change.Either.Address is "trucks:surface-trucks");
        Assert.Equal(ChangeDirection.Worse, age.Direction);
        Assert.Equal("mixes.sma8-surface.age_limit", Assert.Single(age.Behind).Path);
    }

    [Theory]
    [InlineData("    speed: 2.6 m/min", "    speed: 3.1 m/min")]
    [InlineData("    thickness: 25 mm", "    thickness: 28 mm")]
    [InlineData("  open_speed: 40 km/h\n", "")]
    public void Backwards_new_is_gone_and_worse_is_better(string from, string to)
    {
        var other = Edited(from, to);
        var (forth, back) = (Compare(Text, other), Compare(other, Text));
        Assert.Equal(forth.Counts.New, back.Counts.Gone);
        Assert.Equal(forth.Counts.Gone, back.Counts.New);
        Assert.Equal(forth.Counts.Changed, back.Counts.Changed);
        Assert.Equal(Directions(forth, ChangeDirection.Worse), Directions(back, ChangeDirection.Better));
        Assert.NotEmpty(forth.Text);
    }

    [Fact]
    public void Another_rule_book_changes_findings_without_a_change_of_text()
    {
        var settings = new CheckSettings(null, Repository.CheckDate, Repository.Version);
        var comparer = new PlanComparer(new PlanCheck(Repository.Bound(), settings), new PlanCheck(Repository.Bound("us-wa"), settings));
        const string Plan = "examples/moor-road-thin-overlay.yaml";
        var plan = Assert.Single(comparer.Run(Plan, Repository.Bytes(Plan), Plan, Repository.Bytes(Plan)).Plans);
        Assert.Empty(plan.Text);
        Assert.Contains(plan.Findings, change => change.Kind == ChangeKind.New);
        Assert.All(plan.Findings, change => Assert.Empty(change.Behind));
    }

    [Fact]
    public void Plans_of_one_file_belong_together_by_their_id()
    {
        var first = Encoding.UTF8.GetString(Repository.Bytes("examples/concept-fifteen-lines.yaml"));
        var result = Comparer().Run("old", Encoding.UTF8.GetBytes($"{first}\n---\n{Text}"), "new", Encoding.UTF8.GetBytes(Text));
        Assert.Equal(2, result.Plans.Count);
        Assert.All(result.Plans[0].Findings, change => Assert.Equal(ChangeKind.Unchanged, change.Kind));
        Assert.Null(result.Plans[1].New);
        Assert.All(result.Plans[1].Findings, change => Assert.Equal(ChangeKind.Gone, change.Kind));
    }

    [Fact]
    public void A_state_that_cannot_be_read_gives_its_problem_and_no_comparison()
    {
        var result = Comparer().Run("old.yaml", Encoding.UTF8.GetBytes(Text), "new.yaml", "a: ["u8.ToArray());
        Assert.Empty(result.Plans);
        Assert.Equal("new.yaml", Assert.Single(result.Problems).File);
    }

    private static int Directions(PlanComparison plan, ChangeDirection direction) => plan.Findings.Count(change => change.Direction == direction);

    private static string Edited(string from, string to)
    {
        Assert.Equal(2, Text.Split(from).Length);
        return Text.Replace(from, to, StringComparison.Ordinal);
    }

    private static PlanComparer Comparer()
    {
        var check = new PlanCheck(Repository.Bound(), new CheckSettings(null, Repository.CheckDate, Repository.Version));
        return new PlanComparer(check, check);
    }

    private static PlanComparison Compare(string old, string @new) =>
        Assert.Single(Comparer().Run("old.yaml", Encoding.UTF8.GetBytes(old), "new.yaml", Encoding.UTF8.GetBytes(@new)).Plans);
}
