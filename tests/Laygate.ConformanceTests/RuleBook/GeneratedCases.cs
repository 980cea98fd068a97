using System.Collections.Concurrent;
using System.Globalization;
using Laygate.Checking.Scaffolding;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Jobs;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.RuleBook;

/// <summary>One bound of a rule, or one row of its table, on its own: values on both sides of it are given to the evaluator.</summary>
internal sealed record GeneratedCase(CheckedRule Rule, CheckedBound Bound, int? Row)
{
    private static readonly QuantityCatalogue Catalogue = LaygateQuantities.Catalogue();
    private static readonly DateTimeOffset SomeMoment = new(2027, 6, 8, 12, 0, 0, TimeSpan.FromHours(2));

    private static readonly AssumptionSet Assumptions = LaygateAssumptions.Set();
    private static readonly ConcurrentDictionary<string, Plan> Plans = new(StringComparer.Ordinal);
    private static readonly IReadOnlyList<Source> Sources = [.. Repository.Book.General!.Sources.Concat(Repository.Book.Specifications.SelectMany(one => one.Sources)).DistinctBy(one => one.Id, StringComparer.Ordinal)];

    private readonly Lazy<Laygate.Rules.Merging.RuleBook> book = new(() => Book(Rule, Bound));

    public string Name => string.Create(CultureInfo.InvariantCulture, $"{Rule.Definition.Id} {Bound.SetBy ?? "general"} {Words.Of(Bound.Definition.Strength)} {Row}").TrimEnd();

    public SourceReference Source => Row is { } row ? ((CheckedTable)Bound.Limit).Rows[row - 1].Source : Bound.Definition.Source;

    /// <summary>The cases of every bound and row of a rule.</summary>
    public static IEnumerable<GeneratedCase> Of(CheckedRule rule) => rule.Bounds.SelectMany(bound => bound.Limit is CheckedTable table
        ? Enumerable.Range(1, table.Rows.Count).Select(row => new GeneratedCase(rule, bound, row))
        : [new GeneratedCase(rule, bound, null)]);

    /// <summary>Values inside and outside, one pair per end.</summary>
    public IEnumerable<(QuantityValue Inside, QuantityValue Outside)> Sides() => (Bound.Limit, Rule.Quantity.Kind) switch
    {
        (CheckedConstant constant, _) => Ends(constant.Range),
        (CheckedTable table, _) => Ends(table.Rows[Row!.Value - 1].Range),
        (CheckedPresence, _) => [(new PresenceValue(PresenceLevel.Stated, []), new PresenceValue(Bound.Definition.Strength == Strength.Required ? PresenceLevel.Absent : PresenceLevel.Thin, ["what"]))],
        (CheckedWords words, ValueKind.Flag) => [(new FlagValue(words.Words.Contains("yes", StringComparer.Ordinal)), new FlagValue(!words.Words.Contains("yes", StringComparer.Ordinal)))],
        (CheckedWords words, _) => [(new CategoryValue(words.Words[0]), new CategoryValue(Rule.Quantity.Words.Except(words.Words, StringComparer.Ordinal).FirstOrDefault("some-other-word")))],
        (CheckedQuantity, ValueKind.Moment) => [(new MomentValue(SomeMoment), new MomentValue(SomeMoment.AddMinutes(-1)))],
        (CheckedQuantity, ValueKind.Flag) => [(new FlagValue(true), new FlagValue(false))],
        (CheckedQuantity, ValueKind.Category) => [(new CategoryValue(OtherWord), new CategoryValue(Rule.Quantity.Words.FirstOrDefault(word => word != OtherWord, "some-other-word")))],
        (CheckedQuantity other, _) when Rule.Definition.Check == CheckKind.Agrees => [(new NumberValue(20 * other.Factor), new NumberValue((20 * other.Factor) + 0.01))],
        (CheckedQuantity other, _) => [End(20 * other.Factor, Bound.IsUpper, Bound.IsUpper ? Bound.Definition.HighExclusive : Bound.Definition.LowExclusive)],
        _ => throw new InvalidOperationException(Name),
    };

    /// <summary>The finding for a value; null: the value is not stated.</summary>
    public Finding Judge(QuantityValue? value)
    {
        var (plan, address) = BaseElements.Of(Rule.Definition.AppliesTo);
        var context = plan is "job" ? Job() : new QuantityContext(Plan(plan), Catalogue, Assumptions, 1);
        var element = context.Elements.Find(address) ?? throw new InvalidOperationException($"The base plan {plan} has no {address}.");
        GiveKeys(context, element);
        if (Bound.Limit is CheckedQuantity other)
        {
            Give(context, element, other.Quantity, Other(other.Quantity));
        }

        Give(context, element, Rule.Quantity, value);
        return Evaluator.Evaluate(book.Value, context, new EvaluationSettings { File = plan, CheckedOn = Date(), OnlyRule = Rule.Definition.Id }).Findings.Single(finding => finding.Address == address);
    }

    // The rule with this bound alone, in force anywhere and under no condition: conditions have cases of their own.
    private static Laygate.Rules.Merging.RuleBook Book(CheckedRule rule, CheckedBound bound)
    {
        var built = Laygate.Rules.Merging.RuleBook.Build(General(rule, bound), [], Catalogue, Assumptions);
        Assert.Empty(built.Problems);
        return built.Book!;
    }

    private static BookDefinition General(CheckedRule rule, CheckedBound bound) => new()
    {
        Edition = "generated",
        Sources = Sources,
        Rules =
        [
            rule.Definition with
            {
                Bounds = [bound.Definition], When = [], Jurisdictions = [], OnDemand = false, FromStage = Stage.Release, Life = new Life(LifeState.InUse, "generated", null),
            },
        ],
    };

    // Its shifts are in the date of the bound, one day after the other.
    private QuantityContext Job()
    {
        var read = new PlanReader().Read("job", File.ReadAllBytes(Path.Combine(Repository.Root, "rules", "bases", "job.yaml")), new NoPartFiles());
        var shifts = read.Plans.Select((shift, index) => JobShift.Of(
            read.Job!.Shifts[index], new QuantityContext(shift.Plan with { Shift = shift.Plan.Shift! with { Date = Date().AddDays(index) } }, Catalogue, Assumptions, 1) { IsQuick = true }, shift.Plan));
        return QuantityContext.Of(new JobView(read.Job!.Whole.Plan, [.. shifts], read.Job.Lots), Catalogue, Assumptions, 1);
    }

    private Plan Plan(string name)
    {
        var plan = Plans.GetOrAdd(name, known => PlanMapper.Map(YamlReader.Read(File.ReadAllBytes(Path.Combine(Repository.Root, "rules", "bases", $"{known}.yaml"))).Documents[0]).Plan!);
        return plan with { Shift = (plan.Shift ?? new Shift()) with { Date = Date() } };
    }

    private DateOnly Date() => Source.ValidFrom ?? Source.ValidTo ?? Repository.CheckDate;

    private void GiveKeys(QuantityContext context, Element element)
    {
        if (Row is not { } row)
        {
            return;
        }

        var table = (CheckedTable)Bound.Limit;
        for (var key = 0; key < table.Keys.Count; key++)
        {
            if (table.Keys[key].Name != Rule.Quantity.Name)
            {
                Give(context, element, table.Keys[key], KeyValue(table, key, row));
            }
        }
    }

    private static QuantityValue KeyValue(CheckedTable table, int key, int row)
    {
        var match = table.Rows[row - 1].Matches[key];
        var quantity = table.Keys[key];
        if (match.Words is { } words)
        {
            return quantity.Kind == ValueKind.Flag ? new FlagValue(words[0] == "yes") : new CategoryValue(words[0]);
        }

        return match.AtLeast is { } low ? new NumberValue(low.Si)
            : match.Below is { } high ? new NumberValue(high.Si - Step(high.Si))
            : AnyValue(table, key);
    }

    // What no other row asks for, where there is such a word.
    private static QuantityValue AnyValue(CheckedTable table, int key)
    {
        var quantity = table.Keys[key];
        var asked = table.Rows.SelectMany(row => row.Matches[key].Words ?? []).ToList();
        return quantity.Kind switch
        {
            ValueKind.Number => new NumberValue(1),
            ValueKind.Flag => new FlagValue(!asked.Contains("yes", StringComparer.Ordinal)),
            _ => new CategoryValue(quantity.Words.Except(asked, StringComparer.Ordinal).Concat(quantity.Words).FirstOrDefault("word")),
        };
    }

    private static QuantityValue Other(QuantityDefinition quantity) => quantity.Kind switch
    {
        ValueKind.Moment => new MomentValue(SomeMoment),
        ValueKind.Flag => new FlagValue(true),
        ValueKind.Category => new CategoryValue(quantity.Words.FirstOrDefault("word")),
        _ => new NumberValue(20),
    };

    private string OtherWord => ((CheckedQuantity)Bound.Limit).Quantity.Words.FirstOrDefault("word");

    private void Give(QuantityContext context, Element element, QuantityDefinition quantity, QuantityValue? value)
    {
        var owner = context.Elements.Related(element, quantity.Element) ?? throw new InvalidOperationException($"{Name}: {element.Address} belongs to no {Words.Of(quantity.Element)}.");
        var input = new InputReference(owner.Address, "generated");
        context.Give(quantity.Name, owner.Address, value is null ? Answer.Missing(input) : new Answer { Value = value, Place = quantity.Place ?? Bound.Definition.Place, Origin = Origin.Computed, Input = input });
    }

    private IEnumerable<(QuantityValue Inside, QuantityValue Outside)> Ends(CheckedRange range)
    {
        if (range.Low is { } low)
        {
            yield return End(low.Si, upper: false, Bound.Definition.LowExclusive);
        }

        if (range.High is { } high)
        {
            yield return End(high.Si, upper: true, Bound.Definition.HighExclusive);
        }
    }

    private static (QuantityValue Inside, QuantityValue Outside) End(double si, bool upper, bool exclusive)
    {
        var inward = upper ? -Step(si) : Step(si);
        return (new NumberValue(exclusive ? si + inward : si), new NumberValue(exclusive ? si : si - inward));
    }

    // Far above the tolerance for rounding (1e-9, for temperatures on the absolute scale), far below any digit that a limit has.
    private static double Step(double si) => Math.Max(Math.Abs(si), 1) * 1e-5;
}
