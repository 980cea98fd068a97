using Laygate.Reading.Plans;

namespace Laygate.UnitTests.Reading.Plans;

public class PlanConsistencyTests
{
    [Fact]
    public void The_plan_with_every_key_holds_no_contradiction() => Assert.Empty(PlanFiles.Contradictions(PlanFiles.EveryKey));

    // Each row: what is changed, to what, and the last part of the change at which the one problem must point; then a part of its message.
    [Theory]
    // Names.
    [InlineData("id: old-base\n", "id: old-base\n    - id: old-base\n", "old-base\n      material", "two entries with the id `old-base`")]
    [InlineData("- id: coat-2", "- id: coat-1", "coat-1\n    below: middle", "two entries with the id `coat-1`")]
    [InlineData("      - course: upper\n        capacity", "      - course: middle\n        capacity", "middle\n        capacity: 16 t", "two entries with the course `middle`")]
    [InlineData("id: line-north\n", "id: line-north\n    - id: line-north\n", "line-north\n      at", "overhead_lines")]
    [InlineData("- id: cover-3\n", "- id: cover-3\n      - id: cover-3\n", "cover-3\n        kind", "obstacles")]
    [InlineData("      - id: gate-sill\n", "      - id: gate-sill\n      - id: gate-sill\n", "gate-sill\n        at", "levels")]
    [InlineData("      - id: west-end\n", "      - id: west-end\n      - id: west-end\n", "west-end\n        at", "tie_ins")]
    // Edges, joints and proofs.
    [InlineData("edge_slope: 130 %", "edge_slope: 0 %", "0 %\n    above", "edge_slope")]
    [InlineData("        at: 96 m", "        at: 960 m", "960 m", "lies beyond the run")]
    [InlineData("    removed: 1.4 m", "    removed: -1.4 m", "-1.4 m", "removed")]
    [InlineData("      count: 8", "      count: 0", "0\n      mat_cold", "needs at least one")]
    [InlineData("    valid_to: 2032-12-31", "    valid_to: 2030-04-30", "2030-04-30", "ends before it begins")]
    // References.
    [InlineData("mix: mix-a\n    thickness: 45 mm", "mix: mix-c\n    thickness: 45 mm", "mix-c", "no mix `mix-c`")]
    [InlineData("    on: lower", "    on: lowre", "lowre", "no course `lowre`")]
    [InlineData("    courses: [lower, middle, upper]", "    courses: [lower, middle, uper]", "uper]", "no course `uper`")]
    [InlineData("    paver: paver-1\n    order", "    paver: paver-3\n    order", "paver-3", "no paver `paver-3`")]
    [InlineData("rigid\n      paver: paver-1", "rigid\n      paver: paver-3", "paver-3", "no paver `paver-3`")]
    [InlineData("      - course: upper\n        at: 160 m", "      - course: top\n        at: 160 m", "top\n        at: 160 m", "no course `top`")]
    [InlineData("        mix: mix-a\n        compactor", "        mix: mix-d\n        compactor", "mix-d", "no mix `mix-d`")]
    [InlineData("mixes: [mix-a, mix-b]", "mixes: [mix-a, mix-z]", "mix-z]", "no mix `mix-z`")]
    [InlineData("plant: plant-west", "plant: plant-east", "plant-east", "no plant `plant-east`")]
    [InlineData("      mix: mix-a\n      kind", "      mix: mix-x\n      kind", "mix-x", "no mix `mix-x`")]
    [InlineData("mixes: [mix-a, mix-b]", "mixes: [mix-b]", null, "does not make the mix `mix-a`")]
    [InlineData("    courses: [middle, upper]", "    courses: [midle, middle, upper]", "midle,", "no course `midle`")]
    [InlineData("      - course: upper\n        kind", "      - course: nobody\n        kind", "nobody", "no course `nobody`")]
    [InlineData("      - course: middle\n        capacity", "      - course: lower\n        capacity", "lower\n        capacity", "not among the `courses` of this paver")]
    [InlineData("      phase: main", "      phase: mani", "mani", "no phase `mani`")]
    [InlineData("    below: middle", "    below: midle", "midle", "no course `midle`")]
    [InlineData("    course: upper\n    run: run-1", "    course: uppper\n    run: run-1", "uppper", "no course `uppper`")]
    [InlineData("    run: run-1", "    run: run-7", "run-7", "no run `run-7`")]
    [InlineData("    course: upper\n    where: both", "    course: upp\n    where: both", "upp\n", "no course `upp`")]
    // How courses are laid.
    [InlineData("    on: middle\n", "", "hot-on-hot", "must name the course below")]
    [InlineData("    laid: hot-on-warm\n    on: lower\n", "    laid: hot-on-warm\n", "hot-on-warm", "must name the course below")]
    [InlineData("    on: middle\n", "    on: upper\n", "upper\n    distance", "on itself")]
    [InlineData("    on: middle\n", "    on: lower\n", "lower\n    distance", "directly below")]
    [InlineData("    laid: hot-on-warm\n", "    laid: separately\n", "lower\n    delay", "lies on a cold one")]
    [InlineData("    distance: 2.5 m\n", "    distance: 2.5 m\n    delay: 1 min\n", "1 min\n    laying", "Both `distance`")]
    [InlineData("    laid: separately\n", "    laid: hot-on-hot\n    on: middle\n", "middle\n  - id: middle", "directly below")]
    // Order of values.
    [InlineData("loading: { lowest: 148 °C", "loading: { lowest: 160 °C", "158 °C, highest: 172", "`expected` is 158 °C, less than `lowest` with 160 °C")]
    [InlineData("highest: 172 °C", "highest: 311 F", "311 F", "less than `expected`")]
    [InlineData("tender: { lowest: 95 °C, expected: 104 °C, highest: 112 °C", "tender: { lowest: 95 °C, highest: 94 °C", "94 °C", "less than `lowest`")]
    [InlineData("    thickness_lowest: 38 mm", "    thickness_lowest: 46 mm", "46 mm", "more than `thickness`")]
    [InlineData("    thickness_highest: 56 mm", "    thickness_highest: 1.7 in", "1.7 in", "less than `thickness`")]
    [InlineData("        lowest: 41 mm", "        lowest: 49 mm", "48 mm", "less than `lowest`")]
    [InlineData("        highest: 57 mm", "        highest: 47 mm", "47 mm", "less than `nominal`")]
    [InlineData("    to: 420 m", "    to: 0 m", "0 m\n    width", "more than `from`")]
    [InlineData("air_lowest: 11 °C", "air_lowest: 28 °C", "27 °C", "less than `air_lowest`")]
    [InlineData("base_lowest: 9 °C", "base_lowest: 39 °C", "38 °C\n", "less than `base_lowest`")]
    [InlineData("dew_point: 7 °C", "dew_point: 15 °C", "14 °C", "less than `dew_point`")]
    [InlineData("width_lowest: 2.75 m", "width_lowest: 5.5 m", "5.25 m", "less than `width_lowest`")]
    [InlineData("        call: 7 t", "        call: 2 t", "2 t\n    stops", "less than `lowest`")]
    [InlineData("        call: 7 t", "        call: 17 t", "16 t", "less than `call`")]
    [InlineData("silo_at_start: 90 t", "silo_at_start: 150 t", "140 t", "less than `silo_at_start`")]
    [InlineData("haul_out_bad: 44 min", "haul_out_bad: 30 min", "30 min", "less than `haul_out`")]
    [InlineData("haul_back_bad: 39 min", "haul_back_bad: 0.4 h", "0.4 h", "less than `haul_back`")]
    [InlineData("mass_full: 31 t", "mass_full: 18 t", "18 t", "less than `mass_empty`")]
    [InlineData("zone_to: 45 m", "zone_to: 15 m", "15 m\n      done_within", "more than `zone_from`")]
    [InlineData("cessation: { value: 85 °C", "cessation: { value: 146 °C", "146 °C, place: course-mean }\n    cessation_from", "before it starts")]
    [InlineData("loads_before_start: 3", "loads_before_start: 10", "10\n  feeder", "10 loads cannot wait on 9 trucks")]
    [InlineData("passes_in_mode: 3", "passes_in_mode: 6", "6\n", "more than the 5 passes")]
    [InlineData("overlap: 180 mm", "overlap: 1.65 m", "1.65 m\n      mode", "only 1.65 m wide")]
    // Stations.
    [InlineData("      - at: 212.5 m\n        value: 4.1 m", "      - at: 0 ft\n        value: 4.1 m", "0 ft", "does not lie beyond")]
    [InlineData("  - id: 2\n    widths:", "  - id: 2\n    width: 4 m\n    widths:", "widths", "Both `width` and `widths`")]
    [InlineData("  - id: 2\n    widths:", "  - id: 2\n    to: 200 m\n    crossfall: 1 %\n    widths:", null, "")]
    [InlineData("        at: 160 m", "        at: 421 m", "421 m", "beyond the run")]
    [InlineData("        at: 205 m", "        at: -1 m", "-1 m", "before the run")]
    // Times.
    [InlineData("to: 2031-06-13T06:00", "to: 2031-06-12T06:00", null, "")]
    [InlineData("end: 04:30", "end: 06:30", null, "")]
    [InlineData("start: 20:45", "start: 19:15", "19:15", "laying starts before the closure does (by 15 min)")]
    [InlineData("end: 04:30", "end: 20:45", "20:45, zone:", "same time")]
    [InlineData("  at: 2031-06-13T06:00", "  at: 2031-06-13T04:15", "2031-06-13T04:15", "the opening comes before laying ends (by 15 min)")]
    [InlineData("2031-06-12T22:00+02:00", "2031-06-12T22:00+03:00", "2031-06-12T22:00+03:00", "after the one above")]
    // Impossible values.
    [InlineData("latitude: 48.25 °", "latitude: 90.5 °", "90.5 °", "between -90 ° and 90 °")]
    [InlineData("longitude: -11.5 deg", "longitude: -181 deg", "-181 deg", "between -180 ° and 180 °")]
    [InlineData("thickness: 72 mm", "thickness: 0 mm", "0 mm\n    laid", "more than zero")]
    [InlineData("thickness: 160 mm", "thickness: -160 mm", "-160 mm", "more than zero")]
    [InlineData("compacted: 2.37 t/m3", "compacted: 0 t/m3", "0 t/m3", "more than zero")]
    [InlineData("reference: laboratory, degree: 98 %", "reference: maximum, degree: 101 %", "101 %", "at most 100 %")]
    [InlineData("speed: 12 ft/min", "speed: -12 ft/min", "-12 ft/min", "more than zero")]
    [InlineData("payload: 22 t", "payload: 0 t", "0 t\n      insulated", "more than zero")]
    [InlineData("count: 9", "count: 0", null, "")]
    [InlineData("passes: 5", "passes: 0", null, "")]
    [InlineData("waiting_places: 5", "waiting_places: -1", "-1\n  dispatch", "at least 0")]
    [InlineData("drum_width: 1.65 m", "drum_width: 0 m", null, "")]
    [InlineData("reclaimed: 18 %", "reclaimed: 101 %", "101 %", "between 0 % and 100 %")]
    [InlineData("availability: 82 %", "availability: 0 %", "0 %\n    travel_speed", "more than 0 %")]
    [InlineData("rain_chance: 5 %", "rain_chance: -5 %", "-5 %", "between 0 % and 100 %")]
    [InlineData("cloud_eighths: 5", "cloud_eighths: 9", "9\n      dew_point", "0 to 8")]
    [InlineData("air: 56 F", "air: 156 F", "156 F", "the air is never above 140 F")]
    [InlineData("wind: 2.5 m/s", "wind: 250 m/s", "250 m/s", "wind is never above 115 m/s")]
    [InlineData("payload: 22 t", "payload: 220 t", "220 t\n      insulated", "never above 100 t")]
    [InlineData("speed: 12 ft/min", "speed: 12 km/h", "12 km/h", "a paver that lays is never above 2.4 km/h")]
    [InlineData("air: 56 F", "air: -460 F", "-460 F", "below absolute zero")]
    [InlineData("value: 85 °C", "value: -274 °C", "-274 °C", "below absolute zero")]
    [InlineData("wind: 2.5 m/s", "wind: -2.5 m/s", "-2.5 m/s", "cannot be negative")]
    [InlineData("set_up: 35 min", "set_up: -35 min", "-35 min", "cannot be negative")]
    [InlineData("rate: 0.07 gal/yd2", "rate: 0 gal/yd2", "0 gal/yd2", "more than zero")]
    [InlineData("    applied: yes", "    applied: no", "0.35 kg/m2", "No bond coat")]
    [InlineData("  grit: yes", "  grit: no", "1.2 kg/m2", "No grit")]
    [InlineData("longest_stop: 25 min", "longest_stop: -25 min", "-25 min", "cannot be negative")]
    [InlineData("roll_down: 11 mm", "roll_down: -11 mm", "-11 mm", "cannot be negative")]
    [InlineData("laying_temperature: 152 °C", "laying_temperature: 1520 °C", "1520 °C", "a hot mix is never above 250")]
    [InlineData("phase: \"main\", passes: 4", "phase: \"main\", passes: 0", null, "at least 1")]
    [InlineData("tonnage: 640 t", "tonnage: 0 t", "0 t\n  - id: later", "more than zero")]
    [InlineData("done_within: 14 min", "done_within: 0 min", "0 min\n  rollers", "more than zero")]
    [InlineData("wind_height: 10 m", "wind_height: 0 m", "0 m\n  exposure", "more than zero")]
    [InlineData("after: 90 min", "after: -90 min", "-90 min", "cannot be negative")]
    [InlineData("air_lowest: 11 °C", "air_lowest: -91 °C", "-91 °C", "the air is never below -90 °C")]
    [InlineData("air_highest: 27 °C", "air_highest: 61 °C", "61 °C", "the air is never above 60 °C")]
    [InlineData("base_lowest: 9 °C", "base_lowest: -91 °C", "-91 °C", "is never below -90 °C")]
    [InlineData("base_highest: 38 °C", "base_highest: 380 °C", "380 °C", "is never above")]
    [InlineData("wind_highest: 6 m/s", "wind_highest: 116 m/s", "116 m/s", "wind is never above 115 m/s")]
    [InlineData("dew_point_highest: 8 °C", "dew_point_highest: 41 °C", "41 °C", "the dew point is never above 40 °C")]
    public void A_contradiction_is_found_at_its_key(string old, string replacement, string? part, string message)
    {
        var text = PlanFiles.Changed(old, replacement);
        var problems = PlanFiles.Contradictions(text);

        // Rows without a part contradict more than one value; that they are found at all is what counts.
        Assert.NotEmpty(problems);
        if (part is null)
        {
            return;
        }

        var problem = Assert.Single(problems);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        var place = text.IndexOf(part, StringComparison.Ordinal);
        Assert.True(place >= 0 && text.IndexOf(part, place + 1, StringComparison.Ordinal) < 0, "The part must stand in the plan once.");
        Assert.Equal(PlanFiles.Place(text, part), (problem.Position.Line, problem.Position.Column));
    }

    // The other way: changes next to the ones above that may be true.
    [Theory]
    [InlineData("loading: { lowest: 148 °C", "loading: { lowest: 158 °C")]
    [InlineData("    thickness_lowest: 38 mm", "    thickness_lowest: 45 mm")]
    [InlineData("    thickness_highest: 56 mm", "    thickness_highest: 4.5 cm")]
    [InlineData("air_lowest: 11 °C", "air_lowest: 80.6 F")]
    [InlineData("dew_point: 7 °C", "dew_point: 14 °C")]
    [InlineData("reference: laboratory, degree: 98 %", "reference: laboratory, degree: 101 %")]
    [InlineData("cessation: { value: 85 °C, place: course-mean", "cessation: { value: 146 °C, place: core")]
    [InlineData("        call: 7 t", "        call: 16 t")]
    [InlineData("overlap: 180 mm", "overlap: 1.64 m")]
    [InlineData("zone_to: 45 m", "zone_to: 15.1 m")]
    [InlineData("        at: 160 m", "        at: 420 m")]
    [InlineData("cloud_eighths: 5", "cloud_eighths: 8")]
    [InlineData("passes_in_mode: 3", "passes_in_mode: 0")]
    [InlineData("loads_before_start: 3", "loads_before_start: 9")]
    [InlineData("sun: 0 W/m2", "sun: 12 W/m2")]
    [InlineData("left_above_interface: 0 mm", "left_above_interface: 3 mm")]
    [InlineData("gradient: -3 %", "gradient: 3 %")]
    [InlineData("end: 04:30", "end: 23:59")]
    [InlineData("  at: 2031-06-13T06:00", "  at: 2031-06-13T04:30")]
    [InlineData("start: 20:45", "start: 19:30")]
    [InlineData("    rate: 0.07 gal/yd2", "    applied: no")]
    [InlineData("    laid: separately\n", "")]
    [InlineData("latitude: 48.25 °", "latitude: -90 °")]
    [InlineData("value: 85 °C", "value: -90 °C")]
    [InlineData("      phase: main", "      spare_: x")]
    public void A_possible_value_is_no_contradiction(string old, string replacement) =>
        Assert.Empty(PlanFiles.Contradictions(PlanFiles.Changed(old, replacement)));

    [Fact]
    public void A_reference_into_a_list_that_the_plan_does_not_have_yet_is_open() =>
        Assert.Empty(PlanFiles.Contradictions("format: 1\nplan: { id: p, stage: concept }\ncourses: [{ id: c, mix: m, thickness: 45 mm }]\nruns: [{ id: a, paver: p1 }]\nrolling: { rollers: [{ id: r, phase: main }] }\nsupply: { trucks: [{ id: t, plant: x, mix: m }] }\njoints: [{ id: j, run: a }]\n"));

    [Fact]
    public void The_nearest_name_is_offered()
    {
        var problem = Assert.Single(PlanFiles.Contradictions(PlanFiles.Changed("      phase: main", "      phase: mani")));

        Assert.Equal("Did you mean `main`?", problem.Hint);
    }

    [Fact]
    public void The_offset_at_the_end_of_the_shift_counts()
    {
        // 06:00 in +01:00 is 07:00 in +02:00, one hour of laying more.
        var text = PlanFiles.Changed("  at: 2031-06-13T06:00", "  at: 2031-06-13T06:00+02:00", PlanFiles.Changed("end: 04:30", "end: 05:30"));

        Assert.Contains("the opening comes before laying ends (by 30 min)", Assert.Single(PlanFiles.Contradictions(text)).Message, StringComparison.Ordinal);
        Assert.Empty(PlanFiles.Contradictions(text.Replace("T06:00+02:00", "T06:30+02:00", StringComparison.Ordinal)));
    }

    [Fact]
    public void All_contradictions_are_told_together_in_file_order()
    {
        var text = PlanFiles.Changed("      phase: main", "      phase: mani", PlanFiles.Changed("payload: 22 t", "payload: 0 t", PlanFiles.Changed("    on: middle\n", "")));
        var problems = PlanFiles.Contradictions(text);

        Assert.Equal(3, problems.Count);
        Assert.Equal(problems.OrderBy(problem => problem.Position), problems);
    }

    [Fact]
    public void A_plan_without_a_file_is_checked_by_path() =>
        Assert.Equal("courses[2].laid", Assert.Single(PlanConsistency.Check(PlanFiles.Plan(PlanFiles.Changed("    on: middle\n", "")))).Path);
}
