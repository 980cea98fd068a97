using System.Security.Cryptography;
using System.Text;
using Laygate.Reporting.Html;
using Laygate.Reporting.Language;
using Laygate.Reporting.Runs;
using Laygate.Rules.Comparing;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;
using Laygate.UnitTests.Reporting;

namespace Laygate.HostTests;

/// <summary>The page: what stands in it, that nothing leaks out of it, and how it looks to a browser.</summary>
[Long]
public sealed class HtmlTests
{
    private const string Hostile = "<script>alert(1)</script>\"'&<img src=x onerror=y>\u202E\u001b";

    private static readonly Lazy<string> Quay = new(() => Program("examples/quay-road-hot-on-hot.yaml", "--rules", "examples/particular/port-of-tamarel.yaml"));
    private static readonly Lazy<string> Moor = new(() => Program("examples/moor-road-thin-overlay.yaml", "--rules", "us-wa"));
    private static readonly Lazy<string> County = new(() => Program("examples/county-route-us.yaml", "--rules", "us-wa"));
    private static readonly Lazy<string> Concept = new(() => Program("examples/concept-fifteen-lines.yaml"));

    [Fact]
    public void Plan_text_is_text()
    {
        var finding = Samples.Finding() with { Title = Hostile, Why = Hostile, Address = Hostile, Remedy = Hostile };
        var report = Samples.Report() with { PlanTitle = Hostile, PlanId = Hostile, Findings = [finding], Inputs = [new StatedInput(Hostile, Hostile, 1)], Plots = Plots(Hostile) };
        var page = Written(ReportedRun.Of(report));
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain('\u202E', page);
        Assert.DoesNotContain('\u001b', page);
    }

    [Fact]
    public void The_policy_lets_its_own_style_sheet_through_and_nothing_else()
    {
        foreach (var page in (string[])[Quay.Value, Moor.Value])
        {
            var css = Assert.Single(PageText.All(page, "<style>(.*?)</style>"));
            Assert.Contains($"sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(css)))}".Replace("+", "&#x2B;", StringComparison.Ordinal), page, StringComparison.Ordinal);
            Assert.Empty(PageText.All(page, "(?i)<[^>]* (?:style|on[a-z]+|src)="));
            var body = PageText.Without(page, "<style>.*?</style>").Replace("default-src", string.Empty, StringComparison.Ordinal);
            Assert.Empty(PageText.All(body, "(?i)(?:href|url)[=(][\"']?[^#\"'\\s]"));
        }
    }

    [Fact]
    public void The_same_run_gives_the_same_bytes() => Assert.Equal(Written(Run()), Written(Run()));

    [Fact]
    public void Counts_stand_apart_and_findings_stand_whole()
    {
        var page = Written(Run());
        foreach (var group in Enum.GetValues<FindingGroup>())
        {
            Assert.Contains($"</span> {Names.Of(group)}</span>", page, StringComparison.Ordinal);
        }

        Assert.Contains("What decides", page, StringComparison.Ordinal);
        Assert.Contains("Manual of Layers", page, StringComparison.Ordinal);
        Assert.Contains("whether it is adequate is yours to judge", page, StringComparison.Ordinal);
        Assert.Contains("No earlier revision was compared", page, StringComparison.Ordinal);
        Assert.All(Caution.Sentences, sentence => Assert.Contains(sentence[..20], page, StringComparison.Ordinal));
    }

    [Fact]
    public void Changes_stand_in_the_words_of_a_comparison()
    {
        var (old, run) = (Samples.Report(), Run());
        var thin = old.Findings[0] with { Value = new ShownValue(2, string.Empty), Status = Status.Warn };
        var findings = ReportComparer.Findings(old with { Findings = [thin] }, old with { Findings = [old.Findings[0]] });
        var plan = new PlanComparison(old with { Findings = [thin] }, old, findings, [], [new TextChange("courses.wearing.thickness", "25 mm", "<b>30 mm", null, new Position(7, 1, 7, 2))]) { Counts = ReportComparer.Count(findings) };
        var page = Written(run with { Earlier = new Dictionary<string, ComparisonResult>(StringComparer.Ordinal) { [old.File] = new("old.yaml", old.File, [plan], []) } });
        Assert.Contains("Findings: 0 new, 0 gone, 1 changed, 0 unchanged.", page, StringComparison.Ordinal);
        Assert.Contains("<h4>Worse than before: 1</h4>", page, StringComparison.Ordinal);
        Assert.Contains("`25 mm` became `&lt;b&gt;30 mm` (line 7)", page, StringComparison.Ordinal);
        Assert.Contains("old.yaml, revision C", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Conformity_follows_the_clauses_of_a_specification_where_it_lists_them()
    {
        var report = Samples.Report();
        var clauses = new ClauseCoverage[]
        {
            new("5.2", "Thickness", ClauseStatus.Automated, ["LAY-001"], null),
            new("5.10", "Density", ClauseStatus.Person, [], "laboratory"),
        };
        var with = Written(ReportedRun.Of(report with { Layers = [report.Layers[0], report.Layers[1] with { Clauses = clauses }] }));
        Assert.True(with.IndexOf(">5.2</th>", StringComparison.Ordinal) is > 0 and var first && with.IndexOf(">5.10</th>", StringComparison.Ordinal) > first);
        Assert.Contains("5.10 is kept: Density", with, StringComparison.Ordinal);
        Assert.DoesNotContain(">5.2</th>", Written(ReportedRun.Of(report)), StringComparison.Ordinal);
        Assert.Contains("Every limit that was applied", Written(ReportedRun.Of(report)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_cannot_be_read_gives_a_page_without_plots()
    {
        var page = Written(new ReportedRun("0.1.0", [new FileResult("bad.yaml", [], [new Problem("bad.yaml", "Not a plan.", null, new Position(1, 2, 1, 3))])], []));
        Assert.Contains("Could not be read", page, StringComparison.Ordinal);
        Assert.Contains("bad.yaml:1:2", page, StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"plot\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_without_data_for_plots_gives_no_axes_and_says_what_to_state()
    {
        // Fifteen lines: a run, but no temperature, no window, no trucks.
        Assert.Equal(1, PageText.Count(Concept.Value, "class=\"plot\""));
        Assert.Contains("<figcaption>Runs and joints from above", Concept.Value, StringComparison.Ordinal);
        Assert.Contains("Not drawn: cooling and rolling of", Concept.Value, StringComparison.Ordinal);
        Assert.Contains("Not drawn: buffers over the shift", Concept.Value, StringComparison.Ordinal);
        Assert.Contains("Not drawn: order of loads", Concept.Value, StringComparison.Ordinal);
    }

    [SkippableFact]
    public void A_course_without_temperatures_or_window_gives_no_empty_axes()
    {
        // The fifteen lines, with trucks but no temperature, no wind and no phase of rolling: one course, none hot, no window.
        var folder = Directory.CreateTempSubdirectory("laygate-cold-").FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "cold.yaml"), File.ReadAllText(Path.Combine(SourceTree.Root, "examples", "concept-fifteen-lines.yaml")));
            File.WriteAllText(Path.Combine(folder, "unread.yaml"), "format: 1\nplan: [");
            var cold = Page(folder, "cold.yaml");
            Assert.All(PageText.All(cold, "<figcaption>(.*?)</figcaption>"), title => Assert.Equal("Runs and joints from above", title));
            Assert.Contains("Not drawn: cooling and rolling of", cold, StringComparison.Ordinal);
            var unread = Page(folder, "unread.yaml");
            Assert.Contains("Could not be read", unread, StringComparison.Ordinal);
            Assert.Contains("unread.yaml:2:", unread, StringComparison.Ordinal);
            Assert.DoesNotContain("<figure", unread, StringComparison.Ordinal);
            foreach (var page in new[] { cold, unread, Page(folder, "cold.yaml", "unread.yaml") }.Usual(3))
            {
                Assert.DoesNotContain("NaN", page, StringComparison.Ordinal);
                var look = BrowserLook.At(page, "accessibility");
                Assert.Empty(BrowserLook.Texts(look["violations"]));
                Assert.Equal(1, look["requests"]!.GetValue<int>());
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Silences_about_safety_stand_together_the_gravest_first()
    {
        var page = Moor.Value;
        var captions = PageText.All(page, "<h5 class=\"grade\">(Severity [ABC]: [^<]*)</h5>");
        Assert.Equal(captions.Order(StringComparer.Ordinal), captions, StringComparer.Ordinal);
        Assert.StartsWith("Severity A", captions[0], StringComparison.Ordinal);
        Assert.True(page.IndexOf(captions[0], StringComparison.Ordinal) < page.IndexOf(">Layers", StringComparison.Ordinal));

        // The first page names a few of many, and then what else decides.
        var first = page[..page.IndexOf("Checked against", StringComparison.Ordinal)];
        Assert.Contains("hazards of severity A</strong>", first, StringComparison.Ordinal);
        Assert.Equal(1, PageText.Count(first, "hazards of severity A"));
        Assert.Equal(5, PageText.All(first, "<ol class=\"deciding\">(.*?)</ol>").Sum(list => PageText.Count(list, "<li><span class=\"mark")));
    }

    [Fact]
    public void Every_plot_is_described_and_has_its_values_beside_it()
    {
        foreach (var page in (string[])[Quay.Value, Moor.Value])
        {
            var plots = PageText.Count(page, "class=\"plot\"");
            Assert.True(plots >= 3, $"{plots} plots");
            Assert.Equal(plots, PageText.Count(page, "<table class=\"values\">"));
            Assert.Equal(plots, PageText.Count(page, "<desc id="));
            Assert.DoesNotContain("style=\"", page, StringComparison.Ordinal);
            Assert.DoesNotContain("rgb(1,1,1)", page, StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", page, StringComparison.Ordinal);
        }

        var titles = PageText.All(Quay.Value, "<figcaption>(.*?)</figcaption>");
        Assert.Equal(
            ["Mix held for lower over the shift", "Mix held for upper over the shift", "Order of the loads along the length laid",
             "Temperature of lower and upper behind the last screed", "Passes over a point of upper and its temperature", "Runs and joints from above"], titles);
    }

    [Fact]
    public void Status_colours_stand_in_no_plot()
    {
        // Plots are grey: the three parts of each colour lie close together.
        var plots = PageText.All(Quay.Value, "<svg viewBox.*?</svg>");
        Assert.NotEmpty(plots);
        foreach (var plot in plots)
        {
            foreach (var colour in PageText.All(plot, @"rgb\(([\d,]+)\)"))
            {
                var parts = colour.Split(',').Select(part => int.Parse(part, System.Globalization.CultureInfo.InvariantCulture)).ToList();
                Assert.True(parts.Max() - parts.Min() <= 16, colour);
            }
        }
    }

    [SkippableTheory]
    [InlineDataOfFullRun("quay")]
    [InlineData("moor")]
    [InlineDataOfFullRun("concept")]
    [InlineDataOfFullRun("hand-made")]
    public void Accessibility_checker_finds_nothing_and_nothing_is_requested(string which)
    {
        var look = BrowserLook.At(Example(which), "accessibility");
        Assert.Empty(BrowserLook.Texts(look["violations"]));
        Assert.True(look["passes"]!.GetValue<int>() > 20);
        Assert.Equal(1, look["requests"]!.GetValue<int>());
        Assert.Empty(BrowserLook.Texts(look["complaints"]));
    }

    // WCAG 2.2, 1.4.10: at 320 CSS pixels nothing scrolls in two directions; tables and plots scroll in their own box.
    [SkippableTheory]
    [MemberData(nameof(Examples))]
    public void Page_is_no_wider_than_a_telephone(string which)
    {
        foreach (var (width, over) in BrowserLook.At(Example(which), "overflow")["overflow"]!.AsObject())
        {
            Assert.True(over!.GetValue<int>() == 0, $"{over} px too wide at {width} px");
        }
    }

    /// <summary>On A4 nothing is cut off at the side, plots, findings and rows stay whole, what was opened is printed, and what nobody opened costs no sheet.</summary>
    [SkippableTheory]
    [InlineData("quay", 12)]
    [InlineDataOfFullRun("moor", 20)]
    [InlineDataOfFullRun("county", 12)]
    [InlineDataOfFullRun("concept", 12)]
    [InlineDataOfFullRun("silent", 20)]
    [InlineDataOfFullRun("hand-made", 12)]
    public void Print_fits_its_pages(string which, int most)
    {
        var look = BrowserLook.At(Example(which), "print");
        Assert.Empty(BrowserLook.Texts(look["wide"]));
        Assert.Equal(0, look["tall"]!.GetValue<int>());
        Assert.Equal(0, look["split"]!.GetValue<int>());
        Assert.Equal(0, look["hidden"]!.GetValue<int>());
        Assert.InRange(look["pages"]!.GetValue<int>(), 2, most);
        Assert.True(look["opened"]!.GetValue<int>() > look["pages"]!.GetValue<int>());
    }

    /// <summary>What decides, and whether each hour does, is seen before anybody scrolls (1280 × 900 px).</summary>
    [SkippableTheory]
    [InlineData("quay", true)]
    [InlineDataOfFullRun("moor", true)]
    [InlineDataOfFullRun("county", true)]
    [InlineDataOfFullRun("concept", false)]
    public void The_first_screen_is_the_decision(string which, bool hasHours)
    {
        var look = BrowserLook.At(Example(which), "first");
        Assert.InRange(look["verdict"]!.GetValue<int>(), 1, 300);
        Assert.InRange(look["deciding"]!.GetValue<int>(), hasHours ? 300 : 0, 800);
        Assert.InRange(look["hours"]!.GetValue<int>(), hasHours ? 300 : 0, hasHours ? 900 : 0);
    }

    [Fact]
    public void The_page_holds_every_finding()
    {
        foreach (var (page, arguments) in new (string, string[])[]
        {
            (Quay.Value, ["examples/quay-road-hot-on-hot.yaml", "--rules", "examples/particular/port-of-tamarel.yaml"]),
            (Moor.Value, ["examples/moor-road-thin-overlay.yaml", "--rules", "us-wa"]),
        })
        {
            var json = BuiltProgram.Run(null, SourceTree.Root, ["check", .. arguments, "--quick", "--format", "json", "--date", "2026-11-25", "--fail-on", "none"]).Out;
            var findings = System.Text.Json.Nodes.JsonNode.Parse(json)!["files"]![0]!["reports"]![0]!["findings"]!.AsArray();
            Assert.True(findings.Count > 300);
            Assert.All(findings.Where(finding => finding!["outcome"]!.GetValue<string>() != "not-applicable"), finding =>
                Assert.Contains(finding!["rule"]!.GetValue<string>(), page, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void People_sign_once_for_what_holds()
    {
        var lists = PageText.All(Quay.Value, "<h4 class=\"who\">(.*?)</h4>");
        Assert.Contains(lists, list => list.StartsWith("Whoever answers for safety on site", StringComparison.Ordinal));
        Assert.Equal(lists.Count, PageText.Count(Quay.Value, "<p class=\"field\">"));
        Assert.Equal(lists.Count, lists.Distinct(StringComparer.Ordinal).Count());
        var lines = PageText.All(Quay.Value, "(?s)<li><span aria-hidden=\"true\">[^<]*</span> (.*?)</li>");
        Assert.True(lines.Count > 50, $"{lines.Count}");
        Assert.All(lines, line => Assert.DoesNotContain("is not stated", line, StringComparison.Ordinal));
    }

    [Fact]
    public void Hours_are_margins_the_worst_row_first()
    {
        var at = new DateTimeOffset(2027, 5, 14, 20, 0, 0, TimeSpan.FromHours(2));
        var outlook = new LayingOutlook([.. Enumerable.Range(0, 14).Select(i => Hour(at.AddHours(i), i))], [], null, ["ROL-019", "WEA-001"]);
        var parts = HourStrip.Of(outlook, []);
        Assert.Equal([12, 2], parts.Select(part => part.Hours.Count));
        Assert.All(parts, part => Assert.Equal([null, "WEA-001", "ROL-019"], part.Rows.Select(row => row.Rule), StringComparer.Ordinal));
        var (first, last) = (parts[0].Rows, parts[1].Rows);
        Assert.Equal((LayingVerdict.Pass, "pass"), (first[0].Cells[0].Verdict, first[0].Cells[0].Text));
        Assert.Equal((LayingVerdict.Pass, "+13"), (first[1].Cells[0].Verdict, first[1].Cells[0].Text));
        Assert.Equal((LayingVerdict.Fail, "−0.4"), (last[1].Cells[1].Verdict, last[1].Cells[1].Text));
        Assert.All(first[2].Cells, cell => Assert.Equal((LayingVerdict.Pass, "+25"), (cell.Verdict, cell.Text)));
        Assert.EndsWith("(K)", first[1].Name, StringComparison.Ordinal);
        Assert.EndsWith("(min)", first[2].Name, StringComparison.Ordinal);
        Assert.Equal("13 hours pass, 1 hour fail", HourStrip.Sum(outlook));

        static HourOutlook Hour(DateTimeOffset at, int i)
        {
            var status = i == 13 ? Status.Fail : Status.Pass;
            return new HourOutlook(at, i == 13 ? LayingVerdict.Fail : LayingVerdict.Pass, [], null)
            {
                Limits = [Margin("ROL-019", 25.0 / 60, "h", Status.Pass), Margin("WEA-001", 12.6 - i, "K", status), Margin("WEA-001", 20, "K", Status.Pass)],
            };
        }

        static LimitMargin Margin(string rule, double margin, string unit, Status status) =>
            new(new BrokenLimit(new FindingReference(rule, "A title", "course:a"), status, new ShownValue(10 + margin, unit), null, false), new ShownValue(margin, unit));
    }

    [SkippableFact]
    public void Picture_of_the_readme_is_made_by_the_program()
    {
        var picture = Path.Combine(SourceTree.Root, "docs", "pictures", "report.png");
        if (Environment.GetEnvironmentVariable("LAYGATE_APPROVE") is { Length: > 0 })
        {
            BrowserLook.At(Moor.Value, "picture", picture);
        }

        Assert.True(new FileInfo(picture).Length > 10_000);
        Assert.Contains("docs/pictures/report.png", File.ReadAllText(Path.Combine(SourceTree.Root, "README.md")), StringComparison.Ordinal);
    }

    public static TheoryData<string> Examples => [.. new[] { "quay", "moor", "county", "concept", "hand-made" }.Usual(3)];

    private static string Example(string which) => which switch
    {
        "quay" => Quay.Value,
        "moor" => Moor.Value,
        "county" => County.Value,
        "concept" => Concept.Value,
        "silent" => Program("examples/concept-fifteen-lines.yaml", "--stage", "release"),
        _ => Written(Run()),
    };

    private static ReportedRun Run() => new("0.1.0", [Samples.Result(), Samples.Result() with { File = "two.yaml" }], []);

    private static PlanPlots Plots(string name) => new()
    {
        Loads = new LoadPlot("t", "m", [new LoadMark(1, name, name, 20, 0, 10, null), new LoadMark(2, name, name, 5, 10, 12, null)]),
        Layout = new LayoutPlot("m", [new RunOutline(name, [name], 0, 100, [new WidthMark(0, 4)], [new StationMark(name, name, 50, name)], [])]),
    };

    private static string Written(ReportedRun run)
    {
        using var bytes = new MemoryStream();
        HtmlWriter.Write(run, bytes);
        return Encoding.UTF8.GetString(bytes.ToArray());
    }

    private static string Page(string folder, params string[] plans) =>
        BuiltProgram.Run(null, folder, ["check", .. plans, "--format", "html", "--date", "2026-11-25", "--fail-on", "none"]).Out;

    private static string Program(params string[] arguments) =>
        BuiltProgram.Run(null, SourceTree.Root, ["check", .. arguments, "--format", "html", "--date", "2026-11-25", "--fail-on", "none"]).Out;
}
