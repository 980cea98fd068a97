using System.Collections.Frozen;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Checking.Sheets;

/// <summary>What the crew watches, tests and guards against.</summary>
internal sealed class SheetProof(QuantityContext context, Report report, RuleBook book, Func<Course, SheetFigure> perLoad)
{
    private readonly Plan plan = context.Plan;

    /// <summary>Limits whose rule says what to do about them on site.</summary>
    public IReadOnlyList<SheetLimit> Limits()
    {
        var instructions = book.InForce.Where(rule => rule.Definition.OnSite is not null)
            .ToFrozenDictionary(rule => rule.Definition.Id, rule => rule.Definition.OnSite!, StringComparer.Ordinal);
        return [.. report.Findings.Where(finding => finding.Limit is not null && instructions.ContainsKey(finding.Rule))
            .Select(finding => new SheetLimit(finding, instructions[finding.Rule], finding.Quantity.StartsWith("opening.", StringComparison.Ordinal)))];
    }

    /// <summary>Tests with the figures of the plan that they are held against.</summary>
    public IReadOnlyList<SheetTest> Tests() => [.. plan.Tests.Select(test => new SheetTest(test, [.. Limits(test).Where(limit => limit.Figure.Value is not null)]))];

    /// <summary>Measures, with whether a person answers for them and whether a rule of the gravest severity asks for them.</summary>
    public IReadOnlyList<SheetMeasure> Measures(IEnumerable<SafetyMeasure> measures)
    {
        var grave = book.InForce.Where(rule => rule.Definition.LifeCritical)
            .SelectMany(rule => rule.Definition.Bounds.Where(bound => bound.Strength == Strength.Required))
            .Select(bound => bound.Limit).OfType<PresenceLimit>().SelectMany(limit => limit.Entries).SelectMany(entry => entry.AnyOf)
            .ToFrozenSet(StringComparer.Ordinal);
        return [.. measures.Select(measure => new SheetMeasure(measure, HasPerson(measure), measure.Kind is { } kind && grave.Contains(Words.Of(kind))))];
    }

    private bool HasPerson(SafetyMeasure measure) =>
        context.Elements.Find($"measure:{measure.Id}") is { } element && context.Get("measure.one_answers", element).Value is FlagValue { Yes: true };

    private IEnumerable<SheetTestLimit> Limits(Test test) => test.Kind switch
    {
        TestKind.Density => Courses(test).Select(course => Least(course.Id, MixOf(course)?.Density?.Degree)),
        TestKind.Thickness => Courses(test).Select(course => Least(course.Id, course.ThicknessLowest)),
        TestKind.MixTemperature => plan.Mixes.Select(mix => Least(mix.Name ?? mix.Id, mix.RefuseBelow?.Value)),
        TestKind.MatTemperature => Courses(test).Select(course => Least(course.Id, MixOf(course)?.Cessation?.Value)),
        TestKind.Yield => Courses(test).Select(course => new SheetTestLimit(course.Id, perLoad(course), false)),
        TestKind.BondCoatRate => plan.BondCoats.Select(coat => new SheetTestLimit(coat.Below, SheetFigures.Stated((IMeasure?)coat.MassRate ?? coat.VolumeRate), false)),
        _ => [],
    };

    private IEnumerable<Course> Courses(Test test) => plan.Courses.Where(course => test.Course is null || Same(course.Id, test.Course));

    private Mix? MixOf(Course course) => plan.Mixes.FirstOrDefault(mix => Same(mix.Id, course.Mix));

    private static SheetTestLimit Least(string of, IMeasure? measure) => new(of, SheetFigures.Stated(measure), true);

    private static bool Same(string? a, string? b) => a is not null && string.Equals(a, b, StringComparison.Ordinal);
}
