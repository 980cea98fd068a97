using Laygate.Reading.Yaml;

namespace Laygate.UnitTests.Reading.Yaml;

public class ScalarTrapsTests
{
    [Theory]
    [InlineData("017", "17", "it begins with a zero, and some programs then read it to the base 8")]
    [InlineData("08", "8", "it begins with a zero, and some programs then read it to the base 8")]
    [InlineData("0o17", "15", "`0o17` is written to the base 8; only ordinary digits are read")]
    [InlineData("0x1F", "31", "`0x1F` is written to the base 16; only ordinary digits are read")]
    [InlineData("0b11", "3", "`0b11` is written to the base 2; only ordinary digits are read")]
    [InlineData("1e3", "1000", "an exponent is not read")]
    [InlineData("1.5e-2", "0.015", "an exponent is not read")]
    [InlineData("1_000", "1000", "digits are not grouped")]
    [InlineData("1 000 t", "1000 t", "digits are not grouped")]
    [InlineData("1'000", "1000", "digits are not grouped")]
    [InlineData("1,234,567", "1234567", "digits are not grouped")]
    [InlineData("1,234.5 t", "1234.5 t", "digits are not grouped")]
    [InlineData("1,5", "1.5", "a decimal comma is not read; write a decimal point")]
    [InlineData("1,5 in", "1.5 in", "a decimal comma is not read; write a decimal point")]
    [InlineData("3,50m", "3.50 m", "a decimal comma is not read; write a decimal point; a blank is missing between number and unit")]
    [InlineData(".5", "0.5", "a digit is missing before the point")]
    [InlineData("5.", "5", "a digit is missing behind the point")]
    [InlineData("+5", "5", "a plus sign is not written")]
    [InlineData("40mm", "40 mm", "a blank is missing between number and unit")]
    [InlineData("-5°C", "-5 °C", "a blank is missing between number and unit")]
    [InlineData("40  mm", "40 mm", "one blank stands between number and unit")]
    [InlineData("40\u00A0mm", "40 mm", "it contains a non-breaking or narrow blank, which looks like a blank but is none")]
    [InlineData("\u22125 °C", "-5 °C", "the minus is a dash; write the hyphen of the keyboard")]
    [InlineData("width:3.5", "width: 3.5", "a blank is missing behind the colon")]
    [InlineData("1,500", null, "a comma may mean thousands or decimals; write `1500` or `1.500`")]
    [InlineData("no", null, "`no` is read as a word, and fits only where such a word is asked for")]
    [InlineData("Yes", null, "`Yes` is read as a word, and fits only where such a word is asked for")]
    [InlineData(".nan", null, "`.nan` is not a number that can be calculated with")]
    [InlineData("22:30", null, "`22:30` looks like a time of day, and some programs read it as a number to the base 60; a duration is written `1350 min`")]
    [InlineData("123456789012345678", null, "it has more digits than can be meant")]
    [InlineData("1234567890123456789", null, "it has more digits than can be meant")]
    [InlineData("012345678901234567", "12345678901234567", "it begins with a zero, and some programs then read it to the base 8")]
    public void A_trap_is_named_with_the_right_form(string text, string? right, string explanation)
    {
        var trap = ScalarTraps.Explain(text);
        Assert.Equal(explanation, trap?.Explanation);
        Assert.Equal(right, trap!.RightForm);
    }

    [Theory]
    [InlineData("40 mm")]
    [InlineData("+5 °C")]
    [InlineData("0.5")]
    [InlineData("0")]
    [InlineData("wearing")]
    [InlineData("2026-11-25")]
    [InlineData("2026-11-25T22:30+01:00")]
    [InlineData("https://example.org/a")]
    [InlineData("")]
    [InlineData("US-WA")]
    public void What_is_written_rightly_or_is_no_number_is_no_trap(string text) => Assert.Null(ScalarTraps.Explain(text));

    [Fact]
    public void Every_right_form_is_no_trap_itself()
    {
        string[] texts = ["017", "1e3", "1_000", "1,5 in", "3,50m", ".5", "5.", "+5", "40mm", "40\u00A0mm", "1.234.567,5t"];
        Assert.All(texts, text => Assert.Null(ScalarTraps.Explain(ScalarTraps.Explain(text)!.RightForm!)));
    }

    [Fact]
    public void Quoted_texts_are_meant_as_they_stand() =>
        Assert.Null(ScalarTraps.Explain(new ScalarToken("017", ScalarStyle.Quoted, TextSpan.FileStart)));
}
