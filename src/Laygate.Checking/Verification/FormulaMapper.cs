using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Checking.Verification;

/// <summary>Turns a formula case into checks, one per row.</summary>
internal static class FormulaMapper
{
    public static IReadOnlyList<ExpectedValue> Map(CaseFields fields)
    {
        var name = (ScalarToken)fields["name"]!;
        if (CaseFormulas.Find(name.Text) is not { } formula)
        {
            fields.Problems.Add(ConductionMapper.Unknown("formula", name, CaseFormulas.Names));
            return [];
        }

        var unit = fields.ValueUnit(formula.Result);
        var tolerance = fields.Tolerance(formula.Result);
        var shared = Entries(fields.Group("inputs"));
        return [.. fields.Groups("rows").Select(row =>
        {
            var own = Entries(row.Group("inputs"));
            var inputs = Inputs(formula, shared, own, row);
            return new ExpectedValue(
                new VerifiedQuantity(VerifiedKind.Formula, Formula: formula.Name, Inputs: [.. own.Select(entry => new VerifiedInput(entry.Key.Text, string.Join(", ", Scalars(entry).Select(scalar => scalar.Text))))]),
                CaseFields.Value((ScalarToken)row["value"]!), unit, tolerance, _ => formula.Compute(inputs), row["value"]!.Span);
        })];
    }

    private static IReadOnlyList<MapEntry> Entries(CaseFields? fields) => fields?.Map.Entries ?? [];

    private static IReadOnlyList<ScalarToken> Scalars(MapEntry entry) => entry.Value is ListToken list ? [.. list.Items.OfType<ScalarToken>()] : [(ScalarToken)entry.Value];

    private static CaseInputs Inputs(CaseFormula formula, IReadOnlyList<MapEntry> shared, IReadOnlyList<MapEntry> own, CaseFields row)
    {
        var numbers = new Dictionary<string, double>(StringComparer.Ordinal);
        var lists = new Dictionary<string, IReadOnlyList<double>>(StringComparer.Ordinal);
        var words = new Dictionary<string, string>(StringComparer.Ordinal);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var entry in shared.Concat(own))
        {
            var key = entry.Key;
            if (!seen.Add(key.Text))
            {
                row.Problems.Add(new ReadingProblem($"{TokenNames.Quote(key.Text)} is given for all rows already.", key.Span, "Keep one of the two."));
            }
            else if (formula.Inputs.FirstOrDefault(input => string.Equals(input.Name, key.Text, StringComparison.Ordinal)) is not { } input)
            {
                row.Problems.Add(ConductionMapper.Unknown($"input of {formula.Name} named", key, formula.Inputs.Select(known => known.Name)));
            }
            else if (entry.Value is ListToken != input.IsList)
            {
                row.Problems.Add(new ReadingProblem($"The input {TokenNames.Quote(key.Text)} is {(input.IsList ? "a list" : "one value")}.", key.Span, Example(input)));
            }
            else if (input.IsList)
            {
                lists[key.Text] = [.. Scalars(entry).Select(value => input.Dimension!.Read(value, row.Problems) ?? 0)];
            }
            else if (input.Words is { } known)
            {
                words[key.Text] = Word(input, (ScalarToken)entry.Value, known, row);
            }
            else
            {
                numbers[key.Text] = input.Dimension!.Read((ScalarToken)entry.Value, row.Problems) ?? 0;
            }
        }

        foreach (var missing in formula.Inputs.Where(input => input.IsRequired && !seen.Contains(input.Name)))
        {
            row.Problems.Add(new ReadingProblem($"The formula {formula.Name} needs the input `{missing.Name}`.", row.Span, Example(missing)));
        }

        return new CaseInputs(numbers, lists, words);
    }

    private static string Word(CaseInput input, ScalarToken value, IReadOnlyList<string> known, CaseFields row)
    {
        if (!known.Contains(value.Text, StringComparer.Ordinal))
        {
            row.Problems.Add(ConductionMapper.Unknown(input.Name, value, known));
        }

        return value.Text;
    }

    private static string Example(CaseInput input) => input.Words is { } words
        ? $"Add `{input.Name}` with one of {string.Join(", ", words.Select(word => $"`{word}`"))}."
        : input.IsList
            ? $"Write `{input.Name}: [{input.Dimension!.Example}, {input.Dimension.Example}]` with its values."
            : $"Write `{input.Name}: {input.Dimension!.Example}` with its value.";
}
