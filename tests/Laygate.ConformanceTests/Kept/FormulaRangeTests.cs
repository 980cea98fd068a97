using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Laygate.Checking.Verification;
using Laygate.ConformanceTests.Verification;
using Laygate.Reading.Yaml;

namespace Laygate.ConformanceTests.Kept;

/// <summary>
/// Where each formula of a verification case stops to give a result: one input after the other of its first case is put to where ranges end, and what comes of it
/// is listed. Every formula says in its attribute what its range is; nothing outside may be a number that looks like one.
/// </summary>
public sealed class FormulaRangeTests
{
    // In SI: below zero, zero, a little, shares, small counts, hundreds as of per cent, degrees and gradient heights, and far beyond anything.
    private static readonly double[] Probes = [-300, -1, 0, 1e-9, 0.4, 0.5, 1, 1.5, 2, 3, 5, 100, 270, 271, 1e4, 1e9];

    private static readonly IReadOnlyList<(CaseFormula Formula, List<(string Key, YamlToken Value)> Inputs)> Cases =
    [
        .. VerificationFiles.Names.SelectMany(name => YamlReader.Read(File.ReadAllBytes(Path.Combine(VerificationFiles.Folder, name))).Documents).Select(document => document.Root).OfType<MapToken>()
            .Select(root => Group(root, "formula")).OfType<MapToken>()
            .Select(formula => (Formula: CaseFormulas.Find(((ScalarToken)Value(formula, "name")!).Text)!, Inputs: First(formula)))
            .DistinctBy(one => one.Formula.Name, StringComparer.Ordinal).OrderBy(one => one.Formula.Name, StringComparer.Ordinal),
    ];

    [Fact]
    public void Every_formula_is_probed() => Assert.Equal(CaseFormulas.Names.Order(StringComparer.Ordinal), Cases.Select(one => one.Formula.Name), StringComparer.Ordinal);

    [Fact]
    public void Ends_of_ranges_are_the_approved_ones_and_no_result_is_infinite_or_no_number()
    {
        var text = new StringBuilder();
        foreach (var (formula, given) in Cases)
        {
            foreach (var input in formula.Inputs.Where(input => input is { IsList: false, Dimension: not null }))
            {
                text.Append(CultureInfo.InvariantCulture, $"{formula.Name} {input.Name}: {string.Join(", ", Probes.Select(probe => $"{probe:G3} {Result(formula, given, input, probe)}"))}\n");
            }
        }

        Assert.Empty(Regex.Matches(text.ToString(), "^(?<what>.*?):.*?(?<probe>[^ ]+) (?:NaN|-?∞|-?Infinity)", RegexOptions.Multiline | RegexOptions.ExplicitCapture, Patience.Longest).Select(found => $"{found.Groups["what"]} {found.Groups["probe"]}"));
        Approved.Match(text.ToString(), "Formula_ranges");
    }

    private static string Result(CaseFormula formula, List<(string Key, YamlToken Value)> given, CaseInput changed, double probe)
    {
        var problems = new List<ReadingProblem>();
        var numbers = new Dictionary<string, double>(StringComparer.Ordinal);
        var lists = new Dictionary<string, IReadOnlyList<double>>(StringComparer.Ordinal);
        var words = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (key, value) in given)
        {
            var input = formula.Inputs.Single(one => one.Name == key);
            switch (value)
            {
                case ListToken list: lists[key] = [.. list.Items.OfType<ScalarToken>().Select(item => input.Dimension!.Read(item, problems)!.Value)]; break;
                case ScalarToken scalar when input.Words is not null: words[key] = scalar.Text; break;
                case ScalarToken scalar: numbers[key] = input.Dimension!.Read(scalar, problems)!.Value; break;
            }
        }

        numbers[changed.Name] = probe;
        try
        {
            return formula.Compute(new CaseInputs(numbers, lists, words))?.ToString("G5", CultureInfo.InvariantCulture) ?? "none";
        }
        catch (Exception found)
        {
            return $"NaN: {found.GetType().Name}";
        }
    }

    // What all rows share, and what the first adds.
    private static List<(string Key, YamlToken Value)> First(MapToken formula) =>
        [.. Entries(Group(formula, "inputs")), .. Entries((Value(formula, "rows") as ListToken)?.Items.OfType<MapToken>().Select(row => Group(row, "inputs")).FirstOrDefault())];

    private static IEnumerable<(string Key, YamlToken Value)> Entries(MapToken? map) => map?.Entries.Select(entry => (entry.Key.Text, entry.Value)) ?? [];

    private static MapToken? Group(MapToken map, string key) => Value(map, key) as MapToken;

    private static YamlToken? Value(MapToken map, string key) => map.Find(key)?.Value;
}
