using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.Json;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Plans;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.UnitTests.Reading.Plans;

public class PlanMapperTests
{
    [Fact]
    public void The_plan_with_every_key_fits_the_schema_and_maps_without_a_problem()
    {
        Assert.Empty(SchemaChecker.Check(PlanFiles.Read(PlanFiles.EveryKey), PlanFiles.Schema));
        Assert.Empty(PlanFiles.Map(PlanFiles.EveryKey).Problems);
    }

    [Fact]
    public void The_mapping_asks_for_the_keys_of_the_schema_and_no_others()
    {
        using var schema = JsonDocument.Parse(PlanFiles.SchemaText);
        var described = SchemaKeys(schema.RootElement, schema.RootElement, string.Empty).ToHashSet(StringComparer.Ordinal);

        var read = PlanMapper.KeysRead(PlanFiles.Read(PlanFiles.EveryKey));

        Assert.Empty(described.Except(read, StringComparer.Ordinal));
        Assert.Empty(read.Except(described, StringComparer.Ordinal));
        Assert.InRange(described.Count, 300, 700);
    }

    [Fact]
    public void The_plan_with_every_key_has_every_key()
    {
        using var schema = JsonDocument.Parse(PlanFiles.SchemaText);
        var described = SchemaKeys(schema.RootElement, schema.RootElement, string.Empty);

        Assert.Empty(described.Except(Leaves(PlanFiles.Read(PlanFiles.EveryKey).Root, string.Empty, keysOnly: true).Select(leaf => leaf.Path), StringComparer.Ordinal));
    }

    [Fact]
    public void Every_value_of_the_file_stands_in_the_model_under_the_name_of_its_key_and_nothing_else_does()
    {
        var document = PlanFiles.Read(PlanFiles.EveryKey);
        var stated = Leaves(document.Root, string.Empty, keysOnly: false).Select(leaf => $"{leaf.Path} = {leaf.Text}").ToList();

        var mapped = Stated(PlanMapper.Map(document).Plan, string.Empty).ToList();

        Assert.Equal(stated.Order(StringComparer.Ordinal), mapped.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void What_is_not_stated_is_null_or_empty()
    {
        var plan = PlanFiles.Plan("format: 1\nplan: { id: p, stage: concept }\ncourses:\n  - { id: c, mix: m, thickness: 45 mm }\n");

        string[] stated = ["courses[0].id = c", "courses[0].mix = m", "courses[0].thickness = 45 mm", "format = 1", "plan.id = p", "plan.stage = concept"];
        Assert.Equal(stated, Stated(plan, string.Empty).Order(StringComparer.Ordinal).ToArray());
    }

    [Theory]
    [InlineData("revision: 1.10", "1.10")]
    [InlineData("revision: 017", "017")]
    [InlineData("revision: 1e3", "1e3")]
    [InlineData("revision: no", "no")]
    [InlineData("revision: 22:30", "22:30")]
    [InlineData("revision: 2031-05-28", "2031-05-28")]
    [InlineData("revision: \"a # b\"", "a # b")]
    public void A_text_is_kept_as_written(string line, string text) =>
        Assert.Equal(text, PlanFiles.Plan(PlanFiles.Changed("revision: 1.10", line)).Identity.Revision);

    [Theory]
    [InlineData("date: 2031-06-12", "date: 2031-02-30", "`2031-02-30`", "calendar")]
    [InlineData("zone: +02:00", "zone: +14:30", "`+14:30`", "")]
    [InlineData("thickness: 72 mm", "thickness: 7,2 cm", "comma", "`7.2 cm`")]
    [InlineData("temperature_loss: 3 K", "temperature_loss: 3 °C", "difference", "`3 K`")]
    [InlineData("passes: 5", "passes: 5.5", "whole number", "plain digits")]
    [InlineData("passes: 5", "passes: \"5\"", "whole number", "without quotation")]
    [InlineData("passes: 5", "passes: 99999999999", "whole number", "plain digits")]
    [InlineData("rate: 0.35 kg/m2", "rate: 0.35 m", "mass per area", "kg/m2")]
    public void A_wrong_value_is_told_where_it_stands(string old, string replacement, string message, string hint)
    {
        var text = PlanFiles.Changed(old, replacement);
        var problem = Assert.Single(PlanFiles.Map(text).Problems);

        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.Contains(hint, problem.Hint ?? string.Empty, StringComparison.Ordinal);
        var value = replacement[(replacement.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim();
        var (line, column) = PlanFiles.Place(text, replacement);
        Assert.Equal((line, column + replacement.Length - value.Length), (problem.Position.Line, problem.Position.Column));
    }

    [Fact]
    public void All_problems_of_the_stage_are_told_together_in_file_order()
    {
        var text = PlanFiles.Changed("thickness: 72 mm", "thickness: 72", PlanFiles.Changed("speed: 12 ft/min", "speed: fast", PlanFiles.Changed("date: 2031-06-12", "date: today")));
        var mapping = PlanFiles.Map(text);

        Assert.Null(mapping.Plan);
        Assert.Equal(3, mapping.Problems.Count);
        Assert.Equal(mapping.Problems.OrderBy(problem => problem.Position), mapping.Problems);
    }

    [Theory]
    [InlineData("[1, 2]")]
    [InlineData("{}")]
    [InlineData("format: 1")]
    [InlineData("format: 1\nplan: [a]\ncourses: 3")]
    [InlineData("format: 1\nplan: { id: p, stage: concept }\ncourses: [3, [4], { id: a }]")]
    [InlineData("just words")]
    public void A_document_of_another_shape_gives_no_plan_and_never_an_exception(string text) => Assert.Null(PlanFiles.Map(text).Plan);

    [Theory]
    [InlineData("sieve: 14 mm", "sieve: 14.5 mm", "`14.5 mm`", "`12.5 mm`")]
    [InlineData("stage: submission", "stage: submisson", "`submisson`", "`submission`")]
    [InlineData("broken: yes", "broken: true", "`true`", "Did you mean `yes`?")]
    [InlineData("broken: yes", "broken: maybe", "one of `yes` and `no`", "")]
    [InlineData("id: coat-1", "id: Coat-1", "`Coat-1`", "")]
    [InlineData("phase: main", "phase: [main]", "list", "")]
    [InlineData("reversal: 4 s", "reversal:", "no value", "")]
    public void A_word_or_form_that_the_schema_does_not_know_is_told_once_and_gives_no_plan(string old, string replacement, string message, string hint)
    {
        var text = PlanFiles.Changed(old, replacement);
        var problem = Assert.Single(PlanFiles.Problems(text));

        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.Contains(hint, problem.Hint ?? string.Empty, StringComparison.Ordinal);
        Assert.Null(PlanFiles.Map(text).Plan);
    }

    private static IEnumerable<string> SchemaKeys(JsonElement root, JsonElement node, string path)
    {
        while ((node.TryGetProperty("allOf", out var all) ? all[0] : node).TryGetProperty("$ref", out var reference))
        {
            node = root.GetProperty("definitions").GetProperty(reference.GetString()!.Split('/')[^1]);
        }

        if (node.TryGetProperty("items", out var item))
        {
            foreach (var key in SchemaKeys(root, item, $"{path}[]"))
            {
                yield return key;
            }
        }

        if (!node.TryGetProperty("properties", out var properties))
        {
            yield break;
        }

        foreach (var property in properties.EnumerateObject())
        {
            var inside = path.Length == 0 ? property.Name : $"{path}.{property.Name}";
            yield return inside;
            foreach (var key in SchemaKeys(root, property.Value, inside))
            {
                yield return key;
            }
        }
    }

    private static IEnumerable<(string Path, string Text)> Leaves(YamlToken token, string path, bool keysOnly)
    {
        if (token is ScalarToken scalar && !keysOnly)
        {
            yield return (path, scalar.Text);
        }

        if (token is MapToken map)
        {
            foreach (var (key, value) in map.Entries)
            {
                var inside = path.Length == 0 ? key.Text : $"{path}.{key.Text}";
                if (keysOnly)
                {
                    yield return (inside, string.Empty);
                }

                foreach (var leaf in Leaves(value, inside, keysOnly))
                {
                    yield return leaf;
                }
            }
        }

        if (token is not ListToken list)
        {
            yield break;
        }

        for (var index = 0; index < list.Items.Count; index++)
        {
            var entry = keysOnly ? $"{path}[]" : string.Create(CultureInfo.InvariantCulture, $"{path}[{index}]");
            foreach (var leaf in Leaves(list.Items[index], entry, keysOnly))
            {
                yield return leaf;
            }
        }
    }

    // The model as stated, by reflection, with the names that the keys should have; what follows from it cannot be written.
    private static IEnumerable<string> Stated(object? value, string path) => value switch
    {
        null => [],
        string text => [$"{path} = {text}"],
        int number => [string.Create(CultureInfo.InvariantCulture, $"{path} = {number}")],
        bool flag => [$"{path} = {(flag ? "yes" : "no")}"],
        Enum word => [$"{path} = {Snake(word.ToString()).Replace('_', '-')}"],
        DateOnly date => [string.Create(CultureInfo.InvariantCulture, $"{path} = {date:yyyy-MM-dd}")],
        TimeOnly time => [string.Create(CultureInfo.InvariantCulture, $"{path} = {time:HH:mm}")],
        TimeSpan offset => [$"{path} = {Offset(offset)}"],
        Moment moment => [string.Create(CultureInfo.InvariantCulture, $"{path} = {moment.Local:yyyy-MM-ddTHH:mm}{(moment.Offset is { } offset ? Offset(offset) : string.Empty)}")],
        Sieve sieve => [$"{path} = {sieve.Name}"],
        IMeasure measure => [string.Create(CultureInfo.InvariantCulture, $"{path} = {measure.Number} {measure.Unit.Spelling}")],
        IEnumerable list => list.Cast<object>().SelectMany((item, index) => Stated(item, string.Create(CultureInfo.InvariantCulture, $"{path}[{index}]"))),
        _ => value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.CanWrite)
            .SelectMany(property => Stated(property.GetValue(value), path.Length == 0 ? Name(property) : $"{path}.{Name(property)}")),
    };

    private static string Offset(TimeSpan offset) =>
        (offset < TimeSpan.Zero ? "-" : "+") + offset.ToString(@"hh\:mm", CultureInfo.InvariantCulture);

    private static string Name(PropertyInfo property) => property.Name is nameof(Laygate.Model.Plans.Plan.Identity) ? "plan" : Snake(property.Name);

    private static string Snake(string name)
    {
        var text = new StringBuilder();
        foreach (var letter in name)
        {
            if (char.IsUpper(letter) && text.Length > 0)
            {
                text.Append('_');
            }

            text.Append(char.ToLowerInvariant(letter));
        }

        return text.ToString();
    }
}
