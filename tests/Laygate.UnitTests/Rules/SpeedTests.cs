using System.Diagnostics;
using System.Globalization;
using System.Text;
using Laygate.Engineering.Quantities;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;
using Laygate.UnitTests.Reading.RuleFiles;
using Xunit.Abstractions;
using static Laygate.UnitTests.Rules.TestBook;

namespace Laygate.UnitTests.Rules;

/// <summary>Tests that count the memory of all threads, and so run alone.</summary>
[CollectionDefinition(nameof(CountsAllThreads), DisableParallelization = true)]
public sealed class CountsAllThreads;

/// <summary>A book of 1,000 rules loads and checks in linear time. Counted, not timed: a busy machine changes no count. Wall time is only reported.</summary>
[Collection(nameof(CountsAllThreads))]
public sealed class SpeedTests(ITestOutputHelper output)
{
    private const int Large = 1000;

    // Twice as many rules may cost 5 % more than twice as much: tables of hashes grow in steps.
    private const double Most = 2.1;

    [Fact]
    public void Loading_text_costs_in_proportion_to_the_rules() =>
        Linear("read", size => Texts(size), folder => Assert.Equal(Count(folder), new RuleFileReader(RuleFileTests.Schemas).ReadBook(folder, "1").General!.Rules.Count));

    [Fact]
    public void Merging_costs_in_proportion_to_the_rules() =>
        Linear("merge", size => (General([.. Rules(size)]), Overlay(size)), pair =>
        {
            var result = Build(pair.Item1, pair.Item2);
            Assert.Empty(result.Problems);
            Whole(result.Book!);
        });

    [Fact]
    public void Checking_costs_in_proportion_to_the_rules_and_judges_each_once_per_element()
    {
        var context = Context().Given("course.thickness", new NumberValue(0.04), "mm");
        Linear("check", size => Whole(Book(General([.. Rules(size)]))), book => Assert.Equal(book.InForce.Count, Evaluate(book, context).Findings.Count));
    }

    // The text of a book is made beside other work: what it costs must be over before anything is counted.
    private static RuleBook Whole(RuleBook book)
    {
        Assert.NotEmpty(book.Hash);
        return book;
    }

    private void Linear<T>(string what, Func<int, T> prepare, Action<T> act)
    {
        var (half, whole) = (prepare(Large / 2), prepare(Large));
        act(half);
        var small = Allocated(() => act(half));
        var clock = Stopwatch.StartNew();
        var large = Allocated(() => act(whole));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {Large} rules, {large / 1e6:F2} MB, {clock.Elapsed.TotalMilliseconds:F1} ms; half as many {small / 1e6:F2} MB"));
        Assert.InRange((double)large / small, 1.5, Most);
    }

    private static long Allocated(Action act)
    {
        var before = GC.GetTotalAllocatedBytes(precise: true);
        act();
        return GC.GetTotalAllocatedBytes(precise: true) - before;
    }

    private static IEnumerable<RuleDefinition> Rules(int count) => Enumerable.Range(0, count).Select(number =>
        Rule("course.thickness", CheckKind.AtLeast, AtLeast(30, "mm"), AtLeast(40, "mm", Strength.Advised)) with { Id = Id(number), Name = $"rule-{number}" });

    private static Specification Overlay(int count) => Specification() with
    {
        Set = [.. Enumerable.Range(0, count / 2).Select(number => new LimitOverride(Id(number), [AtLeast(35, "mm")], "why"))],
    };

    private static RuleFolderInMemory Texts(int count)
    {
        var files = Enumerable.Range(0, count).ToDictionary(number => $"layers/rule-{number}/rule.yaml", number => Encoding.UTF8.GetBytes(Text(number)), StringComparer.Ordinal);
        files["sources.yaml"] = Encoding.UTF8.GetBytes("- { id: manual, title: Manual, issuer: Issuer }\n");
        return new RuleFolderInMemory("rules", files);
    }

    private static int Count(RuleFolderInMemory folder) => folder.Contents.Count - 1;

    private static string Text(int number) => $$"""
        id: {{Id(number)}}
        title: Too thin
        why: It tears.
        remedy: Lay it thicker.
        local: Ask.
        applies_to: course
        check: at-least
        quantity: course.thickness
        from_stage: submission
        life: { state: in-use, since: 0.1.0 }
        bounds:
          - { strength: required, basis: requirement, at_least: 30 mm, source: { id: manual, evidence: read } }
        """;

    private static string Id(int number) => string.Create(CultureInfo.InvariantCulture, $"{(char)('A' + (number / 1000))}AA-{number % 1000:000}");
}
