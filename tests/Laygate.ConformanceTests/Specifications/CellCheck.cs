using System.Globalization;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Results;
using MergedBook = Laygate.Rules.Merging.RuleBook;

namespace Laygate.ConformanceTests.Specifications;

/// <summary>Asks the loaded rule book for one cell: a base plan, the conditions of the cell as given quantities, and a value.</summary>
internal static class CellCheck
{
    private const string General = "general";
    private static readonly QuantityCatalogue Catalogue = LaygateQuantities.Catalogue();
    private static readonly Dictionary<string, Plan> Plans = new(StringComparer.Ordinal) { ["single"] = Base("single"), ["pair"] = Base("pair") };
    private static readonly Dictionary<string, MergedBook> Books = new(StringComparer.Ordinal);

    /// <summary>Element of the base plans that stands for its kind.</summary>
    private static readonly Dictionary<ElementKind, string> Addresses = new()
    {
        [ElementKind.Mix] = "mix:ac11",
        [ElementKind.Course] = "course:wearing",
        [ElementKind.Pair] = "pair:lower+upper",
        [ElementKind.Run] = "run:north",
        [ElementKind.Trucks] = "trucks:tippers",
        [ElementKind.Roller] = "roller:r1",
        [ElementKind.BondCoat] = "bond-coat:tack",
        [ElementKind.Joint] = "joint:centre",
    };

    public static IEnumerable<string> With(TableCell cell) => cell.Jurisdiction is General ? [] : [cell.Jurisdiction];

    /// <summary>Address of the element that a quantity is given for.</summary>
    public static string AddressOf(string quantity) => AddressOf(Catalogue.Find(quantity)?.Element
        ?? throw new InvalidDataException($"{quantity} is no quantity."));

    /// <summary>The findings that the rules of the cell's layer give on a value: those that check its quantity and bound this end of it.</summary>
    public static IReadOnlyList<Finding> Findings(TableCell cell, string value)
    {
        var book = BookOf(cell.Jurisdiction);
        return [.. book.InForce.Where(rule => Speaks(rule, cell))
            .SelectMany(rule => Judge(book, rule.Definition, cell, value))
            .Where(finding => finding.Outcome != Outcome.NotApplicable)];
    }

    private static bool Speaks(CheckedRule rule, TableCell cell) =>
        string.Equals(rule.Quantity.Name, cell.Quantity, StringComparison.Ordinal)
        && (rule.Definition.Check == CheckKind.Between || rule.Definition.Check == (cell.IsLow ? CheckKind.AtLeast : CheckKind.AtMost))
        && rule.Bounds.Any(bound => bound.Limit is not CheckedQuantity && (bound.SetBy is null ? cell.Jurisdiction is General : string.Equals(bound.SetBy, cell.Jurisdiction, StringComparison.Ordinal)));

    private static IEnumerable<Finding> Judge(MergedBook book, RuleDefinition rule, TableCell cell, string value)
    {
        var context = new QuantityContext(Plans[cell.Base], Catalogue, LaygateAssumptions.Set(), seed: 1);
        foreach (var (quantity, stated) in cell.Conditions.Append((cell.Quantity, value)))
        {
            var place = string.Equals(quantity, cell.Quantity, StringComparison.Ordinal) ? cell.Place : null;
            Give(context, quantity, stated, place);
        }

        var settings = new EvaluationSettings { File = cell.File, CheckedOn = Repository.CheckDate, OnlyRule = rule.Id };
        var address = AddressOf(rule.AppliesTo);
        return Evaluator.Evaluate(book, context, settings).Findings.Where(finding => string.Equals(finding.Address, address, StringComparison.Ordinal));
    }

    private static void Give(QuantityContext context, string name, string text, string? place)
    {
        var quantity = Catalogue.Find(name) ?? throw new InvalidDataException($"{name} is no quantity.");
        var (value, unit) = Value(quantity, text);
        var address = AddressOf(quantity.Element);
        context.Give(name, address, new Answer
        {
            Value = value,
            Unit = unit,
            Place = place is null ? quantity.Place : Words.Find<Place>(place),
            Input = new InputReference(address, name),
        });
    }

    private static (QuantityValue Value, Unit? Unit) Value(QuantityDefinition quantity, string text)
    {
        if (quantity.Kind == ValueKind.Flag)
        {
            return (new FlagValue(text is "yes"), null);
        }

        if (quantity.Kind == ValueKind.Category)
        {
            return (new CategoryValue(text), null);
        }

        var parts = text.Split(' ', 2);
        var number = double.Parse(parts[0], CultureInfo.InvariantCulture);
        var unit = parts.Length > 1 ? UnitTable.Find(parts[1]) : null;
        Assert.True(parts.Length == 1 || unit?.Dimension == quantity.Dimension, $"{text} is no value of {quantity.Name}.");
        return (new NumberValue(unit?.ToSi(number) ?? number), unit);
    }

    private static MergedBook BookOf(string jurisdiction)
    {
        if (!Books.TryGetValue(jurisdiction, out var book))
        {
            var specifications = Repository.Book.Specifications.Where(one => string.Equals(one.Name, jurisdiction, StringComparison.Ordinal)).ToList();
            Assert.True(jurisdiction is General || specifications.Count == 1, $"There is no specification {jurisdiction}.");
            var result = MergedBook.Build(Repository.Book.General!, specifications, Catalogue, LaygateAssumptions.Set());
            Assert.Empty(result.Problems);
            Books[jurisdiction] = book = result.Book!;
        }

        return book;
    }

    private static string AddressOf(ElementKind kind) => Addresses.TryGetValue(kind, out var address) ? address : Words.Of(kind);

    private static Plan Base(string name)
    {
        var read = YamlReader.Read(Repository.Rules.Read($"bases/{name}.yaml"));
        return PlanMapper.Map(read.Documents[0]).Plan ?? throw new InvalidDataException($"The base plan {name} cannot be read.");
    }
}
