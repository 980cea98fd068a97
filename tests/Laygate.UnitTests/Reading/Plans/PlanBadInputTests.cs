namespace Laygate.UnitTests.Reading.Plans;

/// <summary>What people write by mistake, through reading, schema, mapping and consistency as a whole.</summary>
public class PlanBadInputTests
{
    [Theory]
    [InlineData("thickness: 72 mm", "thickness: 7,2 cm", "7,2 cm")]
    [InlineData("thickness: 72 mm", "thickness: 72mm", "72mm")]
    [InlineData("thickness: 72 mm", "thickness: 72", "72")]
    [InlineData("thickness: 72 mm", "thickness: 1e3", "1e3")]
    [InlineData("thickness: 72 mm", "thickness: 1e3 mm", "1e3 mm")]
    [InlineData("thickness: 72 mm", "thickness: 017", "017")]
    [InlineData("thickness: 72 mm", "thickness: 22:30", "22:30")]
    [InlineData("thickness: 72 mm", "thickness: no", "no")]
    [InlineData("thickness: 72 mm", "thickness: .nan", ".nan")]
    [InlineData("thickness: 72 mm", "thickness: 72\u00A0mm", "72\u00A0mm")]
    [InlineData("thickness: 72 mm", "thickness: 1,5 in", "1,5 in")]
    [InlineData("thickness: 72 mm", "thickness: 72 MM", "72 MM")]
    [InlineData("thickness: 72 mm", "thickness: 72 m2", "72 m2")]
    [InlineData("payload: 22 t", "payload: 22 ton", "22 ton")]
    [InlineData("temperature_loss: 3 K", "temperature_loss: 5 °F", "5 °F")]
    [InlineData("set_up: 35 min", "set_up: 00:35", "00:35")]
    [InlineData("start: 20:45", "start: 8:45", "8:45")]
    [InlineData("start: 20:45", "start: 24:00", "24:00")]
    [InlineData("zone: +02:00", "zone: +2", "+2")]
    [InlineData("zone: +02:00", "zone: CET", "CET")]
    [InlineData("date: 2031-06-12", "date: 12.06.2031", "12.06.2031")]
    [InlineData("date: 2031-06-12", "date: 2031-06-31", "2031-06-31")]
    [InlineData("last_look: 2031-06-12T15:00", "last_look: 2031-06-12 15:00", "2031-06-12 15:00")]
    [InlineData("broken: yes", "broken: true", "true")]
    [InlineData("broken: yes", "broken: \"on\"", "\"on\"")]
    [InlineData("count: 9", "count: 9.0", "9.0")]
    [InlineData("count: 9", "count: 09", "09")]
    [InlineData("count: 9", "count: 9 trucks", "9 trucks")]
    [InlineData("jurisdiction: DE", "jurisdiction: Germany", "Germany")]
    [InlineData("id: coat-2", "id: Coat 2", "Coat 2")]
    [InlineData("id: coat-2", "id: coat_2", "coat_2")]
    [InlineData("laid: separately", "laid: hot on hot", "hot on hot")]
    [InlineData("sieve: 22 mm", "sieve: 23 mm", "23 mm")]
    [InlineData("format: 1", "format: 2", "2")]
    [InlineData("thickness: 72 mm", "thickness: -72 mm", "-72 mm")]
    public void One_clear_problem_points_at_the_value(string old, string replacement, string value)
    {
        var text = PlanFiles.Changed(old, replacement);
        var problem = Assert.Single(PlanFiles.Problems(text));

        var (line, column) = PlanFiles.Place(text, replacement);
        Assert.Equal((line, column + replacement.Length - value.Length), (problem.Position.Line, problem.Position.Column));
        Assert.EndsWith(".", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("thickness: 72 mm", "thickness: 7,2 cm", "`7.2 cm`")]
    [InlineData("thickness: 72 mm", "thickness: 72 MM", "`72 mm`")]
    [InlineData("thickness: 72 mm", "thickness: 72", "`72 mm`")]
    [InlineData("thickness: 72 mm", "thickness: 1e3 mm", "`1000 mm`")]
    [InlineData("payload: 22 t", "payload: 22 ton", "`22 short ton`")]
    [InlineData("temperature_loss: 3 K", "temperature_loss: 9 °F", "`5 K`")]
    [InlineData("rate: 0.35 kg/m2", "rate: 0.35 kg", "`0.3 kg/m2`")]
    [InlineData("start: 20:45", "start: 8:45", "`08:45`")]
    [InlineData("start: 20:45", "start: 24:00", "`00:00`")]
    [InlineData("start: 20:45", "start: 8 pm", "00:00 to 23:59")]
    [InlineData("zone: +02:00", "zone: +2", "`+02:00`")]
    [InlineData("zone: +02:00", "zone: CEST", "ahead of UTC")]
    [InlineData("date: 2031-06-12", "date: 12.06.2031", "year, month and day")]
    [InlineData("date: 2031-06-12", "date: 2031-06-31", "no such day")]
    [InlineData("date: 2031-06-12", "date: 0001-01-01", "year from 1900 to 2199")]
    [InlineData("date: 2031-06-12", "date: 9999-12-31", "year from 1900 to 2199")]
    [InlineData("last_look: 2031-06-12T15:00", "last_look: 2031-06-12 15:00", "`2031-06-12T15:00`")]
    [InlineData("last_look: 2031-06-12T15:00", "last_look: 2031-06-12T15:00Z", "`+00:00`")]
    [InlineData("last_look: 2031-06-12T15:00", "last_look: 2031-06-12", "time of day")]
    [InlineData("last_look: 2031-06-12T15:00", "last_look: 0001-01-01T15:00", "year from 1900 to 2199")]
    public void The_right_form_is_shown(string old, string replacement, string right) =>
        Assert.Contains(right, Assert.Single(PlanFiles.Problems(PlanFiles.Changed(old, replacement))).Hint, StringComparison.Ordinal);

    [Theory]
    [InlineData("    thickness: 72 mm", "    thicknes: 72 mm", "thicknes:")]
    [InlineData("  wind_height: 10 m", "  wind_hight: 10 m", "wind_hight")]
    [InlineData("\nrolling:", "\nroling:", "roling:")]
    public void An_unknown_key_is_one_problem_with_the_nearest_known_one(string old, string replacement, string key)
    {
        var text = PlanFiles.Changed(old, replacement);
        var problem = Assert.Single(PlanFiles.Problems(text));

        Assert.Equal(PlanFiles.Place(text, key), (problem.Position.Line, problem.Position.Column));
        Assert.Contains("Did you mean", problem.Hint, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("    mix: mix-b\n    thickness: 72 mm\n", "    mix: mix-b\n", "id: lower")]
    [InlineData("  stage: submission\n", "", "plan:")]
    public void A_missing_key_points_at_the_key_above_it(string old, string replacement, string place)
    {
        var text = PlanFiles.Changed(old, replacement);
        var problem = Assert.Single(PlanFiles.Problems(text));

        Assert.Equal(PlanFiles.Place(text, place), (problem.Position.Line, problem.Position.Column));
    }

    [Fact]
    public void An_empty_list_says_nothing_and_is_refused()
    {
        var text = PlanFiles.Changed("courses: [lower]", "courses: []");

        Assert.Equal(PlanFiles.Place(text, "courses: []"), Assert.Single(PlanFiles.Problems(text)) is { Position: var at } ? (at.Line, at.Column) : default);
    }
}
