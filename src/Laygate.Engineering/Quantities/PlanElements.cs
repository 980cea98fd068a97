using Laygate.Engineering.Jobs;
using Laygate.Engineering.Quantities.Safety;
using Laygate.Engineering.Quantities.Values;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>The elements of a plan in plan order, and what belongs to what.</summary>
public sealed class PlanElements
{
    private readonly Dictionary<string, Element> byAddress;
    private readonly bool isJob;

    /// <summary>Lists the elements of a plan. Elements that a plan has once are always there, so that silence about them can be found.</summary>
    public PlanElements(Plan plan)
        : this(plan, List(plan))
    {
    }

    /// <summary>Lists the elements of a job of several shifts: none of them is an element of a plan.</summary>
    internal PlanElements(JobView job)
        : this(job.Whole, job.Elements) => isJob = true;

    private PlanElements(Plan plan, IEnumerable<Element> elements)
    {
        Plan = plan;
        All = [.. elements];
        byAddress = new Dictionary<string, Element>(All.Count, StringComparer.Ordinal);
        foreach (var element in All)
        {
            byAddress.TryAdd(element.Address, element);
        }
    }

    /// <summary>The plan.</summary>
    public Plan Plan { get; }

    /// <summary>All elements in plan order.</summary>
    public IReadOnlyList<Element> All { get; }

    /// <summary>The numbers that the plan states, in plan order. They are elements of a kind of their own, and not among <see cref="All"/>.</summary>
    public IReadOnlyList<StatedValue> Values => field ??= isJob ? [] : StatedValues.Of(this);

    /// <summary>A stated number as an element.</summary>
    public static Element OfValue(StatedValue value) => new(ElementKind.Value, value.Address, value);

    /// <summary>The elements of one kind, in plan order.</summary>
    public IEnumerable<Element> Of(ElementKind kind) => kind == ElementKind.Value ? Values.Select(OfValue) : All.Where(element => element.Kind == kind);

    /// <summary>Finds an element by its address.</summary>
    /// <returns>The element, or null.</returns>
    public Element? Find(string address) => byAddress.GetValueOrDefault(address)
        ?? (address.Contains('/', StringComparison.Ordinal) && Values.FirstOrDefault(value => string.Equals(value.Address, address, StringComparison.Ordinal)) is { } value ? OfValue(value) : null);

    /// <summary>
    /// The one element of a kind that another belongs to: a course to its mix, trucks to their mix and plant, a roller to its phase,
    /// a bond coat or joint to its course, everything to what a plan has once, and an element to itself.
    /// </summary>
    /// <returns>The element, or null where there is none or more than one.</returns>
    public Element? Related(Element from, ElementKind kind)
    {
        if (from.Kind == kind)
        {
            return from;
        }

        if (Find(Words.Of(kind)) is { } single)
        {
            return single;
        }

        if (RelatedAddress(from, kind) is { } named)
        {
            return Find(named);
        }

        return kind == ElementKind.Feeder ? Of(kind).FirstOrDefault() : null;
    }

    /// <summary>The address that one element names as the one of a kind that it belongs to, whether the plan has that element or not.</summary>
    /// <returns>The address, or null where it names none.</returns>
    public static string? RelatedAddress(Element from, ElementKind kind)
    {
        var id = (from.Subject, kind) switch
        {
            (Course course, ElementKind.Mix) => course.Mix,
            (TruckGroup trucks, ElementKind.Mix) => trucks.Mix,
            (TruckGroup trucks, ElementKind.Plant) => trucks.Plant,
            (Roller roller, ElementKind.Phase) => roller.Phase,
            (BondCoat coat, ElementKind.Course) => coat.Below,
            (Joint joint, ElementKind.Course) => joint.Course,
            (Test test, ElementKind.Course) => test.Course,
            (Run run, ElementKind.Paver) => run.Paver,
            _ => null,
        };
        return id is null ? null : $"{Words.Of(kind)}:{id}";
    }

    /// <summary>Whether elements of one kind can ever belong to one of another; rule files are checked against it.</summary>
    public static bool CanRelate(ElementKind from, ElementKind kind) =>
        from == kind || IsSingle(kind) || kind == ElementKind.Feeder || (from, kind) is
            (ElementKind.Course, ElementKind.Mix) or (ElementKind.Trucks, ElementKind.Mix) or (ElementKind.Trucks, ElementKind.Plant)
            or (ElementKind.Roller, ElementKind.Phase) or (ElementKind.BondCoat, ElementKind.Course)
            or (ElementKind.Joint, ElementKind.Course) or (ElementKind.Test, ElementKind.Course) or (ElementKind.Run, ElementKind.Paver);

    /// <summary>Whether a plan has elements of this kind exactly once.</summary>
    public static bool IsSingle(ElementKind kind) => kind is ElementKind.Plan or ElementKind.Location or ElementKind.Site
        or ElementKind.Shift or ElementKind.Weather or ElementKind.Existing or ElementKind.Supply or ElementKind.EarlyFriction
        or ElementKind.Opening;

    private static IEnumerable<Element> List(Plan plan)
    {
        yield return new Element(ElementKind.Plan, string.Empty, plan);
        yield return new Element(ElementKind.Location, string.Empty, plan.Location);
        yield return new Element(ElementKind.Site, string.Empty, plan.Site);
        foreach (var condition in SiteConditionTable.StatedBy(plan))
        {
            yield return new Element(ElementKind.Condition, condition.Key, condition);
        }

        foreach (var line in plan.Site?.OverheadLines ?? [])
        {
            yield return new Element(ElementKind.OverheadLine, line.Id, line);
        }

        foreach (var light in plan.Site?.Lights ?? [])
        {
            yield return new Element(ElementKind.Light, light.Id, light);
        }

        foreach (var exposure in plan.Site?.Exposures ?? [])
        {
            yield return new Element(ElementKind.Exposure, exposure.Id, exposure);
        }

        yield return new Element(ElementKind.Shift, string.Empty, plan.Shift);
        yield return new Element(ElementKind.Weather, string.Empty, plan.Weather);
        yield return new Element(ElementKind.Existing, string.Empty, plan.Existing);
        foreach (var element in ListLists(plan))
        {
            yield return element;
        }
    }

    private static IEnumerable<Element> ListLists(Plan plan) =>
    [
        .. plan.Mixes.Select(mix => new Element(ElementKind.Mix, mix.Id, mix)),
        .. plan.Courses.Select(course => new Element(ElementKind.Course, course.Id, course)),
        .. Pairs(plan).Select(pair => new Element(ElementKind.Pair, $"{pair.Lower.Id}+{pair.Upper.Id}", pair)),
        .. plan.Runs.Select(run => new Element(ElementKind.Run, run.Id, run)),
        new Element(ElementKind.Supply, string.Empty, plan.Supply),
        .. (plan.Supply?.Plants ?? []).Select(plant => new Element(ElementKind.Plant, plant.Id, plant)),
        .. (plan.Supply?.Trucks ?? []).Select(trucks => new Element(ElementKind.Trucks, trucks.Id, trucks)),
        .. plan.Supply?.Feeder is { } feeder ? [new Element(ElementKind.Feeder, feeder.Id, feeder)] : Array.Empty<Element>(),
        .. plan.Pavers.Select(paver => new Element(ElementKind.Paver, paver.Id, paver)),
        .. (plan.Rolling?.Phases ?? []).Select(phase => new Element(ElementKind.Phase, phase.Id, phase)),
        .. (plan.Rolling?.Rollers ?? []).Select(roller => new Element(ElementKind.Roller, roller.Id, roller)),
        .. plan.BondCoats.Select(coat => new Element(ElementKind.BondCoat, coat.Id, coat)),
        .. plan.Joints.Select(joint => new Element(ElementKind.Joint, joint.Id, joint)),
        new Element(ElementKind.EarlyFriction, string.Empty, plan.EarlyFriction),
        new Element(ElementKind.Opening, string.Empty, plan.Opening),
        .. plan.Tests.Select(test => new Element(ElementKind.Test, test.Id, test)),
        .. plan.HoldPoints.Select(point => new Element(ElementKind.HoldPoint, point.Id, point)),
        .. plan.Contingencies.Select(action => new Element(ElementKind.Contingency, action.Id, action)),
        .. plan.Measures.Select(measure => new Element(ElementKind.Measure, measure.Id, measure)),
    ];

    private static IEnumerable<Pair> Pairs(Plan plan)
    {
        foreach (var upper in plan.Courses.Where(course => course.Laid == Laying.HotOnHot))
        {
            var lower = plan.Courses.FirstOrDefault(course => string.Equals(course.Id, upper.On, StringComparison.Ordinal));
            if (lower is not null && !ReferenceEquals(lower, upper))
            {
                yield return new Pair(lower, upper);
            }
        }
    }
}
