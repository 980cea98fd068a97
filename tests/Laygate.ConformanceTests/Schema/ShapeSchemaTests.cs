using Laygate.Exchange;

namespace Laygate.ConformanceTests.Schema;

/// <summary>The schemas of what is written as JSON are made from the records that are written; LAYGATE_APPROVE=1 writes them anew.</summary>
public sealed class ShapeSchemaTests
{
    private static readonly ShapeSchema Report = new();
    private static readonly string ReportText = Report.Of("Laygate report, version 2", Shapes.Default.RunShape);

    [Fact]
    public void The_schema_of_a_report_is_that_of_its_records() => Approved.File_holds("schemas/report.schema.json", ReportText);

    [Fact]
    public void The_schema_of_a_comparison_refers_to_that_of_a_report() => Approved.File_holds(
        "schemas/comparison.schema.json",
        new ShapeSchema("report.schema.json", Report.Definitions).Of("Laygate comparison, version 1", Shapes.Default.ComparisonShape));

    [Fact]
    public void The_schema_of_a_sizing_refers_to_that_of_a_report() => Approved.File_holds(
        "schemas/sizing.schema.json",
        new ShapeSchema("report.schema.json", Report.Definitions).Of("Laygate sizing, version 1", Shapes.Default.SizingShape));

    [Fact]
    public void The_schema_of_a_ledger_is_that_of_its_records() =>
        Approved.File_holds("schemas/ledger.schema.json", new ShapeSchema().Of("Laygate ledger, version 1", Shapes.Default.LedgerShape));

    [Fact]
    public void The_schema_of_the_rest_of_a_shift_is_that_of_its_records() =>
        Approved.File_holds("schemas/onward.schema.json", new ShapeSchema().Of("Laygate rest of a shift, version 1", Shapes.Default.OnwardShape));

    [Fact]
    public void The_schema_of_what_was_held_refers_to_that_of_a_report() => Approved.File_holds(
        "schemas/held.schema.json",
        new ShapeSchema("report.schema.json", Report.Definitions).Of("Laygate limits held in a shift, version 1", Shapes.Default.HeldShape));

    [Fact]
    public void The_schemas_of_trials_measured_temperatures_and_warnings_are_those_of_their_records()
    {
        Approved.File_holds("schemas/trial.schema.json", new ShapeSchema().Of("Laygate trial length, version 1", Shapes.Default.TrialShape));
        Approved.File_holds("schemas/measured.schema.json", new ShapeSchema().Of("Laygate measured temperatures, version 1", Shapes.Default.MeasuredShape));
        Approved.File_holds("schemas/feedback.schema.json", new ShapeSchema().Of("Laygate warnings that came true, version 1", Shapes.Default.FeedbackShape));
    }

    [Fact]
    public void The_schema_of_rules_is_that_of_a_list_or_of_one() => Approved.File_holds(
        "schemas/rules.schema.json",
        new ShapeSchema().OfEither(
            "Laygate rules, version 1",
            "What `laygate rules --format json` (a list) and `laygate explain RULE --format json` (one rule) write. Keys may be added; none is renamed or removed.",
            Shapes.Default.RuleListShape,
            Shapes.Default.RuleShape));
}
