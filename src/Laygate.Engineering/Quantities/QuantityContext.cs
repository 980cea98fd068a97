using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Jobs;
using Laygate.Engineering.Mat;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>One plan under one set of assumptions: computes each quantity when it is first asked for and keeps the answer. One context serves one check.</summary>
public sealed class QuantityContext
{
    private readonly Dictionary<(string Quantity, string Address), Answer?> answers = [];
    private readonly Dictionary<Type, object> services = [];
    private readonly Dictionary<(string Quantity, string Address), Answer> given = [];
    private bool isVariant;

    /// <summary>Creates the context of one check.</summary>
    /// <param name="plan">The plan as it is stated.</param>
    /// <param name="catalogue">The quantities.</param>
    /// <param name="assumptions">The assumptions in force.</param>
    /// <param name="seed">Seed of everything that is sampled.</param>
    public QuantityContext(Plan plan, QuantityCatalogue catalogue, AssumptionSet assumptions, ulong seed)
        : this(ShiftScope.Of(plan), catalogue, assumptions, seed)
    {
    }

    /// <summary>Creates the context in which a job of several shifts is judged: its elements are those of the job.</summary>
    /// <param name="job">The job.</param>
    /// <param name="catalogue">The quantities.</param>
    /// <param name="assumptions">The assumptions in force.</param>
    /// <param name="seed">Seed of everything that is sampled.</param>
    /// <param name="isQuick">Whether its shifts were checked without spread.</param>
    /// <param name="cancel">Calls the check off.</param>
    public static QuantityContext Of(JobView job, QuantityCatalogue catalogue, AssumptionSet assumptions, ulong seed, bool isQuick = false, CancellationToken cancel = default) =>
        new(ShiftScope.Of(job.Whole), catalogue, assumptions, seed, job) { IsQuick = isQuick, Cancel = cancel };

    private QuantityContext(ShiftScope scope, QuantityCatalogue catalogue, AssumptionSet assumptions, ulong seed, JobView? job = null)
    {
        Scope = scope;
        Job = job;
        var plan = Plan = scope.Plan;
        Catalogue = catalogue;
        Assumptions = assumptions;
        Seed = seed;
        Elements = job is null ? new PlanElements(plan) : new PlanElements(job);
        System = plan.Courses.Count > 0 ? plan.Courses[0].Thickness.Unit.System : UnitSystem.Metric;
    }

    /// <summary>The plan: what belongs to its shift.</summary>
    public Plan Plan { get; }

    /// <summary>What the plan states beyond its shift: courses of other shifts, and what lay there before them.</summary>
    internal ShiftScope Scope { get; }

    /// <summary>The job that is judged; null where it is a plan.</summary>
    public JobView? Job { get; }

    /// <summary>Its elements.</summary>
    public PlanElements Elements { get; }

    /// <summary>The quantities.</summary>
    public QuantityCatalogue Catalogue { get; }

    /// <summary>The assumptions in force.</summary>
    public AssumptionSet Assumptions { get; }

    /// <summary>Seed of everything that is sampled.</summary>
    public ulong Seed { get; }

    /// <summary>Number of samples behind low and high of a cooling mat: 64 for a check, 300 on request; at least 2.</summary>
    public int Samples { get; init; } = 64;

    /// <summary>Calls the check off; looked at before each quantity is computed, in changed copies and variants, too.</summary>
    public CancellationToken Cancel { get; init; }

    /// <summary>Unit system in which computed values are shown: that of the first course's thickness.</summary>
    public UnitSystem System { get; }

    /// <summary>Whether low and high ends are computed; without them only expected values are, which is what a search needs.</summary>
    public bool WithSpread
    {
        get => field && !IsQuick;
        private init;
    } = true;

    /// <summary>Whether only what one solve of the mat gives is computed: no low and high ends, and nothing that needs simulated shifts.</summary>
    public bool IsQuick { get; init; }

    /// <summary>Solves of cooling mats that changed copies of this plan share; null when nothing is kept.</summary>
    internal MatMemory? Memory { get; private set; }

    /// <summary>Simulated shifts that changed copies of this plan share; null when nothing is kept.</summary>
    internal ShiftMemory? Shifts { get; private set; }

    /// <summary>Number of solves of cooling mats that are kept, over this plan and its changed copies; 0 when nothing is kept.</summary>
    public int KeptSolves => Memory?.Count ?? 0;

    /// <summary>Keeps solves of cooling mats and simulated shifts from now on, so that <see cref="For"/> does not solve again what a change leaves as it was.</summary>
    public QuantityContext Remembering()
    {
        Memory ??= new MatMemory();
        Shifts ??= new ShiftMemory();
        return this;
    }

    /// <summary>
    /// A changed copy of the plan under the same assumptions and given values. Solves are shared by the numbers that go into
    /// them, so that a change of trucks does not solve the mat again; everything else is cheap and computed anew.
    /// </summary>
    /// <param name="plan">The changed plan.</param>
    /// <param name="withSpread">Whether low and high ends are computed.</param>
    public QuantityContext For(Plan plan, bool withSpread)
    {
        var changed = new QuantityContext(Scope.With(plan), Catalogue, Assumptions, Seed, Job) { WithSpread = withSpread, IsQuick = IsQuick, Samples = Samples, Cancel = Cancel, Memory = Memory, Shifts = Shifts };
        foreach (var ((quantity, address), answer) in given)
        {
            changed.Give(quantity, address, answer);
        }

        return changed;
    }

    /// <summary>Gives a quantity a value directly, in place of the computation. Rule cases use it, so that better physics does not move them.</summary>
    public void Give(string quantity, string address, Answer answer)
    {
        answers[(quantity, address)] = answer;
        given[(quantity, address)] = answer;
    }

    /// <summary>The answer of a quantity for an element that it belongs to, or for one that is related to it.</summary>
    /// <exception cref="ArgumentException">The catalogue has no such quantity.</exception>
    /// <exception cref="OperationCanceledException">The check was called off.</exception>
    public Answer Get(string quantity, Element element)
    {
        var definition = Catalogue.Find(quantity) ?? throw new ArgumentException($"No quantity is called {quantity}.", nameof(quantity));
        var owner = Elements.Related(element, definition.Element);
        if (owner is null)
        {
            return Answer.Missing(PlanElements.RelatedAddress(element, definition.Element) is { } named
                ? new InputReference(named, string.Empty)
                : new InputReference(element.Address, Words.Of(definition.Element)));
        }

        var key = (quantity, owner.Address);
        if (answers.TryGetValue(key, out var kept))
        {
            return kept ?? Answer.None(AbsenceReason.NotComputable, Note.Of(NoteIds.Circular, ("quantity", quantity)));
        }

        Cancel.ThrowIfCancellationRequested();
        answers[key] = null; // Marks a computation under way, so that a circle ends with an answer.
        var answer = definition.Compute(this, owner);
        if (!isVariant && WithSpread)
        {
            answer = AssumptionBand.Add(this, quantity, owner, answer);
        }

        // Without samples the ends of a band would coincide, which looks like certainty.
        answers[key] = answer = IsQuick && answer.Value is NumberValue number ? answer with { Value = number with { Low = null, High = null } } : answer;
        return answer;
    }

    /// <summary>Samples of two quantities that were drawn together, value and limit pair by pair in SI; null when either is not sampled.</summary>
    /// <param name="quantity">Name of the value's quantity.</param>
    /// <param name="limit">Name of the limit's quantity, of the same element or of one it belongs to.</param>
    /// <param name="address">Address of the element.</param>
    public IReadOnlyList<(double Value, double Limit)>? JointSamples(string quantity, string limit, string address) =>
        Elements.Find(address) is { } element && Get(quantity, element).Samples is { } values && Get(limit, element).Samples is { } limits && values.Count == limits.Count
            ? [.. values.Zip(limits)]
            : null;

    /// <summary>A helper object of this context that is costly to make and shared by several quantities, such as the cooling of the mat.</summary>
    public T Service<T>(Func<QuantityContext, T> create)
        where T : class
    {
        if (!services.TryGetValue(typeof(T), out var service))
        {
            service = create(this);
            services[typeof(T)] = service;
        }

        return (T)service;
    }

    /// <summary>The unit in which a computed value of a quantity is shown.</summary>
    public Unit? UnitOf(QuantityDefinition definition) =>
        UnitTable.Find(System == UnitSystem.UnitedStates ? definition.UsUnit : definition.MetricUnit);

    /// <summary>The same plan and given values with some assumptions replaced, on expected values only; what is simulated is left out.</summary>
    /// <param name="others">The assumptions that replace those in force.</param>
    public QuantityContext Assuming(IEnumerable<Assumption> others)
    {
        var variant = new QuantityContext(Scope, Catalogue, Assumptions.With(others), Seed, Job) { isVariant = true, WithSpread = false, IsQuick = true, Samples = Samples, Cancel = Cancel, Memory = Memory };
        foreach (var ((quantity, address), answer) in given)
        {
            variant.Give(quantity, address, answer);
        }

        return variant;
    }

    /// <summary>The same plan and given values under other assumptions.</summary>
    internal QuantityContext Under(AssumptionSet assumptions)
    {
        var variant = new QuantityContext(Scope, Catalogue, assumptions, Seed, Job) { isVariant = true, WithSpread = WithSpread, IsQuick = IsQuick, Samples = Samples, Cancel = Cancel, Memory = Memory, Shifts = Shifts };
        foreach (var ((quantity, address), answer) in given)
        {
            variant.Give(quantity, address, answer);
        }

        return variant;
    }
}
