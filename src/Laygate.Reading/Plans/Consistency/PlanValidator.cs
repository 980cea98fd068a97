using FluentValidation;
using Laygate.Model.Plans;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>All consistency checks of a plan.</summary>
/// <remarks>
/// One rule per subject on the plan itself, with paths written out: a rule per property costs more at each start and says no more
/// (decision 13, with what was measured).
/// </remarks>
internal sealed class PlanValidator : AbstractValidator<Plan>
{
    public PlanValidator()
    {
        Subject(Identifiers.Check);
        Subject(Revisions.Check);
        Subject(References.Check);
        Subject(Layings.Check);
        Subject(Times.Check);
        Subject(PlaceRanges.Check);
        Subject(MixRanges.Check);
        Subject(CourseRanges.Check);
        Subject(RunRanges.Check);
        Subject(SupplyRanges.Check);
        Subject(PaverRanges.Check);
        Subject(RollingRanges.Check);
        Subject(SurfaceRanges.Check);
        Subject(ProofRanges.Check);
        Subject(LearntRanges.Check);
    }

    private void Subject(Action<Plan, PlanPart> check) =>
        RuleFor(plan => plan).Custom((plan, context) => check(plan, new PlanPart(context, string.Empty)));
}
