using System.Text;
using Laygate.Checking;
using Laygate.Reading;
using Laygate.Reporting.Cards;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Sheets;

/// <summary>The site sheet of the examples.</summary>
public sealed class SheetTests
{
    private const string Quay = Repository.WholeQuay;
    private const string QuayRules = "examples/particular/port-of-tamarel.yaml";
    private const string Moor = "examples/moor-road-thin-overlay.yaml";

    [Fact]
    public void Sheet_of_the_pair_is_as_approved()
    {
        var sheet = Assert.Single(Make(Quay, QuayRules).Sheets);
        var text = Markdown(sheet with { PlanHash = "plan", BookHash = "book" });
        Approved.Match(text, "quay-road-hot-on-hot");
    }

    [Theory]
    [InlineData("quay-road-hot-on-hot-de", Quay, QuayRules, "de")]
    [InlineData("county-route-us", "examples/county-route-us.yaml", "us-wa", "en")]
    public void Sheets_in_another_language_and_other_units_are_as_approved(string name, string plan, string rules, string language) =>
        Approved.Match(Markdown(Assert.Single(Make(plan, rules).Sheets) with { PlanHash = "plan", BookHash = "book" }, language), name);

    /// <summary>Quay Road by hand: 1050 m, 8.00 m wide, 2.6 m/min; 85 mm at 2.46 t/m³ and 25 mm at 2.38 t/m³; loads of 25 t and 16 t.</summary>
    [Fact]
    public void Times_and_loads_of_the_pair_by_hand()
    {
        var sheet = Make(Quay, QuayRules).Sheets[0];

        // 1050 m / 2.6 m/min = 403.85 min after 21:15 is 03:58:51.
        var last = sheet.Moments.Single(moment => moment.Kind == SheetMomentKind.LastMetre).At;
        Assert.Equal(new DateTimeOffset(2027, 5, 15, 3, 58, 51, TimeSpan.FromHours(2)), last, TimeSpan.FromSeconds(1));

        // 8 · 0.085 · 2.46 = 1.6728 t/m: 1756.44 t and the 8 t that stay in the buffer are 70 loads of 25 t and 14.44 t, ordered as 15 t;
        // 8 · 0.025 · 2.38 = 0.476 t/m: 499.8 t and 5 t are 31 loads of 16 t and 8.8 t, ordered as 9 t.
        Assert.Equal((71, 32), (sheet.Courses[0].Loads, sheet.Courses[1].Loads));
        Assert.Equal(15, sheet.Courses[0].LastLoad.Value!.Number!.Value, 2);
        Assert.Equal(9, sheet.Courses[1].LastLoad.Value!.Number!.Value, 2);

        // At 0.476 · 2.6 = 1.2376 t/min the 16 t of the first surface load fall to the call level of 12 t in 3.23 min and to the lowest
        // level of 5 t in 8.89 min: between them the second one tips. Ticket and journey take 42 min at least.
        var second = sheet.Loads.Single(load => load is { Course: "upper", OfMix: 2 });
        Assert.InRange((second.TipsBy!.Value - sheet.ShiftStart!.Value).TotalMinutes, 3.23, 8.89);
        Assert.True(second.TipsBy - second.LeavesAt >= TimeSpan.FromMinutes(42));
        Assert.Equal(150 + (2 * 33.613), second.EndsAt!.Number!.Value, 2);

        // 85 · 98 / 93 = 89.57 mm and 25 · 98 / 90 = 27.22 mm behind the screeds, by mass balance.
        Assert.Equal(89.57, sheet.Courses[0].Behind.Value!.Number!.Value, 2);
        Assert.Equal(27.22, sheet.Courses[1].Behind.Value!.Number!.Value, 2);
    }

    [Fact]
    public void A_plan_that_fails_gets_no_sheet_but_reasons()
    {
        var result = Make(Moor, "us-wa");
        Assert.Empty(result.Sheets);
        Assert.True(Assert.Single(result.Refused).Counts.Failed > 0);
    }

    [Theory]
    [InlineData("en", "Found wrong in the plan")]
    [InlineData("de", "Im Plan als falsch erkannt")]
    public void First_aid_that_does_harm_is_handed_to_nobody(string language, string warning)
    {
        var sheet = Assert.Single(Make(Moor, "us-wa", draft: true).Sheets);
        using var page = new MemoryStream();
        CardsWriter.Write([sheet], language, page);
        var cards = Encoding.UTF8.GetString(page.ToArray());
        foreach (var text in (string[])[Markdown(sheet), cards])
        {
            Assert.DoesNotContain("pull off the bitumen", text, StringComparison.Ordinal);
            Assert.Contains("SAF-083", text, StringComparison.Ordinal);
        }

        Assert.Contains(warning, cards, StringComparison.Ordinal);
    }

    [Fact]
    public void A_draft_says_so_on_every_card_and_why()
    {
        var text = Markdown(Assert.Single(Make(Moor, "us-wa", draft: true).Sheets));
        var cards = text.Split('\n').Where(line => line.StartsWith("## ", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(cards);
        Assert.All(cards, card => Assert.EndsWith(": DRAFT, not for work", card, StringComparison.Ordinal));
        Assert.Contains("Too few trucks for the planned speed", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_card_names_its_plan_and_who_comes_first()
    {
        var text = Markdown(Make(Quay, QuayRules).Sheets[0]);
        var cards = text.Split("\n---\n")[1..];
        Assert.All(cards, card =>
        {
            Assert.Contains("Plan tamarel-quay-road-east, revision C, hash ", card, StringComparison.Ordinal);
            Assert.Contains($" of {cards.Length}. ", card, StringComparison.Ordinal);
            Assert.Contains("Local law, site conditions and the competent person come first.", card, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Text_of_the_plan_cannot_break_out_of_its_cell()
    {
        var plan = Encoding.UTF8.GetString(Repository.Bytes(Quay)).Replace(
            "action: R6 takes its place", "action: \"<script>x</script> | [a](http://b.example) `c` **d** \\u202E\"", StringComparison.Ordinal);
        var check = new PlanCheck(Repository.Bound(QuayRules), new CheckSettings(null, Repository.CheckDate, Repository.Version));
        var text = Markdown(Assert.Single(check.Sheet("a", Encoding.UTF8.GetBytes(plan), draft: false).Sheets));
        Assert.Contains("at once: &lt;script&gt;x&lt;/script&gt; \\| \\[a\\](http&#58;//b.example) \\`c\\` \\*\\*d\\*\\* \\\\u{202E} (foreman)", text, StringComparison.Ordinal);
    }

    private static string Markdown(SiteSheet sheet, string language = "en") => CardsWriter.Markdown([sheet], language);

    private static SheetResult Make(string plan, string rules, bool draft = false) =>
        new PlanCheck(Repository.Bound(rules), new CheckSettings(null, Repository.CheckDate, Repository.Version)).Sheet(plan, Repository.Bytes(plan), draft);
}
