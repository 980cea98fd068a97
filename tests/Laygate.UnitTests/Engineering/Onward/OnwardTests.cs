using System.Text;
using Laygate.Engineering.Onward;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Plans;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;

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
