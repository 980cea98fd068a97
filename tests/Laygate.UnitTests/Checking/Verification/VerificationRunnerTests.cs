using Laygate.Checking.Verification;
using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Reporting.Verification;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Checking.Verification;

public sealed class VerificationRunnerTests
{
    [Fact]
    public void Right_values_are_within_and_counted()
    {
        var result = CaseText.Run(CaseText.Conduction, CaseText.Formula);
        Assert.Empty(result.Files.SelectMany(file => file.Problems));
        Assert.Equal(new VerificationTally(2, 0, 2, 3, 3, 0, 0), result.Tally);
        Assert.Equal("3 checks in 2 cases of 2 files: 3 within tolerance, 0 off, 0 not computed.", VerificationText.Lines(result)[^1]);
    }

    [Fact]
    public void A_wrong_value_is_off_whichever_way_it_errs()
    {
        foreach (var wrong in new[] { "149.2", "148.9" })
        {
            var result = CaseText.Run(CaseText.Changed(CaseText.Conduction, "149.05967", wrong));
            Assert.Equal((1, 1, 0), (result.Tally.Within, result.Tally.Off, result.Tally.NotComputed));
            Assert.Contains(VerificationText.Lines(result), line => line.StartsWith("    OFF: the skin after 300 s: expected", StringComparison.Ordinal));
            Assert.Contains("| OFF |", VerificationManual.Markdown(result), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Difference_is_computed_minus_expected()
    {
        var check = CaseText.Run(CaseText.Changed(CaseText.Formula, "value: 5.952", "value: 5")).Topics[0].Cases[0].Checks[0];
        Assert.Equal(0.952, check.Difference!.Value, 0.001);
        Assert.Equal(VerificationVerdict.Off, check.Verdict);
    }

    [Fact]
    public void A_formula_outside_its_range_is_not_computed()
    {
        var result = CaseText.Run(CaseText.Changed(CaseText.Formula, "supply: 150 t/h", "supply: 0 t/h"));
        var check = result.Topics[0].Cases[0].Checks[0];
        Assert.Equal(VerificationVerdict.NotComputed, check.Verdict);
        Assert.Contains("outside the range", check.Reason, StringComparison.Ordinal);
        Assert.Equal(1, result.Tally.NotComputed);
    }

    /// <summary>Version 0.1 numbered the convection forms; cases of users are read on.</summary>
    [Theory]
    [InlineData("C5", "en-iso-6946")]
    [InlineData("C13K", "kreith-plate")]
    public void Numbers_of_convection_forms_are_read_as_their_names(string old, string now)
    {
        string Case(string form) => CaseText.Changed(CaseText.Conduction, "skin: closed", $"skin: {{weather: {{form: {form}, points: [{{air: 10 °C, wind: 5 m/s, sky: 10 °C}}]}}}}");
        var (before, after) = (CaseText.Run(Case(old)), CaseText.Run(Case(now)));
        Assert.Empty(before.Files.SelectMany(file => file.Problems));
        Assert.Equal(after.Topics[0].Cases[0].Checks.Select(check => check.Computed), before.Topics[0].Cases[0].Checks.Select(check => check.Computed));
        Assert.NotEmpty(CaseText.Run(Case("C15")).Files.SelectMany(file => file.Problems));
    }

    [Fact]
    public void A_temperature_that_is_never_reached_is_not_computed()
    {
        var text = CaseText.Conduction
            .Replace("quantity: temperature", "quantity: crossing-time", StringComparison.Ordinal).Replace("unit: °C", "unit: s", StringComparison.Ordinal)
            .Replace("0.05 K", "0.5 %", StringComparison.Ordinal).Replace("time: 300 s", "below: 0 °C", StringComparison.Ordinal);
        var result = CaseText.Run(text);
        Assert.Equal(2, result.Tally.NotComputed);
        Assert.Contains("stays at or above", result.Topics[0].Cases[0].Checks[0].Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_place_outside_the_stack_is_not_computed()
    {
        var result = CaseText.Run(CaseText.Changed(CaseText.Conduction, "{middle: slab}", "{depth: 90 m}"));
        Assert.Equal(1, result.Tally.NotComputed);
    }

    [Fact]
    public void Fahrenheit_values_and_a_tolerance_in_kelvin_agree()
    {
        // 149.05967 °C and 137.72384 °C by F = 1.8 C + 32.
        var text = CaseText.Conduction.Replace("unit: °C", "unit: °F", StringComparison.Ordinal).Replace("[149.05967, 137.72384]", "[300.307406, 279.902912]", StringComparison.Ordinal);
        var check = CaseText.Run(text).Topics[0].Cases[0].Checks[0];
        Assert.Equal(VerificationVerdict.Within, check.Verdict);
        Assert.Equal(0.09, check.Allowed, 1e-9);
    }

    [Fact]
    public void One_bad_file_does_not_stop_the_others()
    {
        var result = CaseText.Run("a: [", CaseText.Formula);
        Assert.Equal((1, 1), (result.Tally.Unreadable, result.Tally.Within));
    }

    [Fact]
    public void The_same_input_gives_the_same_bytes()
    {
        static byte[] Json()
        {
            using var stream = new MemoryStream();
            VerificationJson.Write(stream, "0", CaseText.Run(CaseText.Conduction, CaseText.Formula, "a: ["));
            return stream.ToArray();
        }

        Assert.Equal(Json(), Json());
        using var document = System.Text.Json.JsonDocument.Parse(Json());
        Assert.Equal(3, document.RootElement.GetProperty("tally").GetProperty("within").GetInt32());
    }

    [Fact]
    public void The_schema_lists_every_formula_and_convection_form()
    {
        using var schema = System.Text.Json.JsonDocument.Parse(CaseText.SchemaText());
        var definitions = schema.RootElement.GetProperty("definitions");
        string[] Words(params string[] path) => [.. path.Aggregate(definitions, (at, key) => at.GetProperty(key)).EnumerateArray().Select(word => word.GetString()!)];
        Assert.Equal(VerificationRunner.FormulaNames, Words("formula", "properties", "name", "enum").Order(StringComparer.Ordinal), StringComparer.Ordinal);
        var forms = definitions.GetProperty("skin").GetProperty("anyOf")[1].GetProperty("properties").GetProperty("weather").GetProperty("properties").GetProperty("form").GetProperty("enum");
        Assert.Equal(ConvectionForms.All.Select(form => form.Id), forms.EnumerateArray().Select(word => word.GetString()!), StringComparer.Ordinal);
    }

    [Fact]
    public void Text_from_a_case_cannot_break_the_table_of_the_manual()
    {
        var text = CaseText.Changed(CaseText.Formula, "title: speed", "title: \"a | b <script> [x](y)\"");
        var manual = VerificationManual.Markdown(CaseText.Run(text));
        Assert.Contains("a \\| b \\<script\\> \\[x\\](y)", manual, StringComparison.Ordinal);
    }
}
