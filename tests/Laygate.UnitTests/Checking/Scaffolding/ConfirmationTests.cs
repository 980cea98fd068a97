using Laygate.Checking;
using Laygate.Checking.Scaffolding;
using Laygate.Engineering.Quantities;
using Laygate.Reading;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;

namespace Laygate.UnitTests.Checking.Scaffolding;

/// <summary>Confirmations are inserted as text, and what comes out makes the limit as strong as one that was read.</summary>
public sealed class ConfirmationTests
{
    private const string Head = "title: Checks\nissuer: Us\nedition: 1\nlayer: particular\njurisdiction: none\n";

    private static readonly Confirmation Seen = new("A. Checker", new DateOnly(2026, 11, 25), "2013", "17");

    [Fact]
    public void A_missing_overlay_is_made_and_the_limit_is_confirmed()
    {
        var files = new Files();
        var edited = Add(files, new ConfirmRequest("LAY-001", null, null, Seen));
        Assert.Equal("LAY-001, required: at least 30 mm", edited.Summary);
        Assert.Equal("- { rule: LAY-001, strength: required, limit: at least 30 mm, edition: \"2013\", page: \"17\", by: A. Checker, on: 2026-11-25 }", Line(edited.Text!, "LAY-001"));
        var source = Merged(files, "LAY-001")[0].Definition.Source;
        Assert.Equal((Evidence.Confirmed, Seen), (source.Evidence, source.Confirmation!));
    }

    [Theory]
    [InlineData("# first\n" + Head + "# last\n", "# first\n" + Head + "# last\nconfirm:\n  - ENTRY\n")]
    [InlineData(Head + "confirm: [] # none yet\nassume: []\n", Head + "confirm: # none yet\n  - ENTRY\nassume: []\n")]
    [InlineData(Head + "confirm: []", Head + "confirm:\n  - ENTRY\n")]
    [InlineData(Head + "confirm:\n# of the table\n- rule: LAY-002\n  strength: required\n  row: 1\n  by: B\n  on: 2026-01-01\n  edition: x\n  page: >-\n    seven\n\n# end\nassume: []\n", Head + "confirm:\n# of the table\n- rule: LAY-002\n  strength: required\n  row: 1\n  by: B\n  on: 2026-01-01\n  edition: x\n  page: >-\n    seven\n- ENTRY\n\n# end\nassume: []\n")]
    [InlineData(Head + "confirm: [ { rule: LAY-002, strength: required, row: 1, by: B, on: 2026-01-01, edition: x, page: y } ] # one\n", Head + "confirm: [ { rule: LAY-002, strength: required, row: 1, by: B, on: 2026-01-01, edition: x, page: y }, ENTRY ] # one\n")]
    public void Everything_else_in_the_file_stays_as_it_is(string before, string after)
    {
        const string entry = "{ rule: LAY-001, strength: required, limit: at least 30 mm, edition: \"2013\", page: \"17\", by: A. Checker, on: 2026-11-25 }";
        var files = new Files { Texts = { ["own.yaml"] = before } };
        Assert.Equal(after.Replace("ENTRY", entry, StringComparison.Ordinal), Add(files, new ConfirmRequest("LAY-001", null, null, Seen)).Text);
    }

    [Fact]
    public void Line_ends_are_kept()
    {
        var files = new Files { Texts = { ["own.yaml"] = (Head + "confirm: []\nassume: []\n").Replace("\n", "\r\n", StringComparison.Ordinal) } };
        var text = Add(files, new ConfirmRequest("LAY-001", null, null, Seen)).Text!;
        Assert.DoesNotContain('\n', text.Replace("\r\n", string.Empty, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("2", "asphalt-concrete|porous")]
    [InlineData("asphalt-concrete|porous", "asphalt-concrete|porous")]
    public void A_row_is_named_by_its_place_or_its_key_and_kept_by_its_key(string row, string key)
    {
        var files = new Files();
        var edited = Add(files, new ConfirmRequest("LAY-002", null, row, Seen));
        Assert.Contains($"row: \"{key}\", limit: at least 30 mm", edited.Text!, StringComparison.Ordinal);
        var table = (CheckedTable)Merged(files, "LAY-002")[0].Limit;
        Assert.Equal([Evidence.Recalled, Evidence.Confirmed], table.Rows.Select(one => one.Source.Evidence));
    }

    [Theory]
    [InlineData("LAY-001", null, "1", "This limit is no table and has no rows.")]
    [InlineData("LAY-002", null, "porous", "The table has no row `porous`.")]
    [InlineData("LAY-003", null, null, "The limit is judgement: no publication holds it, so it cannot be confirmed.")]
    [InlineData("LAY-004", null, null, "There is no rule `LAY-004`.")]
    [InlineData("LAY-001", Strength.Advised, null, "`LAY-001` has no advised limit here.")]
    public void What_cannot_be_confirmed_is_said_and_nothing_is_changed(string rule, Strength? strength, string? row, string message)
    {
        var edited = Add(new Files(), new ConfirmRequest(rule, strength, row, Seen));
        Assert.Null(edited.Text);
        Assert.Equal(message, Assert.Single(edited.Problems).Message);
    }

    [Fact]
    public void The_same_limit_is_confirmed_once()
    {
        var files = new Files();
        Add(files, new ConfirmRequest("LAY-001", null, null, Seen));
        Assert.Equal("The limit is confirmed already, by A. Checker.", Assert.Single(Add(files, new ConfirmRequest("LAY-001", null, null, Seen)).Problems).Message);
    }

    [Fact]
    public void A_limit_that_has_changed_since_is_refused()
    {
        var files = new Files();
        Add(files, new ConfirmRequest("LAY-001", null, null, Seen));
        files.Texts["own.yaml"] = files.Texts["own.yaml"].Replace("at least 30 mm", "at least 31 mm", StringComparison.Ordinal);
        var problem = Assert.Single(RuleBooks.Load(SmallPack.Pack, ["own.yaml"], files).Problems);
        Assert.Equal("The limit of `LAY-001` that was confirmed is \"at least 31 mm\"; it is \"at least 30 mm\" now.", problem.Message);
        Assert.Equal(10, problem.Position!.Line);
    }

    [Fact]
    public void A_file_in_braces_is_left_alone()
    {
        var files = new Files { Texts = { ["own.yaml"] = "{ title: a, issuer: b, edition: c, layer: particular, jurisdiction: none }\n" } };
        Assert.Contains("no entry can be inserted safely", Assert.Single(Add(files, new ConfirmRequest("LAY-001", null, null, Seen)).Problems).Message, StringComparison.Ordinal);
    }

    private static EditedFile Add(Files files, ConfirmRequest request)
    {
        var edited = ConfirmationEdit.Add(SmallPack.Pack, [], "own.yaml", files, request);
        if (edited.Text is { } text)
        {
            files.Texts["own.yaml"] = text;
        }

        return edited;
    }

    private static IReadOnlyList<CheckedBound> Merged(Files files, string rule)
    {
        var bound = RuleBooks.Load(SmallPack.Pack, ["own.yaml"], files);
        Assert.Empty(bound.Problems);
        return bound.Book!.All.Single(merged => merged.Rule.Definition.Id == rule).Rule.Bounds;
    }

    private static string Line(string text, string rule) => text.Split('\n').Single(line => line.Contains(rule, StringComparison.Ordinal)).Trim();
}
