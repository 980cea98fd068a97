using System.Globalization;
using System.Security.Cryptography;
using Laygate.Engineering.Acceptance;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Measures;
using Laygate.Reading.RuleFiles;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Acceptance;
using Laygate.Rules.Results;

namespace Laygate.Reading.Acceptance;

/// <summary>Reads acceptance schemes: those that ship inside the program, and files of one's own. Each is bound and checked while it is read.</summary>
public static class SchemeReader
{
    private const string Prefix = "acceptance/";

    /// <summary>Names of the schemes that ship.</summary>
    public static IReadOnlyList<string> Shipped { get; } =
        [.. typeof(SchemeReader).Assembly.GetManifestResourceNames().Where(name => name.StartsWith(Prefix, StringComparison.Ordinal)).Select(name => name[Prefix.Length..]).Order(StringComparer.Ordinal)];

    /// <summary>Opens a scheme.</summary>
    /// <param name="name">Name of a shipped one, or the path of a file.</param>
    /// <param name="files">The host's files.</param>
    /// <returns>The scheme, or why it cannot be used.</returns>
    public static (AcceptanceScheme? Scheme, IReadOnlyList<Problem> Problems) Open(string name, IRuleFiles files)
    {
        if (Shipped.Contains(name, StringComparer.Ordinal))
        {
            using var stream = typeof(SchemeReader).Assembly.GetManifestResourceStream(Prefix + name)!;
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            return Read($"rules/acceptance/{name}.yaml", bytes.ToArray());
        }

        if (files.File(name) is { } own)
        {
            return Read(name, own);
        }

        var hint = NearestNames.Of(name, Shipped) is { Count: > 0 } near ? NearestNames.Asked(near) : $"Shipped are {string.Join(", ", Shipped)}. Or give the path of a file of your own.";
        return (null, [new Problem("--scheme", $"There is no acceptance scheme `{name}`, and no file of that name.", hint, null)]);
    }

    /// <summary>Reads a scheme.</summary>
    /// <param name="file">Name of the file, as it is to be shown.</param>
    /// <param name="bytes">Its bytes.</param>
    public static (AcceptanceScheme? Scheme, IReadOnlyList<Problem> Problems) Read(string file, byte[] bytes)
    {
        var text = YamlReader.Read(bytes, "acceptance scheme");
        var problems = text.Problems.ToList();
        if (text.IsSound)
        {
            problems.AddRange(SchemaChecker.Check(text.Documents[0], SchemaLoader.Load(EmbeddedSchemas.Text("acceptance.schema.json"))));
        }

        if (problems.Count > 0)
        {
            return (null, ShownProblems.Of(file, problems));
        }

        var scheme = new Binding(problems).Scheme((MapToken)text.Documents[0].Root, Convert.ToHexStringLower(SHA256.HashData(bytes)));
        return problems.Count > 0 ? (null, ShownProblems.Of(file, problems)) : (scheme, []);
    }

    private sealed class Binding(List<ReadingProblem> problems)
    {
        private readonly Dictionary<string, string> sources = new(StringComparer.Ordinal);

        public AcceptanceScheme Scheme(MapToken map, string hash)
        {
            foreach (var source in map.Maps("sources"))
            {
                sources[source.Needed("id")] = source.Needed("title");
            }

            var outliers = map.Map("outliers");
            var gauge = map.Map("gauge");
            return new AcceptanceScheme(
                map.Needed("name"), map.Needed("title"), map.Needed("issuer"), map.Needed("edition"), map.Needed("coverage"), sources, Sublots(map.Map("sublots")!),
                [.. map.Maps("characteristics").Select(Characteristic)], map.Word<PayCombination>("combine") ?? PayCombination.None,
                Amount(outliers, "level", Dimension.Proportion), Whole(outliers, "least") ?? 3,
                gauge is null ? null : new SchemeGauge(Whole(gauge, "pairs") ?? 1, Amount(gauge, "deviation", Dimension.Density) ?? 0, Source(gauge.Map("source")!)), hash)
            {
                Laboratory = map.Text("laboratory"),
            };
        }

        private SchemeSublots Sublots(MapToken map)
        {
            if (new[] { "count", "length", "mass" }.Count(key => map[key] is not null) != 1)
            {
                problems.Add(new ReadingProblem("A lot is divided in one way.", TokenNames.Head(map).Span, "Write one of `count`, `length` and `mass`."));
            }

            return new SchemeSublots(Whole(map, "count"), Amount(map, "length", Dimension.Length), Amount(map, "mass", Dimension.Mass), Whole(map, "per_lot"), Whole(map, "places") ?? 1, Amount(map, "margin", Dimension.Length) ?? 0);
        }

        private SchemeCharacteristic Characteristic(MapToken map)
        {
            var (measures, statistic) = (map.NeededWord<MeasuredProperty>("measures"), map.NeededWord<LotStatistic>("statistic"));
            var characteristic = new SchemeCharacteristic(map.Needed("id"), measures, statistic, UnitOf(map, measures), Source(map.Map("source")!))
            {
                Lower = Limit(map, "lower", measures),
                Upper = Limit(map, "upper", measures),
                Target = Limit(map, "target", measures),
                Mode = map.Word<PercentMode>("percent") ?? PercentMode.Formula,
                TableDecimals = Whole(map, "table_decimals") ?? 2,
                Rounding = Rounding(map.Map("rounding")),
                Chance = Amount(map, "chance", Dimension.Proportion) ?? 0.95,
                Least = Whole(map, "least") ?? (statistic == LotStatistic.PercentWithin ? 3 : 1),
                Most = Whole(map, "most"),
                Weight = Amount(map, "weight", Dimension.Proportion),
                Rows = [.. map.Maps("rows").Select(Row)],
                Thermal = Thermal(map.Map("profile")),
            };
            foreach (var (wrong, hint) in Misfits(map, characteristic))
            {
                problems.Add(new ReadingProblem($"`{characteristic.Id}`: {wrong}", map["statistic"]!.Span, hint));
            }

            return characteristic;
        }

        private static IEnumerable<(string Wrong, string Hint)> Misfits(MapToken map, SchemeCharacteristic one)
        {
            if (one.Statistic == LotStatistic.PercentWithin && map["lower"] is null && map["upper"] is null)
            {
                yield return ("a percent within limits needs a limit.", "Add `lower` or `upper`: a number, `plan` or `contract`.");
            }

            if (one.Statistic is LotStatistic.MeanDeviation or LotStatistic.DeviationOfMean && map["target"] is null)
            {
                yield return ("a deviation needs a target.", "Add `target`: a number, `plan` or `contract`.");
            }

            if (one.Statistic == LotStatistic.Shortfall && one.Measures != MeasuredProperty.Thickness)
            {
                yield return ("only a thickness has a design value to fall short of.", "Measure `thickness`.");
            }

            if ((one.Measures == MeasuredProperty.ThermalRange) != (one.Thermal is not null))
            {
                yield return ("`profile` belongs to `thermal-range`, which needs it.", "Say how profiles are cut: `profile: { length: 150 ft, low: 1 %, high: 98.5 % }`.");
            }

            if (map["percent"] is not null && one.Statistic != LotStatistic.PercentWithin)
            {
                yield return ("`percent` says how an index becomes a percent.", "Leave it out, or use the statistic `percent-within`.");
            }

            if (one.Rows.Any(row => row is { AtLeast: null, Above: null, AtMost: null, Below: null, Tests: null, DesignAtLeast: null, DesignBelow: null } && row != one.Rows[^1]))
            {
                yield return ("a row without a condition ends the table.", "Put it last.");
            }
        }

        private SchemeRow Row(MapToken map) => new()
        {
            Tests = Whole(map, "tests"),
            AtLeast = Number(map, "at_least"),
            Above = Number(map, "above"),
            AtMost = Number(map, "at_most"),
            Below = Number(map, "below"),
            DesignAtLeast = Number(map, "design_at_least"),
            DesignBelow = Number(map, "design_below"),
            Verdict = map.NeededWord<LotVerdict>("verdict"),
            Says = map.Text("says"),
            Pay = Number(map, "pay"),
            Times = Number(map, "times"),
        };

        private static SchemeRounding Rounding(MapToken? map) => map is null
            ? new SchemeRounding(null, null, null, null, HalfRule.HalfUp)
            : new SchemeRounding(Whole(map, "mean"), Whole(map, "deviation"), Whole(map, "index"), Whole(map, "percent"), map.Word<HalfRule>("half") ?? HalfRule.HalfUp);

        private ThermalSettings? Thermal(MapToken? map) => map is null ? null : new ThermalSettings(
            Amount(map, "length", Dimension.Length) ?? double.PositiveInfinity, Amount(map, "low", Dimension.Proportion) ?? 0, Amount(map, "high", Dimension.Proportion) ?? 1, Amount(map, "edge", Dimension.Length) ?? 0,
            Amount(map, "drop_below", Dimension.Temperature) ?? double.NegativeInfinity, Amount(map, "drop_above", Dimension.Temperature) ?? double.PositiveInfinity);

        private SchemeSource Source(MapToken map)
        {
            var id = map["id"] as ScalarToken;
            if (!sources.ContainsKey(id!.Text))
            {
                problems.Add(new ReadingProblem($"The scheme has no source {TokenNames.Quote(id.Text)}.", id.Span, "Add it under `sources`."));
            }

            return new SchemeSource(id.Text, map.Text("clause"), map.NeededWord<Evidence>("evidence"), map.Text("remark"));
        }

        private Unit UnitOf(MapToken map, MeasuredProperty measures)
        {
            var token = (ScalarToken)map["unit"]!;
            var unit = measures switch
            {
                MeasuredProperty.ThermalRange => token.Text is "F" ? Fahrenheit : token.Text is "K" ? UnitTable.Find("K") : null,
                MeasuredProperty.Thickness => UnitTable.Find(token.Text) is { Dimension: Dimension.Length } length ? length : null,
                _ => token.Text is "%" ? UnitTable.Find("%") : null,
            };
            if (unit is null)
            {
                problems.Add(new ReadingProblem($"{TokenNames.Quote(token.Text)} is no unit of {Words.Of(measures)}.", token.Span, measures == MeasuredProperty.ThermalRange ? "Write `K` or `F`." : measures == MeasuredProperty.Thickness ? "Write `mm` or `in`." : "Write `%`."));
            }

            return unit ?? UnitTable.Find("%")!;
        }

        private SchemeLimit? Limit(MapToken map, string key, MeasuredProperty measures)
        {
            if (map[key] is not ScalarToken token)
            {
                return null;
            }

            if (token.Text is "contract")
            {
                return new SchemeLimit(null, FromPlan: false);
            }

            if (token.Text is "plan")
            {
                if (measures is not (MeasuredProperty.Thickness or MeasuredProperty.DensityOfReference))
                {
                    problems.Add(new ReadingProblem($"A plan has no limit for {Words.Of(measures)}.", token.Span, "Write the number, or `contract` where the contract has it."));
                }

                return new SchemeLimit(null, FromPlan: true);
            }

            return Number(map, key) is { } number ? new SchemeLimit(number, FromPlan: false) : null;
        }

        private double? Number(MapToken map, string key)
        {
            if (map[key] is not ScalarToken token)
            {
                return null;
            }

            var number = MeasureReader.ReadNumber(token.Text, out var wrong);
            if (wrong is not null)
            {
                problems.Add(new ReadingProblem(wrong.Message, token.Span, wrong.Hint));
            }

            return number;
        }

        private static int? Whole(MapToken? map, string key) => map?.Text(key) is { } text ? int.Parse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture) : null;

        private double? Amount(MapToken? map, string key, Dimension dimension)
        {
            if (map?[key] is not ScalarToken token)
            {
                return null;
            }

            if (MeasureReader.Read(token.Text, dimension, out var wrong) is var (number, unit))
            {
                return unit.ToSi(number);
            }

            problems.Add(new ReadingProblem(wrong!.Message, token.Span, wrong.Hint));
            return null;
        }

        // A difference: no offset. Plans state differences in K only.
        private static readonly Unit Fahrenheit = new("F", Dimension.TemperatureDifference, 5.0 / 9, System: UnitSystem.UnitedStates, Source: "1 °F = 5/9 K");
    }
}
