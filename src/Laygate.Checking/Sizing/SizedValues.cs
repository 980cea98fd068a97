using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Results;

namespace Laygate.Checking.Sizing;

/// <summary>A quantity that is sized, and what it is under the expected values.</summary>
/// <param name="Kind">What its line shows.</param>
/// <param name="Quantity">The quantity of the catalogue that it shows or that decides it.</param>
/// <param name="Address">The element.</param>
/// <param name="Answer">The answer.</param>
/// <param name="Index">Its place among the quantities of one set of values.</param>
internal sealed record SizedQuantity(SizedKind Kind, string Quantity, string Address, Answer Answer, int Index);

/// <summary>Everything but the mat, sized under one set of values.</summary>
internal sealed class SizedValues
{
    /// <summary>Rollers of a phase that are tried, at most: judgement, twice what a wide strip at a high speed takes.</summary>
    private const int MostRollers = 8;

    private readonly SizingDraft draft;
    private readonly AssumptionSet set;
    private readonly PlanTools tools;

    public SizedValues(PlanTools tools, SizingDraft draft, AssumptionSet set)
    {
        (this.tools, this.draft, this.set) = (tools, draft, set);
        Context = Of(draft.Plan(set)!);
        Asked = [.. All().Select((one, index) => one with { Index = index })];
    }

    /// <summary>The plan with one roller in each phase.</summary>
    public QuantityContext Context { get; }

    /// <summary>What was asked.</summary>
    public IReadOnlyList<SizedQuantity> Asked { get; }

    /// <summary>The same quantity under this set, SI; null where it has no value.</summary>
    public double? Find(SizedQuantity one) => (Asked[one.Index].Answer.Value as NumberValue)?.Si;

    private IEnumerable<SizedQuantity> All() =>
    [
        .. Each(ElementKind.Course, "course.tonnage_computed"),
        .. Each(ElementKind.Course, "course.demand"),
        .. Each(ElementKind.Trucks, "trucks.cycle"),
        .. Each(ElementKind.Trucks, "trucks.minimum_count"),
        .. draft.HasUsualRollers ? Rollers() : Each(ElementKind.Paver, "paver.speed_rollers_allow"),
        .. TimeAndLength(),
    ];

    private IEnumerable<SizedQuantity> Each(ElementKind kind, string quantity) =>
        Context.Elements.Of(kind).Select(element => new SizedQuantity(SizedKind.Quantity, quantity, element.Address, Context.Get(quantity, element), 0));

    // The first number of rollers with which the phase follows the paver, by the quantities that the rule compares.
    private List<SizedQuantity> Rollers()
    {
        var phases = Context.Elements.Of(ElementKind.Phase).ToList();
        var speed = Context.Elements.Of(ElementKind.Paver).Select(paver => (Context.Get("paver.speed", paver).Value as NumberValue)?.Si).Max();
        var found = new Dictionary<string, (int Count, Answer Answer)>(StringComparer.Ordinal);
        for (var count = 1; count <= MostRollers && found.Count < phases.Count; count++)
        {
            var context = count == 1 ? Context : Of(draft.Plan(set, count)!);
            foreach (var phase in context.Elements.Of(ElementKind.Phase).Where(phase => !found.ContainsKey(phase.Address)))
            {
                var answer = context.Get("phase.speed_it_follows", phase);
                if (answer.Value is not NumberValue follows || follows.Si >= speed || count == MostRollers)
                {
                    found[phase.Address] = (count, answer);
                }
            }
        }

        var lines = phases.ConvertAll(phase => new SizedQuantity(SizedKind.Rollers, "phase.speed_it_follows", phase.Address, Counted(found[phase.Address].Answer, found[phase.Address].Count), 0));
        var whole = lines.Find(line => line.Answer.Value is null)?.Answer ?? Counted(lines[0].Answer, found.Values.Sum(one => one.Count));
        return [.. lines, new SizedQuantity(SizedKind.RollersTogether, "paver.speed_rollers_allow", "plan", whole, 0)];
    }

    private static Answer Counted(Answer answer, int count) => answer.Value is null ? answer : answer with { Value = new NumberValue(count), Unit = null };

    // Time grows with length in a straight line beyond what is lost once; two lengths give it.
    private IEnumerable<SizedQuantity> TimeAndLength()
    {
        var shift = Context.Elements.Of(ElementKind.Shift).FirstOrDefault();
        if (shift is null)
        {
            yield break;
        }

        var needed = Context.Get("shift.time_needed", shift);
        yield return new SizedQuantity(SizedKind.Quantity, "shift.time_needed", shift.Address, needed, 0);
        yield return new SizedQuantity(SizedKind.LengthPerShift, "shift.time_needed", shift.Address, Length(shift, needed), 0);
    }

    private Answer Length(Element shift, Answer needed)
    {
        const double twice = 2;
        var longer = Of(draft.Plan(set, stretch: twice)!);
        var lengths = Context.Elements.Of(ElementKind.Run).Select(run => Context.Get("run.length", run)).ToList();
        if (needed.Value is not NumberValue once || longer.Get("shift.time_needed", shift).Value is not NumberValue doubled || doubled.Si <= once.Si
            || lengths.Find(length => length.Value is null) is { } absent)
        {
            return needed.Value is null ? needed : lengths.Find(length => length.Value is null) ?? Answer.None(AbsenceReason.NotComputable, Note.Of(NoteIds.Circular, ("quantity", "run.length")));
        }

        var stated = lengths.Sum(length => ((NumberValue)length.Value!).Si);
        var duration = Context.Get("shift.duration", shift).Value is NumberValue given ? given.Si : Usual(SizingAssumptions.ShiftLength);
        return needed with { Value = new NumberValue(Math.Max(0, stated * (1 + ((duration - once.Si) / (doubled.Si - once.Si))))), Unit = null };
    }

    private double Usual(string id)
    {
        var assumption = set[id];
        return Model.Measures.UnitTable.Find(assumption.Unit)!.ToSi(assumption.Number);
    }

    private QuantityContext Of(Plan plan) => new(plan, tools.Catalogue, set, seed: 1) { IsQuick = true };
}
