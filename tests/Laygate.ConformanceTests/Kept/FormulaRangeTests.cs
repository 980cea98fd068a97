using System.Globalization;
using System.Text;
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
            foreach (var input in Numbers(formula))
            {
                var results = Probes.Select(probe => (probe, Result: Result(formula, given, input, probe, word: null))).ToList();
                Assert.All(results, one => Assert.True(one.Result is null || double.IsFinite(one.Result.Value), $"{formula.Name} {input.Name} {one.probe}"));
                text.Append(CultureInfo.InvariantCulture, $"{formula.Name} {input.Name}: {string.Join(", ", results.Select(one => $"{one.probe:G3} {(one.Result is { } number ? number.ToString("G5", CultureInfo.InvariantCulture) : "none")}"))}\n");
            }
        }

        Approved.Match(text.ToString(), "Formula_ranges");
    }

    /// <summary>The case chooses one word of each input that has words; the others lead to other formulas of the same name.</summary>
    [Fact]
    public void No_other_word_makes_a_result_infinite_or_no_number()
    {
        var tried = 0;
        foreach (var (formula, given) in Cases)
        {
            foreach (var (key, word) in formula.Inputs.SelectMany(input => (input.Words ?? []).Select(word => (input.Name, word))))
            {
                foreach (var (input, probe) in Numbers(formula).SelectMany(input => Probes.Select(probe => (input, probe))))
                {
                    var result = Result(formula, given, input, probe, (key, word));
                    tried++;
                    Assert.True(result is null || double.IsFinite(result.Value), $"{formula.Name} {key} {word}, {input.Name} {probe}: {result}");
                }
            }
        }

        Assert.InRange(tried, 500, int.MaxValue);
    }

    private static IEnumerable<CaseInput> Numbers(CaseFormula formula) => formula.Inputs.Where(input => input is { IsList: false, Dimension: not null });

    private static double? Result(CaseFormula formula, List<(string Key, YamlToken Value)> given, CaseInput changed, double probe, (string Key, string Word)? word)
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
        if (word is { } other)
        {
            words[other.Key] = other.Word;
        }

        return formula.Compute(new CaseInputs(numbers, lists, words));
    }

    // What all rows share, and what the first adds.
    private static List<(string Key, YamlToken Value)> First(MapToken formula) =>
        [.. Entries(Group(formula, "inputs")), .. Entries((Value(formula, "rows") as ListToken)?.Items.OfType<MapToken>().Select(row => Group(row, "inputs")).FirstOrDefault())];

    private static IEnumerable<(string Key, YamlToken Value)> Entries(MapToken? map) => map?.Entries.Select(entry => (entry.Key.Text, entry.Value)) ?? [];

    private static MapToken? Group(MapToken map, string key) => Value(map, key) as MapToken;

    private static YamlToken? Value(MapToken map, string key) => map.Find(key)?.Value;
}
