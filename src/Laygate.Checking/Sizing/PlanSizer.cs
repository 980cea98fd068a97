using Laygate.Checking.Starting;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Numerics;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Rules.Binding;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Checking.Sizing;

/// <summary>
/// Sizes a plan at first sight: writes usual values where it states nothing, and asks the same quantities that a check asks. Low and high are the
/// 5 % and 95 % points over the ranges of all usual values and assumptions that go in; the mat carries its own.
/// </summary>
public sealed class PlanSizer(PlanTools tools, RuleBook book)
{
    /// <summary>Sets of values that are tried: judgement, the 5 % point then lies between the third and the fourth.</summary>
    private const int Samples = 61;

    private const double LowShare = 0.05;
    private const double HighShare = 0.95;

    // Air temperatures that are shown where the plan states none: judgement, a cold, a cool and a mild night of the laying season.
    private static readonly double[] MetricDegrees = [5, 10, 20];
    private static readonly double[] UsDegrees = [40, 50, 70];
    private const string OfTheMat = "course.densification_window";

    private readonly AssumptionSet assumptions = new([.. LaygateAssumptions.All, .. book.Assumptions]);

    /// <summary>Sizes every plan of one file.</summary>
    /// <param name="file">Name of the file, as it is to be shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="parts">What the host can reach of the files that plans use.</param>
    /// <param name="months">Mean temperatures of the twelve months from January on; empty where they are not stated.</param>
    /// <returns>The sizings, or why the file cannot be read.</returns>
    public SizingResult Size(string file, byte[] bytes, IPartFiles parts, IReadOnlyList<SizingWeather> months)
    {
        var read = tools.Reader.Read(file, bytes, parts);
        return new SizingResult(file, [.. read.Plans.Select(plan => Of(plan, months))], read.Problems);
    }

    private PlanSizing Of(ReadPlan plan, IReadOnlyList<SizingWeather> months)
    {
        var draft = new SizingDraft(tools, plan.Root);
        var expected = new SizedValues(tools, draft, assumptions);
        var drawn = new Draws(assumptions, draft, expected, tools);
        var samples = Enumerable.Range(1, Samples).Select(number => new SizedValues(tools, draft, drawn.Of(number))).ToList();
        var lines = expected.Asked.Where(one => one.Answer.Value is NumberValue).Select(one => Line(one, expected, samples, drawn)).ToList();
        var mat = Weathers(draft, expected.Context.System).SelectMany(weather => InWeather(draft, weather)).ToList();
        var missing = expected.Asked.Select(one => one.Answer).Concat(mat.Select(one => one.Answer))
            .SelectMany(answer => answer.Absence?.Missing ?? []).Distinct().ToList();
        return new PlanSizing(
            plan.Plan.Identity.Id,
            plan.Plan.Identity.Title,
            [.. lines, .. mat.Where(one => one.Answer.Value is NumberValue).Select(one => one.Line!)],
            [.. draft.Usual.Select(usual => usual with { Value = InUnits(usual.Value, expected.Context.System) })],
            missing)
        {
            Months = months.Count == 0 ? null : new SizedMonths(tools, book, assumptions, draft).Of(months),
        };
    }

    private static ShownValue InUnits(ShownValue value, UnitSystem units)
    {
        double? At(double? number) => number is { } known ? BlankRemark.InUnits(known, value.Unit, units).Number : null;
        return value.Number is { } number ? value with { Number = At(number), Low = At(value.Low), High = At(value.High), Unit = BlankRemark.InUnits(number, value.Unit, units).Unit } : value;
    }

    private SizedLine Line(SizedQuantity one, SizedValues expected, List<SizedValues> samples, Draws drawn)
    {
        var values = samples.Select(sample => sample.Find(one)).OfType<double>().Order().ToArray();
        var value = ((NumberValue)one.Answer.Value!).Si;
        var (low, high) = values.Length == 0 ? (value, value) : (Math.Min(value, Quantiles.Of(values, LowShare)), Math.Max(value, Quantiles.Of(values, HighShare)));
        var driver = drawn.Ids.Select(id => (Id: id, Swing: Swing(one, id, drawn))).Where(pair => pair.Swing > 0).OrderByDescending(pair => pair.Swing).ThenBy(pair => pair.Id, StringComparer.Ordinal).Select(pair => pair.Id).FirstOrDefault();
        return new SizedLine(one.Kind, one.Quantity, one.Address, Shown(one, value, low, high, expected.Context), null, RuleOf(one.Quantity), driver, driver is null ? null : drawn.KeyOf(driver), one.Answer.Working);
    }

    private static double Swing(SizedQuantity one, string id, Draws drawn)
    {
        var (low, high) = (drawn.At(id, isHigh: false).Find(one), drawn.At(id, isHigh: true).Find(one));
        return low is { } a && high is { } b ? Math.Abs(b - a) : 0;
    }

    private IEnumerable<(Answer Answer, SizedLine? Line)> InWeather(SizingDraft draft, SizingWeather? weather)
    {
        if (draft.Plan(assumptions, weather: weather) is not { } plan)
        {
            yield break;
        }

        var context = new QuantityContext(plan, tools.Catalogue, assumptions, seed: 1);
        foreach (var course in context.Elements.Of(ElementKind.Course))
        {
            var answer = context.Get(OfTheMat, course);
            if (answer.Value is not NumberValue number)
            {
                yield return (answer, null);
                continue;
            }

            var one = new SizedQuantity(SizedKind.InWeather, OfTheMat, course.Address, answer, Index: 0);
            var air = weather is null ? null : new ShownValue(weather.Degrees, weather.Unit);
            yield return (answer, new SizedLine(one.Kind, OfTheMat, course.Address, Shown(one, number.Si, number.Low ?? number.Si, number.High ?? number.Si, context), air, RuleOf(OfTheMat), null, null, answer.Working));
        }
    }

    private static IEnumerable<SizingWeather?> Weathers(SizingDraft draft, UnitSystem system) => draft.StatesWeather ? [(SizingWeather?)null]
        : system == UnitSystem.UnitedStates ? UsDegrees.Select(degrees => (SizingWeather?)new SizingWeather(degrees, "°F"))
        : MetricDegrees.Select(degrees => (SizingWeather?)new SizingWeather(degrees, "°C"));

    private ShownValue Shown(SizedQuantity one, double value, double low, double high, QuantityContext context)
    {
        if (one.Kind is SizedKind.Rollers or SizedKind.RollersTogether)
        {
            return new ShownValue(value, string.Empty, low, high);
        }

        var definition = tools.Catalogue.Find(one.Kind == SizedKind.LengthPerShift ? "run.length" : one.Quantity)!;
        return definition.Dimension == Dimension.None || context.UnitOf(definition) is not { } unit
            ? new ShownValue(value, string.Empty, low, high)
            : new ShownValue(unit.FromSi(value), unit.Spelling, unit.FromSi(low), unit.FromSi(high));
    }

    // Of the rules that read it, as value or as limit, the one that can require something.
    private string? RuleOf(string quantity) => book.InForce
        .Where(rule => string.Equals(rule.Quantity.Name, quantity, StringComparison.Ordinal) || rule.Bounds.Any(bound => bound.Limit is CheckedQuantity limit && string.Equals(limit.Quantity.Name, quantity, StringComparison.Ordinal)))
        .OrderBy(rule => rule.Bounds.Min(bound => bound.Definition.Strength))
        .ThenBy(rule => rule.Definition.Id, StringComparer.Ordinal)
        .FirstOrDefault()?.Definition.Id;
}
