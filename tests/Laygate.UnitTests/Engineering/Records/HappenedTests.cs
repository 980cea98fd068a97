using System.Text;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Records.Happened;
using Laygate.Model.Plans;
using Laygate.Model.Records;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;

namespace Laygate.UnitTests.Engineering.Records;

/// <summary>What a record says of quantities of the catalogue. Rows are invented; what they come to is by hand: the screed passes x m at 21:15 + x / 4 min.</summary>
public sealed class HappenedTests
{
    private const string PlanText = """
        format: 1
        plan: { id: small, stage: release }
        shift: { date: 2027-05-14, start: "21:15", end: "05:00", zone: +02:00 }
        mixes: [{ id: m, density: { compacted: 2.40 t/m3, reference: laboratory, degree: 98 % } }]
        courses: [{ id: c, mix: m, thickness: 40 mm, laid: separately }]
        runs: [{ id: r, courses: [c], paver: p, from: 0 m, to: 1000 m, width: 7.5 m }]
        pavers: [{ id: p, courses: [c], speed: 4 m/min, stop_limit: 20 min }]
        supply: { trucks: [{ id: t, mix: m, payload: 25 t, haul_out: 30 min }] }
        rolling: { phases: [{ id: initial, kind: initial, passes: 2 }, { id: main, kind: main, passes: 4 }, { id: finish, kind: finish, passes: 2 }], rollers: [{ id: r1, phase: initial }, { id: r2, phase: main }, { id: r3, phase: finish }] }
        bond_coats: [{ id: b, below: c, applied: yes, binder: emulsion, rate: 300 g/m2, basis: sprayed, residue: 60 % }]
        hold_points: [{ id: open, step: before-opening }]
        tests: [{ id: trial, kind: trial-length, course: c, reached: { passes: [{ phase: initial, passes: 2 }, { phase: main, passes: 4 }], laying_temperature: 153 °C } }]
        """;

    private static readonly DateTimeOffset Start = new(2027, 5, 14, 21, 15, 0, TimeSpan.FromHours(2));

    private static readonly StationReading[] Stations = [new(Row(1), Start, 0), new(Row(2), Start.AddMinutes(125), 500), new(Row(3), Start.AddMinutes(250), 1000)];

    // By hand: 100 m is passed at 21:40; passes at 21:43, 21:45, 21:50 and 22:10 by the rollers of the phases initial, initial, main and finish.
    [Fact]
    public void Times_of_passes_begin_when_the_screed_passed_the_place()
    {
        var record = new ShiftRecord { Stations = Stations, Passes = [Pass(28, "r1"), Pass(30, "r1"), Pass(35, "r2"), Pass(55, "r3")] };
        Assert.Equal([3], Minutes("course.first_pass", ElementKind.Course, record));
        Assert.Equal([10], Minutes("course.last_densifying_pass", ElementKind.Course, record));
        Assert.Equal([10], Minutes("phase.last_pass_from", ElementKind.Phase, record, "main"));
        // By hand: 2 of 2 initial and 1 of 4 main passes of the trial: least difference −3.
        Assert.Equal([-3], Values("course.passes_over_trial", ElementKind.Course, record));
    }

    // By hand: rate 720 kg / (300 m · 8 m) = 0.300 kg/m² as sprayed, 0.180 kg/m² of binder at 60 %.
    [Fact]
    public void A_bond_coat_goes_by_basis_and_residue_of_the_plan()
    {
        var record = new ShiftRecord { BondCoats = [new BondCoatReading(Row(2), 0, 300, 8) { Mass = 720, Below = "c" }] };
        Assert.Equal(0.300, Assert.Single(Values("bond-coat.sprayed_rate", ElementKind.BondCoat, record)), 1e-9);
        Assert.Equal(0.180, Assert.Single(Values("bond-coat.residual_rate", ElementKind.BondCoat, record)), 1e-9);
    }

    // By hand: the emulsion at 60 °C is 1 − 0.00045 · 45 = 0.97975 of its volume at 15 °C (0.00025 for each °F, recalled): 800 L on 2400 m² are 0.326583 L/m², and at the assumed 1000 kg/m³ as many kg/m²; 60 % stays.
    [Fact]
    public void A_tank_tells_what_was_sprayed_brought_to_15_degrees()
    {
        var record = new ShiftRecord { BondCoats = [new BondCoatReading(Row(2), 0, 300, 8) { Taken = new TankVolume(2.0, 60, 1.2, 60), Below = "c" }] };
        Assert.Equal(0.326583e-3, Assert.Single(Values("bond-coat.sprayed_volume", ElementKind.BondCoat, record)), 1e-8);
        Assert.Equal(0.326583, Assert.Single(Values("bond-coat.sprayed_rate", ElementKind.BondCoat, record)), 1e-5);
        Assert.Equal(0.195950, Assert.Single(Values("bond-coat.residual_rate", ElementKind.BondCoat, record)), 1e-5);
    }

    // By hand: √(0.015² + 0.005² + 0.001²) = 0.015843 for a volume; for a mass with the density, evenly from 980 to 1030 about 1000 kg/m³: 0.014434, together 0.021432.
    [Fact]
    public void The_density_counts_where_a_volume_stands_for_a_mass()
    {
        var record = new ShiftRecord
        {
            Uncertainty = new RecordUncertainty(null, null, 0.005, 0.001) { Volume = 0.015 },
            BondCoats = [new BondCoatReading(Row(2), 0, 300, 8) { Taken = new TankVolume(0.8, 15, 0, 15), Below = "c" }],
        };
        var (volume, mass) = (Set("bond-coat.sprayed_volume", ElementKind.BondCoat, record).Values[0], Set("bond-coat.sprayed_rate", ElementKind.BondCoat, record).Values[0]);
        Assert.Equal(0.015843, volume.Standard!.Value / volume.Si, 1e-6);
        Assert.Equal(0.021432, mass.Standard!.Value / mass.Si, 1e-6);
    }

    [Fact]
    public void A_stretch_whose_spray_is_not_recorded_is_lacking()
    {
        var record = new ShiftRecord { BondCoats = [new BondCoatReading(Row(2), 0, 300, 8) { Mass = 720, Below = "c" }, new BondCoatReading(Row(3), 300, 600, 8) { Below = "c" }] };
        Assert.Equal(3, Assert.Single(Set("bond-coat.sprayed_rate", ElementKind.BondCoat, record).Lacking).Row!.Value.Line);
    }

    // Derived: eight thicknesses with a mean of 40.3375 mm and a two-sided 95 % interval by Student's t from 39.4992 to 41.1758 mm, from t(0.975; 7) · s / √8 with s = 1.002764 mm; the instrument adds nothing here.
    [Fact]
    public void The_uncertainty_of_a_mean_is_that_of_students_t()
    {
        double[] values = [41.2, 39.8, 40.5, 38.9, 42.0, 40.1, 39.4, 40.8];
        Assert.Equal((41.1758 - 39.4992) / 2, 2 * HappenedCourse.OfMean(values, 0)!.Value, 5e-5);
        Assert.Null(HappenedCourse.OfMean([41.2], 0));
        Assert.Null(HappenedCourse.OfMean(values, null));
    }

    // By hand: laid from 21:15 to 01:25; readings at 22:00 and 00:30 leave 22:00 to 00:30 open, more than the hour by which a plan states its weather.
    [Fact]
    public void An_hour_of_laying_without_a_reading_is_lacking()
    {
        var record = new ShiftRecord { Stations = Stations, Weather = [Air(45, 12), Air(195, 9), Air(400, 2)] };
        var set = Set("course.air_lowest", ElementKind.Course, record);
        Assert.Equal([12, 9], set.Values.Select(value => value.Si));
        Assert.Equal("no reading from 22:00 to 00:30", Assert.Single(set.Lacking).What);
    }

    // By hand: loads arrive at 0, 2, 4 and 20 min and start discharge at 5, 10, 15 and 20 min: three wait at once, from 4 min.
    [Fact]
    public void Trucks_that_wait_at_once_are_those_that_have_arrived_and_not_begun()
    {
        Load[] loads = [Waits(1, 0, 5), Waits(2, 2, 10), Waits(3, 4, 15), Waits(4, 20, 20)];
        Assert.Equal([3], Values("supply.waiting_highest", ElementKind.Supply, new ShiftRecord { Loads = loads }));
    }

    [Fact]
    public void Cores_over_a_joint_and_dips_into_loose_mix_are_no_thickness_of_the_mat()
    {
        var record = new ShiftRecord
        {
            Cores = [new Core(Row(2), "1") { Thickness = [0.040, 0.042], Course = "c" }, new Core(Row(3), "2") { Thickness = [0.030], AtJoint = true, Course = "c" }],
            Dips = [new Dip(Row(4), 10, 0.050) { Loose = true }, new Dip(Row(5), 20, 0.039)],
        };
        Assert.Equal([0.041, 0.039], Values("course.thickness_lowest", ElementKind.Course, record).Select(one => Math.Round(one, 9)));
    }

    // By hand: released at 04:00; at 100 m the last skin was read half a minute before, at 200 m ten minutes before, when it was no colder, and at 300 m behind the release.
    [Fact]
    public void A_skin_read_right_before_the_opening_is_its_value_and_an_earlier_one_an_upper_bound()
    {
        MatTemperature Skin(double minutes, double station, double celsius) => new(Row(2), Start.AddMinutes(minutes), celsius) { Station = station, Depth = 0 };
        var record = new ShiftRecord
        {
            Temperatures = [Skin(380, 100, 52), Skin(404.5, 100, 45), Skin(395, 200, 47), Skin(410, 300, 60)],
            HoldPoints = [new HoldPointRelease(Row(2), "open") { At = Start.AddMinutes(405) }],
        };
        var set = Set("opening.temperature", ElementKind.Opening, record);
        Assert.Equal([(100.0, 45.0, KnownSide.Value), (200, 47, KnownSide.AtMost)], set.Values.Select(value => (value.Station!.Value, value.Si, value.Side)));
    }

    // By hand: runs beside each other from 0 to 1000 m and from 0 to 500 m, the second laid first: 250 m of it at 21:45, of the other at 22:45.
    [Fact]
    public void The_screed_begins_with_the_run_that_was_laid_first_and_a_place_in_two_runs_has_no_time()
    {
        Run Lane(string id, double from, double to) => new() { Id = id, From = Stated.Metres(from), To = Stated.Metres(to) };
        StationReading Read(double minutes, double station, string run) => new(Row(2), Start.AddMinutes(minutes), station) { Run = run };
        var times = new ScreedTimes([Lane("a", 0, 1000), Lane("b", 600, 100)], [Read(0, 600, "b"), Read(60, 100, "b"), Read(90, 0, "a"), Read(290, 1000, "a")]);
        Assert.Equal(600, times.Start);
        Assert.Null(times.At(350));
        Assert.Equal(Start.AddMinutes(250), times.At(800));
        Assert.Equal(Start.AddMinutes(100), times.At(50));
        Assert.Equal((600, 1000), (times.First!.Station, times.Last!.Station));
    }

    [Fact]
    public void Every_quantity_is_one_of_the_catalogue_and_says_in_which_rows_it_stands()
    {
        var catalogue = LaygateQuantities.Catalogue();
        Assert.All(HappenedQuantities.All, one => Assert.NotNull(catalogue.Find(one.Quantity)));
        Assert.All(HappenedQuantities.All.Where(one => one.Implies is not null), one => Assert.NotNull(catalogue.Find(one.Implies!)));
    }

    private static RowPlace Row(int line) => new("rows.csv", line);

    private static PassReading Pass(double minutes, string roller) => new(Row(2), Start.AddMinutes(minutes), roller) { Station = 100 };

    private static WeatherReading Air(double minutes, double celsius) => new(Row(2), Start.AddMinutes(minutes)) { Air = celsius };

    private static Load Waits(int number, double arrived, double started) =>
        new(Row(number), FormattableString.Invariant($"{number}"), 25_000) { Mix = "m", Arrived = Start.AddMinutes(arrived), Started = Start.AddMinutes(started) };

    private static IEnumerable<double> Minutes(string quantity, ElementKind kind, ShiftRecord record, string? id = null) => Values(quantity, kind, record, id).Select(seconds => Math.Round(seconds / 60, 6));

    private static IEnumerable<double> Values(string quantity, ElementKind kind, ShiftRecord record, string? id = null) => Set(quantity, kind, record, id).Values.Select(value => value.Si);

    private static HappenedSet Set(string quantity, ElementKind kind, ShiftRecord record, string? id = null)
    {
        var plan = PlanMapper.Map(YamlReader.Read(Encoding.UTF8.GetBytes(PlanText)).Documents[0]).Plan!;
        var context = new QuantityContext(plan, LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), seed: 1) { IsQuick = true };
        var element = context.Elements.Of(kind).First(one => id is null || string.Equals(one.Id, id, StringComparison.Ordinal));
        return HappenedQuantities.Find(quantity)!.Read(new HappenedShift(context, record), element);
    }
}
