using System.Text.RegularExpressions;
using Laygate.Checking.Cases;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Reading.RuleFiles;
using Laygate.Reading.Yaml;
using Laygate.Reporting.Language;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.RuleBook;

/// <summary>What every rule must be, whatever it says: listed from the files, so that a new rule is held to it without a new test.</summary>
public sealed partial class RuleMetaTests
{
    // Words of a remedy or of an order; a rule is named after the bad situation.
    private static readonly string[] RemedyWords =
        ["should", "must", "shall", "ensure", "require", "requires", "use", "add", "state", "provide", "increase", "raise", "reduce", "avoid", "choose", "keep", "make", "ask", "recommended", "fix", "improve", "prefer"];

    private static readonly CaseRunner Runner = Repository.Cases();
    private static readonly IReadOnlyList<RuleDefinition> Rules = [.. Runner.Rules];

    public static TheoryData<string> Ids => [.. Rules.Select(rule => rule.Id)];

    /// <summary>Every bound and row: of general practice, and of each specification that sets it.</summary>
    private static readonly IReadOnlyList<GeneratedCase> Cases = [.. AllCases().DistinctBy(one => one.Name, StringComparer.Ordinal)];

    [Fact]
    public void Ids_are_unique_fit_their_family_and_were_never_used_before()
    {
        Assert.Equal(Rules.Count, Rules.Select(rule => rule.Id).Distinct(StringComparer.Ordinal).Count());
        var families = Rules.GroupBy(rule => rule.Id[..3], StringComparer.Ordinal);
        Assert.All(families, family => Assert.Single(family.Select(rule => rule.Family).Distinct(StringComparer.Ordinal)));
        Assert.All(Rules.GroupBy(rule => rule.Family, StringComparer.Ordinal), family => Assert.Single(family.Select(rule => rule.Id[..3]).Distinct(StringComparer.Ordinal)));
        Assert.Empty(Retired().Intersect(Rules.Select(rule => rule.Id), StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_name_is_a_bad_situation_and_the_texts_are_there(string id)
    {
        var rule = Rule(id);
        Assert.Contains(rule.Family, RuleFileReader.Families, StringComparer.Ordinal);
        Assert.Matches(Slug(), rule.Name);
        Assert.Empty(rule.Name.Split('-').Intersect(RemedyWords, StringComparer.Ordinal));
        Assert.InRange(rule.Title.Length, 10, 100);
        Assert.False(rule.Title.EndsWith('.') || rule.Title.Contains('\n', StringComparison.Ordinal), rule.Title);
        Assert.DoesNotContain(rule.Title.Split(' ')[0].ToLowerInvariant(), RemedyWords, StringComparer.Ordinal);
        Assert.All([rule.Why, rule.Remedy, rule.Local], text => Assert.True(text.Length > 15 && text.TrimEnd().EndsWith('.'), text));
        Assert.True(Approved.Approving || File.Exists(Path.Combine(Repository.Root, "docs", "rules", $"{id}.md")), "It has no page: LAYGATE_APPROVE=1 writes it.");
    }

    /// <summary>What goes wrong, why it matters, what to do and whom to ask are four texts: none is another one again, or a part of it.</summary>
    [Theory]
    [MemberData(nameof(Ids))]
    public void What_goes_wrong_why_and_what_to_do_are_said_in_words_of_their_own(string id)
    {
        var rule = Rule(id);
        string[] texts = [.. new[] { rule.Title, rule.Why, rule.Remedy, rule.Local }.Select(text => string.Concat(text.Where(char.IsLetterOrDigit)).ToLowerInvariant())];
        Assert.All(texts, text => Assert.Single(texts, other => other.Contains(text, StringComparison.Ordinal)));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void It_has_cases_of_each_kind(string id)
    {
        var rule = Rule(id);
        var outcomes = Runner.Summaries(rule).Select(one => one.Outcome).ToHashSet(StringComparer.Ordinal);
        // What is stated may be for a person to judge: nothing is met then.
        var met = rule.Check == CheckKind.Present && outcomes.Contains("needs-person") ? "needs-person" : "met";
        Assert.Subset(outcomes, new HashSet<string>([met, "missed"], StringComparer.Ordinal));
        // Below severity A an unknown condition holds no plan up: it is open.
        var unknown = rule is { Check: CheckKind.Present, Severity: Severity.B or Severity.C } ? "open" : "not-assessed";
        // A number that is not stated is no element.
        Assert.True(outcomes.Contains(unknown) || rule.AppliesTo == ElementKind.Value || (rule.Check == CheckKind.Present && rule.When.Count == 0 && rule.Jurisdictions.Count == 0), "not assessed");
        Assert.True(outcomes.Contains("not-applicable") || (rule.When.Count == 0 && rule.Jurisdictions.Count == 0), "not applicable");
    }

    [Fact]
    public void Every_bound_and_row_names_a_publication_and_a_unit_of_its_quantity()
    {
        var known = Repository.Book.General!.Sources.Concat(Repository.Book.Specifications.SelectMany(one => one.Sources)).Select(source => source.Id).ToHashSet(StringComparer.Ordinal);
        Assert.All(Cases, one =>
        {
            Assert.Contains(one.Source.Source, known);
            Assert.All(Values(one), value => Assert.Equal(one.Rule.Quantity.Dimension, value.Unit.Length == 0 ? Dimension.None : UnitTable.Find(value.Unit)!.Dimension));
            Assert.NotEqual(Evidence.Confirmed, one.Source.Evidence);
        });
        Assert.True(Cases.Count >= Rules.Count, $"{Cases.Count} bounds and rows");
    }

    public static TheoryData<string> Bounds => [.. Cases.Select(one => one.Name).Usual(5)];

    [Theory]
    [MemberData(nameof(Bounds))]
    public void On_either_side_of_a_limit_the_status_is_what_its_evidence_allows(string name)
    {
        var one = Cases.Single(known => known.Name == name);
        foreach (var (inside, outside) in one.Sides())
        {
            var met = one.Judge(inside);
            Assert.Equal((Outcome.Met, Status.Pass), (met.Outcome, met.Status));
            var missed = one.Judge(outside);
            Assert.Equal((Outcome.Missed, MayFail(one) || Silent(one, outside) ? Status.Fail : Status.Warn), (missed.Outcome, missed.Status));
            Assert.All([met, missed], Renders);
        }

        var silent = one.Judge(one.Rule.Definition.Check == CheckKind.Present ? new PresenceValue(PresenceLevel.Absent, []) : null);
        Renders(silent);
        Renders(silent with { Outcome = Outcome.NotApplicable, Status = Status.None });
        Renders(silent with { Outcome = Outcome.NeedsPerson, Status = Status.Warn });
        Renders(silent with { Outcome = Outcome.NotAssessed, Status = Status.Warn });
        Renders(silent with { Outcome = Outcome.Open, Status = Status.None });
    }

    // Design, section 4, line 4 of the gate: a required bound fails when it was read, is second-hand, confirmed or derived, or is a quantity of the plan.
    private static bool MayFail(GeneratedCase one) => one.Bound.Definition.Strength == Strength.Required
        && (one.Bound.Limit is CheckedQuantity || one.Source.Evidence is Evidence.Read or Evidence.SecondHand or Evidence.Confirmed or Evidence.Derived);

    // The base plans are at release, where the silence about a measure of severity A fails whatever its source.
    private static bool Silent(GeneratedCase one, QuantityValue value) =>
        one.Rule.Definition.LifeCritical && one.Bound.Definition.Strength == Strength.Required && value is PresenceValue { Level: PresenceLevel.Absent };

    private static void Renders(Finding finding)
    {
        var message = Wording.Message(finding);
        Assert.EndsWith(".", message, StringComparison.Ordinal);
        Assert.DoesNotContain("{", message, StringComparison.Ordinal);
        Assert.DoesNotContain("no value", message, StringComparison.Ordinal);
        Assert.All(finding.Notes, note => Assert.DoesNotContain("(not given)", NoteWords.Of(note), StringComparison.Ordinal));
    }

    private static IEnumerable<GeneratedCase> AllCases()
    {
        var merged = Repository.Book.Specifications.Select(one => Merge(one)).Prepend(Merge());
        return merged.SelectMany(book => book.All).SelectMany(rule => GeneratedCase.Of(rule.Rule));
    }

    private static Laygate.Rules.Merging.RuleBook Merge(params Specification[] specifications) =>
        Laygate.Rules.Merging.RuleBook.Build(Repository.Book.General!, specifications, LaygateQuantities.Catalogue(), LaygateAssumptions.Set()).Book!;

    private static IEnumerable<LimitValue> Values(GeneratedCase one)
    {
        var range = one.Bound.Limit switch
        {
            CheckedConstant constant => constant.Range,
            CheckedTable table => table.Rows[one.Row!.Value - 1].Range,
            _ => null,
        };
        return new[] { range?.Low, range?.High }.OfType<LimitEnd>().Select(end => end.Stated);
    }

    private static RuleDefinition Rule(string id) => Rules.Single(rule => rule.Id == id);

    // rules/retired.yaml: a list of entries with the id of a rule that is gone.
    private static IEnumerable<string> Retired() => !Repository.Rules.Files.Contains("retired.yaml", StringComparer.Ordinal) ? []
        : YamlReader.Read(Repository.Rules.Read("retired.yaml"), "list").Documents.Select(document => document.Root).OfType<ListToken>()
            .SelectMany(list => list.Items.OfType<MapToken>()).Select(map => ((ScalarToken)map["id"]!).Text);

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)+$", RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex Slug();
}
