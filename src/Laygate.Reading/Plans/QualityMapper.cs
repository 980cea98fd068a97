using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Reading.Plans;

/// <summary>Maps tests, hold points, contingencies and measures.</summary>
internal static class QualityMapper
{
    public static Test Test(Fields at) => new()
    {
        Id = at.RequiredId("id"),
        Kind = at.Word<TestKind>("kind"),
        Course = at.Id("course"),
        Where = at.Text("where"),
        When = at.Text("when"),
        By = at.Text("by"),
        HowMany = at.Text("how_many"),
        Criterion = at.Text("criterion"),
        Cores = at.Block("cores", Cores),
        Done = at.Date("done"),
        SameMixAndMachines = at.Flag("same_mix_and_machines"),
        Reached = at.Block("reached", Reached),
    };

    private static TrialResult Reached(Fields at) => new()
    {
        Mix = at.Id("mix"),
        Thickness = at.Measure<Length>("thickness"),
        LayingTemperature = at.Measure<Temperature>("laying_temperature"),
        DensityBehindScreed = at.Measure<Ratio>("density_behind_screed"),
        Passes = at.List("passes", inside => new TrialPasses(inside.RequiredId("phase"), inside.Count("passes"))),
        Rollers = at.Ids("rollers"),
        Density = at.Measure<Ratio>("density"),
    };

    public static HoldPoint HoldPoint(Fields at) => new()
    {
        Id = at.RequiredId("id"),
        Step = at.Word<HoldStep>("step"),
        Before = at.Text("before"),
        Criterion = at.Text("criterion"),
        Evidence = at.Text("evidence"),
        Owner = at.Text("owner"),
        ReleasedBy = at.Text("released_by"),
    };

    public static Contingency Contingency(Fields at) => new()
    {
        Id = at.RequiredId("id"),
        Event = at.Word<ContingencyEvent>("event"),
        When = at.Text("when"),
        Action = at.Text("action"),
        DecidedBy = at.Text("decided_by"),
        GoesOnWith = at.Id("goes_on_with"),
        Spare = at.Text("spare"),
    };

    private static Cores Cores(Fields at) => new(
        Count: at.Count("count"),
        MatCold: at.Flag("mat_cold"),
        CutAtInterface: at.Flag("cut_at_interface"),
        DensityMethod: at.Text("density_method"));

    public static SafetyMeasure SafetyMeasure(Fields at) => new()
    {
        Id = at.RequiredId("id"),
        Kind = at.Word<MeasureKind>("kind"),
        What = at.Text("what"),
        Where = at.Text("where"),
        Who = at.Text("who"),
        When = at.Text("when"),
        Checked = at.Text("checked"),
        Reference = at.Text("reference"),
    };
}
