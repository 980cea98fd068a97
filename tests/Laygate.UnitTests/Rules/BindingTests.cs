using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using static Laygate.UnitTests.Rules.TestBook;

namespace Laygate.UnitTests.Rules;

/// <summary>Each mistake that a rule can hold is found where it stands.</summary>
public sealed class BindingTests
{
    private static readonly RuleDefinition Sound = Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm"));

    public static IEnumerable<object[]> Mistakes => Broken().Select((entry, index) => new object[] { index, entry.Mistake });

    [Fact]
    public void A_sound_rule_has_no_mistakes() => Assert.Empty(Build(General(Sound)).Problems);

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void Mistakes_are_found_where_they_stand(int number, Type mistake)
    {
        var (_, path, rule) = Broken().ElementAt(number);
        var result = Build(General(rule));
        Assert.Null(result.Book);
        var problem = Assert.Single(result.Problems);
        Assert.Equal((mistake, new BookPlace(null, "layers/test-rule", path)), (problem.Mistake.GetType(), problem.Place with { Rule = "layers/test-rule" }));
    }

    [Fact]
    public void Rows_that_overlap_are_named_unless_their_limits_agree_or_their_dates_do_not_meet()
    {
        Assert.Equal(new BookMistake.RowsOverlap(1, 2), Assert.Single(Build(General(Table(Row(20, 40, 3), Row(30, 50, 4)))).Problems).Mistake);
        Assert.Empty(Build(General(Table(Row(20, 40, 3), Row(30, 50, 3)))).Problems);
        Assert.Empty(Build(General(Table(Row(20, 40, 3), Row(40, 50, 4)))).Problems);
        var early = Row(20, 40, 3) with { Source = Source() with { ValidTo = Today } };
        Assert.Empty(Build(General(Table(early, Row(20, 40, 4) with { Source = Source() with { ValidFrom = Today.AddDays(1) } }))).Problems);
        Assert.NotEmpty(Build(General(Table(early, Row(20, 40, 4) with { Source = Source() with { ValidFrom = Today } }))).Problems);
    }

    [Fact]
    public void Bands_that_meet_in_two_units_do_not_overlap()
    {
        var inches = new TableRow([new RowMatch(null, null, Value(1.5, "in"), Any: false)], Value(3, ""), null, null);
        var millimetres = new TableRow([new RowMatch(null, Value(38.1, "mm"), null, Any: false)], Value(4, ""), null, null);
        Assert.Empty(Build(General(Table(inches, millimetres))).Problems);
    }

    [Fact]
    public void An_open_category_takes_any_word() =>
        Assert.Empty(Build(General(Sound with { When = [new Condition("mix.binder_grade", ["50/70"], null, null)] })).Problems);

    [Fact]
    public void Two_rules_may_share_neither_id_nor_name()
    {
        Assert.IsType<BookMistake.DuplicateRule>(Assert.Single(Build(General(Sound, Sound with { Name = "b" })).Problems).Mistake);
        Assert.IsType<BookMistake.DuplicateName>(Assert.Single(Build(General(Sound, Sound with { Id = "LAY-002" })).Problems).Mistake);
    }

    private static IEnumerable<(Type Mistake, string Path, RuleDefinition Rule)> Broken() =>
    [
        (typeof(BookMistake.UnknownQuantity), "quantity", Sound with { Quantity = "course.thicknes" }),
        (typeof(BookMistake.UnknownQuantity), "when/0/quantity", Sound with { When = [new Condition("course.lade", ["x"], null, null)] }),
        (typeof(BookMistake.UnrelatedQuantity), "when/0/quantity", Sound with { When = [new Condition("paver.speed", null, Value(1, "m/min"), null)] }),
        (typeof(BookMistake.CheckDoesNotFit), "check", Sound with { Quantity = "course.laid", Check = CheckKind.AtLeast }),
        (typeof(BookMistake.LimitDoesNotFit), "bounds/0", With(Of(new WordsLimit(["dry"])))),
        (typeof(BookMistake.LimitDoesNotFit), "bounds/0", Sound with { Check = CheckKind.Between, Bounds = [Of(new QuantityLimit("course.thickness_lowest", 1, "1"))] }),
        (typeof(BookMistake.UnknownUnit), "bounds/0/at_least", With(AtLeast(40, "mmm"))),
        (typeof(BookMistake.WrongUnit), "bounds/0/at_least", With(AtLeast(40, "°C"))),
        (typeof(BookMistake.WrongUnit), "bounds/0/above", With(AtLeast(40, "°C") with { LowExclusive = true })),
        (typeof(BookMistake.MissingUnit), "bounds/0/at_least", With(AtLeast(40, ""))),
        (typeof(BookMistake.NeedlessUnit), "bounds/0/at_least", Sound with { Quantity = "course.thickness_to_size", Bounds = [AtLeast(3, "mm")] }),
        (typeof(BookMistake.MissingLowEnd), "bounds/0", With(Of(new ConstantLimit(null, null)))),
        (typeof(BookMistake.NeedlessHighEnd), "bounds/0", With(Of(new ConstantLimit(Value(1, "mm"), Value(2, "mm"))))),
        (typeof(BookMistake.MissingHighEnd), "bounds/0", Sound with { Check = CheckKind.Between }),
        (typeof(BookMistake.NeedlessLowEnd), "bounds/0", Sound with { Check = CheckKind.AtMost, Bounds = [Of(new ConstantLimit(Value(1, "mm"), Value(2, "mm")))] }),
        (typeof(BookMistake.EmptyRange), "bounds/0", Sound with { Check = CheckKind.Between, Bounds = [Of(new ConstantLimit(Value(3, "mm"), Value(2, "mm")))] }),
        (typeof(BookMistake.EmptyRange), "when/0", Sound with { When = [new Condition("course.thickness_lowest", null, Value(3, "mm"), Value(3, "mm"))] }),
        (typeof(BookMistake.UnknownWord), "when/0/is/1", Sound with { When = [new Condition("course.laid", ["separately", "cold"], null, null)] }),
        (typeof(BookMistake.UnknownWord), "when/0/is/0", Sound with { When = [new Condition("site.trucks_reverse", ["maybe"], null, null)] }),
        (typeof(BookMistake.UnknownWord), "bounds/0/words/0", Sound with { Quantity = "course.laid", Check = CheckKind.Agrees, Bounds = [Of(new WordsLimit(["cold"]))] }),
        (typeof(BookMistake.NoWords), "when/0/is", Sound with { When = [new Condition("course.laid", [], null, null)] }),
        (typeof(BookMistake.WordsForNumber), "when/0", Sound with { When = [new Condition("course.thickness", ["thin"], null, null)] }),
        (typeof(BookMistake.NumberForWords), "when/0", Sound with { When = [new Condition("course.laid", null, Value(1, ""), null)] }),
        (typeof(BookMistake.KindCannotMatch), "when/0", Sound with { When = [new Condition("site.closure_end", ["x"], null, null)] }),
        (typeof(BookMistake.PlaceWithoutTemperature), "bounds/0/place", With(AtLeast(40, "mm") with { Place = Place.Skin })),
        (typeof(BookMistake.OtherPlace), "bounds/0/place", Sound with { Quantity = "course.mean_temperature", Bounds = [AtLeast(100, "°C") with { Place = Place.Skin }] }),
        (typeof(BookMistake.OtherPlace), "bounds/0/quantity", Sound with { Quantity = "course.mean_temperature", Bounds = [Of(new QuantityLimit("course.skin_temperature", 1, "1"))] }),
        (typeof(BookMistake.RequiredWithoutRight), "bounds/0/basis", With(AtLeast(40, "mm") with { Basis = Basis.Judgement })),
        (typeof(BookMistake.RequiredWithoutRight), "bounds/0/basis", With(AtLeast(40, "mm") with { Basis = Basis.Recommendation })),
        (typeof(BookMistake.TwoBoundsOfOneStrength), "bounds/1/strength", With(AtLeast(40, "mm"), AtLeast(50, "mm"))),
        (typeof(BookMistake.AdvisedNeverDecides), "bounds", With(AtLeast(40, "mm"), AtLeast(40, "mm", Strength.Advised))),
        (typeof(BookMistake.NoBounds), "", With()),
        (typeof(BookMistake.LimitIsItself), "bounds/0/quantity", With(Of(new QuantityLimit("course.thickness", 1, "1")))),
        (typeof(BookMistake.QuantitiesDiffer), "bounds/0/quantity", With(Of(new QuantityLimit("course.densification_window", 1, "1")))),
        (typeof(BookMistake.WrongFactor), "bounds/0/times", With(Of(new QuantityLimit("course.thickness_lowest", 0, "0")))),
        (typeof(BookMistake.WrongFactor), "bounds/0/times", Sound with { Quantity = "course.laying_temperature", Bounds = [Of(new QuantityLimit("course.mean_temperature", 2, "2"))] }),
        (typeof(BookMistake.EmptyTable), "bounds/0/table", Table()),
        (typeof(BookMistake.WrongNumberOfMatches), "bounds/0/table/rows/0/match", Table(new TableRow([], Value(3, ""), null, null))),
        (typeof(BookMistake.UnknownSource), "bounds/0/source/id", With(AtLeast(40, "mm") with { Source = Source() with { Source = "lost" } })),
        (typeof(BookMistake.UnknownSource), "bounds/0/table/rows/0/source/id", Table(Row(1, 2, 3) with { Source = Source() with { Source = "lost" } })),
        (typeof(BookMistake.EndsBeforeItStarts), "bounds/0/source/valid_to", With(AtLeast(40, "mm") with { Source = Source() with { ValidFrom = Today, ValidTo = Today.AddDays(-1) } })),
        (typeof(BookMistake.ConfirmationIncomplete), "bounds/0/source/evidence", With(AtLeast(40, "mm") with { Source = Source() with { Evidence = Evidence.Confirmed } })),
        (typeof(BookMistake.SeverityOutsideSafety), "severity", Sound with { Severity = Severity.B }),
        (typeof(BookMistake.SeverityMissing), "", Rule("site.measure_reversing_spotter", CheckKind.Present, Of(new PresenceLimit())) with { Family = "safety" }),
    ];

    private static RuleDefinition With(params Bound[] bounds) => Sound with { Bounds = bounds };

    private static RuleDefinition Table(params TableRow[] rows) =>
        Rule("course.thickness_to_size", CheckKind.AtLeast, Of(new TableLimit(["course.thickness"], rows)));

    private static TableRow Row(double from, double to, double limit) =>
        new([new RowMatch(null, Value(from, "mm"), Value(to, "mm"), Any: false)], Value(limit, ""), null, null);
}
