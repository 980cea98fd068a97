using System.Text;
using Laygate.Checking.Cases;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Definitions;
using Laygate.Tests.Figures;

namespace Laygate.UnitTests.Checking.Cases;

/// <summary>Cases of the limits that a specification sets, and what they notice of its figures. Rule, specification and figures are invented.</summary>
public sealed class SpecificationCaseTests
{
    private const string Plan = """
        format: 1
        plan: { id: small, stage: submission }
        mixes:
          - { id: ac11, kind: asphalt-concrete, aggregate_size: { sieve: 11 mm, basis: upper-sieve } }
        courses:
          - { id: wearing, mix: ac11, kind: surface, laid: separately, thickness: 40 mm }
        """;

    private const string Rule = """
        id: LAY-001
        title: Course heavier than the deck allows
        why: The deck sags.
        remedy: Lay it thinner.
        local: Your specification governs.
        applies_to: course
        check: at-most
        quantity: course.spread
        from_stage: concept
        life: { state: in-use, since: 0.1.0 }
        bounds:
          - { strength: advised, basis: recommendation, at_most: 100 kg/m2, source: { id: manual, evidence: read } }
        """;

    private const string RuleCases = """
        base: small
        cases:
          - case: 96 kg on a square metre
            finding: { address: course:wearing, outcome: met, status: pass, value: 96 kg/m2, limit: 100 kg/m2 }
          - case: 120 kg are too much
            give: { course:wearing: { course.spread: 120 kg/m2 } }
            finding: { address: course:wearing, outcome: missed, status: warn, value: 120 kg/m2, limit: 100 kg/m2 }
          - case: Without a thickness nothing is known
            give: { course:wearing: { course.spread: not-stated } }
            finding: { address: course:wearing, outcome: not-assessed, status: warn }
        """;

    private const string Specification = """
        name: quay
        title: Invented works specification
        issuer: Harbour
        edition: "1"
        layer: particular
        jurisdiction: none
        sources: [ { id: quay-book, title: Quay book, issuer: Harbour } ]
        set:
          - rule: LAY-001
            reason: The deck bears less.
            bounds:
              - { strength: required, basis: requirement, at_most: 97 kg/m2, source: { id: quay-book, clause: "4", evidence: read } }
        assume:
          - { id: mix.density.asphalt_concrete, meaning: Density of the mix of the quay, value: 2400 kg/m3, low: 2300 kg/m3, high: 2500 kg/m3, source: Quay book, evidence: read }
        """;

    private const string SetCases = """
        base: small
        cases:
          - case: 96 kg are allowed
            finding: { address: course:wearing, outcome: met, status: pass, value: 96.00 kg/m2, limit: 97 kg/m2 }
          - case: 98 kg are not
            give: { course:wearing: { course.spread: 98 kg/m2 } }
            finding: { address: course:wearing, outcome: missed, status: fail, value: 98 kg/m2, limit: 97 kg/m2 }
        """;

    [Fact]
    public void Cases_beside_a_specification_are_run_with_it()
    {
        var run = Run(SetCases);
        Assert.Empty(run.Problems);
        Assert.Equal((1, 2), (run.Rules, run.Results.Count));
        Assert.All(run.Results, result => Assert.Empty(result.Differences));
    }

    [Theory]
    [InlineData("98 kg/m2, limit: 97", "98 kg/m2, limit: 100", "The limit is 97 kg/m2, not 100 kg/m2.")]
    [InlineData("outcome: missed, status: fail", "outcome: missed, status: warn", "The status is fail, not warn.")]
    public void A_case_that_does_not_hold_says_why(string old, string now, string difference)
    {
        var wrong = Assert.Single(Run(SetCases.Replace(old, now, StringComparison.Ordinal)).Results, result => !result.Holds);
        Assert.Equal((difference, "98 kg are not"), (Assert.Single(wrong.Differences), wrong.Case));
        Assert.EndsWith("cases/LAY-001.yaml", wrong.File, StringComparison.Ordinal);
    }

    [Fact]
    public void Both_sides_of_a_set_limit_are_asked_for()
    {
        var half = SetCases[..SetCases.IndexOf("  - case: 98", StringComparison.Ordinal)];
        Assert.Equal("No case shows the outcome missed.", Assert.Single(Assert.Single(Run(half).Results, result => !result.Holds).Differences));
    }

    [Fact]
    public void Cases_of_a_rule_that_the_specification_does_not_set_are_refused()
    {
        var run = Run(SetCases, "cases/LAY-002.yaml");
        Assert.Equal("The specification sets no limit of `LAY-002`.", Assert.Single(Assert.Single(run.Results, result => result.Rule == "LAY-002").Differences));
    }

    /// <summary>A limit that is set and that no case shows is named, not passed over.</summary>
    [Fact]
    public void A_set_limit_without_cases_is_named()
    {
        var unshown = Assert.Single(Run(SetCases, "cases/LAY-002.yaml").Results, result => result.Rule == "LAY-001");
        Assert.StartsWith("No case shows the limit that is set for `LAY-001`: write one that meets it", Assert.Single(unshown.Differences), StringComparison.Ordinal);
        Assert.EndsWith("specification.yaml", unshown.File, StringComparison.Ordinal);
    }

    [Fact]
    public void The_figure_of_a_set_limit_is_pinned_by_its_own_cases()
    {
        var (runner, files) = Runner(SetCases);
        Assert.DoesNotContain(runner.Mutate(files.General!.Rules[0]).Survivors, survivor => survivor.Specification == "quay");
    }

    // 2400 kg/m3 and 40 mm give 96 kg/m2; one unit of the last digit is 0.04 kg/m2. The ends of the range change nothing that a case without a spread looks at.
    [Fact]
    public void An_assumption_that_no_case_looks_at_survives()
    {
        var (runner, files) = Runner(SetCases);
        var result = runner.Mutate(files.Specifications.Single());
        Assert.Equal(6, result.Changed);
        Assert.DoesNotContain(result.Survivors, survivor => survivor.Where == "assume/value");

        var blind = SetCases.Replace("finding: { address: course:wearing, outcome: met", "give: { course:wearing: { course.spread: 96 kg/m2 } }\n    finding: { address: course:wearing, outcome: met", StringComparison.Ordinal);
        (runner, files) = Runner(blind);
        Assert.Contains(new Survivor("mix.density.asphalt_concrete", "quay", "assume/value", "2400 kg/m3", "2401 kg/m3"), runner.Mutate(files.Specifications.Single()).Survivors);
    }

    /// <summary>What is wrong with another shipped specification is no business of one's own.</summary>
    [Fact]
    public void Only_the_specification_under_test_must_fit_the_book()
    {
        var book = Book();
        book["specifications/other/specification.yaml"] = Specification.Replace("name: quay", "name: other", StringComparison.Ordinal).Replace("rule: LAY-001", "rule: LAY-009", StringComparison.Ordinal);
        Dictionary<string, string> Own(string text) => new(StringComparer.Ordinal) { ["specification.yaml"] = text, ["cases/LAY-001.yaml"] = SetCases };
        Assert.Empty(RuleTests.Run(Folder(book), Folder(Own(Specification)), "quay", new DateOnly(2027, 1, 1)).Problems);
        var wrong = RuleTests.Run(Folder(book), Folder(Own(Specification.Replace("rule: LAY-001", "rule: LAY-009", StringComparison.Ordinal))), "quay", new DateOnly(2027, 1, 1));
        Assert.Contains(wrong.Problems, problem => problem.Message.Contains("LAY-009", StringComparison.Ordinal));
    }

    private static RuleTestRun Run(string cases, string file = "cases/LAY-001.yaml") =>
        RuleTests.Run(Folder(Book()), Folder(new(StringComparer.Ordinal) { ["specification.yaml"] = Specification, [file] = cases }), "quay", new DateOnly(2027, 1, 1));

    private static (CaseRunner Runner, RuleFilesResult Files) Runner(string cases)
    {
        var texts = Book();
        texts["specifications/quay/specification.yaml"] = Specification;
        texts["specifications/quay/cases/LAY-001.yaml"] = cases;
        var folder = Folder(texts);
        var schemas = RuleSchemas.Embedded();
        var files = new RuleFileReader(schemas).ReadBook(folder, "0.1.0");
        Assert.Empty(files.Problems);
        return (new CaseRunner(folder, files, schemas, LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), new DateOnly(2027, 1, 1)), files);
    }

    private static Dictionary<string, string> Book() => new(StringComparer.Ordinal)
    {
        ["layers/heavy/rule.yaml"] = Rule,
        ["layers/heavy/cases.yaml"] = RuleCases,
        ["bases/small.yaml"] = Plan,
        ["sources.yaml"] = "- { id: manual, title: Manual, issuer: Issuer }\n",
    };

    private static RuleFolderInMemory Folder(Dictionary<string, string> texts) =>
        new("rules", texts.ToDictionary(file => file.Key, file => Encoding.UTF8.GetBytes(file.Value), StringComparer.Ordinal));
}
