using static Laygate.UnitTests.Reading.Schema.SchemaSample;
using static Laygate.UnitTests.Reading.Yaml.ReadingTestHelper;

namespace Laygate.UnitTests.Reading.Schema;

public class SchemaCheckerTests
{
    private const string Head = "id: p\ncourses: [{id: c, thickness: 40 mm}]\n";
    private const string Course = "id: p\ncourses:\n  - id: c\n    thickness: 40 mm\n";

    [Fact]
    public void A_right_document_has_no_problem() => Assert.Empty(Check(Valid));

    [Theory]
    // Values of the wrong kind or form, with the traps of the scalar forms.
    [InlineData(Head + "screed: {width: [1 m]}\n", "3:10-3:15", "`width` needs a length such as `3.50 m`, not a list.", null)]
    [InlineData(Head + "screed: {width: 40mm}\n", "3:17-3:21", "`width` needs a length such as `3.50 m`, not the text `40mm`: a blank is missing between number and unit.", "Write `40 mm`.")]
    [InlineData(Head + "screed: {width: 3.5}\n", "3:17-3:20", "`width` needs a length such as `3.50 m`, not the number `3.5`.", "Write the unit behind the number, with a blank between them, as in `3.50 m`.")]
    [InlineData(Head + "screed:\n  width: 1,5 in\n", "4:10-4:16", "`width` needs a length such as `3.50 m`, not the text `1,5 in`: a decimal comma is not read; write a decimal point.", "Write `1.5 in`.")]
    [InlineData(Head + "screed:\n  width: 40\u00A0mm\n", "4:10-4:15", "`width` needs a length such as `3.50 m`, not the text `40\u00A0mm`: it contains a non-breaking or narrow blank, which looks like a blank but is none.", "Write `40 mm`.")]
    [InlineData(Head + "screed:\n  width:3.5\n", "4:3-4:12", "`screed` needs a group of keys, not the text `width:3.5`: a blank is missing behind the colon.", "Write `width: 3.5`.")]
    [InlineData(Head + "start: 1350\n", "3:8-3:12", "`start` needs a time of day such as `22:30`, not the number `1350`.", null)]
    [InlineData(Head + "start: \"22:30\\n\"\n", "3:8-3:17", "`start` needs a time of day such as `22:30`, not the text `22:30 `.", null)]
    [InlineData("id: 2\ncourses: [{id: c, thickness: 40 mm}]\n", "1:5-1:6", "`id` needs a name such as `south-ramp`, not the number `2`.", "Put it in quotes: `\"2\"`.")]
    [InlineData(Course + "    passes: no\n", "5:13-5:15", "`passes` needs a whole number, not the text `no`: `no` is read as a word, and fits only where such a word is asked for.", null)]
    [InlineData(Course + "    passes: 017\n", "5:13-5:16", "`passes` needs a whole number, not the text `017`: it begins with a zero, and some programs then read it to the base 8.", "Write `17`.")]
    [InlineData(Course + "    passes: 1e3\n", "5:13-5:16", "`passes` needs a whole number, not the text `1e3`: an exponent is not read.", "Write `1000`.")]
    [InlineData(Course + "    passes: 22:30\n", "5:13-5:18", "`passes` needs a whole number, not the text `22:30`: `22:30` looks like a time of day, and some programs read it as a number to the base 60; a duration is written `1350 min`.", null)]
    [InlineData(Course + "    passes: \"8\"\n", "5:13-5:16", "`passes` needs a whole number, not the text `8`.", "Write it without quotes: `8`.")]
    [InlineData(Course + "    passes: 8.0\n", "5:13-5:16", "`passes` needs a whole number, not the number `8.0`.", null)]
    [InlineData(Course + "    passes: 0\n", "5:13-5:14", "`passes` is 0; it must be at least 1.", null)]
    [InlineData(Course + "    passes: 50\n", "5:13-5:15", "`passes` is 50; it must be less than 50.", null)]
    [InlineData(Course + "    factor: 1.51\n", "5:13-5:17", "`factor` is 1.51; it must be at most 1.5.", null)]
    [InlineData(Course + "    factor: 0\n", "5:13-5:14", "`factor` is 0; it must be more than 0.", null)]
    // Words.
    [InlineData(Course + "    mode: hot_on_hott\n", "5:11-5:22", "`mode` cannot be `hot_on_hott`; it must be one of `hot_on_hot`, `separately` and `hot_on_warm`.", "Did you mean `hot_on_hot`?")]
    [InlineData(Course + "    mode: quickly\n", "5:11-5:18", "`mode` cannot be `quickly`; it must be one of `separately`, `hot_on_warm` and `hot_on_hot`.", null)]
    [InlineData(Course + "    night: false\n", "5:12-5:17", "`night` cannot be `false`; it must be one of `no` and `yes`.", "Did you mean `no`?")]
    [InlineData(Course + "    night: Yes\n", "5:12-5:15", "`night` cannot be `Yes`; it must be one of `yes` and `no`.", "Did you mean `yes`?")]
    [InlineData(Course + "    mode: true\n", "5:11-5:15", "`mode` cannot be `true`; it must be one of `separately`, `hot_on_warm` and `hot_on_hot`.", null)]
    [InlineData(Course + "    night: 1\n", "5:12-5:13", "`night` needs one of `yes` and `no`, not the number `1`.", null)]
    // Nothing.
    [InlineData(Head + "start:\n", "3:1-3:6", "`start` has no value.", "Write a value or remove the key.")]
    [InlineData(Head + "start: ~\n", "3:1-3:6", "`start` has no value.", "Write a value or remove the key.")]
    [InlineData("id: p\ncourses:\n", "2:1-2:8", "`courses` has no value.", "Write a value or remove the key.")]
    [InlineData(Course + "    mode: null\n", "5:5-5:9", "`mode` has no value.", "Write a value or remove the key.")]
    [InlineData(Head + "codes:\n  - a\n  -\n", "5:4-5:4", "Entry 2 of `codes` has no value.", "Write a value or remove the entry.")]
    // Keys.
    [InlineData("id: p\nid_: q\ncourses: [{id: c, thickness: 40 mm}]\n", "2:1-2:4", "`id_` is not a key of the plan.", "Known here: `id`, `start`, `courses`, `codes`, `screed`, `limits`, `supply`, `slope` and 1 more.")]
    [InlineData(Head + "strat: 22:30\n", "3:1-3:6", "`strat` is not a key of the plan.", "Did you mean `start`?")]
    [InlineData(Head + "mix: x\n", "3:1-3:4", "`mix` is not a key of the plan.", "It belongs in an entry of `courses`.")]
    [InlineData(Head + "width: 1 m\n", "3:1-3:6", "`width` is not a key of the plan.", "It belongs under `screed`.")]
    [InlineData("id: p\ncourses:\n  - id: c\n    thicknes: 40 mm\n", "4:5-4:13", "`thicknes` is not a key of entry 1 of `courses`.", "Did you mean `thickness`?")]
    [InlineData("id: p\ncourses:\n  - id: c\n  - id: d\n    thickness: 1 m\n", "3:5-3:7", "Entry 1 of `courses` lacks the key `thickness`: thickness after rolling.", "Add it, for example `thickness: 40 mm`.")]
    [InlineData("courses: [{id: c, thickness: 40 mm}]\n", "1:1-1:8", "The plan lacks the key `id`: the name of the plan.", "Add it, for example `id: south-ramp`.")]
    [InlineData(Head + "limits: {Low: 1 m}\n", "3:10-3:13", "`Low` cannot be a name here.", null)]
    [InlineData(Head + "limits: {low: 1}\n", "3:15-3:16", "`low` needs a length such as `40 mm`, not the number `1`.", "Write the unit behind the number, with a blank between them, as in `40 mm`.")]
    // Lists.
    [InlineData("id: p\ncourses: []\n", "2:1-2:8", "`courses` is an empty list.", "Add an entry, or remove the key if it is not required.")]
    [InlineData("id: p\ncourses: &c [&i {id: c, thickness: 40 mm}, *i, *i, *i]\n", "2:1-2:8", "`courses` has 4 entries; at most 3 are allowed.", null)]
    [InlineData(Head + "codes: [a, b, a]\n", "3:15-3:16", "Entry 3 of `codes` repeats entry 1.", "Remove one of the two.")]
    [InlineData(Head + "courses2: 1\n", "3:1-3:9", "`courses2` is not a key of the plan.", "Known here: `id`, `start`, `courses`, `codes`, `screed`, `limits`, `supply`, `slope` and 1 more.")]
    // Texts.
    [InlineData("id: p\ncourses: [{id: \"\", thickness: 40 mm}]\n", "2:16-2:18", "`id` is an empty text.", "Write a value or remove the key.")]
    [InlineData("id: p\ncourses: [{id: abcdefghijklmnopqrstu, thickness: 40 mm}]\n", "2:16-2:37", "`id` has 21 characters; at most 20 are allowed.", null)]
    [InlineData(Head + "part: {parts: [{name: none}]}\n", "3:23-3:27", "`name` cannot be so: The word none names nothing.", null)]
    // Alternatives: the nearest one is reported, not all.
    [InlineData(Head + "supply: {kind: silo, content: x}\n", "3:1-3:7", "`supply` lacks the key `outlet`.", "Add `outlet:`.")]
    [InlineData(Head + "supply: {kind: plant, output: x, spare: y}\n", "3:34-3:39", "`spare` is not a key of `supply`.", "Known here: `kind` and `output`.")]
    [InlineData(Head + "supply: [1]\n", "3:1-3:7", "`supply` needs a plant or a silo, not a list.", null)]
    [InlineData(Head + "slope: 2.5%\n", "3:8-3:12", "`slope` needs a length such as `40 mm` or a share such as `2.5 %` or a list, not the text `2.5%`: a blank is missing between number and unit.", "Write `2.5 %`.")]
    [InlineData(Head + "slope: [1 m]\n", "3:1-3:6", "`slope` has 1 entry; at least 2 are needed.", null)]
    [InlineData(Head + "slope: [1 m, 2]\n", "3:14-3:15", "Entry 2 of `slope` needs a length such as `40 mm`, not the number `2`.", "Write the unit behind the number, with a blank between them, as in `40 mm`.")]
    [InlineData(Head + "slope: {a: 1}\n", "3:1-3:6", "`slope` needs a length such as `40 mm` or a share such as `2.5 %` or a list, not a group of keys.", null)]
    // The top.
    [InlineData("- a\n", "1:3-1:4", "The plan needs a group of keys, not a list.", null)]
    public void One_mistake_gives_one_problem_at_its_place(string text, string place, string message, string? hint)
    {
        var problem = Assert.Single(Check(text));
        Assert.Equal(message, problem.Message);
        Assert.Equal(place, Place(problem.Position));
        Assert.Equal(hint, problem.Hint);
    }

    [Fact]
    public void All_mistakes_are_reported_together_in_document_order()
    {
        var problems = Check("id: P\nstrat: 22:30\ncourses:\n  - id: c\n    mode: x\n  - thickness: 40mm\n");
        Assert.Equal("1:5 2:1 4:5 5:11 6:5 6:16", string.Join(' ', problems.Select(problem => $"{problem.Position.Line}:{problem.Position.Column}")));
    }

    [Fact]
    public void A_mistake_in_an_anchored_part_is_reported_once_where_it_is_written()
    {
        var problem = Assert.Single(Check("id: p\ncourses:\n  - &c {id: c, thickness: 40mm}\n  - *c\n"));
        Assert.Equal("3:27-3:31", Place(problem.Position));
    }
}
