using Laygate.Checking;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading;
using Laygate.Reading.Departures;
using Laygate.Reading.Plans;
using Laygate.Reading.RuleFiles;
using Laygate.Reading.Yaml;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Safety;

/// <summary>What holds for every rule of the family: questions for what is not said, nothing for empty words, no way round severity A.</summary>
public sealed class SafetyFamilyTests
{
    private static readonly Laygate.Rules.Merging.RuleBook Book = Repository.Bound();

    private static readonly IReadOnlyList<CheckedRule> Presence =
        [.. Book.On(ElementKind.Site).Where(rule => rule.Definition is { Family: "safety", Check: CheckKind.Present } && rule.Quantity.Name == "site.measures")];

    public static TheoryData<string> Conditions => [.. typeof(SiteConditions).GetProperties().Where(property => property.PropertyType == typeof(bool?)).Select(property => property.Name)];

    public static TheoryData<string> PresenceIds => [.. Presence.Select(rule => rule.Definition.Id)];

    [Theory]
    [MemberData(nameof(Conditions))]
    public void Without_a_condition_its_severe_rules_ask_for_it(string name)
    {
        var property = typeof(SiteConditions).GetProperty(name)!;
        var key = $"conditions.{Underscored(name)}";
        var bare = Bare(Fast());
        var full = bare with { Site = bare.Site! with { Conditions = All(bare.Site.Conditions ?? new SiteConditions()) } };
        var silent = full with { Site = full.Site! with { Conditions = full.Site.Conditions! with { } } };
        typeof(SiteConditions).GetProperty(name)!.SetValue(silent.Site!.Conditions, null);

        var asked = 0;
        foreach (var rule in Book.On(ElementKind.Site).Where(rule => rule.Definition.Severity is not null && rule.Jurisdictions.Count == 0 && rule.When.Any(one => one.Quantity.Name == $"site.{Underscored(name)}")))
        {
            Assert.DoesNotContain(new InputReference("site", key), Judge(full, rule).Missing);
            var finding = Judge(silent, rule);
            if (finding.Outcome == Outcome.NotApplicable)
            {
                continue; // Another condition, such as slow traffic, rules it out already.
            }

            asked++;
            Assert.Contains(new InputReference("site", key), finding.Missing);
            Assert.Contains(finding.Notes, note => note.Id == FindingNotes.SayWhether);
            Assert.Equal(
                rule.Definition.Severity == Severity.A ? (Outcome.NotAssessed, Status.Fail) : (Outcome.Open, Status.None), (finding.Outcome, finding.Status));
        }

        // A condition that only feeds others, such as a long shift, is asked for where none of them holds.
        Assert.True(asked > 0 || AskedWhereNothingHolds(bare, property, key), $"Nothing asks for {key}.");
    }

    private static bool AskedWhereNothingHolds(Plan bare, System.Reflection.PropertyInfo property, string key)
    {
        var conditions = new SiteConditions();
        foreach (var one in typeof(SiteConditions).GetProperties().Where(one => one.PropertyType == typeof(bool?)))
        {
            one.SetValue(conditions, false);
        }

        conditions = conditions with { Neighbours = true }; // The hours matter only to somebody who sleeps.
        var conditionsBut = conditions with { };
        property.SetValue(conditionsBut, null);
        var silent = bare with { Site = bare.Site! with { Conditions = conditionsBut } };
        return Book.On(ElementKind.Site).Any(rule => rule.Definition.Severity is not null && Judge(silent, rule).Missing.Contains(new InputReference("site", key)));
    }

    [Theory]
    [MemberData(nameof(PresenceIds))]
    public void The_right_kind_with_empty_content_does_not_pass(string id)
    {
        var rule = Presence.Single(one => one.Definition.Id == id);
        var kinds = rule.Bounds.SelectMany(bound => ((CheckedPresence)bound.Limit).Entries).SelectMany(line => line.AnyOf).Distinct(StringComparer.Ordinal).Select(word => Words.Find<MeasureKind>(word)!.Value).ToList();
        var blank = kinds.Select((kind, index) => new SafetyMeasure { Id = $"m{index}", Kind = kind, What = " ", Where = string.Empty, Who = null }).ToList();
        var stated = kinds.Select((kind, index) => new SafetyMeasure { Id = $"m{index}", Kind = kind, What = "wie besprochen", Where = "am Fertiger", Who = "Polier", When = "immer", Checked = "täglich", Reference = "Plan 3" }).ToList();

        var empty = Judged(Plan() with { Measures = blank }, rule);
        Assert.Equal(Outcome.Missed, empty.Outcome);
        Assert.NotEmpty(empty.Missing);
        Assert.NotEqual(Status.Pass, empty.Status);
        Assert.Equal((Outcome.Met, Status.Pass), (Judged(Plan() with { Measures = stated }, rule).Outcome, Judged(Plan() with { Measures = stated }, rule).Status));
    }

    [Theory]
    [MemberData(nameof(PresenceIds))]
    public void A_finding_names_hazard_what_is_missing_where_who_answers_and_source(string id)
    {
        var rule = Presence.Single(one => one.Definition.Id == id);
        var finding = Judged(Plan() with { Measures = [] }, rule);
        Assert.NotEmpty(finding.Title);
        Assert.Contains(finding.Notes, note => note.Id == NoteIds.EntryMissing && note.Arguments.Any(argument => argument.Name == "fields" && argument.Text!.Contains("who", StringComparison.Ordinal)));
        Assert.Equal("site", finding.Address);
        Assert.Contains(new InputReference("plan", "measures"), finding.Missing);
        Assert.NotNull(finding.Limit!.Publication);
        Assert.StartsWith("Local law and the competent person come first.", finding.Local, StringComparison.Ordinal);
        if (rule.Definition.Severity == Severity.A)
        {
            Assert.Equal((Strength.Required, Status.Fail), (finding.Limit.Strength, finding.Status));
        }
        else
        {
            Assert.Equal((Strength.Advised, Status.Warn), (finding.Limit.Strength, finding.Status));
        }
    }

    [Fact]
    public void Every_row_of_the_register_has_its_rule()
    {
        // 63 rows, 5 extras of presence, 4 readings by place, one by heat index.
        Assert.Equal(73, Presence.Count);
        Assert.True(Presence.Count(rule => rule.Definition.Severity == Severity.A) >= 40);
    }

    [Fact]
    public void No_departure_covers_a_rule_of_severity_a()
    {
        Assert.All(Book.All.Where(one => one.Rule.Definition.Severity == Severity.A), one => Assert.True(one.Rule.Definition.LifeCritical, one.Rule.Definition.Id));
        Assert.True(Book.All.Count(one => one.Rule.Definition.LifeCritical) >= 50);
    }

    [Fact]
    public void A_file_of_departures_that_names_a_rule_of_severity_a_is_refused_for_each_of_them()
    {
        var severe = Book.All.Select(one => one.Rule.Definition).Where(rule => rule.Severity == Severity.A).ToList();
        Assert.NotEmpty(severe);
        Assert.All(severe, rule =>
        {
            var refused = DepartureFiles.Load(["own.yaml"], Book, new OneFile(Departure(rule.Id)));
            Assert.Empty(refused.Departures);
            Assert.Contains("severity A", Assert.Single(refused.Problems).Message, StringComparison.Ordinal);
        });

        // The same file is sound for a rule that guards no life, so the rule alone is what is refused.
        Assert.Empty(DepartureFiles.Load(["own.yaml"], Book, new OneFile(Departure("SAF-016"))).Problems);
    }

    [Fact]
    public void Without_anything_to_hurt_a_small_patch_meets_few_findings()
    {
        var plan = Bare(Plan());
        var conditions = new SiteConditions();
        foreach (var property in typeof(SiteConditions).GetProperties().Where(property => property.CanWrite))
        {
            property.SetValue(conditions, false);
        }

        var patch = plan with { Measures = [], Site = new Site { Traffic = TrafficAlongside.None, Conditions = conditions } };
        var findings = Presence.Select(rule => Judge(patch, rule)).ToList();
        Assert.True(findings.Count(finding => finding.Outcome == Outcome.NotApplicable) >= 45, $"{findings.Count(finding => finding.Outcome == Outcome.NotApplicable)}");
        Assert.True(findings.Count(finding => finding.Outcome == Outcome.Missed) <= 18, $"{findings.Count(finding => finding.Outcome == Outcome.Missed)}");
    }

    private static Finding Judged(Plan plan, CheckedRule rule)
    {
        var context = new QuantityContext(plan with { Location = plan.Location! with { Jurisdiction = rule.Jurisdictions.Count > 0 ? rule.Jurisdictions[0] : "none" } }, LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), 1);
        foreach (var condition in rule.When)
        {
            QuantityValue value = condition.Quantity.Kind switch
            {
                ValueKind.Flag => new FlagValue(condition.Words![0] == "yes"),
                ValueKind.Category => new CategoryValue(condition.Words![0]),
                _ => new NumberValue(condition.AtLeast!.Si),
            };
            context.Give(condition.Quantity.Name, Words.Of(condition.Quantity.Element), new Answer { Value = value });
        }

        return Find(context, rule);
    }

    private static Finding Judge(Plan plan, CheckedRule rule) => Find(new QuantityContext(plan, LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), 1), rule);

    private static Finding Find(QuantityContext context, CheckedRule rule) => Evaluator.Evaluate(
        Book, context, new EvaluationSettings { File = "t", CheckedOn = Repository.CheckDate, OnlyRule = rule.Definition.Id }).Findings.Single(finding => finding.Address == "site");

    // Without machines, courses, place, times, weather, lines and a closure no condition follows from them.
    private static Plan Bare(Plan plan) => plan with
    {
        Pavers = [],
        Rolling = null,
        Supply = null,
        BondCoats = [],
        Courses = [plan.Courses[0]],
        Runs = [],
        Weather = null,
        Existing = plan.Existing! with { Milling = null },
        Location = plan.Location! with { Latitude = null },
        Shift = plan.Shift! with { Start = null },
        Site = plan.Site! with { Closure = null, OverheadLines = [], Lights = [] },
    };

    // All conditions hold; of two that stand for one another only the one in question is left to speak.
    private static SiteConditions All(SiteConditions conditions)
    {
        var all = conditions with { };
        foreach (var property in typeof(SiteConditions).GetProperties().Where(property => property.PropertyType == typeof(bool?)))
        {
            property.SetValue(all, true);
        }

        return all;
    }

    private static Plan Plan() => PlanMapper.Map(YamlReader.Read(Repository.Bytes("rules/bases/single.yaml")).Documents[0]).Plan!;

    // Fast traffic beside the works, so that no rule is ruled out by a low speed.
    private static Plan Fast()
    {
        var text = System.Text.Encoding.UTF8.GetString(Repository.Bytes("rules/bases/single.yaml"));
        var fast = System.Text.RegularExpressions.Regex.Replace(text, "traffic_speed: [0-9]+ km/h", "traffic_speed: 80 km/h", System.Text.RegularExpressions.RegexOptions.None, Patience.Longest);
        Assert.False(string.Equals(text, fast, StringComparison.Ordinal));
        return PlanMapper.Map(YamlReader.Read(System.Text.Encoding.UTF8.GetBytes(fast)).Documents[0]).Plan!;
    }

    private static string Underscored(string name) =>
        string.Concat(name.Select((letter, index) => index > 0 && char.IsUpper(letter) ? $"_{char.ToLowerInvariant(letter)}" : char.ToLowerInvariant(letter).ToString()));

    private static string Departure(string rule) => $"""
        departures:
          - id: dep-001
            rule: {rule}
            address: site
            reason: No time.
            compensating_measure: More care.
            asked_by: A
            approved_by: B
            approved_on: 2026-11-02
            expires_on: 2027-06-30

        """;

    private sealed class OneFile(string text) : IRuleFiles
    {
        public IRuleFolder? Folder(string path) => null;

        public byte[]? File(string path) => System.Text.Encoding.UTF8.GetBytes(text);
    }
}
