using System.Globalization;
using Laygate.Model.Plans;
using Laygate.Reporting.Cards;
using Laygate.Rules.Results;

namespace Laygate.HostTests;

/// <summary>Cards for print.</summary>
public sealed class CardTests
{
    private static readonly Lazy<string> English = new(() => Program("examples/quay-road-hot-on-hot.yaml", "--rules", "examples/particular/port-of-tamarel.yaml"));
    private static readonly Lazy<string> German = new(() => Program("examples/quay-road-hot-on-hot.yaml", "--rules", "examples/particular/port-of-tamarel.yaml", "--language", "de"));
    private static readonly Lazy<string> Draft = new(() => Program("examples/moor-road-thin-overlay.yaml", "--draft", "--language", "de"));

    [Fact]
    public void Every_language_has_every_word_with_the_same_blanks()
    {
        var english = CardTexts.Of("en");
        foreach (var texts in CardTexts.Languages.Select(CardTexts.Of))
        {
            Assert.Equal(english.Keys.Order(StringComparer.Ordinal), texts.Keys.Order(StringComparer.Ordinal));
            foreach (var key in texts.Keys)
            {
                Assert.NotEmpty(texts[key].Trim());
                Assert.Equal(Blanks(english[key]), Blanks(texts[key]));
            }
        }
    }

    [Fact]
    public void Every_word_of_a_closed_list_is_in_the_catalogue()
    {
        var keys = CardTexts.Of("de").Keys.ToHashSet(StringComparer.Ordinal);
        string[] wanted =
        [
            .. Words.Of<RollingMode>().Select(word => $"mode.{word}"), .. Words.Of<ContingencyEvent>().Select(word => $"event.{word}"), .. Words.Of<TestKind>().Select(word => $"test.{word}"),
            .. Words.Of<MeasureKind>().Select(word => $"measure.{word}"), .. Words.Of<SheetMomentKind>().Select(word => $"moment.{word}"),
        ];
        Assert.DoesNotContain(wanted, key => !keys.Contains(key));
    }

    [Fact]
    public void Each_side_names_plan_revision_hash_shift_and_who_comes_first()
    {
        foreach (var (page, first) in new[] { (English.Value, "Site conditions and the competent person come first."), (German.Value, "Verh&#xE4;ltnisse vor Ort") })
        {
            var sides = PageText.All(page, "<article class=\"card\">.*?</article>");
            Assert.True(sides.Count > 10);
            Assert.All(sides, side => Assert.Contains("tamarel-quay-road-east", side, StringComparison.Ordinal));
            Assert.All(sides, side => Assert.Contains(first, side, StringComparison.Ordinal));
            Assert.All(sides, side => Assert.DoesNotContain("class=\"draft\"", side, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void A_limit_in_another_unit_has_few_digits_and_errs_to_the_safe_side()
    {
        // 55 °F are 12.777… °C: not below 12.8 °C.
        var page = Program("examples/moor-road-thin-overlay.yaml", "--draft", "--rules", "us-wa");
        Assert.Contains("at least 12.8", page, StringComparison.Ordinal);
        Assert.DoesNotContain("12.77", page, StringComparison.Ordinal);
        Assert.Empty(PageText.All(page, @"(\d\.\d{4,})"));
    }

    [Fact]
    public void Language_is_that_of_the_crew()
    {
        Assert.Contains("<html lang=\"de\">", German.Value, StringComparison.Ordinal);
        Assert.Contains("Einbaubohle", German.Value, StringComparison.Ordinal);
        Assert.DoesNotContain("Shift manager", German.Value, StringComparison.Ordinal);
        Assert.Contains("Shift manager", English.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void A_draft_says_so_on_every_side() =>
        Assert.Equal(PageText.Count(Draft.Value, "<article class=\"card\">"), PageText.Count(Draft.Value, "class=\"draft\">ENTWURF"));

    [Fact]
    public void Long_lists_go_on_over_sides_and_lose_nothing()
    {
        var rows = Enumerable.Range(1, 120).Select(i => (IReadOnlyList<string>)[i.ToString(CultureInfo.InvariantCulture), "x"]).ToList();
        var sides = Paging.Split("role", [new CardList("a", ["one"]), new CardTable("b", ["n", "x"], rows)], title => title + "+");
        Assert.True(sides.Count > 3);
        Assert.Equal(rows.Select(row => row[0]), sides.SelectMany(side => side.Blocks).OfType<CardTable>().SelectMany(table => table.Rows).Select(row => row[0]), StringComparer.Ordinal);
        Assert.All(sides, side => Assert.Equal(sides.Count, side.Sides));
        Assert.Equal("b+", sides[1].Blocks[0].Title);
    }

    [SkippableFact]
    public void Each_side_fits_on_one_side_of_a5()
    {
        foreach (var page in (string[])[English.Value, German.Value, Draft.Value])
        {
            var look = BrowserLook.At(page, "cards");
            Assert.All(look["room"]!.AsArray(), room => Assert.True(room!.GetValue<int>() >= 0, $"a side runs over by {room}"));
            Assert.Equal(0, look["wide"]!.GetValue<int>());
        }
    }

    [SkippableFact]
    public void Accessibility_checker_finds_nothing()
    {
        Assert.Empty(BrowserLook.Texts(BrowserLook.At(English.Value, "accessibility")["violations"]));
        Assert.Empty(BrowserLook.Texts(BrowserLook.At(German.Value, "accessibility")["violations"]));
    }

    [SkippableFact]
    public void Cards_are_no_wider_than_a_telephone() =>
        Assert.All(BrowserLook.At(German.Value, "overflow")["overflow"]!.AsObject(), width => Assert.Equal(0, width.Value!.GetValue<int>()));

    [Theory]
    [InlineData("--language takes en or de, not `fr`.", "--format", "html", "--language", "fr")]
    [InlineData("--language goes with --format html", "--language", "de")]
    [InlineData("--format takes markdown or html, not `pdf`.", "--format", "pdf")]
    public void Arguments_that_cannot_be_used_are_explained(string message, params string[] arguments)
    {
        using var app = new AppHarness();
        Assert.Equal(2, app.Run(["sheet", "plan.yaml", .. arguments]));
        Assert.Contains(message, app.Error, StringComparison.Ordinal);
    }

    private static List<string> Blanks(string text) => [.. PageText.All(text, @"\{\d\}").Order(StringComparer.Ordinal)];

    private static string Program(params string[] arguments) =>
        BuiltProgram.Run(TimeSpan.FromMinutes(3), null, SourceTree.Root, ["sheet", .. arguments, "--format", "html", "--date", "2026-11-25"]).Out;
}
