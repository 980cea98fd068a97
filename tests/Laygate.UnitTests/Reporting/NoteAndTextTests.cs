using System.Globalization;
using System.Reflection;
using System.Text;
using CsCheck;
using Laygate.Engineering.Quantities;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Reporting;

public class NoteAndTextTests
{
    [Fact]
    public void A_known_remark_is_a_sentence_with_its_arguments() => Assert.Equal(
        "The plan lies in US-WA, but Book speaks for DE: choose the rules of the place with --rules.",
        NoteWords.Of(Note.Of("jurisdiction-differs", ("plan", "US-WA"), ("book", "DE"), ("specification", "Book"))));

    [Fact]
    public void An_unknown_remark_stays_readable() => Assert.Equal(
        "Never heard of: first one a, length 2.35 m.",
        NoteWords.Of(new Note("never-heard-of", [new NoteArgument("first_one", "a"), new NoteArgument("length", null, 2.3456, "m")])));

    [Fact]
    public void An_argument_that_is_not_given_is_said_to_be_so() =>
        Assert.Equal("The mat is below (not given) from the start.", NoteWords.Of(Note.Of("below-from-start")));

    [Fact]
    public void Braces_in_an_argument_stay_as_they_are() =>
        Assert.Contains("{quantity}", NoteWords.Of(Note.Of("row-remark", ("text", "{quantity}"))), StringComparison.Ordinal);

    [Fact]
    public void A_row_that_a_table_lacks_is_named_by_its_keys() => Assert.Equal(
        "The table of the required limit does not list mix kind porous, course thickness 25 mm.",
        NoteWords.Of(new Note("row-not-listed", [new("strength", "required"), new("mix.kind", "porous"), new("course.thickness", null, 25, "mm")])));

    [Theory]
    [InlineData(typeof(NoteIds))]
    [InlineData(typeof(FindingNotes))]
    public void Every_remark_that_can_be_handed_out_has_a_sentence(Type ids)
    {
        var known = ids.GetFields(BindingFlags.Public | BindingFlags.Static).Where(field => field.IsLiteral).Select(field => (string)field.GetRawConstantValue()!).ToList();
        Assert.NotEmpty(known);
        Assert.All(known, id => Assert.True(NoteTable.Sentences.ContainsKey(id), $"`{id}` has no sentence in NoteTable"));
    }

    [Fact]
    public void Every_sentence_ends_and_closes_its_braces() => Assert.All(NoteTable.Sentences.Values, sentence =>
    {
        Assert.Matches(@"[.}]$", sentence);
        Assert.Equal(sentence.Count(letter => letter == '{'), sentence.Count(letter => letter == '}'));
    });

    [Theory]
    [InlineData("plain [red]text[/]", "plain [red]text[/]")]
    [InlineData("\u001b[31mred", "\\u{001B}[31mred")]
    [InlineData("a\u202Eb", "a\\u{202E}b")]
    [InlineData("a\u2067b\u200Bc\uFEFF", "a\\u{2067}b\\u{200B}c\\u{FEFF}")]
    [InlineData("one\ntwo\tthree\r\n", "one two three  ")]
    [InlineData("\u009b31m", "\\u{009B}31m")]
    [InlineData("bell\a", "bell\\u{0007}")]
    [InlineData("Straße, 重交通, 30 °C", "Straße, 重交通, 30 °C")]
    public void Text_of_a_plan_is_shown_harmless(string text, string shown) => Assert.Equal(shown, PlainText.Show(text));

    [Fact]
    public void No_text_at_all_can_steer_a_terminal() => Gen.String.Hold(text =>
        Assert.All(PlainText.Show(text).EnumerateRunes().ToList(), rune => Assert.False(
            Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator)));
}
