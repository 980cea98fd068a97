using System.Globalization;
using Laygate.Model.Measures;
using Laygate.Reading.Yaml;

namespace Laygate.Checking.Verification;

/// <summary>Reads the keys of one group of a case file whose shape the schema has passed. What is wrong becomes a problem and reads as absent.</summary>
internal sealed class CaseFields(MapToken map, List<ReadingProblem> problems)
{
    /// <summary>The group.</summary>
    public MapToken Map => map;

    /// <summary>Everything wrong so far.</summary>
    public List<ReadingProblem> Problems => problems;

    /// <summary>Where the group begins.</summary>
    public TextSpan Span => TokenNames.Head(map).Span;

    /// <summary>The token of a key.</summary>
    public YamlToken? this[string key] => map[key];

    /// <summary>The problem of a group that needs exactly one of its keys; null when it has one.</summary>
    public ReadingProblem? NotOne(string what) => map.Entries.Count == 1
        ? null
        : new ReadingProblem($"{what} needs exactly one key; {map.Entries.Count.ToString(CultureInfo.InvariantCulture)} are given.", Span, "Keep one of them.");

    /// <summary>The text of a key, exactly as written.</summary>
    public string? Text(string key) => (map[key] as ScalarToken)?.Text;

    /// <summary>The group behind a key.</summary>
    public CaseFields? Group(string key) => map[key] is MapToken group ? new CaseFields(group, problems) : null;

    /// <summary>The groups of a list.</summary>
    public IEnumerable<CaseFields> Groups(string key) => Items(key).OfType<MapToken>().Select(group => new CaseFields(group, problems));

    /// <summary>The entries of a list.</summary>
    public IReadOnlyList<YamlToken> Items(string key) => map[key] is ListToken list ? list.Items : [];

    /// <summary>A value in SI units (temperatures in °C); null when it is absent or wrong.</summary>
    public double? Number(string key, CaseDimension dimension) =>
        map[key] is ScalarToken token ? dimension.Read(token, problems) : null;

    /// <summary>A value that the schema demands; zero when it is wrong, which is a problem already.</summary>
    public double Required(string key, CaseDimension dimension) => Number(key, dimension) ?? 0;

    /// <summary>The unit of a table of expected values; a problem when it is missing, or of another dimension.</summary>
    public Unit? ValueUnit(CaseDimension dimension)
    {
        if (map["unit"] is not ScalarToken token)
        {
            if (dimension.Units.Count > 0)
            {
                problems.Add(new ReadingProblem($"The values need a unit: each is {dimension.Noun}.", Span, $"Write `unit: {dimension.Units[0].Spelling}`."));
            }

            return null;
        }

        if (dimension.Find(token.Text) is { } unit)
        {
            return unit;
        }

        var hint = dimension.Units.Count == 0 ? "Leave `unit` out." : $"Write one of {string.Join(", ", dimension.Units.Select(known => $"`{known.Spelling}`"))}.";
        problems.Add(new ReadingProblem($"{TokenNames.Quote(token.Text)} is no unit for {dimension.Noun}.", token.Span, hint));
        return null;
    }

    /// <summary>The tolerance of a table of expected values.</summary>
    public CaseTolerance Tolerance(CaseDimension dimension)
    {
        var token = (ScalarToken)map["tolerance"]!;
        if (token.Text.EndsWith(" %", StringComparison.Ordinal) && dimension != CaseDimension.Temperature)
        {
            return new CaseTolerance(token.Text, CaseDimension.Proportion.Read(token, problems) ?? 0, IsShare: true);
        }

        return new CaseTolerance(token.Text, dimension.OfDifferences.Read(token, problems) ?? 0, IsShare: false);
    }

    /// <summary>A number of the values of a row.</summary>
    public static double Value(ScalarToken token) => double.Parse(token.Text, CultureInfo.InvariantCulture);
}
