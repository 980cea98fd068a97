using Laygate.Engineering.Outlook;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Binding;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Merging;
using Laygate.Rules.Remedies;
using Laygate.Rules.Results;

namespace Laygate.Rules.Outlook;

/// <summary>Judges the rules that depend on the weather, on copies of one plan in other weather.</summary>
internal sealed class WeatherJudge
{
    private readonly RuleBook book;
    private readonly QuantityContext context;
    private readonly EvaluationSettings settings;
    private readonly IReadOnlyList<(string Rule, string Address)> dependent;

    public WeatherJudge(RuleBook book, QuantityContext context, EvaluationSettings settings, WeatherPlans plans)
    {
        this.book = book;
        this.context = context;
        this.settings = settings;
        (dependent, Unjudged) = Dependent(plans);
    }

    /// <summary>Findings of the plan as it is that depend on the weather and could not be judged.</summary>
    public IReadOnlyList<Finding> Unjudged { get; }

    /// <summary>Whether how far air, base and wind may go would rest on a rule that could not be judged, or on none at all.</summary>
    public bool EnvelopeIsOpen => dependent.Count == 0 || Unjudged.Any(finding => RuleOf(finding) is { } rule && Quantities(rule).Any(WeatherDependence.LimitsEnvelope));

    /// <summary>Ids of the rules that depend on the weather.</summary>
    public IReadOnlyList<string> Rules => [.. dependent.Select(key => key.Rule).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>What does not pass, worst first; of two alike the one that lies farther outside its limit.</summary>
    /// <param name="plan">The plan in its weather.</param>
    /// <param name="withSpread">Whether the unfavourable ends count.</param>
    public IReadOnlyList<BrokenLimit> Broken(Plan plan, bool withSpread) => Judged(plan, withSpread).Broken;

    /// <summary>What does not pass, worst first, and, where all passes, the limit with the least margin.</summary>
    /// <param name="plan">The plan in its weather.</param>
    /// <param name="withSpread">Whether the unfavourable ends count.</param>
    public JudgedWeather Judged(Plan plan, bool withSpread)
    {
        var variant = Of(plan, withSpread);
        var found = dependent.Select(key => variant.Find(key.Rule, key.Address)).OfType<Finding>().ToList();
        List<BrokenLimit> broken =
        [
            .. found.Where(finding => finding.Status is Status.Warn or Status.Fail)
                .OrderByDescending(finding => finding.Status)
                .ThenByDescending(finding => finding.Outcome == Outcome.Missed)
                .ThenBy(Relative)
                .Select(Shown),
        ];
        var nearest = broken.Count > 0 ? null : found
            .Where(finding => finding.Outcome == Outcome.Met && finding.Value?.Number is not null && Margins.Of(finding) is not null)
            .MinBy(Relative);
        return new JudgedWeather(broken, nearest is null ? null : Shown(nearest), [.. found.Where(IsJudged).Select(Margin)], Still(variant));
    }

    // What the plan as it is cannot say may be known in one hour; then it counts like all else.
    private LayingVerdict Still(Variant variant) => Unjudged
        .Select(finding => variant.Find(finding.Rule, finding.Address) ?? finding)
        .Where(finding => !IsJudged(finding))
        .Select(finding => finding.Status == Status.Fail ? LayingVerdict.Fail
            : finding is { Outcome: Outcome.Open, Severity: not null } ? LayingVerdict.Pass : LayingVerdict.Warn)
        .DefaultIfEmpty(LayingVerdict.Pass)
        .Max();

    private static bool IsJudged(Finding finding) => finding.Outcome is Outcome.Met or Outcome.Missed;

    private static LimitMargin Margin(Finding finding) => new(Shown(finding), Margins.Of(finding) is { } margin && finding.Value is { } value
        ? new ShownValue(margin, value.Number is null ? "min" : value.Unit is "°C" ? "K" : value.Unit)
        : null);

    /// <summary>Whether to lay.</summary>
    public static LayingVerdict Verdict(IReadOnlyList<BrokenLimit> broken) =>
        broken.Any(limit => limit.Status == Status.Fail) ? LayingVerdict.Fail : broken.Count > 0 ? LayingVerdict.Warn : LayingVerdict.Pass;

    private static BrokenLimit Shown(Finding finding) => new(
        new FindingReference(finding.Rule, finding.Title, finding.Address), finding.Status, finding.Value, finding.Limit, finding.OnExpectedValuesOnly);

    private static double Relative(Finding finding) => Margin(finding).Share;

    // A rule depends on the weather when what it says changes with the weather: nothing has to be kept in step with a list.
    private (List<(string, string)> Dependent, List<Finding> Unjudged) Dependent(WeatherPlans plans)
    {
        var asItIs = Of(context.Plan, withSpread: false).All();
        var found = new HashSet<(string, string)>();
        foreach (var plan in plans.Extremes())
        {
            var other = Of(plan, withSpread: false);
            found.UnionWith(asItIs
                .Where(finding => other.Find(finding.Rule, finding.Address) is not { } there || Differs(finding, there))
                .Select(finding => (finding.Rule, finding.Address)));
        }

        return (
            [.. asItIs.Select(finding => (finding.Rule, finding.Address)).Where(found.Contains)],
            [.. asItIs.Where(finding => finding.Outcome is Outcome.NotAssessed or Outcome.NeedsPerson or Outcome.Open
                && !found.Contains((finding.Rule, finding.Address))
                && RuleOf(finding) is { } rule && Quantities(rule).Any(WeatherDependence.IsOf))]);
    }

    private CheckedRule? RuleOf(Finding finding) => context.Elements.Find(finding.Address) is { } element
        ? book.On(element.Kind).FirstOrDefault(rule => string.Equals(rule.Definition.Id, finding.Rule, StringComparison.Ordinal))
        : null;

    private static IEnumerable<QuantityDefinition> Quantities(CheckedRule rule) =>
    [
        rule.Quantity,
        .. rule.When.Select(match => match.Quantity),
        .. rule.Bounds.SelectMany(bound => bound.Limit switch
        {
            CheckedQuantity other => [other.Quantity],
            CheckedTable table => table.Keys,
            _ => (IReadOnlyList<QuantityDefinition>)[],
        }),
    ];

    private static bool Differs(Finding a, Finding b) => a.Outcome != b.Outcome || a.Status != b.Status
        || !Equals(a.Value, b.Value) || !Equals(a.Limit?.Low, b.Limit?.Low) || !Equals(a.Limit?.High, b.Limit?.High);

    private Variant Of(Plan plan, bool withSpread) => new(book, context.For(plan, withSpread), settings);
}

/// <summary>What the rules that depend on the weather say in one weather.</summary>
/// <param name="Broken">What does not pass, worst first.</param>
/// <param name="Nearest">Where all passes, the limit with the least margin.</param>
/// <param name="Limits">Every limit that was judged, with its margin.</param>
/// <param name="Unjudged">The best verdict that the rules allow which could not be judged.</param>
internal sealed record JudgedWeather(IReadOnlyList<BrokenLimit> Broken, BrokenLimit? Nearest, IReadOnlyList<LimitMargin> Limits, LayingVerdict Unjudged)
{
    /// <summary>Whether to lay: nothing is said to be good where nothing was judged.</summary>
    public LayingVerdict Verdict => new[] { WeatherJudge.Verdict(Broken), Unjudged, Limits.Count == 0 ? LayingVerdict.Warn : LayingVerdict.Pass }.Max();
}
