using System.Globalization;
using System.Text;
using Laygate.Engineering.Onward;
using Laygate.Engineering.Records;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Plans;
using Laygate.Model.Records;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using ShiftRecord = Laygate.Model.Records.ShiftRecord;

namespace Laygate.UnitTests.Engineering.Onward;

/// <summary>What always holds of a shift that is planned anew from its record.</summary>
public sealed class OnwardTests
{
    private const string TwoRuns = """
        format: 1
        plan: { id: two-runs, stage: concept }
        shift: { date: 2027-05-14, start: "21:15", end: "05:00", zone: +02:00 }
        mixes: [{ id: m, density: { compacted: 2.40 t/m3 } }]
        courses: [{ id: c, mix: m, thickness: 40 mm }]
        runs:
          - { id: r1, courses: [c], paver: p, from: 0 m, to: 700 m, width: 3.7 m }
          - { id: r2, courses: [c], paver: p, from: 0 m, to: 600 m, width: 3.7 m }
        pavers: [{ id: p, courses: [c], speed: 4 m/min, stop_limit: 10 min }]
        supply:
          plants: [{ id: pl, mixes: [m], planned: 110 t/h, silo_at_start: 60 t, silo_capacity: 80 t }]
          trucks: [{ id: t, mix: m, count: 8, payload: 18 t, haul_out: 30 min, haul_out_bad: 40 min, haul_back: 26 min, haul_back_bad: 34 min }]
          dispatch: DISPATCH
        """;

    public static TheoryData<string> Shifts => ["pair", "two-runs timetable", "two-runs on-call", "two-runs as-loaded", "few-trucks timetable", "few-trucks on-call", "stop"];

    [Theory]
    [MemberData(nameof(Shifts))]
    public void A_record_that_follows_the_plan_gives_its_end_to_the_second(string kind)
    {
        var followed = new FollowedPlan(Plan(kind));
        foreach (var at in Moments(followed))
        {
            var end = followed.End(followed.Read(followed.At(at)));
            Assert.True(end is not null && Math.Abs(end.Value - followed.Outcome.Ended) < 1, $"{kind} at {at / 60:F1} min: {end / 60:F2} instead of {followed.Outcome.Ended / 60:F2} min; {string.Join("; ", followed.Last!.Facts.Select(fact => $"{fact.Kind} {fact.Of} {fact.Basis} {fact.Value?.Number}"))}; {string.Join("; ", followed.Last.Notes.Select(note => $"{note.Kind} {note.Of} {note.Count}"))}");
        }
    }

    // Derived: every kilogram that was weighed out is laid, on the machine or on a truck.
    [Theory]
    [MemberData(nameof(Shifts))]
    public void No_kilogram_of_the_tickets_is_lost(string kind)
    {
        var followed = new FollowedPlan(Plan(kind));
        foreach (var at in Moments(followed).Select(followed.At))
        {
            var tickets = followed.Record.Loads.Where(load => load.Loaded <= at).Sum(load => load.Net);
            Assert.Equal(tickets, followed.Read(at).State.Mass, 1.0);
            Assert.DoesNotContain(followed.Last!.Notes, note => note.Kind == OnwardNoteKind.Unexplained);
        }
    }

    [Theory]
    [MemberData(nameof(Shifts))]
    public void Rows_twice_or_in_another_order_change_nothing(string kind)
    {
        var followed = new FollowedPlan(Plan(kind));
        var random = new Random(20281);
        foreach (var at in Moments(followed).Select(followed.At).Where((_, i) => i % 6 == 0))
        {
            var (record, state) = (followed.Record, Text(followed.Read(at)));
            var twice = record with { Stations = [.. record.Stations.Concat(record.Stations).OrderBy(one => one.At)], Stops = [.. record.Stops.Concat(record.Stops)] };
            var shuffled = record with { Loads = [.. record.Loads.OrderBy(_ => random.Next())], Stops = [.. record.Stops.OrderBy(_ => random.Next())] };
            Assert.Equal(state, Text(followed.Read(at, record: twice)));
            Assert.Equal(state, Text(followed.Read(at, record: shuffled)));
        }
    }

    [Theory]
    [MemberData(nameof(Shifts))]
    public void Later_rows_and_other_offsets_change_nothing(string kind)
    {
        var followed = new FollowedPlan(Plan(kind));
        foreach (var at in Moments(followed).Select(followed.At).Where((_, i) => i % 6 == 0))
        {
            var state = Text(followed.Read(at));
            Assert.Equal(state, Text(followed.Read(at, record: RecordUpTo.Of(followed.Record, at))));
            Assert.Equal(state, Text(followed.Read(at.ToUniversalTime(), record: InUtc(followed.Record))));
        }
    }

    [Fact]
    public void An_event_that_changes_nothing_changes_nothing()
    {
        var followed = new FollowedPlan(Plan("pair"));
        var at = followed.At(7200);
        var (plain, _, _) = Onwards.Of(followed.Context, followed.Record, at, new OnwardEvents());
        var nothing = new OnwardEvents
        {
            Closing = plain!.Closing,
            Plant = new PlantDown("a", at),
            StandsUntil = at,
            Speed = followed.Model.Speed,
            RainAt = plain.Closing.AddHours(3),
            Trucks = followed.Model.Trucks.ToDictionary(trucks => trucks.Id, trucks => trucks.Count, StringComparer.Ordinal),
            RollersLost = [],
        };
        var (same, problem, id) = Onwards.Of(followed.Context, followed.Record, at, nothing);
        Assert.True(problem is null, id);
        Assert.Equal(plain.Forecast, same!.Forecast);
        Assert.Equal((plain.SteadyEnd, plain.AtRisk, plain.JointBy), (same.SteadyEnd, same.AtRisk, same.JointBy));
    }

    [Fact]
    public void The_same_question_has_the_same_answer()
    {
        var followed = new FollowedPlan(Plan("few-trucks on-call"));
        OnwardForecast Ask() => Onwards.Of(followed.Context, followed.Record, followed.At(9000), new OnwardEvents()).Result!.Forecast;
        Assert.Equal(Ask(), Ask());
    }

    /// <summary>Worse is never better: a stop never makes the end earlier, nor do fewer trucks, a plant that is down or a lower speed.</summary>
    [Theory]
    [MemberData(nameof(Shifts))]
    public void What_is_worse_never_makes_the_end_earlier(string kind)
    {
        var followed = new FollowedPlan(Plan(kind));
        var plant = followed.Model.Lines[0].Plant;
        foreach (var at in Moments(followed).Select(followed.At).Where((_, i) => i % 4 == 1))
        {
            var end = followed.End(followed.Read(at))!.Value;
            OnwardEvents[] worse =
            [
                .. new[] { 5, 12, 30, 60 }.Select(minutes => new OnwardEvents { StandsUntil = at.AddMinutes(minutes) }),
                .. new[] { 1, 2 }.Select(less => new OnwardEvents { Trucks = new Dictionary<string, int>(StringComparer.Ordinal) { [followed.Model.Trucks[0].Id] = followed.Model.Trucks[0].Count - less } }),
                .. new[] { 0.95, 0.8 }.Select(share => new OnwardEvents { Speed = share * followed.Model.Speed }),
                .. new[] { 10, 45 }.Select(minutes => new OnwardEvents { Plant = new PlantDown(plant, at.AddMinutes(minutes)) }),
            ];
            foreach (var one in worse)
            {
                var later = followed.End(With(followed, at, one));
                Assert.True(later is null || later >= end - 1, $"{kind} at {at:HH:mm}: {one}: {later / 60:F2} before {end / 60:F2} min");
            }
        }
    }

    [Fact]
    public void Nothing_left_is_the_end_now_and_no_load_more()
    {
        var followed = new FollowedPlan(Plan("two-runs timetable"));
        var last = new StationReading(default, followed.At(followed.Outcome.Ended), 600) { Run = "r2", Course = "c" };
        var record = followed.Record with { Stations = [.. followed.Record.Stations, last] };
        var (result, _, _) = Onwards.Of(followed.Context, record, last.At.AddMinutes(1), new OnwardEvents());
        Assert.Equal(0, result!.LengthLeft.Si, 1e-6);
        Assert.Equal(0, (last.At - result.SteadyEnd!.Value).TotalSeconds, 1e-3);
        Assert.All(result.Courses, course => Assert.Equal(0, course.ToCall.Loads));
        Assert.Equal((1.0, 0.0), (result.Forecast.Finish.Expected, result.Forecast.Stops.Expected));
    }

    // Derived: 13 min of laying at 4 m/min are 50 m, so that 50 m less end about so much sooner; behind what is laid already, or beyond the plan, nothing ends elsewhere.
    [Fact]
    public void An_earlier_end_of_the_work_is_an_earlier_end_of_the_shift()
    {
        var followed = new FollowedPlan(Plan("two-runs timetable"));
        DateTimeOffset End(double? after) => Onwards.Of(followed.Context, followed.Record, followed.At(12_000), new OnwardEvents { EndsAfter = after }).Result!.SteadyEnd!.Value;
        Assert.InRange((End(null) - End(1250)).TotalMinutes, 12.4, 20);
        Assert.Equal(End(null), End(1300));
        Assert.Equal(End(null), End(1400));
    }

    [Fact]
    public void Without_mix_there_is_no_end()
    {
        var followed = new FollowedPlan(Plan("two-runs timetable"));
        var (result, _, _) = Onwards.Of(followed.Context, followed.Record, followed.At(3600), new OnwardEvents { Plant = new PlantDown("pl", null) });
        Assert.Equal((null, null, null), (result!.Forecast.End.Expected, result.Forecast.End.Low, result.Forecast.End.High));
        Assert.Null(result.SteadyEnd);
        Assert.Equal(0, result.Forecast.Finish.Expected);
    }

    // By hand: a plan of 8 h over the night in which Berlin puts its clock back (25 October 2026, 03:00 +02:00 becomes 02:00 +01:00) is the same shift in UTC.
    [Fact]
    public void A_change_of_clock_changes_no_shift()
    {
        var plan = Plan("two-runs timetable");
        FollowedPlan At(DateOnly date, TimeSpan? atEnd, TimeOnly end) => new(plan with { Shift = plan.Shift! with { Date = date, ZoneAtEnd = atEnd, End = end } });
        var (changed, usual) = (At(new DateOnly(2026, 10, 24), TimeSpan.FromHours(1), new TimeOnly(4, 0)), At(new DateOnly(2026, 10, 17), null, new TimeOnly(5, 0)));
        foreach (var seconds in new[] { 3600.0, 12_000, 20_000 })
        {
            var (a, b) = (Onwards.Of(changed.Context, changed.Record, changed.At(seconds), new OnwardEvents()).Result!, Onwards.Of(usual.Context, usual.Record, usual.At(seconds), new OnwardEvents()).Result!);
            Assert.Equal(b.Forecast.Finish, a.Forecast.Finish);
            Assert.Equal(b.SteadyEnd!.Value.AddDays(7).ToUniversalTime(), a.SteadyEnd!.Value.ToUniversalTime());
        }
    }

    /// <summary>The record in US units is the record in metric units, to the digits that are written.</summary>
    [Fact]
    public void Units_of_the_record_change_nothing()
    {
        var followed = new FollowedPlan(Plan("two-runs timetable"));
        var (metric, us) = (Rows(followed.Record, "kg", "m", 1, 1), Rows(followed.Record, "lb", "ft", 1 / 0.45359237, 1 / 0.3048));
        foreach (var seconds in new[] { 3600.0, 9000, 15_000 })
        {
            var at = followed.At(seconds);
            var (a, b) = (followed.Read(at, record: metric), followed.Read(at, record: us));
            Assert.Equal(a.Laid, b.Laid, 1e-3);
            Assert.Equal(a.State.Mass, b.State.Mass, 1e-1);
            Assert.Equal(followed.End(a)!.Value, followed.End(b)!.Value, 1.0);
        }
    }

    private static ShiftRecord Rows(ShiftRecord record, string mass, string length, double perKilogram, double perMetre)
    {
        static string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
        static string Time(DateTimeOffset? at) => at!.Value.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);
        var tickets = string.Concat(record.Loads.Select(load => $"{load.Ticket},{Time(load.Loaded)},{Number(load.Net * perKilogram)}\n"));
        var deliveries = string.Concat(record.Loads.Select(load => $"{load.Ticket},{Time(load.Arrived)},{Time(load.Emptied)},{Number(load.StationAtEnd!.Value * perMetre)},{load.Run}\n"));
        var stations = string.Concat(record.Stations.Select(reading => $"{Time(reading.At)},{Number(reading.Station * perMetre)},{reading.Run},{reading.Course},{Number(reading.OnMachine!.Value * perKilogram)}\n"));
        var mapping = Reading.Records.Shift.File("t.csv", "load-tickets", $"    columns:\n      - {{ column: n, quantity: ticket }}\n      - {{ column: t, quantity: loaded }}\n      - {{ column: m, quantity: net, unit: {mass} }}\n      - {{ value: m, quantity: mix }}\n")
            + Reading.Records.Shift.File("d.csv", "deliveries", $"    columns:\n      - {{ column: n, quantity: ticket }}\n      - {{ column: a, quantity: arrived }}\n      - {{ column: e, quantity: emptied }}\n      - {{ column: s, quantity: station, unit: {length} }}\n      - {{ column: r, quantity: run }}\n")
            + Reading.Records.Shift.File("s.csv", "stations", $"    columns:\n      - {{ column: t, quantity: at }}\n      - {{ column: s, quantity: station, unit: {length} }}\n      - {{ column: r, quantity: run }}\n      - {{ column: c, quantity: course }}\n      - {{ column: m, quantity: on_machine, unit: {mass} }}\n");
        return Reading.Records.Shift.Of(Reading.Records.Shift.Read(mapping, ("t.csv", "n,t,m\n" + tickets), ("d.csv", "n,a,e,s,r\n" + deliveries), ("s.csv", "t,s,r,c,m\n" + stations)));
    }

    private static OnwardStart With(FollowedPlan followed, DateTimeOffset at, OnwardEvents events)
    {
        var start = followed.Read(at, events);
        return events.Plant is { } down
            ? start with { Model = start.Model with { Stop = new PlantStop(down.Plant, (at - followed.Start).TotalSeconds, (down.Until!.Value - at).TotalSeconds, FromSilo: false) } }
            : start;
    }

    private static string Text(OnwardStart start) => System.Text.Json.JsonSerializer.Serialize(start.State);

    private static ShiftRecord InUtc(ShiftRecord record) => record with
    {
        Loads = [.. record.Loads.Select(load => load with { Loaded = load.Loaded?.ToUniversalTime(), Arrived = load.Arrived?.ToUniversalTime(), Started = load.Started?.ToUniversalTime(), Emptied = load.Emptied?.ToUniversalTime() })],
        Stations = [.. record.Stations.Select(reading => reading with { At = reading.At.ToUniversalTime() })],
        Stops = [.. record.Stops.Select(stop => stop with { From = stop.From.ToUniversalTime(), To = stop.To?.ToUniversalTime() })],
    };

    private static IEnumerable<double> Moments(FollowedPlan followed)
    {
        var first = followed.Loads[0].Loaded;
        for (var i = 0; i <= 60; i++)
        {
            yield return first + ((followed.Outcome.Ended - first) * i / 60) + 0.5;
        }
    }

    internal static Plan Plan(string kind)
    {
        if (kind == "pair")
        {
            return ScenarioA.Plan;
        }

        var words = kind.Split(' ');
        var text = TwoRuns.Replace("DISPATCH", words.Length > 1 ? words[1] : "timetable", StringComparison.Ordinal);
        text = words[0] switch
        {
            "few-trucks" => text.Replace("count: 8", "count: 4", StringComparison.Ordinal),
            "stop" => text.Replace("stop_limit: 10 min", "stop_limit: 10 min, stops: [{ id: crew, after: 60 min, length: 15 min }]", StringComparison.Ordinal),
            _ => text,
        };
        return PlanMapper.Map(YamlReader.Read(Encoding.UTF8.GetBytes(text)).Documents[0]).Plan!;
    }
}
