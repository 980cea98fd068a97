using Laygate.Engineering.Quantities;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Rules.Evaluation;

/// <summary>Where the unfavourable and the favourable end of a value lie; what a value without a spread has is <see cref="None"/>.</summary>
public enum Band
{
    /// <summary>No ends are known.</summary>
    None,

    /// <summary>The whole band meets the bound.</summary>
    Meets,

    /// <summary>One end meets, the other misses.</summary>
    Straddles,

    /// <summary>The whole band misses the bound.</summary>
    Misses,
}

/// <summary>Everything on which the gate status of a finding depends.</summary>
public sealed record GateCase
{
    /// <summary>Outcome on expected values.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>Not assessed: whether an input is missing, in place of any other reason.</summary>
    public bool InputMissing { get; init; }

    /// <summary>Not assessed: whether a stated number lies outside the range of the solver, the formula or the table, and no input is missing.</summary>
    public bool OutOfRange { get; init; }

    /// <summary>Not assessed: whether the missing input is a condition of the rule.</summary>
    public bool ConditionUnknown { get; init; }

    /// <summary>Not assessed: whether a miss could fail, because a required bound could.</summary>
    public bool MissCouldFail { get; init; }

    /// <summary>Stages between the rule's stage and the one judged at; 0 at the rule's stage.</summary>
    public int StagesLate { get; init; }

    /// <summary>Whether the plan is judged at release.</summary>
    public bool AtRelease { get; init; }

    /// <summary>Severity of a safety rule.</summary>
    public Severity? Severity { get; init; }

    /// <summary>Whether the rule is about the opening.</summary>
    public bool AboutOpening { get; init; }

    /// <summary>Missed: whether the plan says nothing at all of what must be present.</summary>
    public bool NothingStated { get; init; }

    /// <summary>Missed: strength of the bound that decides.</summary>
    public Strength Strength { get; init; }

    /// <summary>How the deciding limit is known.</summary>
    public Evidence Evidence { get; init; }

    /// <summary>Layer that set the deciding limit.</summary>
    public Layer Layer { get; init; }

    /// <summary>Whether the deciding limit is itself a quantity of the plan.</summary>
    public bool LimitIsQuantity { get; init; }

    /// <summary>Whether the value rests on a weak assumption in place of a plan input.</summary>
    public bool WeakAssumption { get; init; }

    /// <summary>Where the ends lie against the deciding bound.</summary>
    public Band Band { get; init; }
}

/// <summary>The gate status of a finding: the first line that holds (docs of the rule engine, lines 1 to 7).</summary>
public static class GateStatus
{
    /// <summary>Decides.</summary>
    public static Status Of(GateCase given) => given.Outcome switch
    {
        Outcome.NotApplicable or Outcome.Open => Status.None,
        Outcome.NotAssessed => (given.InputMissing ? SilenceFails(given) : OutOfRangeFails(given)) ? Status.Fail : Status.Warn,
        Outcome.NeedsPerson => Status.Warn,
        Outcome.Missed => MissFails(given) ? Status.Fail : Status.Warn,
        _ => given.Band is Band.Straddles or Band.Misses ? Status.Warn : Status.Pass,
    };

    /// <summary>Whether a limit is known well enough for its miss to fail a plan.</summary>
    public static bool CanFail(Evidence evidence, Layer layer, bool limitIsQuantity) =>
        layer == Layer.ParticularSpecification || limitIsQuantity
        || evidence is Evidence.Read or Evidence.SecondHand or Evidence.Confirmed or Evidence.Derived;

    /// <summary>Whether a miss of a bound could fail a plan: it is required, and a figure of it is known well enough.</summary>
    public static bool CanFail(CheckedBound bound) =>
        bound.Definition.Strength == Strength.Required
        && (bound.Limit is CheckedTable table
            ? table.Rows.Any(row => CanFail(row.Source.Evidence, bound.Layer, limitIsQuantity: false))
            : CanFail(bound.Definition.Source.Evidence, bound.Layer, bound.Limit is CheckedQuantity));

    // Silence about a condition of a severity A rule, or about opening, fails at release whatever a miss could do.
    private static bool SilenceFails(GateCase given) =>
        (given.AtRelease && ((given.Severity == Severity.A && given.ConditionUnknown) || given.AboutOpening))
        || (given.StagesLate > 0 && given.MissCouldFail);

    // A number out of range is not a missing one: more data do not help, and a release must not rest on what could not be judged.
    private static bool OutOfRangeFails(GateCase given) => given is { OutOfRange: true, AtRelease: true, MissCouldFail: true };

    // At release the silence about a measure of severity A fails, whatever its source: not the limit decides, but that nothing is said.
    private static bool MissFails(GateCase given) =>
        given.Strength == Strength.Required
        && ((given is { AtRelease: true, NothingStated: true, Severity: Severity.A })
            || (CanFail(given.Evidence, given.Layer, given.LimitIsQuantity) && (!given.WeakAssumption || given.Band == Band.Misses)));
}
