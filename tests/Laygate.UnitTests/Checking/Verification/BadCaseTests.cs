namespace Laygate.UnitTests.Checking.Verification;

/// <summary>Case files that cannot be used get problems at the right place, and nothing is half run.</summary>
public sealed class BadCaseTests
{
    // Old text, its replacement, the part of the changed file at which the problem stands, words of the message.
    [Theory]
    [InlineData("material: hot, initial: 150 °C", "material: hto, initial: 150 °C", "hto", "There is no material `hto`")]
    [InlineData("{middle: slab}", "{middle: slub}", "slub", "There is no layer `slub`")]
    [InlineData("{middle: slab}", "{middle: slab, top: slab}", "middle", "exactly one key")]
    [InlineData("initial: 150 °C", "initial: 150 m", "150 m", "")]
    [InlineData("initial: 150 °C", "initial: 150", "150}", "")]
    [InlineData("duration: 600 s", "duration: 10 min later", "10 min later", "")]
    [InlineData("time: 300 s", "time: 900 s", "900 s", "not within the duration")]
    [InlineData("time: 300 s, ", "", "values: [149", "needs a time")]
    [InlineData("time: 300 s", "below: 80 °C", "80 °C", "Only a crossing time")]
    [InlineData("[149.05967, 137.72384]", "[149.05967]", "[149.05967]", "1 value for 2 places")]
    [InlineData("unit: °C", "unit: min", "min", "no unit for a temperature")]
    [InlineData("unit: °C\n", "remark: no\n", "remark: no", "")]
    [InlineData("tolerance: 0.05 K", "tolerance: 0.05 %", "0.05 %", "")]
    [InlineData("tolerance: 0.05 K", "tolerance: 0.05 °C", "0.05 °C", "")]
    [InlineData("quantity: temperature", "quantity: lag", "lag", "need a skin")]
    [InlineData("quantity: temperature", "quantity: flux", "skin, {middle", "lower face")]
    [InlineData("id: base", "id: slab", "slab, role: existing", "Two layers have the id")]
    [InlineData("skin: closed", "skin: {flux: 5 W/m2, temperature: 5 °C}", "flux", "exactly one key")]
    [InlineData("skin: closed", "skin: {convection: {coefficient: 5 W/(m2 K), air: 5 °C, emissivity: 0.9}}", "0.9", "surroundings")]
    [InlineData("thickness: 50 mm", "thickness: -50 mm", "id: slab", "thickness must be a number")]
    [InlineData("initial: 10 °C}", "initial: 10 °C, joins: 10 s}", "id: slab, role", "laid before the one below")]
    [InlineData("conductivity: 1.2 W/(m K)", "conductivity: 1.2 W/m", "1.2 W/m", "")]
    [InlineData("evidence: derived", "evidence: sure", "sure", "")]
    [InlineData("conduction:", "formula: {name: paver-speed, unit: m/min, tolerance: 1 %, rows: [{value: 1}]}\nconduction:", "format", "either `conduction` or `formula`")]
    public void Conduction_case(string old, string replacement, string place, string message)
    {
        var text = CaseText.Conduction.Replace(old, replacement, StringComparison.Ordinal);
        Assert.NotEqual(CaseText.Conduction, text, StringComparer.Ordinal);
        AssertProblem(text, place, message);
    }

    [Theory]
    [InlineData("name: paver-speed", "name: paver-spede", "paver-spede", "")]
    [InlineData("width: 3.5 m", "width: 3.5 t", "3.5 t", "")]
    [InlineData("width: 3.5 m", "witdh: 3.5 m", "witdh", "no input of paver-speed named `witdh`")]
    [InlineData("supply: 150 t/h, ", "", "inputs: {density", "needs the input `supply`")]
    [InlineData("supply: 150 t/h", "supply: 150 t/h, width: 2 m", "width: 2 m", "given for all rows already")]
    [InlineData("supply: 150 t/h", "supply: [150 t/h, 160 t/h]", "supply", "`supply` is one value")]
    [InlineData("name: paver-speed\n  inputs: {width: 3.5 m, thickness: 50 mm}\n", "name: lot-mean\n  inputs: {results: 4}\n", "results", "`results` is a list")]
    [InlineData("name: paver-speed\n  inputs: {width: 3.5 m, thickness: 50 mm}\n", "name: lot-mean\n  inputs: {results: [4, 5 m]}\n", "5 m", "a number without a unit")]
    [InlineData("unit: m/min", "unit: t/h", "t/h", "no unit for a speed")]
    [InlineData("tolerance: 0.0006 m/min", "tolerance: 0.0006", "0.0006", "")]
    public void Formula_case(string old, string replacement, string place, string message)
    {
        var text = CaseText.Formula.Replace(old, replacement, StringComparison.Ordinal);
        Assert.NotEqual(CaseText.Formula, text, StringComparer.Ordinal);
        AssertProblem(text, place, message);
    }

    [Theory]
    [InlineData("")]
    [InlineData("- 1")]
    [InlineData("{}")]
    [InlineData("a: [")]
    [InlineData("format: 1\nconduction: {}\n")]
    public void Anything_else(string text)
    {
        var file = Assert.Single(CaseText.Run(text).Files);
        Assert.NotEmpty(file.Problems);
        Assert.Empty(file.Cases);
    }

    [Fact]
    public void Every_change_of_one_character_gives_a_result_or_a_positioned_problem()
    {
        foreach (var sample in new[] { CaseText.Conduction, CaseText.Formula })
        {
            for (var at = 0; at < sample.Length; at += 3)
            {
                foreach (var letter in new[] { '9', '-', ':', '\n' })
                {
                    var file = Assert.Single(CaseText.Run(string.Concat(sample[..at], letter.ToString(), sample[(at + 1)..])).Files);
                    Assert.All(file.Problems, problem => Assert.NotNull(problem.Position));
                    Assert.True(file.Problems.Count == 0 || file.Cases.Count == 0);
                }
            }
        }
    }

    private static void AssertProblem(string text, string place, string message)
    {
        var result = CaseText.Run(text);
        var file = Assert.Single(result.Files);
        Assert.Empty(file.Cases);
        Assert.Equal(1, result.Tally.Unreadable);
        var (line, column) = CaseText.Place(text, place);
        Assert.True(
            file.Problems.Any(problem => problem.Position!.Line == line && problem.Position.Column == column && problem.Message.Contains(message, StringComparison.Ordinal)),
            $"wanted {line}:{column} {message}; got " + string.Join(" / ", file.Problems.Select(problem => $"{problem.Position!.Line}:{problem.Position.Column} {problem.Message}")));
    }
}
