using Laygate.Reading.Yaml;

namespace Laygate.UnitTests.Reading.Yaml;

public class ScalarFormsTests
{
    [Theory]
    [InlineData("0", ScalarKind.WholeNumber)]
    [InlineData("-7", ScalarKind.WholeNumber)]
    [InlineData("12345678901234567", ScalarKind.WholeNumber)]
    [InlineData("123456789012345678", ScalarKind.Text)]
    [InlineData("1.10", ScalarKind.DecimalNumber)]
    [InlineData("-0.5", ScalarKind.DecimalNumber)]
    [InlineData("", ScalarKind.Null)]
    [InlineData("~", ScalarKind.Null)]
    [InlineData("null", ScalarKind.Null)]
    [InlineData("no", ScalarKind.Text)]
    [InlineData("true", ScalarKind.Text)]
    [InlineData("22:30", ScalarKind.Text)]
    [InlineData("017", ScalarKind.Text)]
    [InlineData("0o17", ScalarKind.Text)]
    [InlineData("0x1F", ScalarKind.Text)]
    [InlineData("1e3", ScalarKind.Text)]
    [InlineData("1_000", ScalarKind.Text)]
    [InlineData("1,5", ScalarKind.Text)]
    [InlineData(".5", ScalarKind.Text)]
    [InlineData("5.", ScalarKind.Text)]
    [InlineData("+5", ScalarKind.Text)]
    [InlineData(".nan", ScalarKind.Text)]
    [InlineData(".inf", ScalarKind.Text)]
    [InlineData("-", ScalarKind.Text)]
    [InlineData("1.2.3", ScalarKind.Text)]
    [InlineData("٣", ScalarKind.Text)]
    [InlineData("2026-11-25", ScalarKind.Text)]
    public void A_plain_scalar_is_a_number_only_in_strict_form(string text, ScalarKind kind) =>
        Assert.Equal(kind, ScalarForms.Classify(text, ScalarStyle.Plain));

    [Theory]
    [InlineData(ScalarStyle.Quoted)]
    [InlineData(ScalarStyle.Block)]
    public void Other_styles_are_always_text(ScalarStyle style)
    {
        Assert.Equal(ScalarKind.Text, ScalarForms.Classify("12", style));
        Assert.Equal(ScalarKind.Text, ScalarForms.Classify("null", style));
        Assert.Equal(ScalarKind.Text, ScalarForms.Classify("", style));
    }
}
