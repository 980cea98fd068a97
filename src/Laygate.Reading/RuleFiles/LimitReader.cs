using System.Globalization;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading.Measures;
using Laygate.Reading.Yaml;
using Laygate.Rules.Definitions;

namespace Laygate.Reading.RuleFiles;

/// <summary>Reads bounds, tables and where limits come from.</summary>
internal sealed class LimitReader(List<ReadingProblem> problems)
{
    public IReadOnlyList<Bound> Bounds(MapToken map) => [.. map.Maps("bounds").Select(Bound)];

    /// <summary>A number with or without unit, kept as written.</summary>
    public LimitValue? Value(YamlToken? token)
    {
        if (token is not ScalarToken scalar)
        {
            return null;
        }

        var parts = MeasureText.Split(scalar.Text) ?? (MeasureText.IsBareNumber(scalar.Text) ? (scalar.Text, string.Empty) : null);
        if (parts is var (number, unit))
        {
            return new LimitValue(double.Parse(number, NumberStyles.Float, CultureInfo.InvariantCulture), unit, scalar.Text);
        }

        problems.Add(new ReadingProblem(
            $"{TokenNames.Quote(scalar.Text)} is no limit.", scalar.Span, "Write digits, with a point where needed, one space and the unit: `30 mm`. A ratio or count has no unit."));
        return null;
    }

    public SourceReference Source(MapToken map) => new()
    {
        Source = map.Needed("id"),
        Clause = map.Text("clause"),
        Evidence = map.NeededWord<Evidence>("evidence"),
        ValidFrom = map.Date("valid_from", problems),
        ValidTo = map.Date("valid_to", problems),
        Successor = map.Text("successor"),
        Remark = map.Text("remark"),
    };

    private Bound Bound(MapToken map)
    {
        var ends = map.Map("table") is { } table ? [.. table.Maps("rows")] : new[] { map };
        return new Bound
        {
            Strength = map.NeededWord<Strength>("strength"),
            Basis = map.NeededWord<Basis>("basis"),
            Limit = Limit(map),
            Source = map.Map("source") is { } source ? Source(source) : new SourceReference { Source = string.Empty, Evidence = Evidence.Recalled },
            Place = map.Word<Place>("place"),
            Also = [.. map.Maps("also").Select(Source)],
            LowExclusive = IsExclusive(ends, "above", "at_least"),
            HighExclusive = IsExclusive(ends, "below", "at_most"),
        };
    }

    // Rows of one table agree in whether the end itself is inside, because the comparison belongs to the bound.
    private bool IsExclusive(IReadOnlyList<MapToken> rows, string exclusive, string inclusive)
    {
        foreach (var row in rows.Where(row => row.Find(exclusive) is not null && row.Find(inclusive) is not null))
        {
            problems.Add(new ReadingProblem($"`{exclusive}` and `{inclusive}` cannot stand together.", row.Find(exclusive)!.Key.Span, "Leave one of them out."));
        }

        var first = rows.FirstOrDefault(row => row.Find(exclusive) is not null);
        if (first is not null && rows.FirstOrDefault(row => row.Find(exclusive) is null && row.Find(inclusive) is not null) is { } other)
        {
            problems.Add(new ReadingProblem(
                $"Some rows of this table say `{exclusive}` and some `{inclusive}`.", other.Find(inclusive)!.Key.Span, $"Write `{exclusive}` in all rows, or `{inclusive}`."));
        }

        return first is not null;
    }

    private Limit Limit(MapToken map)
    {
        string[] given = [.. new[] { "table", "quantity", "words", "entries" }.Where(key => map.Find(key) is not null)];
        var hasEnds = Low(map) is not null || High(map) is not null;
        if (given.Length + (hasEnds ? 1 : 0) > 1)
        {
            problems.Add(new ReadingProblem("A bound has one limit: a number, a table, another quantity, words or entries.", map.Find(given[0])!.Key.Span, "Leave the others out."));
        }

        if (map.Find("times") is { } times && !given.Contains("quantity", StringComparer.Ordinal))
        {
            problems.Add(new ReadingProblem("`times` needs a `quantity` that it multiplies.", times.Key.Span));
        }

        return given.FirstOrDefault() switch
        {
            "table" => Table(map.Map("table")!),
            "quantity" => new QuantityLimit(map.Needed("quantity"), Factor(map), map.Text("times") ?? "1"),
            "words" => new WordsLimit(map.Texts("words")),
            _ when hasEnds => new ConstantLimit(Value(Low(map)), Value(High(map))),
            _ => new PresenceLimit { Entries = [.. map.Maps("entries").Select(Line)] },
        };
    }

    private static EntryLine Line(MapToken map) => new(map.Texts("any_of"), map.Texts("asks"));

    private static double Factor(MapToken map) =>
        double.TryParse(map.Text("times"), NumberStyles.Float, CultureInfo.InvariantCulture, out var factor) ? factor : 1;

    private TableLimit Table(MapToken table) => new(table.Texts("by"), [.. table.Maps("rows").Select(Row)]);

    private TableRow Row(MapToken row) => new(
        [.. row.Items("match").Select(Match)], Value(Low(row)), Value(High(row)), row.Map("source") is { } source ? Source(source) : null);

    private RowMatch Match(YamlToken token) => token switch
    {
        ScalarToken { Text: "any" } => new RowMatch(null, null, null, Any: true),
        ScalarToken scalar => new RowMatch([scalar.Text], null, null, Any: false),
        MapToken band => new RowMatch(null, Value(band["at_least"]), Value(band["below"]), Any: false),
        _ => new RowMatch(TokenKeys.TextsOf(token), null, null, Any: false),
    };

    private static YamlToken? Low(MapToken map) => map["at_least"] ?? map["above"];

    private static YamlToken? High(MapToken map) => map["at_most"] ?? map["below"];
}
