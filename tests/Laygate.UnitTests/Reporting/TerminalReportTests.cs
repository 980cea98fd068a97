using System.Globalization;
using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Reporting;

public class TerminalReportTests
{
    [Theory]
    [InlineData(60, 60)]
    [InlineData(80, 80)]
    [InlineData(100, 100)]
    [InlineData(250, 100)]
    [InlineData(10, 40)]
    public void No_line_is_wider_than_the_terminal_or_100_columns(int width, int widest)
    {
        var lines = Lines(width, all: true);
        Assert.All(lines, line => Assert.InRange(TextWidth.Of(line), 0, widest));
        Assert.True(lines.Max(TextWidth.Of) > widest - 12);
    }

    [Fact]
    public void Nothing_is_lost_when_lines_get_shorter() =>
        Assert.Equal(Squeezed(Lines(100, all: true)), Squeezed(Lines(47, all: true)));

    [Fact]
    public void A_word_longer_than_a_line_is_cut_not_lost()
    {
        var report = Samples.Report() with { PlanTitle = new string('重', 90) };
        var lines = TerminalReport.Lines([new FileResult("a", [report], [])], new TerminalSettings(60) { Full = true });
        Assert.All(lines, line => Assert.InRange(TextWidth.Of(line.Text), 0, 60));
        Assert.Equal(90, lines.Sum(line => line.Text.Count(letter => letter == '重')));
    }

    [Fact]
    public void The_worst_comes_first()
    {
        var text = string.Join('\n', Lines(80));
        var order = new[] { "\nFail: 3", "\nWarn: 2", "\nNot assessed: 1", "\nNeeds a person: 1", "\nOpen: 1", "\nPass: 3", "\nBefore you rely on this" }
            .Select(heading => text.IndexOf(heading, StringComparison.Ordinal)).ToList();
        Assert.DoesNotContain(-1, order);
        Assert.Equal(order.Order(), order);
    }

    [Fact]
    public void Each_kind_is_counted_apart_and_none_is_added_up() =>
        Assert.Contains("3 fail, 2 warn, 1 not assessed, 1 needs a person, 1 open, 3 pass, 1 not applicable", Lines(100), StringComparer.Ordinal);

    [Fact]
    public void A_finding_says_its_status_in_words_and_where_it_stands()
    {
        var lines = Lines(100);
        Assert.Contains("FAIL  Course too thin for its aggregate", lines, StringComparer.Ordinal);
        Assert.Contains("NOT ASSESSED  Not known whether this is so: No temperature for opening to traffic", lines, StringComparer.Ordinal);
        Assert.Contains("  where   course:wearing, jobs/harbour-road.yaml:41:16", lines, StringComparer.Ordinal);
        Assert.Contains("  state   `opening.below.value` and `opening.below.place`", lines, StringComparer.Ordinal);
    }

    [Fact]
    public void Why_and_what_to_do_is_said_once_for_one_rule() =>
        Assert.Equal(2, Lines(100).Count(line => line.StartsWith("  do      Lay the course thicker", StringComparison.Ordinal)));

    [Fact]
    public void Passes_are_folded_by_family_unless_asked()
    {
        Assert.Contains(Lines(80), line => line.EndsWith("2 stated (not judged adequate)", StringComparison.Ordinal));
        Assert.DoesNotContain(Lines(80), line => line.Contains("SAF-002", StringComparison.Ordinal));
        Assert.Contains(Lines(80, all: true), line => line.Contains("SAF-002", StringComparison.Ordinal));
    }

    [Fact]
    public void The_caution_ends_every_report()
    {
        var text = Squeezed(Lines(80));
        Assert.All(Caution.Sentences, sentence => Assert.Contains(Squeezed([sentence]), text, StringComparison.Ordinal));
        Assert.EndsWith(Squeezed([Caution.Sentences[^1]]), text, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_of_the_plan_cannot_steer_the_terminal()
    {
        const string Bad = "\u001b[2J\u202Eevil\r\n";
        var finding = Samples.Finding() with { Title = Bad, Why = Bad, Remedy = Bad, Local = Bad, Address = Bad, RuleName = Bad, Rule = Bad, Quantity = Bad };
        var report = Samples.Report() with { Findings = [finding], PlanTitle = Bad, PlanId = Bad, File = Bad, Revision = Bad, BookHash = Bad };
        var lines = TerminalReport.Lines([new FileResult(Bad, [report], [])], new TerminalSettings(80) { Full = true });
        Assert.All(lines, line => Assert.DoesNotContain(line.Text, letter => char.IsControl(letter) || letter == '\u202E'));
    }

    [Fact]
    public void Problems_begin_with_file_line_and_column()
    {
        var problems = new[] { new Problem("a.yaml", "`thicknes` is no key of a course.", "Did you mean `thickness`?", new Position(7, 5, 7, 13)), new Problem("b.yaml", "Empty.", null, null) };
        Assert.Equal(
            ["a.yaml:7:5: `thicknes` is no key of a course.", "  Did you mean `thickness`?", "b.yaml: Empty."],
            ProblemLines.Lines(problems).Select(line => line.Text), StringComparer.Ordinal);
    }

    [Fact]
    public void Output_does_not_depend_on_the_culture_of_the_machine()
    {
        var before = CultureInfo.CurrentCulture;
        var expected = Lines(80);
        try
        {
            var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            comma.NumberFormat.NumberDecimalSeparator = ",";
            CultureInfo.CurrentCulture = comma;
            Assert.Equal(expected, Lines(80), StringComparer.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Nothing_is_written_when_no_plan_could_be_read() =>
        Assert.Empty(TerminalReport.Lines([new FileResult("a", [], [new Problem("a", "Empty.", null, null)])], new TerminalSettings(80)));

    private static string Squeezed(IEnumerable<string> lines) =>
        string.Concat(lines).Replace(" ", string.Empty, StringComparison.Ordinal);

    private static List<string> Lines(int width, bool all = false) =>
        [.. TerminalReport.Lines([Samples.Result()], new TerminalSettings(width, all) { Full = true }).Select(line => line.Text)];
}
