using System.Globalization;
using Laygate.Checking.Cases;
using Laygate.Engineering.Assumptions;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;

namespace Laygate.Tests.Figures;

/// <summary>A figure that could be changed by one unit of its last digit without any case failing.</summary>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Specification">Specification that sets the figure; null for the rule itself.</param>
/// <param name="Where">Where it stands in the definition.</param>
/// <param name="From">The figure.</param>
/// <param name="To">What it was changed to.</param>
internal sealed record Survivor(string Rule, string? Specification, string Where, string From, string To);

/// <summary>What came of changing every figure.</summary>
/// <param name="Changed">Number of changes tried.</param>
/// <param name="Survivors">Those that no case noticed.</param>
internal sealed record MutationResult(int Changed, IReadOnlyList<Survivor> Survivors);

/// <summary>Changes figures by one unit of their last digit and asks whether any case notices.</summary>
internal static class FigureChanges
{
    /// <summary>Changes each figure of a rule, there and in specifications, up and down.</summary>
    public static MutationResult Mutate(this CaseRunner runner, RuleDefinition rule)
    {
        var ofSpecifications = runner.Specifications.SelectMany(specification => runner.SetCases(specification, rule.Id));
        var prepared = runner.Read(rule).Cases.Concat(ofSpecifications).Select(one => Attempt(() => runner.Prepare(one))).OfType<PreparedCase>().ToList();

        // A book of this rule alone judges as the whole one and is made in a fraction of the time; some rules stand on others.
        var alone = new Mutant(
            new Survivor(rule.Id, null, string.Empty, string.Empty, string.Empty), runner.General with { Rules = Only(runner.General.Rules, rule) }, [.. runner.Specifications.Select(one => Only(one, rule))], null);
        var mutants = (IsRefused(runner, alone, prepared) ? Mutants(runner.General, runner.Specifications, rule) : Mutants(alone.General, alone.Specifications, rule)).ToList();
        return new MutationResult(mutants.Count, [.. mutants.Where(mutant => !IsNoticed(runner, rule, mutant, prepared)).Select(mutant => mutant.Change)]);
    }

    /// <summary>Changes each figure under <c>assume:</c> of a specification.</summary>
    public static MutationResult Mutate(this CaseRunner runner, Specification specification)
    {
        var mutants = AssumptionMutations.Of(specification).ToList();
        if (mutants.Count == 0)
        {
            return new MutationResult(0, []);
        }

        var cases = runner.Rules.SelectMany(rule => runner.Read(rule).Cases.Concat(runner.SetCases(specification, rule.Id)).Select(one => (Rule: rule, Case: one)))
            .Where(of => of.Case.With.Contains(specification.Name, StringComparer.Ordinal)).ToList();
        return new MutationResult(mutants.Count, [.. mutants.Where(mutant => !cases.Any(of => Notices(runner, of.Rule, of.Case, mutant.Changed))).Select(mutant => mutant.Survivor)]);
    }

    private static List<RuleDefinition> Only(IReadOnlyList<RuleDefinition> rules, RuleDefinition rule) => [.. rules.Where(one => string.Equals(one.Id, rule.Id, StringComparison.Ordinal))];

    private static Specification Only(Specification specification, RuleDefinition rule) =>
        specification with { Rules = Only(specification.Rules, rule), Set = [.. specification.Set.Where(set => string.Equals(set.Rule, rule.Id, StringComparison.Ordinal))] };

    private static bool IsRefused(CaseRunner runner, Mutant mutant, List<PreparedCase> cases) =>
        cases.Select(one => one.Case.With).DistinctBy(with => string.Join('+', with), StringComparer.Ordinal).Any(with => Book(runner, mutant, with) is null);

    private static RuleBook? Book(CaseRunner runner, Mutant mutant, IReadOnlyList<string> with) =>
        runner.Changed(mutant.General, with.Select(name => mutant.Specifications.First(found => string.Equals(found.Name, name, StringComparison.Ordinal))));

    private static IEnumerable<Mutant> Mutants(BookDefinition general, IReadOnlyList<Specification> specifications, RuleDefinition rule)
    {
        foreach (var (where, from, to, changed) in LimitMutations.Of(rule))
        {
            yield return new Mutant(
                new Survivor(rule.Id, null, where, from, to), general with { Rules = Replace(general.Rules, rule, changed) }, [.. specifications.Select(one => one with { Rules = Replace(one.Rules, rule, changed) })], null);
        }

        foreach (var specification in specifications)
        {
            foreach (var set in specification.Set.Where(set => string.Equals(set.Rule, rule.Id, StringComparison.Ordinal)))
            {
                foreach (var (where, from, to, bounds) in LimitMutations.Of(set.Bounds))
                {
                    var changed = specification with { Set = [.. specification.Set.Select(one => ReferenceEquals(one, set) ? set with { Bounds = bounds } : one)] };
                    yield return new Mutant(
                        new Survivor(rule.Id, specification.Name, where, from, to),
                        general,
                        [.. specifications.Select(one => ReferenceEquals(one, specification) ? changed : one)],
                        specification.Name);
                }
            }
        }
    }

    private static List<RuleDefinition> Replace(IReadOnlyList<RuleDefinition> rules, RuleDefinition old, RuleDefinition now) =>
        [.. rules.Select(rule => ReferenceEquals(rule, old) ? now : rule)];

    // A change that the binder refuses is noticed as well: such a book is never used.
    private static bool IsNoticed(CaseRunner runner, RuleDefinition rule, Mutant mutant, List<PreparedCase> cases)
    {
        var changed = new Dictionary<string, RuleBook?>(StringComparer.Ordinal);
        foreach (var one in cases.Where(one => mutant.Specification is null || one.Case.With.Contains(mutant.Specification, StringComparer.Ordinal)))
        {
            var key = string.Join('+', one.Case.With);
            if (!changed.TryGetValue(key, out var book))
            {
                book = Book(runner, mutant, one.Case.With);
                changed[key] = book;
            }

            if (book is null || runner.Compare(rule, one, book).Count > 0)
            {
                return true;
            }
        }

        return false;
    }

    private static bool Notices(CaseRunner runner, RuleDefinition rule, RuleCase one, Specification changed)
    {
        var with = one.With.Select(name => string.Equals(name, changed.Name, StringComparison.Ordinal)
            ? changed
            : runner.Specifications.First(found => string.Equals(found.Name, name, StringComparison.Ordinal)));
        var book = runner.Changed(runner.General, with);
        return book is null || (Attempt(() => runner.Prepare(one, book)) is { } prepared && runner.Compare(rule, prepared, book).Count > 0);
    }

    private static T? Attempt<T>(Func<T> make)
        where T : class
    {
        try
        {
            return make();
        }
        catch (CaseException)
        {
            return null; // Run reports it.
        }
    }

    private sealed record Mutant(Survivor Change, BookDefinition General, IReadOnlyList<Specification> Specifications, string? Specification);
}

/// <summary>Changes each figure of a definition by one unit of its last digit.</summary>
internal static class LimitMutations
{
    /// <summary>Changed copies of a rule.</summary>
    public static IEnumerable<(string Where, string From, string To, RuleDefinition Changed)> Of(RuleDefinition rule)
    {
        foreach (var (where, from, to, bounds) in Of(rule.Bounds))
        {
            yield return (where, from, to, rule with { Bounds = bounds });
        }

        for (var index = 0; index < rule.When.Count; index++)
        {
            var at = index;
            var condition = rule.When[at];
            foreach (var (part, value) in new[] { ("at_least", condition.AtLeast), ("below", condition.Below) })
            {
                foreach (var changed in Steps(value))
                {
                    var now = string.Equals(part, "below", StringComparison.Ordinal) ? condition with { Below = changed } : condition with { AtLeast = changed };
                    yield return ($"when/{at}/{part}", value!.Text, changed.Text, rule with { When = With(rule.When, at, now) });
                }
            }
        }
    }

    /// <summary>Changed copies of bounds.</summary>
    public static IEnumerable<(string Where, string From, string To, IReadOnlyList<Bound> Changed)> Of(IReadOnlyList<Bound> bounds)
    {
        for (var index = 0; index < bounds.Count; index++)
        {
            foreach (var (where, from, to, limit) in Of(bounds[index].Limit))
            {
                yield return (string.Create(CultureInfo.InvariantCulture, $"bounds/{index}/{where}"), from, to, With(bounds, index, bounds[index] with { Limit = limit }));
            }
        }
    }

    private static IEnumerable<(string Where, string From, string To, Limit Changed)> Of(Limit limit) => limit switch
    {
        ConstantLimit constant =>
        [
            .. Steps(constant.Low).Select(value => ("low", constant.Low!.Text, value.Text, (Limit)(constant with { Low = value }))),
            .. Steps(constant.High).Select(value => ("high", constant.High!.Text, value.Text, (Limit)(constant with { High = value }))),
        ],
        QuantityLimit quantity => Steps(new LimitValue(quantity.Factor, string.Empty, quantity.FactorText))
            .Select(value => ("times", quantity.FactorText, value.Text, (Limit)(quantity with { Factor = value.Number, FactorText = value.Text }))),
        TableLimit table => Cells(table).Concat(Edges(table)),
        _ => [],
    };

    private static IEnumerable<(string Where, string From, string To, Limit Changed)> Cells(TableLimit table)
    {
        for (var index = 0; index < table.Rows.Count; index++)
        {
            var row = table.Rows[index];
            var where = string.Create(CultureInfo.InvariantCulture, $"table/rows/{index}");
            foreach (var value in Steps(row.Low))
            {
                yield return ($"{where}/low", row.Low!.Text, value.Text, table with { Rows = With(table.Rows, index, row with { Low = value }) });
            }

            foreach (var value in Steps(row.High))
            {
                yield return ($"{where}/high", row.High!.Text, value.Text, table with { Rows = With(table.Rows, index, row with { High = value }) });
            }
        }
    }

    // An edge between two bands stands in both rows; it moves in all of them at once, or the table would only get a gap.
    private static IEnumerable<(string Where, string From, string To, Limit Changed)> Edges(TableLimit table)
    {
        for (var key = 0; key < table.Keys.Count; key++)
        {
            var column = key;
            var edges = table.Rows.SelectMany(row => new[] { row.Matches[column].AtLeast, row.Matches[column].Below }).OfType<LimitValue>().Distinct().ToList();
            foreach (var edge in edges)
            {
                foreach (var value in Steps(edge))
                {
                    yield return ($"table/{table.Keys[column]}", edge.Text, value.Text, table with { Rows = [.. table.Rows.Select(row => row with { Matches = With(row.Matches, column, Move(row.Matches[column], edge, value)) })] });
                }
            }
        }
    }

    private static RowMatch Move(RowMatch match, LimitValue edge, LimitValue now) =>
        match with { AtLeast = match.AtLeast == edge ? now : match.AtLeast, Below = match.Below == edge ? now : match.Below };

    private static IEnumerable<LimitValue> Steps(LimitValue? value)
    {
        if (value is null)
        {
            yield break;
        }

        var digits = value.Text.Split(' ')[0];
        var point = digits.IndexOf('.', StringComparison.Ordinal);
        var decimals = point < 0 ? 0 : digits.Length - point - 1;
        foreach (var step in new[] { 1m, -1m })
        {
            var unit = 1m;
            for (var place = 0; place < decimals; place++)
            {
                unit /= 10;
            }

            var number = decimal.Parse(digits, CultureInfo.InvariantCulture) + (step * unit);
            var text = number.ToString(CultureInfo.InvariantCulture);
            yield return new LimitValue((double)number, value.Unit, value.Unit.Length == 0 ? text : $"{text} {value.Unit}");
        }
    }

    private static List<T> With<T>(IReadOnlyList<T> list, int index, T now) => [.. list.Select((item, at) => at == index ? now : item)];
}

/// <summary>Changes each figure of the assumptions of a specification by one unit of its last digit.</summary>
internal static class AssumptionMutations
{
    /// <summary>Changed copies of a specification.</summary>
    public static IEnumerable<(Survivor Survivor, Specification Changed)> Of(Specification specification)
    {
        for (var index = 0; index < specification.Assume.Count; index++)
        {
            var at = index;
            var assumption = specification.Assume[at];
            foreach (var (part, from, to, changed) in Of(assumption))
            {
                yield return (
                    new Survivor(assumption.Id, specification.Name, $"assume/{part}", $"{from} {assumption.Unit}".TrimEnd(), $"{to} {assumption.Unit}".TrimEnd()),
                    specification with { Assume = [.. specification.Assume.Select((one, place) => place == at ? changed : one)] });
            }
        }
    }

    private static IEnumerable<(string Part, string From, string To, Assumption Changed)> Of(Assumption assumption) =>
    [
        .. Steps(assumption.Number).Select(step => ("value", step.From, step.To, assumption with { Number = step.Value })),
        .. Steps(assumption.Low).Select(step => ("low", step.From, step.To, assumption with { Low = step.Value })),
        .. Steps(assumption.High).Select(step => ("high", step.From, step.To, assumption with { High = step.Value })),
    ];

    // The shortest text of a number has the digits that were written, but for zeros at the end.
    private static IEnumerable<(string From, string To, double Value)> Steps(double number)
    {
        var exact = (decimal)number;
        var text = exact.ToString(CultureInfo.InvariantCulture);
        var point = text.IndexOf('.', StringComparison.Ordinal);
        var unit = 1m;
        for (var place = 0; point >= 0 && place < text.Length - point - 1; place++)
        {
            unit /= 10;
        }

        foreach (var changed in new[] { exact + unit, exact - unit })
        {
            yield return (text, changed.ToString(CultureInfo.InvariantCulture), (double)changed);
        }
    }
}
