using System.Globalization;
using Laygate.Model.Plans;
using Laygate.Reporting.Cards;
using Laygate.Rules.Results;

namespace Laygate.HostTests;

/// <summary>Cards for print.</summary>
[Long]
public sealed class CardTests
{
    private static readonly Lazy<string> English = new(() => Program("examples/quay-road-hot-on-hot.yaml", "--rules", "examples/particular/port-of-tamarel.yaml"));
    private static readonly Lazy<string> German = new(() => Program("examples/quay-road-hot-on-hot.yaml", "--rules", "examples/particular/port-of-tamarel.yaml", "--language", "de"));
    private static readonly Lazy<string> County = new(() => Program("examples/county-route-us.yaml", "--rules", "us-wa", "--language", "de"));
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
        foreach (var (page, first) in new[] { (English.Value, "In doubt stop and ask. In an emergency call the local emergency number first. Local law, site conditions and the competent person come first."), (German.Value, "&#xD6;rtliches Recht, Verh&#xE4;ltnisse vor Ort") })
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
        var folder = Directory.CreateTempSubdirectory("laygate-test-");
        try
        {
            var plan = Path.Combine(folder.FullName, "plan.yaml");
            File.WriteAllText(plan, File.ReadAllText(Path.Combine(SourceTree.Root, "examples", "moor-road-thin-overlay.yaml")).Replace("base: 39 °F", "base: 4 °C", StringComparison.Ordinal));
            var page = Program(plan, "--draft", "--rules", "us-wa");
            Assert.Contains("at least 55\u00A0\u00B0F (12.8\u00A0\u00B0C)", System.Net.WebUtility.HtmlDecode(page), StringComparison.Ordinal);
            Assert.DoesNotContain("12.77", page, StringComparison.Ordinal);
            Assert.Empty(PageText.All(page, @"(\d\.\d{4,})"));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void Language_is_that_of_the_crew()
    {
        Assert.Contains("<html lang=\"de\">", German.Value, StringComparison.Ordinal);
        Assert.Contains("Einbaubohle", German.Value, StringComparison.Ordinal);
        Assert.DoesNotContain("Shift manager", German.Value, StringComparison.Ordinal);
        Assert.Contains("Shift manager", English.Value, StringComparison.Ordinal);
    }

    /// <summary>Half a sentence in each language helps nobody: no title of a rule stands in English on a German card, and the plan's own words are in quotes.</summary>
    [Fact]
    public void German_cards_speak_german_but_for_the_words_of_the_plan()
    {
        var rules = Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "rules"), "rule.yaml", SearchOption.AllDirectories).Select(File.ReadAllText).ToList();
        var titles = rules.Select(rule => PageText.All(rule, "(?m)^title: ([^\n]*)")[0]).ToList();
        Assert.True(titles.Count > 100);
        foreach (var page in (string[])[German.Value, Draft.Value, County.Value])
        {
            Assert.DoesNotContain(titles, title => page.Contains(title, StringComparison.OrdinalIgnoreCase));
            Assert.Contains("(WEA-003)", page, StringComparison.Ordinal);
            Assert.Contains("steht so im Plan", page, StringComparison.Ordinal);
        }

        Assert.Contains("&#x201E;relief driver at 00:30&#x201C;", German.Value, StringComparison.Ordinal);
        Assert.Contains("2,6", German.Value, StringComparison.Ordinal);
        Assert.DoesNotContain("2.6", PageText.Without(German.Value, "&#x201E;.*?&#x201C;|<style>.*?</style>"), StringComparison.Ordinal);
        Assert.Contains("mindestens 24&#xA0;h", Program("examples/moor-road-thin-overlay.yaml", "--draft", "--rules", "de", "--language", "de"), StringComparison.Ordinal);

        // Every rule of safety that a card can call wrong, with what to do.
        var wrong = rules.Where(rule => PageText.All(rule, "(?m)^id: (SAF-[0-9]*)").Count == 1 && !rule.Contains("\ncheck: present", StringComparison.Ordinal)).Select(rule => PageText.All(rule, "(?m)^id: ([^\n]*)")[0]).ToList();
        Assert.True(wrong.Count > 20);
        Assert.All(wrong, id => Assert.NotEmpty(CardTexts.Of("de").Rule(id)?.Remedy ?? string.Empty));
    }

    [Fact]
    public void A_draft_says_so_on_every_side() =>
        Assert.Equal(PageText.Count(Draft.Value, "<article class=\"card\">"), PageText.Count(Draft.Value, "class=\"draft\">ENTWURF"));

    [Fact]
    public void Long_lists_go_on_over_sides_and_lose_nothing()
    {
        var rows = Enumerable.Range(1, 120).Select(i => (IReadOnlyList<string>)[i.ToString(CultureInfo.InvariantCulture), "x"]).ToList();
        var sheet = new SiteSheet
        {
            PlanId = "p",
            PlanHash = "h",
            BookHash = "b",
            ProgramVersion = "v",
            Issued = new DateOnly(2026, 11, 25),
            IsDraft = false,
            Failing = [],
            Warnings = [],
            Moments = [],
            Courses = [],
            Loads = [],
            Widths = [],
            Speeds = [],
            Buffers = [],
            Rollers = [],
            Plants = [],
            Committed = [],
            GritWindow = new SheetFigure(null, FigureKind.Computed),
            Limits = [],
            Mixes = [],
            Obstacles = [],
            OverheadLines = [],
            Opening = new SheetOpening(new SheetFigure(null, FigureKind.Stated), null, null),
            People = [],
            HoldPoints = [],
            Contingencies = [],
            Tests = [],
            Measures = [],
        };
        var texts = CardTexts.Of("en");
        var sides = Paging.Split(new Card("role", [new CardList("a", ["one"]), new CardTable("b", ["n", "x"], rows)]), new CardFrame(sheet, texts), texts);
        Assert.True(sides.Count > 2);
        Assert.Equal(rows.Select(row => row[0]), sides.SelectMany(side => side.Blocks).OfType<CardTable>().SelectMany(table => table.Rows).Select(row => row[0]), StringComparer.Ordinal);
        Assert.All(sides, side => Assert.Equal(sides.Count, side.Sides));
        Assert.Equal("b (continued)", sides[1].Blocks[0].Title);
    }

    [SkippableFact]
    public void Each_side_fits_on_one_side_of_a5()
    {
        foreach (var page in (string[])[English.Value, German.Value, Draft.Value, County.Value])
        {
            var look = BrowserLook.At(page, "cards");
            Assert.All(look["room"]!.AsArray(), room => Assert.True(room!.GetValue<int>() >= 0, $"a side runs over by {room}"));
            Assert.Equal(0, look["wide"]!.GetValue<int>());
            Assert.Equal(PageText.Count(page, "<article class=\"card\">"), look["pages"]!.GetValue<int>()); // A side is a page of the PDF, and none is empty.
        }
    }

    /// <summary>At most two sides of A5 a role besides its list of loads, for every example; the first example of the README has at most 22 in all.</summary>
    [SkippableTheory]
    [InlineDataOfFullRun("examples/quay-road-hot-on-hot.yaml", "examples/particular/port-of-tamarel.yaml", 22)]
    [InlineData("examples/county-route-us.yaml", "us-wa", 0)]
    [InlineDataOfFullRun("examples/moor-road-thin-overlay.yaml", "us-wa", 0)]
    [InlineDataOfFullRun("examples/moor-road-thin-overlay.yaml", "de", 0)]
    [InlineDataOfFullRun("examples/concept-fifteen-lines.yaml", null, 0)]
    public void A_role_has_at_most_two_sides_besides_its_loads(string plan, string? rules, int most)
    {
        foreach (var language in CardTexts.Languages)
        {
            var page = Program([plan, "--language", language, .. most > 0 ? Array.Empty<string>() : ["--draft"], .. rules is null ? Array.Empty<string>() : ["--rules", rules]]);
            var look = BrowserLook.At(page, "cards");
            var sides = look["sides"]!.AsArray().Select(side => (Role: side!["role"]!.GetValue<string>(), HasMore: side["more"]!.GetValue<bool>())).ToList();
            Assert.All(sides.Where(side => side.HasMore).GroupBy(side => side.Role, StringComparer.Ordinal), role => Assert.True(role.Count() <= 2, $"{role.Key}: {role.Count()} sides"));
            Assert.True(most == 0 || look["pages"]!.GetValue<int>() <= most, $"{look["pages"]} pages");
        }
    }

    [SkippableFact]
    public void Drafts_and_other_units_are_accessible_and_fit_a_telephone_too()
    {
        foreach (var page in (string[])[Draft.Value, County.Value])
        {
            Assert.Empty(BrowserLook.Texts(BrowserLook.At(page, "accessibility")["violations"]));
            Assert.All(BrowserLook.At(page, "overflow")["overflow"]!.AsObject(), width => Assert.Equal(0, width.Value!.GetValue<int>()));
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
    [InlineData("--language takes en or de, not `fr`.", "--language", "fr")]
    [InlineData("--format takes markdown or html, not `pdf`.", "--format", "pdf")]
    public void Arguments_that_cannot_be_used_are_explained(string message, params string[] arguments)
    {
        using var app = new AppHarness();
        Assert.Equal(2, app.Run(["sheet", "plan.yaml", .. arguments]));
        Assert.Contains(message, app.Error, StringComparison.Ordinal);
    }

    private static List<string> Blanks(string text) => [.. PageText.All(text, @"\{\d\}").Order(StringComparer.Ordinal)];

    private static string Program(params string[] arguments) =>
        BuiltProgram.Run(null, SourceTree.Root, ["sheet", .. arguments, "--format", "html", "--date", "2026-11-25"]).Out;
}
