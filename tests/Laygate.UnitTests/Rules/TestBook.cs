using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Rules;

/// <summary>A small catalogue of quantities without computation, rules on it, and plans to give values to. All figures are invented.</summary>
internal static class TestBook
{
    public static readonly DateOnly Today = new(2027, 5, 14);

    public static readonly Source Manual = new("manual", "Manual", "Issuer", "2nd", "2020", null, null, null);

    public static readonly AssumptionSet Assumptions = new(
        [new Assumption("density", "Density", 2.4, "t/m3", 2.2, 2.5, "invented", Evidence.Recalled)]);

    public static QuantityCatalogue Catalogue { get; } = new(
    [
        Number("course.thickness", ElementKind.Course, Dimension.Length, "mm", "in"),
        Number("course.thickness_lowest", ElementKind.Course, Dimension.Length, "mm", "in"),
        Number("course.thickness_to_size", ElementKind.Course, Dimension.None, string.Empty, string.Empty),
        Number("course.laying_temperature", ElementKind.Course, Dimension.Temperature, "°C", "°F"),
        Number("course.mean_temperature", ElementKind.Course, Dimension.Temperature, "°C", "°F") with { Place = Place.CourseMean },
        Number("course.skin_temperature", ElementKind.Course, Dimension.Temperature, "°C", "°F") with { Place = Place.Skin },
        Number("course.densification_window", ElementKind.Course, Dimension.Duration, "min", "min"),
        Number("course.last_densifying_pass", ElementKind.Course, Dimension.Duration, "min", "min"),
        Category("course.laid", ElementKind.Course, "separately", "hot-on-warm", "hot-on-hot"),
        Flag("course.is_upper_of_pair", ElementKind.Course),
        Category("mix.kind", ElementKind.Mix, "asphalt-concrete", "stone-mastic", "porous"),
        Category("mix.other_kind", ElementKind.Mix, "asphalt-concrete", "stone-mastic", "porous"),
        Category("mix.binder_grade", ElementKind.Mix),
        Flag("site.trucks_reverse", ElementKind.Site),
        Quantity("site.measure_reversing_spotter", ElementKind.Site, ValueKind.Presence),
        Number("opening.temperature", ElementKind.Opening, Dimension.Temperature, "°C", "°F"),
        Quantity("opening.at", ElementKind.Opening, ValueKind.Moment),
        Quantity("site.closure_end", ElementKind.Site, ValueKind.Moment),
        Number("paver.speed", ElementKind.Paver, Dimension.Speed, "m/min", "ft/min"),
    ]);

    public static Plan Plan(Stage stage = Stage.Submission, DateOnly? shift = null, string? jurisdiction = null) => new()
    {
        Format = 1,
        Identity = new Identity { Id = "p", Stage = stage },
        Location = jurisdiction is null ? null : new Location { Jurisdiction = jurisdiction },
        Shift = shift is null ? null : new Shift { Date = shift },
        Mixes = [new Mix { Id = "sma" }],
        Courses = [new Course { Id = "wearing", Mix = "sma", Thickness = new Measure<Length>(40, UnitTable.Find("mm")!) }],
    };

    public static QuantityContext Context(Plan? plan = null) => new(plan ?? Plan(), Catalogue, Assumptions, 1);

    public static SourceReference Source(Evidence evidence = Evidence.Read) => new()
    {
        Source = "manual",
        Clause = "1",
        Evidence = evidence,
        Confirmation = evidence == Evidence.Confirmed ? new Confirmation("A", Today, "2nd", "7") : null,
    };

    public static LimitValue Value(double number, string unit) =>
        new(number, unit, FormattableString.Invariant($"{number} {unit}").TrimEnd());

    public static Bound AtLeast(double number, string unit, Strength strength = Strength.Required, Evidence evidence = Evidence.Read) =>
        Of(new ConstantLimit(Value(number, unit), null), strength, evidence);

    public static Bound AtMost(double number, string unit, Strength strength = Strength.Required, Evidence evidence = Evidence.Read) =>
        Of(new ConstantLimit(null, Value(number, unit)), strength, evidence);

    public static Bound Of(Limit limit, Strength strength = Strength.Required, Evidence evidence = Evidence.Read) => new()
    {
        Strength = strength,
        Basis = strength == Strength.Required ? Basis.Requirement : Basis.Recommendation,
        Limit = limit,
        Source = Source(evidence),
    };

    public static RuleDefinition Rule(string quantity, CheckKind check, params Bound[] bounds) => new()
    {
        Id = "LAY-001",
        Family = "layers",
        Name = "test-rule",
        Title = "Title",
        Why = "Why",
        Remedy = "Remedy",
        Local = "Local",
        AppliesTo = Catalogue.Find(quantity)?.Element ?? ElementKind.Course,
        Check = check,
        Quantity = quantity,
        Bounds = bounds,
        FromStage = Stage.Submission,
        Life = new Life(LifeState.InUse, "0.1.0", null),
    };

    public static BookDefinition General(params RuleDefinition[] rules) => new() { Edition = "0.1.0", Rules = rules, Sources = [Manual] };

    public static Specification Specification(string name = "state", Layer layer = Layer.StandardSpecification) => new()
    {
        Name = name,
        Title = name,
        Issuer = "Issuer",
        Edition = "1",
        Layer = layer,
        Jurisdiction = "none",
    };

    public static RuleBookResult Build(BookDefinition general, params Specification[] specifications) =>
        RuleBook.Build(general, specifications, Catalogue, Assumptions);

    public static RuleBook Book(BookDefinition general, params Specification[] specifications)
    {
        var result = Build(general, specifications);
        Assert.Empty(result.Problems);
        return result.Book!;
    }

    public static Report Evaluate(RuleBook book, QuantityContext context, Stage? stage = null) =>
        Evaluator.Evaluate(book, context, new EvaluationSettings { File = "plan.yaml", CheckedOn = Today, Stage = stage });

    public static Finding Judge(RuleDefinition rule, QuantityContext context, Stage? stage = null) =>
        Assert.Single(Evaluate(Book(General(rule)), context, stage).Findings);

    public static QuantityContext Given(this QuantityContext context, string quantity, QuantityValue value, string? unit = null, Place? place = null)
    {
        var definition = context.Catalogue.Find(quantity)!;
        var address = context.Elements.Of(definition.Element).First().Address;
        context.Give(quantity, address, new Answer
        {
            Value = value,
            Unit = unit is null ? null : UnitTable.Find(unit),
            Place = place,
            Input = new InputReference(address, quantity[(quantity.IndexOf('.', StringComparison.Ordinal) + 1)..]),
        });
        return context;
    }

    public static QuantityContext GivenAnswer(this QuantityContext context, string quantity, Answer answer)
    {
        context.Give(quantity, context.Elements.Of(context.Catalogue.Find(quantity)!.Element).First().Address, answer);
        return context;
    }

    /// <summary>A working that rests on a recalled density in place of the plan's.</summary>
    public static Working WeakWorking { get; } = new([], [],
        [new AssumptionUse("density", "mix:sma", 2.4, "t/m3", Evidence.Recalled, "invented", new InputReference("mix:sma", "density.compacted"))]);

    private static QuantityDefinition Number(string name, ElementKind element, Dimension dimension, string metric, string us) =>
        Quantity(name, element, ValueKind.Number) with { Dimension = dimension, MetricUnit = metric, UsUnit = us };

    private static QuantityDefinition Category(string name, ElementKind element, params string[] words) =>
        Quantity(name, element, ValueKind.Category) with { Words = words };

    private static QuantityDefinition Flag(string name, ElementKind element) => Quantity(name, element, ValueKind.Flag);

    private static QuantityDefinition Quantity(string name, ElementKind element, ValueKind kind) => new()
    {
        Name = name,
        Element = element,
        Kind = kind,
        Meaning = name,
        Compute = (_, of) => Answer.Missing(new InputReference(of.Address, name[(name.IndexOf('.', StringComparison.Ordinal) + 1)..])),
    };
}
