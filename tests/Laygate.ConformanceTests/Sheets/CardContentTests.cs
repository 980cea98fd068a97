using System.Globalization;
using System.Text;
using Laygate.Checking;
using Laygate.Model.Plans;
using Laygate.Reading;
using Laygate.Reporting.Cards;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Sheets;

/// <summary>What each crew finds on its card, and that no form says it otherwise.</summary>
public sealed class CardContentTests
{
    private static readonly Lazy<SiteSheet> Quay = new(() => Make(Repository.WholeQuay, "examples/particular/port-of-tamarel.yaml"));
    private static readonly Lazy<SiteSheet> County = new(() => Make("examples/county-route-us.yaml", "us-wa"));

    public static TheoryData<string> Roles() => ["Shift manager", "Foreman", "Screed and level", "Feeder", "Rolling, main: r3, r4", "Spare roller: r6", "Dispatcher plant-a", "Quality", "Traffic and safety"];

    [Theory]
    [MemberData(nameof(Roles))]
    public void Each_crew_has_one_card(string role) => Assert.Single(new CardSet(Quay.Value, CardTexts.Of("en")).Cards(), card => card.Role == role);

    /// <summary>Spread by hand: 85 mm · 2.46 t/m³ = 209.1 kg/m² and 8 m · 209.1 = 1.6728 t/m, so that 25 t reach 14.94 m; 25 mm · 2.38 t/m³ = 59.5 kg/m², 0.476 t/m, 33.61 m.</summary>
    [Fact]
    public void Foreman_finds_what_to_lay_joints_bond_coat_grit_and_three_things_to_stop_for()
    {
        var card = Card(Quay.Value, "Foreman");
        var lay = Table(card, "What to lay");
        Assert.Equal(["lower: AC 16 binder, modified", "209 kg/m²", "1.67 t/m", "25 t", "14.9 m", "5.7 min"], lay.Rows[0].Select(Plain), StringComparer.Ordinal);
        Assert.Equal(["59.5 kg/m²", "0.476 t/m", "16 t", "33.6 m"], lay.Rows[1].Skip(1).Take(4).Select(Plain), StringComparer.Ordinal);
        Assert.Equal(3, List(card, "Three things to stop for").Count);
        Assert.Contains("600 mm off the joint below; cut upright, over the full height; cut off 1.5 m; clean and coat the face", List(card, "Joints")[0]);
        Assert.Contains("300 g/m² sprayed (60 % stays); sprayed 19:30; pave only when it has broken", List(card, "Bond coat")[0]);
        Assert.Contains("all spread by minute 10 behind the last screed", List(card, "Grit")[1]);
        Assert.Contains("surface at least 100 °C", List(card, "Grit")[2]);

        // The shift begins at 21:15, and the last metre is laid at 03:58:51: an hour each from 22:00 to 03:00 besides.
        var hours = card.Blocks.OfType<CardRun>().Single();
        Assert.Equal(["21:15", "22:00", "23:00", "Sat 00:00", "Sat 01:00", "Sat 02:00", "Sat 03:00"], hours.Rows.Select(row => Plain(row[0])), StringComparer.Ordinal);
    }

    /// <summary>It is colder and windier hour by hour in this plan, so no window grows; the last hour is the one that the rule judges.</summary>
    [Fact]
    public void Windows_by_hour_end_at_the_window_that_is_judged()
    {
        foreach (var course in Quay.Value.Courses)
        {
            var minutes = course.Hours.Select(hour => hour.Value.Number!.Value).ToList();
            Assert.Equal(minutes.OrderDescending(), minutes);
            Assert.Equal(course.Window.Value!.Number!.Value, minutes[^1], 0.5);
        }
    }

    [Fact]
    public void Dispatcher_finds_rhythm_queue_first_and_last_load_and_what_to_do_when_the_paver_calls()
    {
        var card = Card(Quay.Value, "Dispatcher plant-a");
        Assert.Equal(["GO", "HOLD", "END", "No answer"], card.Blocks.OfType<CardList>().First().Items.Select(item => item.Lead), StringComparer.Ordinal);
        var rhythm = string.Join('\n', List(card, "Rhythm"));
        Assert.Contains("first load leaves 20:15, then one every 5.7 min", rhythm);
        Assert.Contains("queue to aim at: each truck waits 8 min, 1.4 trucks at a time", rhythm); // 8 min wait at one load each 5.74 min.
        Assert.Contains("on site before laying starts: 5 loads", rhythm);
        Assert.Contains("last load for lower: no. 71, 15 t", rhythm);
        Assert.Equal(71, card.Blocks.OfType<CardRun>().Single().Rows.Count);
    }

    [Fact]
    public void Quality_finds_each_test_of_the_shift_with_place_criterion_limit_and_blank()
    {
        var tests = Table(Card(Quay.Value, "Quality"), "Tests");
        Assert.Equal(8, tests.Rows.Count); // Nine, of which the trial length was laid before.
        Assert.All(tests.Rows, row => Assert.Equal("______", row[^1]));
        Assert.Contains(tests.Rows, row => row[0].StartsWith("density", StringComparison.Ordinal) && Plain(row[2]).EndsWith("In the plan: at least 98 %", StringComparison.Ordinal));
        Assert.Contains(tests.Rows, row => row[0].StartsWith("yield", StringComparison.Ordinal) && Plain(row[2]).Contains("≈ 14.9 m (lower); ≈ 33.6 m (upper)", StringComparison.Ordinal));
        Assert.Contains(tests.Rows, row => row[0].StartsWith("thickness", StringComparison.Ordinal) && Plain(row[2]).Contains("at least 21 mm", StringComparison.Ordinal));
    }

    /// <summary>Who answers for lives stands in full as long as there is room; what everybody does all the time is a reference. Nothing is left out.</summary>
    [Theory]
    [InlineData("en")]
    [InlineData("de")]
    public void Every_measure_of_safety_stands_on_the_card(string language)
    {
        foreach (var sheet in new[] { Quay.Value, County.Value })
        {
            var texts = CardTexts.Of(language);
            var card = new CardSet(sheet, texts).Cards()[^1];
            var text = string.Join('\n', card.Blocks.OfType<CardList>().SelectMany(list => list.Items).Select(item => item.Whole));
            Assert.All(sheet.Measures, measure => Assert.True(
                text.Contains(measure.Measure.What!, StringComparison.Ordinal) || text.Contains(texts[$"measure.{Words.Of(measure.Measure.Kind!.Value)}"], StringComparison.Ordinal), measure.Measure.Id));
            Assert.Contains("one spotter", text);
        }
    }

    [Fact]
    public void What_comes_hours_later_does_not_stand_among_what_stops_the_work()
    {
        var cards = new CardSet(Quay.Value, CardTexts.Of("en")).Cards();
        foreach (var block in cards.SelectMany(card => card.Blocks).OfType<CardList>())
        {
            Assert.Equal(block.Title is "Opening", block.Items.Any(item => item.Whole.Contains("FRI-004", StringComparison.Ordinal) || item.Whole.Contains("FRI-002", StringComparison.Ordinal)));
        }
    }

    /// <summary>A line that stops the work says what is seen or measured, the limit, and what to do otherwise; a title of a rule names what went wrong and is no instruction.</summary>
    [Fact]
    public void What_stops_the_work_is_an_instruction()
    {
        var stops = List(Card(Quay.Value, "Quality"), "Stop and ask");
        Assert.True(stops.Count >= 8);
        Assert.All(stops, line => Assert.Matches("^[^:]+: .+\\. (Colder|Longer|Less|Wetter or frozen|Later|Older|Later, or the surface does not hold it): .+", line));
        var titles = Repository.Bound("examples/particular/port-of-tamarel.yaml").All.Select(rule => rule.Rule.Definition.Title).ToList();
        Assert.DoesNotContain(stops, line => titles.Exists(title => line.Contains(title, StringComparison.OrdinalIgnoreCase)));
    }

    [Fact]
    public void Every_instruction_on_site_has_german_words()
    {
        var rules = Repository.Bound("us-wa").All.Select(rule => rule.Rule.Definition).Where(rule => rule.OnSite is not null).ToList();
        Assert.True(rules.Count > 20);
        Assert.All(rules, rule => Assert.NotNull(CardTexts.Of("de").OnSite(rule.Id)));
        Assert.All(rules, rule => Assert.NotEqual(rule.Title, rule.OnSite!.Watch, StringComparer.Ordinal));
    }

    /// <summary>4 °C are 39.2 °F (exactly): a lower limit of 4 °C is never shown as 39 °F. 55 °F are 12.777… °C, 60 °F are 15.555… °C.</summary>
    [Theory]
    [InlineData("4 °C", 39.2, "°F", true, "at least 4 °C (39.2 °F)")]
    [InlineData("55 F", 12.7777778, "°C", true, "at least 55 °F (12.8 °C)")]
    [InlineData("60 F", 15.5555556, "°C", false, "at most 60 °F (15.5 °C)")]
    [InlineData(null, 39.2, "°F", true, "at least 39.2 °F")]
    [InlineData(null, 3.0, "K", true, "at least 3 °C")]
    public void Limits_stand_in_the_unit_of_their_source_and_are_rounded_to_the_safe_side(string? stated, double number, string unit, bool isLow, string shown)
    {
        var end = new ShownValue(number, unit);
        Assert.Equal(shown, Plain(new CardNumbers(CardTexts.Of("en"), Quay.Value).Limit(Limit(isLow ? end : null, isLow ? null : end, stated))));
    }

    /// <summary>A difference of 3 K is one of 3 °C, and of 5.4 °F where the crew's thermometers show °F.</summary>
    [Fact]
    public void A_difference_of_temperatures_is_shown_in_degrees()
    {
        Assert.Contains(List(Card(County.Value, "Quality"), "Stop and ask"), line => line.Contains("at least 3 °C (5.4 °F)", StringComparison.Ordinal));
        Assert.Contains(List(Card(Quay.Value, "Quality"), "Stop and ask"), line => line.Contains("at least 3 °C. Less:", StringComparison.Ordinal));
    }

    /// <summary>No number that is shown for a limit allows more than the limit itself.</summary>
    [Fact]
    public void No_limit_is_shown_laxer_than_it_is()
    {
        var numbers = new CardNumbers(CardTexts.Of("en"), Quay.Value);
        foreach (var unit in (string[])["min", "°C", "°F", "h", "m", "mm", "m/min", "t", "%", "kg/m2"])
        {
            for (var number = 0.37; number < 900; number *= 1.171)
            {
                Assert.True(First(numbers.Safe(new ShownValue(number, unit), up: true)) >= number - 1e-6, $"{number} {unit}");
                Assert.True(First(numbers.Safe(new ShownValue(number, unit), up: false)) <= number + 1e-6, $"{number} {unit}");
                Assert.True(First(numbers.Limit(Limit(new ShownValue(number, unit), null, "1 x")).Split('(')[1]) >= number - 1e-6, $"{number} {unit}");
            }
        }

        static double First(string text) => double.Parse(text.Split('\u00A0')[0].Split(' ')[^1].TrimEnd(','), CultureInfo.InvariantCulture);
    }

    /// <summary>One set of cards, thin writers: what stands on the page stands in Markdown, in both languages.</summary>
    [Theory]
    [InlineData("en")]
    [InlineData("de")]
    public void Page_and_markdown_say_the_same(string language)
    {
        foreach (var sheet in new[] { Quay.Value, County.Value })
        {
            using var stream = new MemoryStream();
            CardsWriter.Write([sheet], language, stream);
            var page = Letters(System.Net.WebUtility.HtmlDecode(System.Text.RegularExpressions.Regex.Replace(Encoding.UTF8.GetString(stream.ToArray()), "<style>[^<]*</style>|<[^>]*>", " ", System.Text.RegularExpressions.RegexOptions.Singleline, TimeSpan.FromMinutes(5))));
            var markdown = Letters(System.Net.WebUtility.HtmlDecode(CardsWriter.Markdown([sheet], language)));
            foreach (var block in new CardSet(sheet, CardTexts.Of(language)).Cards().SelectMany(card => card.Blocks))
            {
                IEnumerable<string> texts = block switch
                {
                    CardList list => list.Items.SelectMany(item => new[] { item.Lead, item.Text }),
                    CardTable table => table.Rows.SelectMany(row => row),
                    CardRun run => run.Rows.SelectMany(row => row),
                    _ => [],
                };
                Assert.All(texts.Append(block.Title), text => Assert.True(page.Contains(Letters(text), StringComparison.Ordinal) && markdown.Contains(Letters(text), StringComparison.Ordinal), text));
            }
        }

        static string Letters(string text) => new([.. text.Where(char.IsLetterOrDigit)]);
    }

    [Fact]
    public void No_form_calls_the_simulated_order_even_or_no_simulation()
    {
        foreach (var language in CardTexts.Languages)
        {
            var text = CardsWriter.Markdown([Quay.Value], language);
            Assert.DoesNotContain("even balance", text, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("not a simulation", text, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("even work", text, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Theory]
    [InlineData("en", "In doubt", "emergency number", "Local law")]
    [InlineData("de", "Im Zweifel", "Notruf", "Örtliches Recht")]
    public void Stop_and_ask_the_emergency_line_and_local_law_stand_on_every_card(string language, params string[] parts)
    {
        var cards = CardsWriter.Markdown([Quay.Value], language).Split("\n---\n");
        Assert.True(cards.Length > 10);
        Assert.All(cards, card =>
        {
            var places = parts.Select(part => card.IndexOf(part, StringComparison.Ordinal)).ToList();
            Assert.DoesNotContain(-1, places);
            Assert.Equal(places.Order(), places);
        });
    }

    private static ShownLimit Limit(ShownValue? low, ShownValue? high, string? stated) => new(
        Strength.Required, Basis.Requirement, low, high, LowExclusive: false, HighExclusive: false, stated, null, null, Quay.Value.Limits[0].Finding.Limit!.Source, null, Layer.GeneralPractice, null);

    private static Card Card(SiteSheet sheet, string role) => new CardSet(sheet, CardTexts.Of("en")).Cards().Single(card => card.Role == role);

    private static CardTable Table(Card card, string title) => card.Blocks.OfType<CardTable>().Single(table => table.Title.StartsWith(title, StringComparison.Ordinal));

    private static List<string> List(Card card, string title) => [.. card.Blocks.OfType<CardList>().Single(list => list.Title == title).Items.Select(item => Plain(item.Whole))];

    private static string Plain(string text) => text.Replace('\u00A0', ' ');

    private static SiteSheet Make(string plan, string rules) =>
        Assert.Single(new PlanCheck(Repository.Bound(rules), new CheckSettings(null, Repository.CheckDate, Repository.Version)).Sheet(plan, Repository.Bytes(plan), draft: false).Sheets);
}
