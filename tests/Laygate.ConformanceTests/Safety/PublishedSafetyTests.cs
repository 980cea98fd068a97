using System.Globalization;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Safety;

/// <summary>Published clearances, light levels, exposure limits and distances to lines, typed from their sources in <c>published-limits.txt</c>, against what the rule book answers on both sides of each.</summary>
public sealed class PublishedSafetyTests
{
    private static readonly string[] Lines =
        [.. File.ReadAllLines(Path.Combine(Repository.Root, "tests", "Laygate.ConformanceTests", "Safety", "published-limits.txt")).Where(line => line.Length > 0 && line[0] != '#')];

    public static TheoryData<int> Numbers => [.. Enumerable.Range(0, Lines.Length)];

    [Theory]
    [MemberData(nameof(Numbers))]
    public void The_rule_book_answers_as_published(int number)
    {
        var cells = Lines[number].Split('|');
        var (limit, unit) = (double.Parse(cells[7].Split(' ')[0], CultureInfo.InvariantCulture), UnitTable.Find(cells[7].Split(' ')[1])!);
        var outside = cells[6] is "at-least" ? limit * 0.99 : limit * 1.01;

        var met = Judge(cells, unit.ToSi(limit));
        var missed = Judge(cells, unit.ToSi(outside)).Where(finding => finding.Outcome == Outcome.Missed).ToList();

        // Another rule of the same quantity may be stricter; the published limit must be the limit of one that is met at it and missed beside it.
        var ours = missed.Where(finding => Is(finding.Limit, limit, unit) || Is(finding.OtherLimit, limit, unit)).ToList();
        Assert.True(ours.Count > 0, $"{Lines[number]}: missed are {string.Join(", ", missed.Select(one => $"{one.Rule} {one.Limit?.Low?.Number ?? one.Limit?.High?.Number}"))}");
        Assert.Contains(ours, finding => met.Any(one => one.Rule == finding.Rule && !(one.Outcome == Outcome.Missed && Is(one.Limit, limit, unit))));
    }

    private static bool Is(ShownLimit? shown, double limit, Unit unit) =>
        (shown?.Low ?? shown?.High) is { Number: { } number } value && Math.Abs(UnitTable.Find(value.Unit)!.ToSi(number) - unit.ToSi(limit)) <= 1e-6 * Math.Abs(unit.ToSi(limit));

    private static List<Finding> Judge(string[] cells, double si)
    {
        var plan = PlanMapper.Map(YamlReader.Read(Repository.Bytes("rules/bases/single.yaml")).Documents[0]).Plan!;
        var date = cells[2].Length == 0 ? plan.Shift!.Date!.Value : DateOnly.ParseExact(cells[2], "yyyy-MM-dd", CultureInfo.InvariantCulture);
        plan = plan with
        {
            Location = plan.Location! with { Jurisdiction = cells[1] },
            Shift = plan.Shift! with { Date = date },
            Site = plan.Site! with { Conditions = plan.Site.Conditions! with { Night = true } },
        };
        var context = new QuantityContext(plan, LaygateQuantities.Catalogue(), LaygateAssumptions.Set(), 1);
        context.Give(cells[4], cells[3], new Answer { Value = new NumberValue(si), Unit = UnitTable.Find(cells[7].Split(' ')[1]) });
        foreach (var condition in cells[5].Split(';', StringSplitOptions.RemoveEmptyEntries))
        {
            Give(context, condition.Split('='), cells[3]);
        }

        var rules = Repository.Bound().On(context.Elements.Find(cells[3])!.Kind).Where(rule => rule.Quantity.Name == cells[4]).Select(rule => rule.Definition.Id);
        return [.. rules.Select(rule => Evaluator.Evaluate(Repository.Bound(), context, new EvaluationSettings { File = "t", CheckedOn = date, OnlyRule = rule }).Findings.Single(one => one.Address == cells[3]))];
    }

    private static void Give(QuantityContext context, string[] condition, string address)
    {
        var quantity = context.Catalogue.Find(condition[0])!;
        QuantityValue value = quantity.Kind switch
        {
            ValueKind.Flag => new FlagValue(condition[1] is "yes"),
            ValueKind.Category => new CategoryValue(condition[1]),
            _ => new NumberValue(UnitTable.Find(condition[1].Split(' ')[1])!.ToSi(double.Parse(condition[1].Split(' ')[0], CultureInfo.InvariantCulture))),
        };
        context.Give(condition[0], quantity.Element == ElementKind.Site ? "site" : address, new Answer { Value = value });
    }
}
