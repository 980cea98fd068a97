using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;
using static Laygate.UnitTests.Rules.TestBook;

namespace Laygate.UnitTests.Rules;

/// <summary>What a specification may do to a rule book, and what it may not.</summary>
public sealed class OverlayTests
{
    private static readonly RuleDefinition Thickness = Rule("course.thickness", CheckKind.AtLeast, AtLeast(40, "mm"));

    private static readonly RuleDefinition Spotter = Rule(
        "site.measure_reversing_spotter", CheckKind.Present, Of(new PresenceLimit()), Of(new PresenceLimit(), Strength.Advised)) with
    {
        Id = "SAF-001",
        Family = "safety",
        Severity = Severity.A,
    };

    private static readonly Specification State = Specification();
    private static readonly Specification Contract = Specification("contract", Layer.ParticularSpecification);
    private static readonly Confirmation Seen = new("A. Checker", new DateOnly(2027, 1, 2), "2nd", "7");

    [Fact]
    public void Later_layers_win_whatever_the_order_of_the_command_and_the_finding_says_who_set_the_limit()
    {
        var state = State with { Set = [new LimitOverride("LAY-001", [AtLeast(50, "mm")], null)] };
        var contract = Contract with { Set = [new LimitOverride("LAY-001", [AtLeast(60, "mm")], null)] };
        foreach (var book in new[] { Book(General(Thickness), state, contract), Book(General(Thickness), contract, state) })
        {
            var limit = Evaluate(book, Context().Given("course.thickness", new NumberValue(0.055))).Findings[0].Limit!;
            Assert.Equal((60.0, Layer.ParticularSpecification, "contract"), (limit.Low!.Number, limit.Layer, limit.SetBy));
        }

        Assert.Equal(Book(General(Thickness), state, contract).Hash, Book(General(Thickness), contract, state).Hash, StringComparer.Ordinal);
    }

    [Fact]
    public void Rules_on_demand_wait_for_a_specification()
    {
        var onDemand = Thickness with { OnDemand = true };
        Assert.Empty(Book(General(onDemand)).InForce);
        Assert.Single(Book(General(onDemand), State with { BringIn = ["LAY-001"] }).InForce);
        Assert.Single(Book(General(onDemand), State with { BringIn = ["LAY-001"] }, Specification("other") with { BringIn = ["LAY-001"] }).InForce);
        Assert.Single(Book(General(onDemand with { Bounds = [] }), State with { Set = [new LimitOverride("LAY-001", [AtLeast(50, "mm")], null)] }).InForce);
    }

    [Fact]
    public void A_specification_that_sets_a_rule_speaks_where_it_is_used()
    {
        var local = Thickness with { Jurisdictions = ["US"] };
        var context = Context(Plan(jurisdiction: "DE")).Given("course.thickness", new NumberValue(0.03));
        Assert.Equal(Outcome.NotApplicable, Evaluate(Book(General(local)), context).Findings[0].Outcome);
        var state = State with { Set = [new LimitOverride("LAY-001", [AtLeast(50, "mm")], null)] };
        Assert.Equal(Outcome.Missed, Evaluate(Book(General(local), state), context).Findings[0].Outcome);
    }

    [Fact]
    public void A_rule_taken_out_keeps_its_reason_and_gives_no_finding()
    {
        var book = Book(General(Thickness), State with { TakeOut = [new TakenOut("LAY-001", "not used here")] });
        Assert.Empty(book.InForce);
        Assert.Equal(("state", "not used here"), (book.All[0].TakenOutBy, book.All[0].Reason));
        Assert.Single(Book(General(Thickness), State with { TakeOut = [new TakenOut("LAY-001", "x")] }, Contract with { BringIn = ["LAY-001"] }).InForce);
    }

    [Fact]
    public void A_bound_moves_between_required_and_advised()
    {
        var context = Context().Given("course.thickness", new NumberValue(0.03));
        var softer = Book(General(Thickness), State with { Move = [new BoundMove("LAY-001", Strength.Required, Strength.Advised, "x")] });
        Assert.Equal(Status.Warn, Evaluate(softer, context).Findings[0].Status);
        var advised = Thickness with { Bounds = [AtLeast(40, "mm", Strength.Advised)] };
        var harder = Book(General(advised), Contract with { Move = [new BoundMove("LAY-001", Strength.Advised, Strength.Required, "x")] });
        var finding = Evaluate(harder, context).Findings[0];
        Assert.Equal((Status.Fail, Basis.Requirement, "contract"), (finding.Status, finding.Limit!.Basis, finding.Limit.SetBy));
    }

    [Fact]
    public void A_confirmed_limit_may_fail_although_it_was_only_recalled()
    {
        var recalled = Thickness with { Bounds = [AtLeast(40, "mm", evidence: Evidence.Recalled)] };
        var context = Context().Given("course.thickness", new NumberValue(0.03));
        Assert.Equal(Status.Warn, Evaluate(Book(General(recalled)), context).Findings[0].Status);
        var finding = Evaluate(Book(General(recalled), State with { Confirm = [new LimitConfirmation("LAY-001", Strength.Required, null, Seen)] }), context).Findings[0];
        Assert.Equal((Status.Fail, Evidence.Confirmed, Seen), (finding.Status, finding.Limit!.Source.Evidence, finding.Limit.Source.Confirmation));
    }

    [Fact]
    public void One_row_of_a_table_is_confirmed_alone()
    {
        TableRow Row(string word, double limit) => new([new RowMatch([word], null, null, Any: false)], Value(limit, "mm"), null, null);
        var rule = Rule("course.thickness", CheckKind.AtLeast, Of(new TableLimit(["mix.kind"], [Row("porous", 40), Row("stone-mastic", 35)]), evidence: Evidence.Recalled));
        var book = Book(General(rule), State with { Confirm = [new LimitConfirmation("LAY-001", Strength.Required, 2, Seen)] });
        var context = Context().Given("course.thickness", new NumberValue(0.03));
        Assert.Equal(Status.Fail, Evaluate(book, context.Given("mix.kind", new CategoryValue("stone-mastic"))).Findings[0].Status);
        Assert.Equal(Status.Warn, Evaluate(book, context.Given("mix.kind", new CategoryValue("porous"))).Findings[0].Status);
        Assert.IsType<BookMistake.UnknownRow>(Only(State with { Confirm = [new LimitConfirmation("LAY-001", Strength.Required, 3, Seen)] }, rule).Mistake);
    }

    [Theory]
    [InlineData(Evidence.Judgement, true)]
    [InlineData(Evidence.CommonPractice, true)]
    [InlineData(Evidence.Derived, true)]
    [InlineData(Evidence.Recalled, false)]
    [InlineData(Evidence.SecondHand, false)]
    [InlineData(Evidence.Read, false)]
    public void A_limit_that_stands_in_no_publication_cannot_be_confirmed(Evidence evidence, bool refused)
    {
        var rule = Thickness with { Bounds = [AtLeast(40, "mm", Strength.Advised, evidence)] };
        var problems = Build(General(rule), State with { Confirm = [new LimitConfirmation("LAY-001", Strength.Advised, null, Seen)] }).Problems;
        Assert.Equal(refused ? [typeof(BookMistake.NothingToLookUp)] : [], problems.Select(problem => problem.Mistake.GetType()));
    }

    [Fact]
    public void A_confirmed_table_leaves_a_judged_row_a_judgement()
    {
        TableRow Row(string word, double limit, SourceReference? source) => new([new RowMatch([word], null, null, Any: false)], Value(limit, "mm"), null, source);
        var rule = Rule("course.thickness", CheckKind.AtLeast, Of(new TableLimit(["mix.kind"], [Row("porous", 40, null), Row("stone-mastic", 35, Source(Evidence.Judgement))]), Strength.Advised, Evidence.Recalled));
        var book = Book(General(rule), State with { Confirm = [new LimitConfirmation("LAY-001", Strength.Advised, null, Seen)] });
        var context = Context().Given("course.thickness", new NumberValue(0.03));
        Assert.Equal(Evidence.Confirmed, Evaluate(book, context.Given("mix.kind", new CategoryValue("porous"))).Findings[0].Limit!.Source.Evidence);
        Assert.Equal(Evidence.Judgement, Evaluate(book, context.Given("mix.kind", new CategoryValue("stone-mastic"))).Findings[0].Limit!.Source.Evidence);
        Assert.IsType<BookMistake.NothingToLookUp>(Only(State with { Confirm = [new LimitConfirmation("LAY-001", Strength.Advised, 2, Seen)] }, rule).Mistake);
    }

    [Fact]
    public void Rules_sources_and_assumptions_are_added()
    {
        var own = Thickness with { Id = "LAY-900", Name = "own", Bounds = [AtLeast(60, "mm") with { Source = Source() with { Source = "contract" } }] };
        var contract = Contract with
        {
            Rules = [own],
            Sources = [Manual with { Id = "contract" }],
            Assume = [new Assumption("density", "", 2.5, "t/m3", 2.4, 2.6, "contract", Evidence.Read)],
        };
        var book = Book(General(Thickness), contract);
        Assert.Equal("LAY-001, LAY-900", string.Join(", ", book.InForce.Select(rule => rule.Definition.Id)));
        Assert.Equal((2.5, "Density"), (Assert.Single(book.Assumptions).Number, book.Assumptions[0].Meaning));
        Assert.Equal("contract", book.All[1].AddedBy);
    }

    [Fact]
    public void Text_and_hash_change_with_every_figure_and_with_nothing_else()
    {
        var book = Book(General(Thickness));
        Assert.Equal(book.Hash, Book(General(Thickness with { Title = "Title" })).Hash, StringComparer.Ordinal);
        Assert.Contains("LAY-001", book.Text, StringComparison.Ordinal);
        Assert.Matches("^[0-9a-f]{64}$", book.Hash);
        Assert.False(string.Equals(book.Hash, Book(General(Thickness with { Bounds = [AtLeast(41, "mm")] })).Hash, StringComparison.Ordinal));
        Assert.False(string.Equals(book.Hash, Book(General(Thickness with { Bounds = [AtLeast(40, "mm") with { LowExclusive = true }] })).Hash, StringComparison.Ordinal));
        Assert.False(string.Equals(book.Hash, Book(General(Thickness), State).Hash, StringComparison.Ordinal));
    }

    [Fact]
    public void Two_specifications_of_one_layer_never_set_the_same_rule()
    {
        var set = new LimitOverride("LAY-001", [AtLeast(50, "mm")], null);
        var problem = Only([State with { Set = [set] }, Specification("other") with { Set = [set] }], Thickness);
        Assert.True(problem.Mistake is BookMistake.TwoSpecificationsDiffer { First: "other", Second: "state" }, problem.Mistake.ToString());
    }

    public static TheoryData<string, NoEffect> DeadOverrides => new()
    {
        { "bring_in", NoEffect.InForce }, { "set-same", NoEffect.SameBounds }, { "set-none", NoEffect.NoSuchBound }, { "move", NoEffect.NoSuchBound },
        { "confirm", NoEffect.NoSuchBound }, { "take-out-what-is-out", NoEffect.OutOfForce }, { "bring-in-and-take-out", NoEffect.Contradiction }, { "twice", NoEffect.Contradiction }, { "assume", NoEffect.SameValue },
    };

    [Theory]
    [MemberData(nameof(DeadOverrides))]
    public void An_override_that_changes_nothing_is_a_mistake(string which, NoEffect why)
    {
        var onDemand = Thickness with { Id = "LAY-002", Name = "b", OnDemand = true };
        var specification = which switch
        {
            "bring_in" => State with { BringIn = ["LAY-001"] },
            "set-same" => State with { Set = [new LimitOverride("LAY-001", Thickness.Bounds, null)] },
            "set-none" => State with { Set = [new LimitOverride("LAY-001", [], null)] },
            "move" => State with { Move = [new BoundMove("LAY-001", Strength.Advised, Strength.Required, "x")] },
            "confirm" => State with { Confirm = [new LimitConfirmation("LAY-001", Strength.Advised, null, Seen)] },
            "take-out-what-is-out" => State with { TakeOut = [new TakenOut("LAY-002", "x")] },
            "bring-in-and-take-out" => State with { BringIn = ["LAY-002"], TakeOut = [new TakenOut("LAY-002", "x")] },
            "twice" => State with { BringIn = ["LAY-002", "LAY-002"] },
            _ => State with { Assume = [Assumptions["density"]] },
        };
        var problem = Only(specification, Thickness, onDemand);
        Assert.Equal(why, Assert.IsType<BookMistake.DeadOverride>(problem.Mistake).Why);
    }

    public static TheoryData<string, WeakerBy> Weakenings => new()
    {
        { "take_out", WeakerBy.TakenOut }, { "move", WeakerBy.Advised }, { "advised-only", WeakerBy.Advised }, { "required-only", WeakerBy.Dropped },
        { "recalled", WeakerBy.WeakerEvidence }, { "ends", WeakerBy.Shorter },
    };

    [Theory]
    [MemberData(nameof(Weakenings))]
    public void A_life_critical_rule_is_neither_taken_out_nor_weakened(string which, WeakerBy how)
    {
        var required = Of(new PresenceLimit());
        var advised = Of(new PresenceLimit(), Strength.Advised);
        Specification Set(params Bound[] bounds) => State with { Set = [new LimitOverride("SAF-001", bounds, null)] };
        var specification = which switch
        {
            "take_out" => State with { TakeOut = [new TakenOut("SAF-001", "x")] },
            "move" => State with { Move = [new BoundMove("SAF-001", Strength.Required, Strength.Advised, "x")] },
            "advised-only" => Set(advised),
            "required-only" => Set(required),
            "recalled" => Set(Of(new PresenceLimit(), evidence: Evidence.Recalled), advised),
            _ => Set(required with { Source = Source() with { ValidTo = Today } }, advised),
        };
        var rule = which is "move" ? Spotter with { Bounds = [required] } : Spotter;
        var problem = Only(specification, rule);
        Assert.Equal(how, Assert.IsType<BookMistake.LifeCriticalWeakened>(problem.Mistake).How);
    }

    [Fact]
    public void A_life_critical_rule_may_be_set_again_by_another_clause() => Assert.NotNull(Build(General(Spotter), State with
    {
        Set = [new LimitOverride("SAF-001", [.. Spotter.Bounds.Select(bound => bound with { Source = bound.Source with { Clause = "9" } })], null)],
    }).Book);

    [Fact]
    public void A_life_critical_limit_may_be_tightened_but_not_loosened()
    {
        var rule = Rule("opening.temperature", CheckKind.AtMost, AtMost(80, "°C")) with { Id = "SAF-002", Family = "safety", Severity = Severity.A };
        Specification Set(Bound bound) => State with { Set = [new LimitOverride("SAF-002", [bound], null)] };
        Assert.NotNull(Build(General(rule), Set(AtMost(70, "°C"))).Book);
        Assert.NotNull(Build(General(rule), Set(AtMost(175, "°F"))).Book);
        Assert.Equal(new BookMistake.LifeCriticalWeakened("SAF-002", WeakerBy.Laxer), Only(Set(AtMost(81, "°C")), rule).Mistake);
    }

    [Fact]
    public void A_rule_is_life_critical_in_the_countries_its_source_speaks_for()
    {
        var american = Spotter with { Jurisdictions = ["US"] };
        Specification TakeOut(string place) => State with { Jurisdiction = place, TakeOut = [new TakenOut("SAF-001", "x")] };
        Assert.NotNull(Build(General(american), TakeOut("DE")).Book);
        Assert.Null(Build(General(american), TakeOut("US-WA")).Book);
        Assert.Null(Build(General(american), TakeOut("none")).Book);
    }

    [Fact]
    public void What_a_specification_names_must_exist()
    {
        Assert.Equal("set/0/rule", Place<BookMistake.UnknownRule>(State with { Set = [new LimitOverride("LAY-999", [AtLeast(1, "mm")], null)] }, mistake => mistake.Id == "LAY-999"));
        Assert.Equal("bring_in/0", Place<BookMistake.UnknownRule>(State with { BringIn = ["LAY-999"] }, mistake => mistake.Id == "LAY-999"));
        Assert.Equal("assume/0/id", Place<BookMistake.UnknownAssumption>(State with { Assume = [Assumptions["density"] with { Id = "emissivity" }] }, mistake => mistake.Id == "emissivity"));
        Assert.Equal("assume/0", Place<BookMistake.AssumptionUnit>(State with { Assume = [Assumptions["density"] with { Unit = "kg/m3" }] }, mistake => mistake is { Id: "density", Unit: "kg/m3" }));
        Assert.Equal("assume/0", Place<BookMistake.AssumptionRange>(State with { Assume = [Assumptions["density"] with { Number = 9 }] }, mistake => mistake.Id == "density"));
        Assert.Equal("set/0/rule", Place<BookMistake.RemovedRule>(State with { Set = [new LimitOverride("LAY-001", [AtLeast(1, "mm")], null)] }, mistake => mistake.Id == "LAY-001", LifeState.Gone));
        Assert.Equal("sources/0", Place<BookMistake.DuplicateSource>(State with { Sources = [Manual with { Title = "Another" }] }, mistake => mistake.Id == "manual"));
        Assert.IsType<BookMistake.GeneralSpecification>(Only(State with { Layer = Layer.GeneralPractice }, Thickness).Mistake);
        Assert.IsType<BookMistake.DuplicateSpecification>(Only([State, State], Thickness).Mistake);
    }

    [Fact]
    public void A_mistake_in_a_bound_that_a_specification_sets_is_placed_in_the_specification()
    {
        var problem = Only(State with { Set = [new LimitOverride("LAY-001", [AtLeast(50, "°C")], null)] }, Thickness);
        Assert.Equal(new BookPlace("state", null, "set/0/bounds/0/at_least"), problem.Place);
    }

    private static string Place<T>(Specification specification, Func<T, bool> isMeant, LifeState life = LifeState.InUse)
        where T : BookMistake
    {
        var problem = Only(specification, Thickness with { Life = new Life(life, "0.1.0", null) });
        Assert.True(isMeant(Assert.IsType<T>(problem.Mistake)), problem.Mistake.ToString());
        return problem.Place.Path;
    }

    private static BookProblem Only(Specification specification, params RuleDefinition[] rules) => Only([specification], rules);

    private static BookProblem Only(Specification[] specifications, params RuleDefinition[] rules) =>
        Assert.Single(Build(General(rules), specifications).Problems);
}
