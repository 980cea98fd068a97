using System.Text;
using Laygate.Checking;
using Laygate.Checking.Scaffolding;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading;
using Laygate.Reading.Plans;
using Laygate.Reading.RuleFiles;

namespace Laygate.UnitTests.Checking.Scaffolding;

/// <summary>Scaffolds are complete but for their blanks: filled in, they pass their own checks; as they stand, a plan is refused.</summary>
public sealed class ScaffoldTests
{
    // What a person might write into each blank; invented.
    private static readonly Dictionary<string, string> Answers = new(StringComparer.Ordinal)
    {
        ["a country code"] = "none",
        ["a kind of mix"] = "asphalt-concrete",
        ["a sieve"] = "11 mm",
        ["a basis of the size"] = "upper-sieve",
        ["a thickness"] = "45 mm",
        ["the first station"] = "0 m",
        ["the last station"] = "900 m",
        ["a width"] = "3.6 m",
        ["a paver speed"] = "4 m/min",
        ["a use of the site"] = "road",
        ["the traffic during the work"] = "none",
        ["the day of the shift"] = "2027-06-08",
        ["the start of the shift"] = "\"09:00\"",
        ["the end of the shift"] = "\"13:00\"",
        ["the offset from UTC"] = "\"+02:00\"",
        ["a low air temperature"] = "12 °C",
        ["a high air temperature"] = "24 °C",
        ["a wind speed"] = "3 m/s",
        ["a surface below"] = "milled",
        ["the wetness of the surface below"] = "dry",
        ["a gradation"] = "fine",
        ["a binder grade"] = "50/70",
        ["yes or no"] = "no",
        ["a delivery temperature"] = "161 °C",
        ["an edge"] = "free",
        ["an output"] = "120 t/h",
        ["a number of trucks"] = "9",
        ["a payload"] = "18 t",
        ["a time"] = "6 min",
        ["a kind of screed"] = "vibrating",
        ["a number of passes"] = "4",
        ["a kind of roller"] = "tandem",
        ["a drum width"] = "1.5 m",
        ["a roller speed"] = "4 km/h",
        ["a mode of rolling"] = "static",
        ["the moment of opening"] = "2027-06-09T15:00",
        ["an hour of the shift"] = "2027-06-08T09:00",
    };

    [Theory]
    [InlineData(Stage.Concept)]
    [InlineData(Stage.Submission)]
    [InlineData(Stage.Release)]
    public void A_plan_passes_its_own_checks_once_its_blanks_are_filled_in(Stage stage)
    {
        var plan = Scaffolds.Plan("hill-road", stage);
        Assert.NotEmpty(plan.Blanks);
        Assert.Equal(plan.Blanks, [.. Problems(plan.Text).Concat(TextBlanks(plan.Text)).Distinct().Order()]);
        Assert.Empty(Check(Filled(plan.Text)).Problems);
    }

    [Fact]
    public void A_specification_is_read_as_it_stands()
    {
        var made = Scaffolds.Specification("harbour-road");
        var files = new Files { Texts = { ["harbour-road/specification.yaml"] = made.Text } };
        Assert.Empty(RuleBooks.Load(SmallPack.Pack, ["harbour-road/specification.yaml"], files).Problems);
        Assert.Equal(6, made.Blanks.Count);
    }

    public static TheoryData<string> Quantities =>
    [
        .. LaygateQuantities.Catalogue().All.GroupBy(quantity => (quantity.Kind, quantity.Element)).Select(group => group.First().Name),
    ];

    [Theory]
    [MemberData(nameof(Quantities))]
    public void A_rule_is_well_formed_but_for_its_limit(string quantity)
    {
        var files = RuleScaffold.Make("layers/own", "LAY-901", quantity, "manual").Files!;
        var definition = LaygateQuantities.Catalogue().Find(quantity)!;
        var folder = new Dictionary<string, byte[]>(StringComparer.Ordinal) { ["sources.yaml"] = SmallPack.Bytes("- { id: manual, title: Manual, issuer: Issuer }\n") };
        foreach (var file in files)
        {
            folder[file.Path] = SmallPack.Bytes(file.Text
                .Replace("TO FILL IN the other moment", quantity is "site.closure_end" ? "opening.at" : "site.closure_end", StringComparison.Ordinal)
                .Replace("TO FILL IN the kind that must be there", definition.Words.Count > 0 ? definition.Words[0] : "word", StringComparison.Ordinal)
                .Replace("TO FILL IN the words that are right", definition.Words.Count > 0 ? definition.Words[0] : "word", StringComparison.Ordinal)
                .Replace($"TO FILL IN the limit in {definition.MetricUnit}", $"1 {definition.MetricUnit}", StringComparison.Ordinal)
                .Replace("TO FILL IN the limit", "1", StringComparison.Ordinal));
        }

        var read = new RuleFileReader(RuleSchemas.Embedded()).ReadBook(new RuleFolderInMemory("rules", folder), "1");
        Assert.Empty(read.Problems);
        var bound = BookBinder.Bind(read.General!, [], LaygateQuantities.Catalogue(), Laygate.Engineering.Assumptions.LaygateAssumptions.Set(), read.Positions);
        Assert.Empty(bound.Problems);
    }

    [Fact]
    public void The_next_id_is_one_that_nobody_has_or_had()
    {
        var folder = new RuleFolderInMemory("rules", new Dictionary<string, byte[]>(StringComparer.Ordinal)
        {
            ["layers/a/rule.yaml"] = SmallPack.Bytes("id: LAY-001\n"),
            ["retired.yaml"] = SmallPack.Bytes("- { id: LAY-002 }\n"),
        });
        Assert.Equal("LAY-003", RuleScaffold.NextId("LAY", folder, 1));
        Assert.Equal("LAY-901", RuleScaffold.NextId("LAY", folder, RuleScaffold.FirstOwnNumber));
    }

    private static Laygate.Rules.Results.FileResult Check(string text) =>
        new PlanCheck(SmallPack.Book, new CheckSettings(null, new DateOnly(2026, 11, 25), "1")).Run("plan.yaml", Encoding.UTF8.GetBytes(text));

    private static IEnumerable<int> Problems(string text) => Check(text).Problems.Select(problem => problem.Position!.Line);

    // Free texts are found only once the rest is in order.
    private static IEnumerable<int> TextBlanks(string text) => Problems(Answers.Aggregate(text, (now, answer) => Fill(now, answer.Key, answer.Value)));

    private static string Filled(string text)
    {
        var filled = Answers.Aggregate(text, (now, answer) => Fill(now, answer.Key, answer.Value));
        return System.Text.RegularExpressions.Regex.Replace(filled, "TO FILL IN [a-z ]+", "said", System.Text.RegularExpressions.RegexOptions.None, Patience.Longest);
    }

    private static string Fill(string text, string blank, string answer) =>
        System.Text.RegularExpressions.Regex.Replace(text, $"TO FILL IN {blank}(?=[,\\]\\n }}])(?! [a-z])", answer, System.Text.RegularExpressions.RegexOptions.None, Patience.Longest);
}
