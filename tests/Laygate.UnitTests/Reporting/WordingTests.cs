using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reporting.Language;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Reporting;

public class WordingTests
{
    [Fact]
    public void At_least_sets_value_against_limit() =>
        Assert.Equal("Thickness to size: 2.27, but at least 3 is required.", Wording.Sentence(Samples.Finding()));

    [Fact]
    public void The_message_begins_with_the_title() =>
        Assert.Equal(
            "Course too thin for its aggregate: Thickness to size: 2.27, but at least 3 is required.",
            Wording.Message(Samples.Finding()));

    [Fact]
    public void At_most_says_at_most() => Assert.Equal(
        "Thickness to size: 5.1, but at most 5 is required.",
        Wording.Sentence(Samples.Finding() with { Check = CheckKind.AtMost, Value = new ShownValue(5.1, ""), Limit = Samples.AtMost(5) }));

    [Theory]
    [InlineData("weather.wind_highest_at_mat", "highest wind at mat")]
    [InlineData("course.thickness_lowest_to_size", "lowest thickness to size")]
    [InlineData("site.night", "night")]
    public void A_quantity_reads_like_words(string quantity, string words) => Assert.Equal(words, Names.OfQuantity(quantity));

    [Fact]
    public void Between_names_both_ends_and_the_place()
    {
        var limit = Samples.AtLeast(140, "°C") with
        {
            Low = new ShownValue(140, "°C", Place: Place.InLoad),
            High = new ShownValue(190, "°C", Place: Place.InLoad),
            Strength = Strength.Advised,
            Basis = Basis.Recommendation,
        };
        var finding = Samples.Finding() with
        {
            Check = CheckKind.Between,
            Quantity = "mix.delivery_lowest",
            Value = new ShownValue(131.4, "°C", Place: Place.InLoad),
            Limit = limit,
        };
        Assert.Equal(
            "Lowest delivery: 131 °C in the load, but between 140 °C and 190 °C in the load is recommended.", Wording.Sentence(finding));
    }

    [Fact]
    public void A_limit_that_is_a_quantity_names_it_with_its_factor()
    {
        var limit = Samples.AtLeast(180, "t/h") with { Quantity = "course.demand", Factor = 1.05, Basis = Basis.PhysicalNecessity };
        Assert.Equal(
            "Supply: 160 t/h, but at least 180 t/h (1.05 × demand) is needed.",
            Wording.Sentence(Samples.Finding() with { Quantity = "course.supply", Value = new ShownValue(160, "t/h"), Limit = limit }));
    }

    [Fact]
    public void A_limit_in_another_unit_shows_what_its_source_states()
    {
        var limit = Samples.AtLeast(79.4444, "°C") with { Stated = "175 °F" };
        Assert.Equal(
            "Thickness to size: 70 °C, but at least 79 °C (175 °F in the source) is required.",
            Wording.Sentence(Samples.Finding() with { Value = new ShownValue(70.2, "°C"), Limit = limit }));
    }

    [Fact]
    public void Words_are_set_against_words()
    {
        var limit = Samples.AtLeast(0) with { Low = new ShownValue(null, "", Text: "dry, damp") };
        Assert.Equal(
            "Condition: wet, where dry or damp is required.",
            Wording.Sentence(Samples.Finding() with { Check = CheckKind.Agrees, Quantity = "existing.condition", Value = new ShownValue(null, "", Text: "wet"), Limit = limit }));
    }

    [Fact]
    public void A_flag_that_agrees_says_so() => Assert.Equal(
        "Broken: yes, as is required.",
        Wording.Sentence(Samples.Finding() with { Check = CheckKind.Agrees, Outcome = Outcome.Met, Quantity = "bond-coat.broken", Value = new ShownValue(null, "", Text: "yes"), Limit = Samples.AtLeast(0) with { Low = new ShownValue(null, "", Text: "yes") } }));

    [Fact]
    public void Moments_are_set_against_moments()
    {
        var limit = Samples.AtLeast(0) with { Low = new ShownValue(null, "", Text: "2031-05-15T05:10+02:00"), Quantity = "opening.ready", Factor = null, Basis = Basis.PhysicalNecessity };
        Assert.Equal(
            "At: 2031-05-15 05:00 (+02:00), but not before 2031-05-15 05:10 (+02:00) (ready) is needed.",
            Wording.Sentence(Samples.Finding() with { Check = CheckKind.NotBefore, Quantity = "opening.at", Value = new ShownValue(null, "", Text: "2031-05-15T05:00+02:00"), Limit = limit }));
    }

    [Theory]
    [InlineData(Outcome.Met, Status.Pass, "stated", "Stated (not judged adequate).")]
    [InlineData(Outcome.Missed, Status.Fail, "absent", "Not stated, but required.")]
    [InlineData(Outcome.Missed, Status.Warn, "thin", "Stated only in part; the whole statement is required.")]
    public void A_measure_is_never_judged_adequate(Outcome outcome, Status status, string text, string sentence) =>
        Assert.Equal(sentence, Wording.Sentence(Samples.Finding() with
        {
            Check = CheckKind.Present,
            Outcome = outcome,
            Status = status,
            Value = new ShownValue(null, "", Text: text),
            Limit = Samples.Presence(),
        }));

    [Fact]
    public void Silence_that_fails_says_that_the_plan_must_speak() => Assert.Equal(
        "Missing. At this stage it must be stated.",
        Wording.Sentence(Samples.Finding() with { Outcome = Outcome.NotAssessed, Missing = [new InputReference("site", "conditions.night")] }));

    [Fact]
    public void What_was_met_by_the_expected_value_only_says_so() => Assert.EndsWith(
        "Just meets it; in the worse case it does not.",
        Wording.Sentence(Samples.Finding() with { Outcome = Outcome.Met, Status = Status.Warn, Value = new ShownValue(3.2, "", 2.8, 3.6), OnExpectedValuesOnly = true }),
        StringComparison.Ordinal);

    [Theory]
    [InlineData("opening", "below.value", "opening.below.value")]
    [InlineData("early-friction", "grit", "early_friction.grit")]
    [InlineData("course:wearing", "thickness", "course:wearing/thickness")]
    [InlineData("plan", "rolling.phases", "rolling.phases")]
    [InlineData("plan", "people", "plan.people")]
    [InlineData("weather", "", "weather")]
    public void A_missing_input_reads_like_a_key_of_the_plan(string address, string key, string text) =>
        Assert.Equal(text, Names.Of(new InputReference(address, key)));

    [Theory]
    [InlineData(Evidence.Recalled, Layer.StandardSpecification, "recalled from memory: can only warn")]
    [InlineData(Evidence.Recalled, Layer.ParticularSpecification, "recalled from memory")]
    [InlineData(Evidence.CommonPractice, Layer.GeneralPractice, "common practice, no published source: can only warn")]
    [InlineData(Evidence.SecondHand, Layer.GeneralPractice, "second-hand, quoted in Lecture Book 4")]
    [InlineData(Evidence.Read, Layer.GeneralPractice, "read in the publication")]
    public void A_limit_says_how_it_is_known(Evidence evidence, Layer layer, string words) =>
        Assert.Equal(words, SourceWords.HowKnown(Samples.AtLeast(3, evidence: evidence) with { Layer = layer, Publication = Samples.Quoted }));

    [Fact]
    public void A_confirmed_limit_names_who_when_and_where()
    {
        var source = Samples.Reference(Evidence.Recalled) with { Confirmation = new Confirmation("R. Doe", new DateOnly(2031, 2, 3), "2nd edition", "14") };
        Assert.Equal("confirmed by R. Doe on 2031-02-03, 2nd edition, page 14", SourceWords.HowKnown(Samples.AtLeast(3) with { Source = source }));
    }

    [Fact]
    public void A_source_line_names_publication_clause_evidence_and_who_set_it()
    {
        var source = Samples.Reference(Evidence.Read) with { ValidTo = new DateOnly(2031, 12, 31), Remark = "Gap between rows: the stricter row." };
        Assert.Equal(
            "Institute of Example, Manual of Layers, 3rd edition, table 3 (read in the publication). Set by port-contract (particular specification). In force until 2031-12-31. Gap between rows: the stricter row.",
            SourceWords.Line(Samples.AtLeast(3) with { Source = source, Layer = Layer.ParticularSpecification, SetBy = "port-contract" }));
    }

    [Theory]
    [InlineData(Outcome.Missed, Status.Fail, FindingGroup.Failed)]
    [InlineData(Outcome.NotAssessed, Status.Fail, FindingGroup.Failed)]
    [InlineData(Outcome.Missed, Status.Warn, FindingGroup.Warned)]
    [InlineData(Outcome.Met, Status.Warn, FindingGroup.Warned)]
    [InlineData(Outcome.NotAssessed, Status.Warn, FindingGroup.NotAssessed)]
    [InlineData(Outcome.NeedsPerson, Status.Warn, FindingGroup.NeedsPerson)]
    [InlineData(Outcome.Open, Status.None, FindingGroup.Open)]
    [InlineData(Outcome.NotApplicable, Status.None, FindingGroup.NotApplicable)]
    [InlineData(Outcome.Missed, Status.Departed, FindingGroup.Departed)]
    [InlineData(Outcome.Met, Status.Pass, FindingGroup.Passed)]
    public void Each_finding_stands_in_one_part(Outcome outcome, Status status, FindingGroup group) =>
        Assert.Equal(group, FindingGroups.Of(Samples.Finding() with { Outcome = outcome, Status = status }));
}
