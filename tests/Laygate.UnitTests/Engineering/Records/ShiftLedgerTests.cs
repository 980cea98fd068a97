using System.Globalization;
using System.Text;
using Laygate.Engineering.Records;
using Laygate.Model.Plans;
using Laygate.Model.Records;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using Laygate.UnitTests.Reading.Records;

namespace Laygate.UnitTests.Engineering.Records;

/// <summary>A ledger by hand, and what always holds of one. Sums by hand: see the comments of <see cref="LedgerFormulaTests"/>.</summary>
public sealed class ShiftLedgerTests
{
    private const string PlanText = """
        format: 1
        plan: { id: small, stage: concept }
        shift: { date: 2027-05-14, start: "21:15", end: "05:00", zone: +02:00 }
        mixes: [{ id: m, density: { compacted: 2.40 t/m3 } }]
        courses: [{ id: c, mix: m, thickness: 40 mm }]
        runs: [{ id: r, courses: [c], paver: p, from: 0 m, to: 1000 m, width: 7.5 m }]
        pavers: [{ id: p, courses: [c], speed: 4 m/min, stop_limit: 10 min }]
        supply: { trucks: [{ id: t, mix: m, payload: 25 t, haul_out: 30 min }] }
        """;

    private static readonly Plan Plan = PlanMapper.Map(YamlReader.Read(Encoding.UTF8.GetBytes(PlanText)).Documents[0]).Plan!;

    private static readonly DateTimeOffset Start = new(2027, 5, 14, 21, 15, 0, TimeSpan.FromHours(2));

    // By hand: 310.4 t discharged of which 1.2 t was thrown away and 6.0 t is in the hopper at 412 m, 75 t on the road.
    [Fact]
    public void The_ledger_is_the_one_by_hand()
    {
        var loads = Enumerable.Range(0, 10).Select(i => Emptied(i, 31_040, 10 * (i + 1)) with { NotLaid = i == 3 ? 1200 : 0 })
            .Concat(Enumerable.Range(10, 3).Select(i => Loaded(i, 25_000, 95)));
        var ledger = Ledger(loads, [At(100, 412) with { OnMachine = 6000 }]);
        var course = Assert.Single(ledger.Courses);
        Assert.Equal(303.2, course.Shift!.Mass.Number, 1e-6);
        Assert.Equal(0.735922, course.Shift.PerLength.Number, 5e-7);
        Assert.Equal(40.8846, course.Shift.Thickness.Number, 5e-5);
        Assert.Equal(0.932, course.Shift.Thickness.UncertaintySi!.Value * 1000, 5e-4);
        // 40.9 ± 0.9 mm does not prove that 40 mm is exceeded.
        Assert.False(course.Shift.IsProven);
        Assert.Equal((588, 423.36), (Math.Round(course.LengthLeft.Number, 6), Math.Round(course.LeftByPlan.Number, 6)));
        Assert.Equal(432.7223, course.LeftByYield.Number, 5e-5);
        Assert.Equal(81, course.OnHand.Number, 1e-6);
        Assert.Equal(351.72, course.ToOrder.Number, 5e-3);
        Assert.Equal(15, course.LoadsToOrder);
        Assert.Equal(342.36, course.ToOrder.Unit.FromSi(course.ToOrder.LowSi!.Value), 5e-3);
        Assert.Equal(3, course.UnderWay.Count);
    }

    // By hand: 21:40 to 21:52 is 12 min however often it is written; with 21:50 to 22:05 it is one stop of 25 min, and 23:00 to 23:04 is a second one: 29 min.
    [Fact]
    public void Stops_are_a_union_of_times()
    {
        PaverStop first = new(default, Start.AddMinutes(25), Start.AddMinutes(37)), over = new(default, Start.AddMinutes(35), Start.AddMinutes(50)), last = new(default, Start.AddMinutes(105), Start.AddMinutes(109));
        Assert.Equal((1, 720, 720), Stopped(first, first));
        Assert.Equal((2, 1740, 1500), Stopped(first, over, last, first));
        Assert.Equal(Stopped(first with { To = null }), Stopped(first with { To = null }, first with { To = null }));

        (int Count, double Total, double Longest) Stopped(params PaverStop[] stops)
        {
            var ledger = ShiftLedgers.Of(Ask.Context(Plan), new ShiftRecord { Loads = [Emptied(1, 25_000, 10)], Stops = stops, Last = Start.AddMinutes(200) }, Start.AddMinutes(200))!;
            return (ledger.Stops.Count, ledger.Stops.Total.Si, ledger.Stops.Longest!.Si);
        }
    }

    // Derived: what is in the silo of no plan is not seen; every kilogram of a ticket is laid, on hand or thrown away.
    [Fact]
    public void No_kilogram_is_lost()
    {
        var random = new Random(20271);
        for (var trial = 0; trial < 200; trial++)
        {
            var (loads, stations) = Shift(random);
            var course = Ledger(loads, stations).Courses[0];
            if (course.Shift is not { } shift)
            {
                continue;
            }

            var yield = shift.PerLength.Si / shift.PerLength.PlanSi!.Value;
            var laid = (1000 - course.LengthLeft.Si) * 7.5 * 0.040 * 2400 * yield;
            Assert.Equal(loads.Sum(load => load.Laid), laid + course.OnHand.Si, 1);
        }
    }

    [Fact]
    public void Later_rows_change_nothing_that_was_said_before()
    {
        var random = new Random(20272);
        for (var trial = 0; trial < 100; trial++)
        {
            var (loads, stations) = Shift(random);
            var at = Start.AddMinutes(random.Next(20, 200));
            var whole = ShiftLedgers.Of(Ask.Context(Plan), Record(loads, stations), at);
            var prefix = ShiftLedgers.Of(Ask.Context(Plan), Record(loads.Where(load => load.Loaded <= at), stations.Where(reading => reading.At <= at)), at);
            Same(prefix, whole);
        }
    }

    [Fact]
    public void A_stop_never_makes_the_end_earlier()
    {
        var random = new Random(20273);
        for (var trial = 0; trial < 100; trial++)
        {
            var (loads, stations) = Shift(random);
            var record = Record(loads, stations);
            var without = ShiftLedgers.Of(Ask.Context(Plan), record, null)!;
            var from = Start.AddMinutes(random.Next(0, 200));
            var with = ShiftLedgers.Of(Ask.Context(Plan), record with { Stops = [new PaverStop(default, from, random.Next(2) == 0 ? null : from.AddMinutes(12))] }, without.At)!;
            Assert.False(with.End?.Expected < without.End?.Expected);
        }
    }

    // Derived: mass, area and time of two intervals that touch add up; means are weighted anew, never averaged.
    [Fact]
    public void Two_intervals_are_one_in_mass_and_length()
    {
        var random = new Random(20274);
        for (var trial = 0; trial < 100; trial++)
        {
            var (loads, stations) = Shift(random);
            var whole = Ledger(loads, stations).Courses[0].Shift!;
            var ends = loads.Where(load => load.Emptied is not null).OrderBy(load => load.Emptied).ToList();
            var half = ShiftLedgers.Of(Ask.Context(Plan), Record(loads, stations), ends[(ends.Count / 2) - 1].Emptied)!.Courses[0].Shift!;
            var rest = ends.Skip(ends.Count / 2).Sum(load => load.Laid);
            Assert.Equal(whole.Mass.Si, half.Mass.Si + rest, 1);
            Assert.InRange(whole.Thickness.Si, Math.Min(half.Thickness.Si, Rest()) - 1e-9, Math.Max(half.Thickness.Si, Rest()) + 1e-9);

            double Rest() => rest / (2400 * 7.5 * (whole.Length.Si - half.Length.Si));
        }
    }

    [Fact]
    public void Nothing_left_is_the_end_now_and_no_load_more()
    {
        var course = Ledger([Emptied(0, 720_000 / 1.0, 60)], [At(0, 0), At(60, 1000)]).Courses[0];
        Assert.Equal((0, 0), ((int)course.LengthLeft.Si, course.LoadsToOrder!.Value));
        Assert.Equal(Start.AddMinutes(60), course.End!.Expected);
    }

    [Fact]
    public void At_a_standstill_there_is_no_end_by_the_last_half_hour()
    {
        var ends = Ledger([Emptied(0, 25_000, 10), Emptied(1, 25_000, 100)], [At(10, 35), At(50, 70), At(100, 70)]).Courses[0].Ends;
        Assert.Null(ends.Single(end => end.Basis == EndBasis.LastHalfHour).End);
        Assert.NotNull(ends.Single(end => end.Basis == EndBasis.Plan).End);
    }

    [Fact]
    public void Where_nobody_wrote_down_discharges_the_journey_of_the_plan_stands_in_and_is_said()
    {
        var loads = Enumerable.Range(0, 4).Select(i => Loaded(i, 25_000, 10 * i));
        var ledger = Ledger(loads, [At(60, 100)]);
        Assert.Contains(ledger.Notes, note => note.Kind == LedgerNoteKind.NoDischarge);
        // By hand: loads of minutes 0, 10, 20 and 30 are there 30 min later, all by minute 60.
        Assert.Equal(4, ledger.Courses[0].Discharged);
    }

    [Fact]
    public void A_station_outside_or_behind_is_left_out_and_said()
    {
        var notes = Ledger([Emptied(0, 25_000, 10)], [At(10, 35), At(20, 20), At(30, 1700)]).Notes;
        Assert.Equal(1, notes.Single(note => note.Kind == LedgerNoteKind.Backwards).Count);
        Assert.Equal(1, notes.Single(note => note.Kind == LedgerNoteKind.NoRun).Count);
    }

    /// <summary>The record in US units is the record in metric units, to the digits that are written.</summary>
    [Fact]
    public void Units_of_the_record_change_nothing()
    {
        var metric = Rows("t", "m", 1, 1);
        var us = Rows("lb", "ft", 1000 / 0.45359237, 1 / 0.3048);
        var (a, b) = (ShiftLedgers.Of(Ask.Context(Plan), metric, null)!.Courses[0], ShiftLedgers.Of(Ask.Context(Plan), us, null)!.Courses[0]);
        Assert.Equal(a.Shift!.Thickness.Si, b.Shift!.Thickness.Si, 1e-9);
        Assert.Equal(a.ToOrder.Si, b.ToOrder.Si, 1e-3);
        Assert.Equal(a.End!.Expected.ToUnixTimeSeconds(), b.End!.Expected.ToUnixTimeSeconds());
    }

    private static ShiftRecord Rows(string mass, string length, double perTonne, double perMetre)
    {
        string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
        var tickets = string.Concat(Enumerable.Range(0, 8).Select(i => $"{i},{Time((10 * i) - 40)},{Number((24 + (0.1 * i)) * perTonne)}\n"));
        var deliveries = string.Concat(Enumerable.Range(0, 8).Select(i => $"{i},{Time(10 * i)},{Number(33.5 * (i + 1) * perMetre)}\n"));
        var mapping = Reading.Records.Shift.File("t.csv", "load-tickets", $"    columns:\n      - {{ column: n, quantity: ticket }}\n      - {{ column: t, quantity: loaded }}\n      - {{ column: m, quantity: net, unit: {mass} }}\n")
            + Reading.Records.Shift.File("d.csv", "deliveries", $"    columns:\n      - {{ column: n, quantity: ticket }}\n      - {{ column: t, quantity: emptied }}\n      - {{ column: s, quantity: station, unit: {length} }}\n");
        return Reading.Records.Shift.Of(Reading.Records.Shift.Read(mapping, ("t.csv", "n,t,m\n" + tickets), ("d.csv", "n,t,s\n" + deliveries)));

        static string Time(int minutes) => Start.AddMinutes(minutes).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
    }

    private static (List<Load> Loads, List<StationReading> Stations) Shift(Random random)
    {
        var (loads, stations, station, minute) = (new List<Load>(), new List<StationReading>(), 0.0, 0);
        for (var i = 0; i < random.Next(4, 25); i++)
        {
            minute += random.Next(5, 15);
            var mass = random.Next(15_000, 27_000);
            station = Math.Min(1000, station + (mass / (720 * (0.9 + (0.2 * random.NextDouble())))));
            loads.Add(Emptied(i, mass, minute));
            stations.Add(At(minute, station));
        }

        loads.Add(Loaded(99, 25_000, minute));
        return (loads, stations);
    }

    private static ShiftLedger Ledger(IEnumerable<Load> loads, IEnumerable<StationReading> stations) => ShiftLedgers.Of(Ask.Context(Plan), Record(loads, stations), null)!;

    private static ShiftRecord Record(IEnumerable<Load> loads, IEnumerable<StationReading> stations) => new()
    {
        Plan = "small",
        Uncertainty = new RecordUncertainty(0.002, 0.010, 0.005, 0.001),
        Loads = [.. loads],
        Stations = [.. stations],
        Last = Start,
    };

    private static Load Emptied(int number, double mass, int minute) => Loaded(number, mass, minute - 40) with { Emptied = Start.AddMinutes(minute) };

    private static Load Loaded(int number, double mass, int minute) => new(default, number.ToString(CultureInfo.InvariantCulture), mass) { Mix = "m", Loaded = Start.AddMinutes(minute) };

    private static StationReading At(int minute, double station) => new(default, Start.AddMinutes(minute), station);

    private static void Same(ShiftLedger? a, ShiftLedger? b)
    {
        Assert.Equal(a is null, b is null);
        Assert.Equal(a?.Courses[0].Shift?.Thickness.Si, b?.Courses[0].Shift?.Thickness.Si);
        Assert.Equal(a?.Courses[0].ToOrder.Si, b?.Courses[0].ToOrder.Si);
        Assert.Equal(a?.End, b?.End);
        Assert.Equal(a?.Notes, b?.Notes);
    }
}
