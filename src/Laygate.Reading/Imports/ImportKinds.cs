using Laygate.Model.Measures;
using Laygate.Reading.Measures;
using Laygate.Reading.Records;
using Laygate.Reading.Schema;

namespace Laygate.Reading.Imports;

/// <summary>What can be imported from a list, and where its rows go in a plan.</summary>
/// <param name="Kind">Its rows, with what their columns may hold.</param>
/// <param name="Path">Keys that lead to the list in a plan.</param>
internal sealed record ImportKind(RecordKind Kind, IReadOnlyList<string> Path)
{
    /// <summary>Name of a column of cloud in percent, from which the eighths of a plan follow.</summary>
    public const string CloudCover = "cloud_cover";
}

/// <summary>
/// The kinds of lists. What a column may hold is taken from the schema of plans, so that no key is stated twice: the dimension of a number is that of its example.
/// </summary>
internal static class ImportKinds
{
    /// <summary>Word of the list of loads, which become groups of trucks.</summary>
    public const string Loads = "loads";

    private const string Ids = "ids";

    /// <summary>All kinds.</summary>
    public static IReadOnlyList<ImportKind> All(LoadedSchema plan) =>
    [
        Of("weather", "hours of weather", plan, ["weather", "hours"], new RowQuantity(ImportKind.CloudCover, CellForm.Number, "Cloud as a share of the sky; it is rounded to eighths.") { Dimension = Dimension.Proportion }),
        Of("trucks", "groups of trucks", plan, ["supply", "trucks"]),
        Of("plants", "mixing plants", plan, ["supply", "plants"]),
        new(LoadRows(), ["supply", "trucks"]),
    ];

    /// <summary>Whether a column holds several ids, divided by blanks.</summary>
    public static bool IsList(RowQuantity quantity) => quantity.Words is [Ids];

    private static RecordKind LoadRows() => new(Loads, "loads of mix, one a row",
    [
        new RowQuantity("truck", CellForm.Text, "Number or plate of the truck."),
        new RowQuantity("plant", CellForm.Text, "Id of the plant."),
        new RowQuantity("mix", CellForm.Text, "Id of the mix."),
        new RowQuantity("paver", CellForm.Text, "Id of the paver."),
        new RowQuantity("payload", CellForm.Number, "Mass of the load.") { Dimension = Dimension.Mass, Needed = true },
    ]);

    private static ImportKind Of(string name, string meaning, LoadedSchema plan, IReadOnlyList<string> path, params RowQuantity[] more)
    {
        var list = path.Aggregate(plan.Root, (node, key) => Group(node).Properties[key]);
        var item = Group(list.Conjuncts.First(node => node.Item is not null).Item!);
        return new ImportKind(new RecordKind(name, meaning, [.. item.Properties.Select(key => Quantity(key.Key, key.Value, item.Required)).OfType<RowQuantity>(), .. more]) { TimesRise = true }, path);
    }

    private static SchemaNode Group(SchemaNode node) => node.Conjuncts.First(part => part.Properties.Count > 0);

    // Null for what no cell can hold: a group of keys, or a list of them.
    private static RowQuantity? Quantity(string name, SchemaNode node, List<string> required)
    {
        var parts = node.Conjuncts.ToList();
        if (parts.Exists(part => part.Properties.Count > 0))
        {
            return null;
        }

        var meaning = parts.Select(part => part.Description).FirstOrDefault(text => text is not null) ?? name;
        var quantity = new RowQuantity(name, CellForm.Text, meaning) { Needed = required.Contains(name, StringComparer.Ordinal) };
        if (parts.Find(part => part.Item is not null) is { } list)
        {
            return list.Item!.Conjuncts.Any(part => part.Properties.Count > 0) ? null : quantity with { Words = [Ids] };
        }

        var words = parts.Find(part => part.Words.Count > 0)?.Words;
        return words is not null ? quantity with { Form = CellForm.Word, Words = words }
            : parts.Exists(part => part.Title is "date and time") ? quantity with { Form = CellForm.Moment }
            : parts.Exists(part => part.Kinds is ValueKinds.WholeNumber) ? quantity with { Form = CellForm.Count }
            : parts.SelectMany(part => part.Examples).Select(DimensionOf).FirstOrDefault(dimension => dimension is not null) is { } dimension ? quantity with { Form = CellForm.Number, Dimension = dimension }
            : quantity;
    }

    private static Dimension? DimensionOf(string example) => MeasureText.Split(example) is var (_, unit) ? UnitTable.Find(unit)?.Dimension : null;
}
