using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Results;
using static Laygate.UnitTests.Rules.TestBook;

namespace Laygate.UnitTests.Rules;

/// <summary>Tables, dates, places, conditions and bands of the limit.</summary>
public sealed class LimitTests
{
    private static readonly RowMatch Any = new(null, null, null, Any: true);

    [Theory]
    [InlineData("asphalt-concrete", 29.9, 3)]
    [InlineData("asphalt-concrete", 30, 3.5)]
    [InlineData("asphalt-concrete", 49.9, 3.5)]
    [InlineData("stone-mastic", 80, 4)]
    public void The_row_of_a_table_that_matches_sets_the_limit(string kind, double millimetres, double limit)
    {
        var finding = Judge(TableRule, Ready(2).Given("mix.kind", new CategoryValue(kind)).Given("course.thickness", new NumberValue(millimetres / 1000)));
        Assert.Equal((Outcome.Missed, limit), (finding.Outcome, finding.Limit!.Low!.Number));
    }

    [Theory]
    [InlineData("4.2", "Issuer, Manual, 4.2")]
    [InlineData(null, "Issuer, Manual")]
    public void Another_reading_of_a_limit_is_named_by_its_publication_and_clause(string? clause, string source)
    {
        var bound = AtLeast(50, "mm") with { Also = [Source() with { Clause = clause, Remark = "asks for 45 mm" }] };
        var note = Assert.Single(Judge(Rule("course.thickness", CheckKind.AtLeast, bound), Context().Given("course.thickness", new NumberValue(0.04), "mm")).Notes, note => note.Id == FindingNotes.OtherReading);
        Assert.Equal((source, "asks for 45 mm"), (note.Arguments.Single(argument => argument.Name == "source").Text, note.Arguments.Single(argument => argument.Name == "text").Text));
    }

    [Theory]
    [InlineData("porous", 40)]
    [InlineData("porous", 500)]
    public void What_no_row_lists_is_not_assessed(string kind, double millimetres)
    {
        var finding = Judge(TableRule, Ready(9).Given("mix.kind", new CategoryValue(kind)).Given("course.thickness", new NumberValue(millimetres / 1000), "mm"), Stage.Release);
        Assert.Equal((Outcome.NotAssessed, Status.Warn), (finding.Outcome, finding.Status));
        var note = Assert.Single(finding.Notes);
        Assert.Equal(FindingNotes.RowNotListed, note.Id);
        Assert.Contains(new NoteArgument("mix.kind", kind, null, ""), note.Arguments);
    }

    [Theory]
    [InlineData(50, Stage.Release, Status.Fail)]
    [InlineData(19.9, Stage.Release, Status.Fail)]
    [InlineData(50, Stage.Submission, Status.Warn)]
    public void A_number_beyond_the_bands_of_a_required_table_is_named_with_the_range_and_fails_at_release(double millimetres, Stage stage, Status status)
    {
        var finding = Judge(TableRule, Context(Plan(Stage.Concept)).Given("course.thickness_to_size", new NumberValue(9)).Given("mix.kind", new CategoryValue("asphalt-concrete")).Given("course.thickness", new NumberValue(millimetres / 1000), "mm"), stage);
        Assert.Equal((Outcome.NotAssessed, status), (finding.Outcome, finding.Status));
        var note = finding.Notes[0];
        Assert.Equal(FindingNotes.OutsideTable, note.Id);
        Assert.Contains(new NoteArgument("number", null, millimetres, "mm"), note.Arguments);
        Assert.Contains(new NoteArgument("range", "from 20 mm to below 50 mm"), note.Arguments);
        Assert.Equal(status == Status.Fail, finding.Notes.Any(other => other.Id == FindingNotes.OutOfRangeFails));
    }

    [Fact]
    public void A_key_that_is_not_known_is_a_missing_input_unless_no_row_asks_for_it()
    {
        var finding = Judge(TableRule, Ready(2.5).Given("course.thickness", new NumberValue(0.025)));
        Assert.Equal((Outcome.NotAssessed, new InputReference("mix:sma", "kind")), (finding.Outcome, Assert.Single(finding.Missing)));
        Assert.Equal(Outcome.Met, Judge(TableRule, Ready(9).Given("mix.kind", new CategoryValue("stone-mastic"))).Outcome);
    }

    /// <summary>Rows and limits are those of the table below: 3 and 4 may apply to 25 mm, whatever the mix. By hand.</summary>
    [Theory]
    [InlineData(25.0, 4.0, Outcome.Met, 4.0)]
    [InlineData(25.0, 3.9, Outcome.NotAssessed, null)]
    [InlineData(40.0, 4.1, Outcome.Met, 4.0)]
    public void What_every_row_that_may_apply_allows_is_held_by_the_nearest_of_them(double millimetres, double ratio, Outcome outcome, double? limit)
    {
        var finding = Judge(TableRule, Ready(ratio).Given("course.thickness", new NumberValue(millimetres / 1000)));
        Assert.Equal((outcome, limit), (finding.Outcome, finding.Limit?.Low?.Number));
        Assert.Equal(outcome == Outcome.Met, finding.Notes.Any(note => note.Id == FindingNotes.HeldByEachRow));
    }

    [Fact]
    public void A_number_that_is_not_known_may_lie_beyond_the_last_row()
    {
        var finding = Judge(TableRule, Ready(9).Given("mix.kind", new CategoryValue("asphalt-concrete")));
        Assert.Equal(Outcome.NotAssessed, finding.Outcome);
    }

    [Theory]
    [InlineData(0.05, Outcome.Met)]
    [InlineData(0.03, Outcome.NotAssessed)]
    public void A_condition_that_is_not_known_does_no_harm_where_the_limit_is_held_either_way(double thickness, Outcome outcome)
    {
        var rule = Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm")) with { When = [new Condition("mix.kind", ["stone-mastic"], null, null)] };
        var finding = Judge(rule, Context().Given("course.thickness", new NumberValue(thickness)));
        Assert.Equal((outcome, outcome == Outcome.Met), (finding.Outcome, finding.Notes.Any(note => note.Id == FindingNotes.HeldEitherWay)));
    }

    [Fact]
    public void A_row_s_own_source_stands_behind_its_limit()
    {
        var finding = Judge(TableRule, Ready(2).Given("mix.kind", new CategoryValue("stone-mastic")));
        Assert.Equal((Evidence.Recalled, Status.Warn), (finding.Limit!.Source.Evidence, finding.Status));
    }

    [Theory]
    [InlineData("2027-05-15", null, null, Outcome.NotAssessed, FindingNotes.LimitNotYetValid)]
    [InlineData("2027-05-14", null, null, Outcome.Missed, null)]
    [InlineData(null, "2027-05-14", null, Outcome.Missed, null)]
    [InlineData(null, "2027-05-13", null, Outcome.NotAssessed, FindingNotes.LimitEnded)]
    [InlineData(null, "2027-05-13", "third edition", Outcome.Missed, FindingNotes.LimitSucceeded)]
    [InlineData(null, null, "third edition", Outcome.Missed, FindingNotes.LimitEndAnnounced)]
    public void Limits_hold_within_their_dates(string? from, string? to, string? successor, Outcome outcome, string? note)
    {
        var bound = AtLeast(40, "mm");
        bound = bound with { Source = bound.Source with { ValidFrom = Date(from), ValidTo = Date(to), Successor = successor } };
        var finding = Judge(Rule("course.thickness", CheckKind.AtLeast, bound), Context().Given("course.thickness", new NumberValue(0.03)));
        Assert.Equal((outcome, outcome == Outcome.Missed ? Status.Fail : Status.Warn), (finding.Outcome, finding.Status));
        Assert.Equal(note, finding.Notes.SingleOrDefault()?.Id);
    }

    [Fact]
    public void The_date_of_the_shift_judges_before_the_date_of_checking()
    {
        var bound = AtLeast(40, "mm") with { Source = Source() with { ValidFrom = Today.AddDays(1) } };
        var book = Book(General(Rule("course.thickness", CheckKind.AtLeast, bound)));
        var report = Evaluate(book, Context(Plan(shift: Today.AddDays(1))).Given("course.thickness", new NumberValue(0.03)));
        Assert.Equal((Outcome.Missed, Today.AddDays(1), true), (report.Findings[0].Outcome, report.JudgedFor, report.JudgedForShift));
    }

    [Fact]
    public void Where_only_the_advised_bound_is_in_force_it_judges_and_the_other_is_mentioned()
    {
        var ended = AtLeast(40, "mm") with { Source = Source() with { ValidTo = Today.AddDays(-1) } };
        var finding = Judge(Rule("course.thickness", CheckKind.AtLeast, ended, AtLeast(50, "mm", Strength.Advised)), Context().Given("course.thickness", new NumberValue(0.03)));
        Assert.Equal((Outcome.Missed, Status.Warn, Strength.Advised), (finding.Outcome, finding.Status, finding.Limit!.Strength));
        Assert.Equal(FindingNotes.LimitEnded, Assert.Single(finding.Notes).Id);
    }

    [Theory]
    [InlineData(Place.InLoad, Outcome.Missed)]
    [InlineData(Place.Skin, Outcome.NeedsPerson)]
    [InlineData(null, Outcome.NotAssessed)]
    public void Temperatures_are_compared_at_one_place_only(Place? place, Outcome outcome)
    {
        var rule = Rule("course.laying_temperature", CheckKind.AtLeast, AtLeast(130, "°C") with { Place = Place.InLoad });
        var context = Context().GivenAnswer("course.laying_temperature", new Answer
        {
            Value = new NumberValue(120),
            Place = place,
            Input = new InputReference("course:wearing", "laying_temperature.expected"),
        });
        var finding = Judge(rule, context);
        Assert.Equal(outcome, finding.Outcome);
        Assert.Equal(place is null ? [new InputReference("course:wearing", "laying_temperature.place")] : [], finding.Missing);
        Assert.Equal(place == Place.Skin ? FindingNotes.PlacesDiffer : null, finding.Notes.SingleOrDefault()?.Id);
    }

    [Fact]
    public void A_source_without_a_place_is_compared_and_says_so()
    {
        var rule = Rule("course.mean_temperature", CheckKind.AtLeast, AtLeast(130, "°C"));
        var finding = Judge(rule, Context().Given("course.mean_temperature", new NumberValue(120)));
        Assert.Equal((Outcome.Missed, FindingNotes.LimitPlaceNotStated), (finding.Outcome, Assert.Single(finding.Notes).Id));
    }

    [Theory]
    [InlineData("separately", 59.9, Outcome.Missed)]
    [InlineData("separately", 60.0, Outcome.NotApplicable)]
    [InlineData("hot-on-hot", 59.9, Outcome.NotApplicable)]
    [InlineData("hot-on-hot", null, Outcome.NotApplicable)]
    [InlineData("separately", null, Outcome.NotAssessed)]
    [InlineData(null, 40.0, Outcome.NotAssessed)]
    public void Conditions(string? laid, double? millimetres, Outcome outcome)
    {
        var rule = Rule("course.thickness_to_size", CheckKind.AtLeast, AtLeast(3, "")) with
        {
            When = [new Condition("course.laid", ["separately"], null, null), new Condition("course.thickness", null, null, Value(60, "mm"))],
        };
        var context = Context().Given("course.thickness_to_size", new NumberValue(2));
        context = laid is null ? context : context.Given("course.laid", new CategoryValue(laid));
        context = millimetres is null ? context : context.Given("course.thickness", new NumberValue(millimetres.Value / 1000));
        Assert.Equal(outcome, Judge(rule, context).Outcome);
    }

    [Theory]
    [InlineData("US-WA", Outcome.Missed)]
    [InlineData("US", Outcome.Missed)]
    [InlineData("DE", Outcome.NotApplicable)]
    [InlineData("none", Outcome.NotApplicable)]
    [InlineData(null, Outcome.NotAssessed)]
    public void A_rule_speaks_in_its_jurisdiction(string? place, Outcome outcome)
    {
        var rule = Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm")) with { Jurisdictions = ["US"] };
        Assert.Equal(outcome, Judge(rule, Context(Plan(jurisdiction: place)).Given("course.thickness", new NumberValue(0.03))).Outcome);
    }

    [Fact]
    public void The_country_alone_does_not_say_whether_the_limit_of_a_state_holds()
    {
        var rule = Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm")) with { Jurisdictions = ["US-WA"] };
        var finding = Judge(rule, Context(Plan(jurisdiction: "US")).Given("course.thickness", new NumberValue(0.03)));
        Assert.Equal(new InputReference("location", "jurisdiction"), Assert.Single(finding.Missing));
    }

    [Theory]
    [InlineData("US-WA", null)]
    [InlineData("US", FindingNotes.JurisdictionDiffers)]
    [InlineData("DE", FindingNotes.JurisdictionDiffers)]
    [InlineData("none", FindingNotes.JurisdictionDiffers)]
    [InlineData(null, FindingNotes.JurisdictionNotStated)]
    public void A_plan_of_another_jurisdiction_than_the_standard_specification_is_remarked(string? place, string? note)
    {
        var book = Book(
            General(Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm"))),
            Specification() with { Jurisdiction = "US-WA" },
            Specification("contract", Layer.ParticularSpecification) with { Jurisdiction = "FR" });
        Assert.Equal(note, Evaluate(book, Context(Plan(jurisdiction: place))).Notes.SingleOrDefault()?.Id);
    }

    // Value 20 (18 to 22) min against limit 21 (17 to 25) min: end against end, at worst 18 against 25 and at best 22 against 17.
    // Drawn together (value = limit - 1 in every sample) the difference is -1 min throughout, so no end meets.
    [Fact]
    public void The_band_of_a_difference_is_taken_sample_by_sample_where_samples_are_to_be_had()
    {
        var rule = Rule("course.densification_window", CheckKind.AtLeast, Of(new QuantityLimit("course.last_densifying_pass", 1, "1")));
        var context = Context().Given("course.densification_window", new NumberValue(1200, 1080, 1320)).Given("course.last_densifying_pass", new NumberValue(1260, 1020, 1500));
        var combined = Judge(rule, context);
        Assert.Equal((true, FindingNotes.EndsCombined), (combined.FavourableEndMeets, Assert.Single(combined.Notes).Id));

        var settings = new EvaluationSettings { File = "p", CheckedOn = Today, Samples = new Together() };
        var sampled = Assert.Single(Evaluator.Evaluate(Book(General(rule)), context, settings).Findings);
        Assert.False(sampled.FavourableEndMeets);
        Assert.Empty(sampled.Notes);
    }

    [Fact]
    public void A_required_miss_decides_although_the_advised_row_is_not_listed_but_a_meet_does_not()
    {
        var advised = Of(new TableLimit(["mix.kind"], [new TableRow([Word("porous")], Value(9, ""), null, null)]), Strength.Advised);
        var rule = Rule("course.thickness_to_size", CheckKind.AtLeast, AtLeast(3, ""), advised);
        var context = Context().Given("mix.kind", new CategoryValue("stone-mastic"));
        Assert.Equal(Status.Fail, Judge(rule, context.Given("course.thickness_to_size", new NumberValue(2))).Status);
        Assert.Equal((Outcome.NotAssessed, Status.Warn), (Judge(rule, context.Given("course.thickness_to_size", new NumberValue(4))).Outcome, Judge(rule, context, Stage.Release).Status));
    }

    [Fact]
    public void Silence_about_the_key_of_an_advised_limit_never_fails()
    {
        var advised = Of(new TableLimit(["mix.kind"], [new TableRow([Word("porous")], Value(9, ""), null, null)]), Strength.Advised);
        var finding = Judge(Rule("course.thickness_to_size", CheckKind.AtLeast, AtLeast(3, ""), advised), Ready(4), Stage.Release);
        Assert.Equal((Outcome.NotAssessed, Status.Warn), (finding.Outcome, finding.Status));
    }

    [Fact]
    public void Assumptions_are_listed_once()
    {
        var book = Book(General(
            Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm")),
            Rule("course.thickness", CheckKind.AtLeast, AtLeast(50, "mm")) with { Id = "LAY-002", Name = "b" }));
        var context = Context().GivenAnswer("course.thickness", new Answer { Value = new NumberValue(0.06), Working = WeakWorking });
        Assert.Single(Evaluate(book, context).Assumptions);
    }

    private static RuleDefinition TableRule => Rule("course.thickness_to_size", CheckKind.AtLeast, Of(new TableLimit(
        ["mix.kind", "course.thickness"],
        [
            new TableRow([Word("asphalt-concrete"), Band(20, 30)], Value(3, ""), null, null),
            new TableRow([Word("asphalt-concrete"), Band(30, 50)], Value(3.5, ""), null, null),
            new TableRow([Word("stone-mastic"), Any], Value(4, ""), null, Source(Evidence.Recalled)),
        ])));

    private static QuantityContext Ready(double ratio) => Context().Given("course.thickness_to_size", new NumberValue(ratio));

    private static RowMatch Word(string word) => new([word], null, null, Any: false);

    private static RowMatch Band(double from, double to) => new(null, Value(from, "mm"), Value(to, "mm"), Any: false);

    private static DateOnly? Date(string? text) => text is null ? null : DateOnly.ParseExact(text, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private sealed class Together : IJointSamples
    {
        public IReadOnlyList<(double Value, double Limit)>? Find(string quantity, string limit, string address) =>
            [.. Enumerable.Range(17, 9).Select(minutes => ((minutes - 1) * 60.0, minutes * 60.0))];
    }

    [Theory]
    [InlineData(3, double.PositiveInfinity, false)]
    [InlineData(3, double.NegativeInfinity, false)]
    [InlineData(double.PositiveInfinity, double.PositiveInfinity, true)]
    public void An_open_end_equals_only_itself(double one, double other, bool equal) =>
        Assert.Equal(equal, LimitComparison.AreEqual(one, other, Laygate.Model.Measures.Dimension.None));
}
