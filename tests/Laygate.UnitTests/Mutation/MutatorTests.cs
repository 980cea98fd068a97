using System.Reflection;
using Laygate.Mutation;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace Laygate.UnitTests.Mutation;

/// <summary>
/// The tool of the mutation run (<c>tests/Tools/mutation</c>) on one small function. What the function gives is by hand: below ten it is five,
/// from ten on twice the number and one.
/// </summary>
public sealed class MutatorTests
{
    private const string Source = """
        namespace Small;

        public static class Fee
        {
            public static int Of(int number) => number < 10 ? 5 : (2 * number) + 1;
        }
        """;

    private static readonly Lazy<(IReadOnlyList<Mutant> Mutants, Action<int> TurnOn, Func<int, int> Of)> Built = new(Build);

    [Fact]
    public void Nothing_changes_while_no_switch_is_on()
    {
        Built.Value.TurnOn(0);

        Assert.Equal((5, 5, 21, 41), (Of(0), Of(9), Of(10), Of(20)));
    }

    [Fact]
    public void Examples_on_both_sides_of_the_boundary_notice_every_mutant()
    {
        Assert.InRange(Built.Value.Mutants.Count, 10, 20);
        Assert.Empty(Survivors((0, 5), (9, 5), (10, 21), (20, 41)));
    }

    [Fact]
    public void Without_them_those_that_move_the_boundary_are_left() =>
        Assert.Equal(["10 → (9)", "10 → 11", "number < 10 → number <= 10"], Survivors((0, 5), (20, 41)));

    [Fact]
    public void A_seed_draws_the_same_sample_again_and_each_folder_gets_its_share()
    {
        int[] all = [.. Enumerable.Range(0, 100)];

        Assert.Equal(Sample.Shuffled(all, 7), Sample.Shuffled(all, 7));
        Assert.NotEqual(Sample.Shuffled(all, 7), Sample.Shuffled(all, 8));
        Assert.Equal(all, Sample.Shuffled(all, 7).Order());

        // By hand: a tenth of 90 and of 900; of ten a tenth is one, but six are the least of a folder; four have no more.
        var quotas = Sample.Quotas(new Dictionary<string, int>(StringComparer.Ordinal) { ["a"] = 90, ["b"] = 900, ["c"] = 10, ["d"] = 0 }, 100);
        Assert.Equal((9, 90, 6, 0), (quotas["a"], quotas["b"], quotas["c"], quotas["d"]));
    }

    private static int Of(int number) => Built.Value.Of(number);

    private static string[] Survivors(params (int Number, int Fee)[] examples)
    {
        var left = Built.Value.Mutants.Where(mutant =>
        {
            Built.Value.TurnOn(mutant.Id);
            return examples.All(example => Of(example.Number) == example.Fee);
        }).Select(mutant => mutant.Change).Order(StringComparer.Ordinal).ToArray();
        Built.Value.TurnOn(0);
        return left;
    }

    private static (IReadOnlyList<Mutant> Mutants, Action<int> TurnOn, Func<int, int> Of) Build()
    {
        var references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(path => Path.GetFileName(path).StartsWith("System.", StringComparison.Ordinal)).Select(path => MetadataReference.CreateFromFile(path));
        var tree = CSharpSyntaxTree.ParseText(Source);
        var clean = CSharpCompilation.Create("Small", [tree, CSharpSyntaxTree.ParseText(Schemata.SwitchText)], references, new(OutputKind.DynamicallyLinkedLibrary));
        var mutants = Places.In(tree.GetRoot(), clean.GetSemanticModel(tree)).Select((mutant, index) => mutant with { Id = index + 1 }).ToList();
        var switched = new Schemata(mutants).Visit(tree.GetRoot())!;

        using var image = new MemoryStream();
        var result = clean.ReplaceSyntaxTree(tree, CSharpSyntaxTree.ParseText(switched.ToFullString())).Emit(image);
        Assert.True(result.Success, string.Join('\n', result.Diagnostics));
        var built = Assembly.Load(image.ToArray());
        var turn = built.GetType("LaygateMutation.Mutant")!.GetField("Active")!;
        return (mutants, id => turn.SetValue(null, id), built.GetType("Small.Fee")!.GetMethod("Of")!.CreateDelegate<Func<int, int>>());
    }
}
