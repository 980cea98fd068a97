using CsCheck;
using Laygate.Model.Measures;
using Laygate.Reading.Measures;

namespace Laygate.UnitTests.Reading.Measures;

public class MeasureReaderTests
{
    [Theory]
    [InlineData("45 mm", 0.045)]
    [InlineData("+1.75 in", 0.04445)]
    [InlineData("-0.5 m", -0.5)]
    [InlineData("0 mm", 0)]
    public void A_number_one_blank_and_a_unit_are_read(string text, double metres)
    {
        var length = MeasureReader.Read<Length>(text, out var problem);

        Assert.Null(problem);
        Assert.Equal(metres, length!.Si, 12);
        Assert.Equal(text[(text.IndexOf(' ', StringComparison.Ordinal) + 1)..], length.Unit.Spelling);
    }

    [Fact]
    public void A_superscript_counts_as_its_digit() =>
        Assert.Equal(MeasureReader.Read<AreaDensity>("0.3 kg/m2", out _), MeasureReader.Read<AreaDensity>("0.3 kg/m²", out _));

    [Fact]
    public void Fahrenheit_is_read_with_and_without_its_sign()
    {
        Assert.Equal(8.8889, MeasureReader.Read<Temperature>("48 F", out _)!.Si, 4);
        Assert.Equal(8.8889, MeasureReader.Read<Temperature>("48 °F", out _)!.Si, 4);
    }

    [Theory]
    [InlineData("1,5 in", "comma", "1.5 in")]
    [InlineData("1,500 mm", "comma may mean thousands or decimals", "1.500")]
    [InlineData("1e3 mm", "exponent", "1000 mm")]
    [InlineData("1 500 mm", "grouped", "1500 mm")]
    [InlineData("1'500 mm", "grouped", "1500 mm")]
    [InlineData("40mm", "blank is missing", "40 mm")]
    [InlineData("40\u00A0mm", "non-breaking", "40 mm")]
    [InlineData("40  mm", "one blank", "40 mm")]
    [InlineData("40 mm ", "blank stands behind", "40 mm")]
    [InlineData("040 mm", "begins with a zero", "40 mm")]
    [InlineData(".5 in", "before the point", "0.5 in")]
    [InlineData("5. in", "behind the point", "5 in")]
    [InlineData("\u22125 mm", "minus is a dash", "-5 mm")]
    [InlineData("1.2.3 mm", "more than one point", "one decimal point")]
    [InlineData("40", "has no unit", "40 mm")]
    [InlineData("mm 40", "before the number", "40 mm")]
    [InlineData("40 MM", "letters must be `mm`", "40 mm")]
    [InlineData("40 Mm", "letters must be `mm`", "40 mm")]
    [InlineData("2 inches", "is written `in`", "2 in")]
    [InlineData("2 \"", "is written `in`", "2 in")]
    [InlineData("40 mmm", "not a unit", "40 mm")]
    [InlineData("40 furlong", "not a unit", "`mm`, `cm`")]
    [InlineData("40 m2", "is an area; a length is needed", "45 mm")]
    [InlineData("NaN", "not a number", "45 mm")]
    [InlineData(".inf", "not a number", "45 mm")]
    [InlineData("22:30", "time of day", "45 mm")]
    [InlineData("", "empty text", "45 mm")]
    [InlineData("thick", "not a length", "45 mm")]
    [InlineData("12345678901 mm", "", "45 mm")]
    [InlineData("1.1234567 mm", "", "45 mm")]
    public void A_text_that_is_no_length_is_told_why_and_shown_the_right_form(string text, string why, string right)
    {
        Assert.Null(MeasureReader.Read<Length>(text, out var problem));
        Assert.Contains(why, problem!.Message, StringComparison.Ordinal);
        Assert.Contains(right, problem.Message + problem.Hint, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("22 ton", "22 t", "22 short ton")]
    [InlineData("22 tons", "22 t", "22 short ton")]
    [InlineData("22 Ton", "22 t", "22 short ton")]
    public void A_ton_is_refused_because_it_is_not_one_mass(string text, string metric, string american)
    {
        Assert.Null(MeasureReader.Read<Mass>(text, out var problem));
        Assert.Contains("refused", problem!.Message, StringComparison.Ordinal);
        Assert.Contains($"`{metric}`", problem.Hint, StringComparison.Ordinal);
        Assert.Contains($"`{american}`", problem.Hint, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("200 ton/h")]
    [InlineData("200 tph")]
    public void A_ton_per_hour_is_refused_too(string text)
    {
        Assert.Null(MeasureReader.Read<MassFlow>(text, out var problem));
        Assert.Contains("`200 short ton/h`", problem!.Hint, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("9 °F", "5 K")]
    [InlineData("6 C", "6 K")]
    public void A_temperature_difference_is_written_in_kelvin(string text, string right)
    {
        Assert.Null(MeasureReader.Read<TemperatureDelta>(text, out var problem));
        Assert.Contains($"`{right}`", problem!.Hint, StringComparison.Ordinal);
        Assert.NotNull(MeasureReader.Read<TemperatureDelta>(right, out _));
    }

    [Fact]
    public void Kelvin_is_no_temperature()
    {
        Assert.Null(MeasureReader.Read<Temperature>("280 K", out var problem));
        Assert.Contains("°C or °F", problem!.Hint, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("3", 3.0)]
    [InlineData("2.5", 2.5)]
    public void A_number_without_a_unit_is_read(string text, double value) => Assert.Equal(value, MeasureReader.ReadNumber(text, out _));

    [Theory]
    [InlineData("3 mm", "`3`")]
    [InlineData("2,5", "`2.5`")]
    [InlineData("1e3", "`1000`")]
    [InlineData("three", "`3`")]
    public void A_text_that_is_no_number_is_shown_the_right_form(string text, string right)
    {
        Assert.Null(MeasureReader.ReadNumber(text, out var problem));
        Assert.Contains(right, problem!.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_unit_and_number_reads_back_as_written()
    {
        var measures = Gen.Select(
            Gen.Int[0, UnitTable.All.Count - 1],
            Gen.Long[-9_999_999_999, 9_999_999_999],
            Gen.Int[0, 6]);

        measures.Hold((index, digits, decimals) =>
        {
            var unit = UnitTable.All[index];
            var number = digits / Math.Pow(10, decimals);
            var text = MeasureReader.Write(new Measure<Length>(number, unit));
            var read = MeasureReader.Read(text, unit.Dimension, out var problem);
            Assert.Null(problem);
            Assert.Equal(number, read!.Value.Number);
            Assert.Same(unit, read.Value.Unit);
            Assert.Equal(text, MeasureReader.Write(new Measure<Length>(read.Value.Number, read.Value.Unit)));
        }, count: 20_000);
    }

    [Fact]
    public void Each_unit_of_the_table_is_read_and_written()
    {
        foreach (var unit in UnitTable.All)
        {
            var read = MeasureReader.Read($"12.5 {unit.Spelling}", unit.Dimension, out var problem);
            Assert.Null(problem);
            Assert.Equal($"12.5 {unit.Spelling}", MeasureReader.Write(new Measure<Length>(read!.Value.Number, read.Value.Unit)));
            Assert.All(Enum.GetValues<Dimension>().Where(other => other != unit.Dimension && other != Dimension.None), other =>
                Assert.NotNull(MeasureReader.Explain($"12.5 {unit.Spelling}", other)));
        }
    }

    /// <summary>The repair of a bare number with too many digits was that number again, and its explanation explained itself without end.</summary>
    [Theory]
    [InlineData(11)]
    [InlineData(17)]
    [InlineData(18)]
    [InlineData(19)]
    [InlineData(200)]
    [InlineData(300)]
    public void A_number_of_any_length_is_explained(int digits)
    {
        var number = new string('1', digits);
        Assert.All(new[] { number, $"-{number}", $"+{number}", $"{number}.5", $"0{number}" }, text =>
            Assert.All(Enum.GetValues<Dimension>().Where(dimension => dimension != Dimension.None), dimension =>
            {
                Assert.EndsWith(".", MeasureReader.Explain(text, dimension)!.Message, StringComparison.Ordinal);
                Assert.EndsWith(".", MeasureReader.Explain($"{text} mm", dimension)!.Message, StringComparison.Ordinal);
            }));
    }

    [Fact]
    public void Any_text_gets_a_measure_or_a_problem_and_never_an_exception() =>
        Gen.Select(Gen.OneOf(Gen.String[Gen.Char["0123456789.,+-eE '\u00A0mMtCFK°%²/\"xN:"], 0, 30], Gen.String[Gen.Char["0123456789.,-"], 0, 30]), Gen.Enum<Dimension>()).Hold((text, dimension) =>
        {
            if (dimension == Dimension.None)
            {
                return;
            }

            var read = MeasureReader.Read(text, dimension, out var problem);
            Assert.True(read is null != problem is null);
            if (problem is not null)
            {
                Assert.EndsWith(".", problem.Message, StringComparison.Ordinal);
                Assert.NotEmpty(problem.Hint);
            }
        }, count: 20_000);
}
