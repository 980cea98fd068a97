using System.Text;
using Laygate.Checking.Cases;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Definitions;
using Laygate.Tests.Figures;

namespace Laygate.UnitTests.Checking.Cases;

/// <summary>Cases of one invented rule on a small plan, with the catalogue of the program.</summary>
public sealed class CaseRunnerTests
{
    private const string Plan = """
        format: 1
        plan: { id: small, stage: submission }
        shift: { date: 2027-06-08 }
        mixes:
          - { id: ac11, kind: asphalt-concrete, aggregate_size: { sieve: 11 mm, basis: upper-sieve } }
        courses:
          - { id: wearing, mix: ac11, kind: surface, laid: separately, thickness: 40 mm }
        """;

    private const string Rule = """
        id: LAY-001
        title: Course too thin for its aggregate
        why: The mat tears.
        remedy: Lay it thicker.
        local: Your specification governs.
        applies_to: course
        when:
          - quantity: course.kind
            is: [surface]
        check: at-least
        quantity: course.thickness
        from_stage: concept
        life: { state: in-use, since: 0.1.0 }
        bounds:
          - strength: required
            basis: requirement
            table:
              by: [mix.kind, course.thickness_to_size]
              rows:
                - match: [asphalt-concrete, { below: 4.0 }]
                  at_least: 35 mm
                - match: [asphalt-concrete, { at_least: 4.0 }]
                  at_least: 30 mm
            source: { id: manual, evidence: read }
        """;

    private const string Cases = """
        base: small
        cases:
          - case: Thick enough
            finding: { address: course:wearing, outcome: met, status: pass, value: 40 mm, limit: 35 mm }
          - case: Too thin
            set: { course:wearing/thickness: 1.2 in }
            finding: { address: course:wearing, outcome: missed, status: fail, value: 1.2 in, limit: 1.38 in, strength: required }
          - case: At four sizes the other row holds
            give: { course:wearing: { course.thickness_to_size: 4 } }
            finding: { address: course:wearing, outcome: met, status: pass, value: 40 mm, limit: 30 mm }
          - case: Just below four sizes the first row holds
            give: { course:wearing: { course.thickness_to_size: { expected: 3.95, low: 3, high: 5 } } }
            finding: { address: course:wearing, outcome: met, status: pass, value: 40 mm, limit: 35 mm }
          - case: Without the kind of the mix the row is not known
            set: { course:wearing/thickness: 34 mm }
            remove: [ mix:ac11/kind ]
            finding: { address: course:wearing, outcome: not-assessed, status: fail, missing: [ mix:ac11/kind ] }
          - case: A binder course has other rules
            set: { course:wearing/kind: binder }
            finding: { address: course:wearing, outcome: not-applicable }
        """;

    [Fact]
    public void Cases_that_hold_hold()
    {
        var results = Run(Cases);
        Assert.Equal(6, results.Count);
        Assert.All(results, result => Assert.Empty(result.Differences));
    }

    [Theory]
    [InlineData("outcome: met, status: pass, value: 40 mm, limit: 35 mm", "outcome: missed, status: fail, value: 40 mm, limit: 35 mm", "The outcome is met, not missed. The status is pass, not fail.")]
    [InlineData("value: 40 mm, limit: 35 mm", "value: 41 mm, limit: 35 mm", "The value is 40 mm, not 41 mm.")]
    [InlineData("value: 40 mm, limit: 35 mm", "value: 40.0 mm, limit: 35.1 mm", "The limit is 35 mm, not 35.1 mm.")]
    [InlineData("value: 40 mm, limit: 35 mm", "value: 40, limit: 35 mm", "The value is 40 mm, not 40.")]
    [InlineData("value: 40 mm, limit: 35 mm", "value: 40 °C, limit: 35 mm", "The value is 40 mm, not 40 °C.")]
    [InlineData("value: 40 mm, limit: 35 mm", "value: 40 mm", "The case does not say what the limit is.")]
    [InlineData("missing: [ mix:ac11/kind ]", "missing: [ mix:ac11/name ]", "Missing is mix:ac11/kind, not mix:ac11/name.")]
    [InlineData("strength: required", "strength: advised", "The strength is required, not advised.")]
    [InlineData("limit: 1.38 in", "limit: 1.37 in", "The limit is 1.37795 in, not 1.37 in.")]
    [InlineData("remove: [ mix:ac11/kind ]", "remove: [ mix:ac11/binder ]", "There is nothing at `mix:ac11/binder` that could be removed.")]
    [InlineData("remove: [ mix:ac11/kind ]", "remove: [ mix:sma/kind ]", "The base plan has no element `mix:sma` that could be changed.")]
    [InlineData("address: course:wearing, outcome: not-applicable", "address: course:base, outcome: not-applicable", "There is no finding at course:base, only at course:wearing.")]
    [InlineData("course.thickness_to_size: 4 }", "course.thickness_to_sizes: 4 }", "`course.thickness_to_sizes` is no quantity.")]
    public void Cases_that_do_not_hold_say_why(string old, string now, string differences)
    {
        var index = Cases.IndexOf(old, StringComparison.Ordinal);
        var results = Run(string.Concat(Cases.AsSpan(0, index), now, Cases.AsSpan(index + old.Length)));
        var result = Assert.Single(results, result => !result.Holds);
        Assert.Equal(differences, string.Join(' ', result.Differences));
        Assert.True(result.Position!.Line > 2);
    }

    [Fact]
    public void A_base_plan_in_words_of_the_last_version_is_read() =>
        Assert.All(Run(Cases, "pavers: [ { id: p1, screeds: [ { course: wearing, kind: tamper-and-pressure-bars } ] } ]"), result => Assert.Empty(result.Differences));

    [Fact]
    public void A_key_that_the_plan_format_does_not_know_is_refused()
    {
        var results = Run(Cases.Replace("course:wearing/kind: binder", "course:wearing/kinds: binder", StringComparison.Ordinal));
        Assert.Contains("kinds", Assert.Single(results, result => !result.Holds).Differences[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_that_cannot_be_read_is_refused_with_its_reason()
    {
        var results = Run(Cases.Replace("course:wearing/kind: binder", "course:wearing/laid_at: 2031-02-31T10:00", StringComparison.Ordinal));
        Assert.Contains("calendar", Assert.Single(results, result => !result.Holds).Differences[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_case_may_take_a_value_away_that_no_plan_goes_without()
    {
        var results = Run(Cases.Replace("remove: [ mix:ac11/kind ]", "give: { course:wearing: { course.thickness: not-stated } }", StringComparison.Ordinal)
            .Replace("missing: [ mix:ac11/kind ]", "missing: [ course:wearing/thickness ]", StringComparison.Ordinal));
        Assert.All(results, result => Assert.Empty(result.Differences));
    }

    [Fact]
    public void All_four_kinds_of_case_are_asked_for()
    {
        var fewer = Cases[..Cases.IndexOf("  - case: A binder", StringComparison.Ordinal)];
        Assert.Equal("No case shows the outcome not-applicable.", Assert.Single(Assert.Single(Run(fewer), result => !result.Holds).Differences));
    }

    // Two cells and one edge, each up and down.
    [Fact]
    public void Every_figure_that_is_changed_is_noticed()
    {
        var result = Mutate(Cases);
        Assert.Equal((6, 0), (result.Changed, result.Survivors.Count));
    }

    [Fact]
    public void A_figure_that_no_case_looks_at_survives()
    {
        var start = Cases.IndexOf("  - case: Just below", StringComparison.Ordinal);
        var end = Cases.IndexOf("  - case: Without", StringComparison.Ordinal);
        var survivors = Mutate(Cases.Remove(start, end - start)).Survivors;
        Assert.Equal(new Survivor("LAY-001", null, "bounds/0/table/course.thickness_to_size", "4.0", "3.9"), Assert.Single(survivors));
    }

    private static IReadOnlyList<CaseResult> Run(string cases, string more = "")
    {
        var (runner, rule) = Runner(cases, more);
        return runner.Run(rule);
    }

    private static MutationResult Mutate(string cases)
    {
        var (runner, rule) = Runner(cases);
        return runner.Mutate(rule);
    }

    private static (CaseRunner Runner, RuleDefinition Rule) Runner(string cases, string more = "")
    {
        var texts = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["layers/thin/rule.yaml"] = Rule,
            ["layers/thin/cases.yaml"] = cases,
            ["bases/small.yaml"] = $"{Plan}\n{more}\n",
            ["sources.yaml"] = "- { id: manual, title: Manual, issuer: Issuer }\n",
        };
        var folder = new RuleFolderInMemory("rules", texts.ToDictionary(file => file.Key, file => Encoding.UTF8.GetBytes(file.Value), StringComparer.Ordinal));
        var schemas = RuleSchemas.Embedded();
        var files = new RuleFileReader(schemas).ReadBook(folder, "0.1.0");
        Assert.Empty(files.Problems);
        var runner = new CaseRunner(folder, files, schemas, LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), new DateOnly(2027, 1, 1));
        return (runner, Assert.Single(runner.Rules));
    }
}
