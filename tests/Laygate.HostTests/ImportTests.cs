namespace Laygate.HostTests;

/// <summary>Lists from outside, by the built program.</summary>
public sealed class ImportTests : IDisposable
{
    private const string Mapping = "format: 1\nencoding: utf-8\ndelimiter: semicolon\ndecimal_mark: comma\ncolumns:\n  - { column: id, quantity: id }\n  - { column: t, quantity: payload, unit: t }\n";

    private readonly string folder = Directory.CreateTempSubdirectory("laygate-import-").FullName;

    public ImportTests()
    {
        Write("map.yaml", Mapping);
        Write("trucks.csv", "id;t\na;22,5\nb;18\n");
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_list_becomes_a_file_that_a_plan_uses()
    {
        Assert.Equal(0, Laygate("import", "trucks", "trucks.csv", "--mapping", "map.yaml", "--output", "trucks.yaml").Code);
        Write("plan.yaml", "format: 1\nuses: [trucks.yaml]\nplan: { id: p, stage: concept }\ncourses: [{ id: c, mix: m, thickness: 45 mm }]\nsupply: { trucks: [a, b] }\n");
        Assert.Contains("Uses trucks.yaml (2 parts", Laygate("check", "plan.yaml").Out, StringComparison.Ordinal);

        // What is there stays there.
        var (code, _, error) = Laygate("import", "trucks", "trucks.csv", "--mapping", "map.yaml", "--output", "trucks.yaml");
        Assert.Equal(2, code);
        Assert.Contains("is there already", error, StringComparison.Ordinal);
    }

    [Fact]
    public void One_bad_row_and_nothing_is_written()
    {
        Write("trucks.csv", "id;t\na;22,5\nb;18.5\n");
        var (code, printed, error) = Laygate("import", "trucks", "trucks.csv", "--mapping", "map.yaml", "--output", "trucks.yaml");
        Assert.Equal((2, string.Empty), (code, printed));
        Assert.StartsWith("trucks.csv:3:3: ", error, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(folder, "trucks.yaml")));
    }

    [Fact]
    public void Hours_are_put_into_a_plan()
    {
        Write("weather.csv", "t;air\n2026-10-24 23:00;8,5\n");
        Write("weather-map.yaml", "format: 1\nencoding: utf-8\ndelimiter: semicolon\ndecimal_mark: comma\nzone: +02:00\ncolumns:\n  - { column: t, quantity: at }\n  - { column: air, quantity: air, unit: °C }\n");
        Write("plan.yaml", "format: 1\nplan: { id: p, stage: concept } # kept\ncourses: [{ id: c, mix: m, thickness: 45 mm }]\nweather:\n  hours: [{ at: 2026-10-24T20:00 }]\n");
        Assert.Equal(0, Laygate("import", "weather", "weather.csv", "--mapping", "weather-map.yaml", "--into", "plan.yaml").Code);
        var plan = File.ReadAllText(Path.Combine(folder, "plan.yaml"));
        Assert.Contains("# kept", plan, StringComparison.Ordinal);
        Assert.Contains("- { at: 2026-10-24T23:00+02:00, air: 8.5 °C }", plan, StringComparison.Ordinal);
        Assert.DoesNotContain("T20:00", plan, StringComparison.Ordinal);
        Assert.Equal(0, Laygate("check", "plan.yaml").Code);
    }

    [Theory]
    [InlineData("--into goes with weather", "import", "trucks", "trucks.csv", "--mapping", "map.yaml", "--into", "plan.yaml")]
    [InlineData("Say what to import", "import")]
    [InlineData("Did you mean trucks?", "import", "truks", "trucks.csv", "--mapping", "map.yaml")]
    [InlineData("Name the --mapping", "import", "trucks", "trucks.csv")]
    [InlineData("either the --mapping of a CSV, or --format geojson", "import", "weather", "trucks.csv")]
    [InlineData("--format takes geojson", "import", "weather", "trucks.csv", "--format", "xml")]
    [InlineData("a mapping names its zone itself", "import", "trucks", "trucks.csv", "--mapping", "map.yaml", "--zone", "UTC")]
    [InlineData("`none.csv` cannot be read", "import", "trucks", "none.csv", "--mapping", "map.yaml")]
    [InlineData("would write over `trucks.csv`", "import", "trucks", "trucks.csv", "--mapping", "map.yaml", "--output", "trucks.csv")]
    public void Arguments_that_cannot_be_used_are_refused(string why, params string[] arguments)
    {
        var (code, _, error) = Laygate(arguments);
        Assert.Equal(2, code);
        Assert.Contains(why, error, StringComparison.Ordinal);
    }

    private BuiltProgram.Result Laygate(params string[] arguments) => BuiltProgram.Run(null, folder, arguments);

    private void Write(string name, string text) => File.WriteAllText(Path.Combine(folder, name), text);
}
