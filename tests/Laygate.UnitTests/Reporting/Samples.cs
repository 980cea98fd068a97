using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Reporting;

/// <summary>Hand-made results. All publications, places and figures are invented; they only show forms.</summary>
internal static class Samples
{
    public static readonly Source Manual = new("paving-manual", "Manual of Layers", "Institute of Example", "3rd edition", "2031", null, null, null);
    public static readonly Source Quoted = new("old-notice", "Notice 12", "Example Roads", null, "2029", null, "Lecture Book 4", null);

    public static SourceReference Reference(Evidence evidence, string clause = "table 3") =>
        new() { Source = "paving-manual", Clause = clause, Evidence = evidence };

    public static ShownLimit AtLeast(double low, string unit = "", Evidence evidence = Evidence.Read, Strength strength = Strength.Required, Basis basis = Basis.Requirement) =>
        new(strength, basis, new ShownValue(low, unit), null, false, false, null, null, null, Reference(evidence), Manual, Layer.GeneralPractice, null);

    public static ShownLimit AtMost(double high, string unit = "", Evidence evidence = Evidence.Read) =>
        new(Strength.Required, Basis.Requirement, null, new ShownValue(high, unit), false, false, null, null, null, Reference(evidence), Manual, Layer.GeneralPractice, null);

    public static ShownLimit Presence(Strength strength = Strength.Required) =>
        new(strength, Basis.Requirement, null, null, false, false, null, null, null, Reference(Evidence.Read, "clause 8.2"), Manual, Layer.GeneralPractice, null);

    public static Finding Finding(string rule = "LAY-001", string name = "layers/course-too-thin") => new()
    {
        Rule = rule,
        RuleName = name,
        Title = "Course too thin for its aggregate",
        Why = "Large stones drag under the screed: the mat tears, and no roller closes it again.",
        Remedy = "Lay the course thicker, or choose a mix with a smaller aggregate size.",
        Local = "The specification names the thickness of each mix; ask the pavement engineer.",
        Asks = rule switch
        {
            "LAY-001" => "the course is thick enough for the size of its stones",
            "LAY-004" => "the lower course of the pair has a thickness that is known to work",
            _ => null,
        },
        Check = CheckKind.AtLeast,
        Address = "course:wearing",
        Outcome = Outcome.Missed,
        Status = Status.Fail,
        Quantity = "course.thickness_to_size",
        QuantityMeaning = "Nominal thickness of the course divided by its aggregate size.",
        Value = new ShownValue(25.0 / 11, string.Empty),
        Origin = Origin.Computed,
        Limit = AtLeast(3),
        Position = new Position(41, 16, 41, 21),
    };

    public static Report Report() => new()
    {
        File = "jobs/harbour-road.yaml",
        PlanId = "harbour-road",
        PlanTitle = "Harbour road, thin overlay at night",
        Revision = "C",
        PlanHash = new string('a', 64),
        Jurisdiction = "US-WA",
        Stage = Stage.Submission,
        JudgedFor = new DateOnly(2031, 10, 9),
        JudgedForShift = true,
        ProgramVersion = "0.0.0",
        Layers =
        [
            new BookLayer("general", "General practice", "0.1.0", null, Layer.GeneralPractice, "none"),
            new BookLayer("example-roads", "Example Roads Specification", "2031", "being superseded", Layer.StandardSpecification, "XX"),
        ],
        BookHash = new string('b', 64),
        Findings = Findings(),
        Counts = Count(Findings()),
        Assumptions =
        [
            new AssumptionUse("mix.density", "mix:ac11", 2.4, "t/m3", Evidence.Judgement, "mid of the catalogue range", new InputReference("mix:ac11", "density.compacted")),
            new AssumptionUse("asphalt.emissivity", "mix:ac11", 0.93, string.Empty, Evidence.SecondHand, "Lecture Book 4", null),
            new AssumptionUse("asphalt.conductivity", "mix:ac11", 1.4, "W/(m·K)", Evidence.SecondHand, "Lecture Book 4", null),
        ],
        Notes = [Note.Of("jurisdiction-differs", ("plan", "US-WA"), ("book", "XX"), ("specification", "Example Roads Specification"))],
    };

    public static FileResult Result() => new("jobs/harbour-road.yaml", [Report()], []);

    public static Counts Count(IReadOnlyList<Finding> findings) => new(
        findings.Count(f => f.Status == Status.Fail),
        findings.Count(f => f is { Status: Status.Warn, Outcome: Outcome.Met or Outcome.Missed }),
        findings.Count(f => f.Status == Status.Pass),
        findings.Count(f => f is { Status: Status.Warn, Outcome: Outcome.NotAssessed }),
        findings.Count(f => f.Outcome == Outcome.NeedsPerson),
        findings.Count(f => f.Outcome == Outcome.Open),
        findings.Count(f => f.Outcome == Outcome.NotApplicable),
        findings.Count(f => f.Status == Status.Departed));

    private static List<Finding> Findings() =>
    [
        Finding(),
        Finding() with { Address = "course:patch", Value = new ShownValue(30.0 / 11, string.Empty), Position = new Position(48, 16, 48, 21) },
        Window(),
        Temperature(),
        Supply(),
        Silent(),
        Person(),
        Open(),
        Stated(),
        Stated() with { Rule = "SAF-002", RuleName = "safety/burns-not-planned", Title = "No plan for burns" },
        Finding("LAY-004", "layers/course-too-thick") with { Title = "Course too thick to compact", Check = CheckKind.AtMost, Outcome = Outcome.Met, Status = Status.Pass, Quantity = "course.thickness", Value = new ShownValue(25, "mm"), Origin = Origin.Stated, Limit = AtMost(60, "mm") },
        Finding("BND-003", "bond-and-joints/bond-coat-between-pair") with { Title = "Bond coat between two hot courses", Outcome = Outcome.NotApplicable, Status = Status.None, Value = null, Limit = null },
    ];

    private static Finding Window() => Finding("ROL-002", "rolling/window-too-short") with
    {
        Title = "Rolling ends after the mat is too cold",
        Why = "Below its cessation temperature the mat no longer closes, however often it is rolled.",
        Remedy = "Bring the rollers closer, add one, or lay when it is warmer and calmer.",
        Local = "Ask the compaction engineer for a trial.",
        Quantity = "course.densification_window",
        Value = new ShownValue(11.83, "min", 9.1, 15.6),
        Limit = new ShownLimit(Strength.Required, Basis.PhysicalNecessity, new ShownValue(14.2, "min"), null, false, false, null, "course.last_densifying_pass", 1, Reference(Evidence.Derived, "own derivation"), Manual, Layer.GeneralPractice, null),
        FavourableEndMeets = true,
    };

    private static Finding Temperature() => Finding("WEA-001", "weather/surface-too-cold") with
    {
        Title = "Too cold to lay this thickness",
        Status = Status.Warn,
        Why = "A thin mat gives its heat to a cold base within minutes.",
        Remedy = "Wait for a warmer shift, or lay thicker.",
        Local = "Specifications differ: some limit the air, some the surface.",
        Quantity = "course.base_lowest",
        Value = new ShownValue(48, "F", Place: Place.Skin),
        Origin = Origin.Stated,
        Limit = new ShownLimit(Strength.Required, Basis.Requirement, new ShownValue(55.4, "F", Place: Place.Skin), null, false, false, "13 °C", null, null, Reference(Evidence.Recalled, "table 7-2"), Manual, Layer.StandardSpecification, "example-roads"),
        Position = new Position(19, 5, 19, 20),
    };

    private static Finding Supply() => Finding("SUP-001", "supply/below-demand") with
    {
        Title = "The plant cannot feed the paver",
        Why = "The paver stops, the mat cools under the screed and a bump stays.",
        Remedy = "Pave slower, or order more from the plant.",
        Local = string.Empty,
        Address = "course:wearing",
        Status = Status.Warn,
        Outcome = Outcome.Met,
        Quantity = "course.supply",
        Value = new ShownValue(180.4, "t/h", 171, 188),
        Limit = new ShownLimit(Strength.Required, Basis.PhysicalNecessity, new ShownValue(180.1, "t/h"), null, false, false, null, "course.demand", 1.05, Reference(Evidence.Derived, "own derivation"), null, Layer.ParticularSpecification, "port-contract"),
        OnExpectedValuesOnly = true,
        Position = null,
    };

    private static Finding Silent() => Finding("FRI-904", "friction-and-opening/opening-not-stated") with
    {
        Title = "No temperature for opening to traffic",
        Why = "Wheels rut a mat that is still soft.",
        Remedy = "State at which temperature, measured where, traffic may use the surface.",
        Local = "The authority's specification names the temperature.",
        Check = CheckKind.AtMost,
        Address = "opening",
        Outcome = Outcome.NotAssessed,
        Status = Status.Warn,
        Quantity = "opening.temperature",
        Value = null,
        Limit = null,
        Missing = [new InputReference("opening", "below.value"), new InputReference("opening", "below.place")],
        Position = new Position(120, 1, 120, 8),
    };

    private static Finding Person() => Finding("LAY-001", "layers/course-too-thin") with
    {
        Address = "course:binder",
        Outcome = Outcome.NeedsPerson,
        Status = Status.Warn,
        Value = null,
        Limit = null,
        Notes = [Note.Of("size-basis-maximum", ("sieve", "11"))],
    };

    private static Finding Open() => Finding("ROL-009", "rolling/no-spare-roller") with
    {
        Title = "No spare roller",
        Outcome = Outcome.Open,
        Status = Status.None,
        Check = CheckKind.Present,
        Value = null,
        Limit = null,
        Missing = [new InputReference("plan", "rolling.rollers")],
    };

    private static Finding Stated() => Finding("SAF-001", "safety/reversing-not-guarded") with
    {
        Title = "Trucks reverse without a guard",
        Severity = Laygate.Rules.Definitions.Severity.A,
        Address = "site",
        Check = CheckKind.Present,
        Outcome = Outcome.Met,
        Status = Status.Pass,
        Quantity = "site.measures",
        Value = new ShownValue(null, string.Empty, Text: "stated"),
        Origin = Origin.Stated,
        Limit = Presence(),
    };
}
