using System.Globalization;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Definitions;

namespace Laygate.Reading.RuleFiles;

/// <summary>Turns documents that their schemas have accepted into definitions.</summary>
internal sealed class DefinitionReader(List<ReadingProblem> problems)
{
    private readonly LimitReader limits = new(problems);

    public RuleDefinition Rule(MapToken map, string family, string name) => new()
    {
        Id = map.Needed("id"),
        Family = family,
        Name = name,
        Title = map.Needed("title"),
        Why = map.Needed("why"),
        Remedy = map.Needed("remedy"),
        Local = map.Needed("local"),
        Asks = map.Text("asks"),
        Holds = map.Text("holds"),
        OnSite = map.Map("on_site") is { } onSite ? new SiteInstruction(onSite.Needed("watch"), onSite.Needed("otherwise")) : null,
        AppliesTo = map.NeededWord<ElementKind>("applies_to"),
        When = [.. map.Maps("when").Select(Condition)],
        Check = map.NeededWord<CheckKind>("check"),
        Quantity = map.Needed("quantity"),
        Bounds = limits.Bounds(map),
        FromStage = map.NeededWord<Stage>("from_stage"),
        Severity = map.Text("severity") is { } severity && Enum.TryParse<Severity>(severity, out var known) ? known : null,
        Jurisdictions = map.Texts("jurisdictions"),
        NotIn = map.Texts("not_in"),
        OnDemand = map.Text("on_demand") is "yes",
        Life = map.Map("life") is { } life
            ? new Life(life.NeededWord<LifeState>("state"), life.Needed("since"), life.Text("successor"))
            : new Life(LifeState.OnTrial, string.Empty, null),
    };

    public Specification Specification(MapToken map, string name, IReadOnlyList<RuleDefinition> rules) => new()
    {
        Name = name,
        Title = map.Needed("title"),
        Issuer = map.Needed("issuer"),
        Edition = map.Needed("edition"),
        Status = map.Text("status"),
        Layer = map.Text("layer") is "particular" ? Layer.ParticularSpecification : Layer.StandardSpecification,
        Jurisdiction = map.Needed("jurisdiction"),
        Coverage = map.Text("coverage"),
        Clauses = [.. map.Maps("clauses").Select(Clause)],
        Sources = Sources(map["sources"]),
        BringIn = map.Texts("bring_in"),
        TakeOut = [.. map.Maps("take_out").Select(item => new TakenOut(item.Needed("rule"), item.Needed("reason")))],
        Set = [.. map.Maps("set").Select(item => new LimitOverride(item.Needed("rule"), limits.Bounds(item), item.Text("reason")))],
        Move = [.. map.Maps("move").Select(Move)],
        Confirm = [.. map.Maps("confirm").Select(Confirm)],
        Assume = [.. map.Maps("assume").Select(Assume)],
        Rules = rules,
    };

    public static IReadOnlyList<Source> Sources(YamlToken? token) => token is not ListToken list ? [] :
    [
        .. list.Items.OfType<MapToken>().Select(item => new Source(
            item.Needed("id"), item.Needed("title"), item.Needed("issuer"), item.Text("edition"), item.Text("year"), item.Text("address"), item.Text("carrier"), item.Text("licence"))),
    ];

    private Condition Condition(MapToken map) => new(
        map.Needed("quantity"), map.Find("is") is null ? null : map.Texts("is"), limits.Value(map["at_least"]), limits.Value(map["below"]));

    private static BoundMove Move(MapToken map) =>
        new(map.Needed("rule"), map.NeededWord<Strength>("from"), map.NeededWord<Strength>("to"), map.Needed("reason"));

    private LimitConfirmation Confirm(MapToken map) => new(
        map.Needed("rule"),
        map.NeededWord<Strength>("strength"),
        int.TryParse(map.Text("row"), NumberStyles.None, CultureInfo.InvariantCulture, out var row) ? row : null,
        new Confirmation(map.Needed("by"), map.Date("on", problems) ?? default, map.Needed("edition"), map.Needed("page")))
    {
        RowKey = map.Text("row") is { } key && !int.TryParse(key, NumberStyles.None, CultureInfo.InvariantCulture, out _) ? key : null,
        Limit = map.Text("limit"),
    };

    private static ClauseCoverage Clause(MapToken map) => new(
        map.Needed("clause"), map.Needed("subject"), map.NeededWord<ClauseStatus>("status"), map.Texts("rules"), map.Text("note"));

    private Assumption Assume(MapToken map)
    {
        var value = limits.Value(map["value"]);
        var low = limits.Value(map["low"]) ?? value;
        var high = limits.Value(map["high"]) ?? value;
        foreach (var (end, key) in new[] { (low, "low"), (high, "high") })
        {
            if (value is not null && end is not null && !string.Equals(end.Unit, value.Unit, StringComparison.Ordinal))
            {
                problems.Add(new ReadingProblem($"`{key}` has another unit than `value`.", map[key]!.Span, $"Write it in `{value.Unit}`."));
            }
        }

        // Without a meaning of its own it keeps that of the catalogue, which the book puts in when it is merged.
        return new Assumption(
            map.Needed("id"), map.Needed("meaning"), value?.Number ?? 0, value?.Unit ?? string.Empty, low?.Number ?? 0, high?.Number ?? 0, map.Needed("source"), map.NeededWord<Evidence>("evidence"));
    }
}
