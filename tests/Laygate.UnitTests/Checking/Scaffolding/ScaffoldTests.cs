using Laygate.Checking.Scaffolding;
using Laygate.Engineering.Quantities;
using Laygate.Reading;
using Laygate.Reading.RuleFiles;

namespace Laygate.UnitTests.Checking.Scaffolding;

/// <summary>Scaffolds are complete but for their blanks: filled in, they pass their own checks.</summary>
public sealed class ScaffoldTests
{
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

    [Theory]
    [InlineData("own/Harbour Road.yaml", "harbour-road")]
    [InlineData("own\\a--b_c.spec.yaml", "a-b-c-spec")]
    [InlineData("layers/own", "own")]
    [InlineData(".hidden", "hidden")]
    [InlineData("Ä.yaml", "own")]
    public void A_short_name_comes_from_the_name_of_the_file(string path, string name) => Assert.Equal(name, Slugs.Of(path));

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
}
