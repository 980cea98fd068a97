using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Rules;

/// <summary>The whole decision table of gate statuses against the seven lines of the design, written down here once more as lines that exclude each other.</summary>
public sealed class GateStatusTests
{
    private static readonly (string Line, Func<GateCase, bool> Holds, Status Status)[] Lines =
    [
        ("1 not applicable", at => at.Outcome == Outcome.NotApplicable, Status.None),
        ("1 open", at => at.Outcome == Outcome.Open, Status.None),
        ("2 silence about a condition of severity A at release", at => Silent(at) && SevereAtRelease(at), Status.Fail),
        ("2 silence about the opening at release", at => Silent(at) && !SevereAtRelease(at) && OpeningAtRelease(at), Status.Fail),
        ("2 silence one stage later or more", at => Silent(at) && !Excepted(at) && at.MissCouldFail && at.StagesLate >= 1, Status.Fail),
        ("2 silence at the rule's stage", at => Silent(at) && !Excepted(at) && at.MissCouldFail && at.StagesLate <= 0, Status.Warn),
        ("2 silence of a rule whose miss could only warn", at => Silent(at) && !Excepted(at) && !at.MissCouldFail, Status.Warn),
        ("2 a number out of range of a required limit at release", at => OutOfRangeOfRequired(at) && at.AtRelease, Status.Fail),
        ("2 a number out of range of a required limit before release", at => OutOfRangeOfRequired(at) && !at.AtRelease, Status.Warn),
        ("2 a number out of range where a miss could only warn", at => OutOfRange(at) && !at.MissCouldFail, Status.Warn),
        ("2 not assessed for another reason", at => at is { Outcome: Outcome.NotAssessed, InputMissing: false, OutOfRange: false }, Status.Warn),
        ("3 needs a person", at => at.Outcome == Outcome.NeedsPerson, Status.Warn),
        ("4 nothing stated of a measure of severity A at release", at => SaysNothing(at), Status.Fail),
        ("4 required missed, limit known, value firm", at => RequiredMissed(at) && WellKnown(at) && !at.WeakAssumption, Status.Fail),
        ("4 required missed, limit known, even the favourable end", at => RequiredMissed(at) && WellKnown(at) && at is { WeakAssumption: true, Band: Band.Misses }, Status.Fail),
        ("4 required missed, limit known, favourable end meets or is unknown", at => RequiredMissed(at) && WellKnown(at) && at.WeakAssumption && at.Band != Band.Misses, Status.Warn),
        ("4 required missed, limit not known well enough", at => RequiredMissed(at) && !WellKnown(at), Status.Warn),
        ("5 advised missed", at => at is { Outcome: Outcome.Missed, Strength: Strength.Advised }, Status.Warn),
        ("6 met on expected values only", at => at is { Outcome: Outcome.Met, Band: Band.Straddles or Band.Misses }, Status.Warn),
        ("7 met", at => at is { Outcome: Outcome.Met, Band: Band.None or Band.Meets }, Status.Pass),
    ];

    [Fact]
    public void Every_cell_of_the_decision_table_is_defined_once_and_decided_so()
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var cell in Cells())
        {
            var lines = Array.FindAll(Lines, line => line.Holds(cell));
            if (lines.Length != 1 || lines[0].Status != GateStatus.Of(cell))
            {
                // Worded only where it is wrong: a million cells are right.
                Assert.Fail($"{string.Join(", ", lines.Select(line => line.Line))}: {GateStatus.Of(cell)} for {cell}");
            }

            seen.Add(lines[0].Line);
        }

        Assert.Equal(Lines.Length, seen.Count);
    }

    private static bool Silent(GateCase at) => at is { Outcome: Outcome.NotAssessed, InputMissing: true };

    private static bool OutOfRange(GateCase at) => at is { Outcome: Outcome.NotAssessed, InputMissing: false, OutOfRange: true };

    private static bool OutOfRangeOfRequired(GateCase at) => OutOfRange(at) && at.MissCouldFail;

    private static bool SevereAtRelease(GateCase at) => at is { AtRelease: true, Severity: Severity.A, ConditionUnknown: true };

    private static bool OpeningAtRelease(GateCase at) => at is { AtRelease: true, AboutOpening: true };

    private static bool Excepted(GateCase at) => SevereAtRelease(at) || OpeningAtRelease(at);

    private static bool SaysNothing(GateCase at) =>
        at is { Outcome: Outcome.Missed, Strength: Strength.Required, NothingStated: true, AtRelease: true, Severity: Severity.A };

    private static bool RequiredMissed(GateCase at) => at is { Outcome: Outcome.Missed, Strength: Strength.Required } && !SaysNothing(at);

    private static bool WellKnown(GateCase at) =>
        at.Evidence == Evidence.Read || at.Evidence == Evidence.SecondHand || at.Evidence == Evidence.Confirmed || at.Evidence == Evidence.Derived
        || at.Layer == Layer.ParticularSpecification || at.LimitIsQuantity;

    private static IEnumerable<GateCase> Cells() =>
        from outcome in Enum.GetValues<Outcome>()
        from silence in Silences()
        from miss in Misses()
        from severity in new Severity?[] { null, Severity.A, Severity.B, Severity.C }
        from opening in Both
        from nothing in Both
        select miss with
        {
            Outcome = outcome,
            InputMissing = silence.InputMissing,
            OutOfRange = silence.OutOfRange,
            ConditionUnknown = silence.ConditionUnknown,
            MissCouldFail = silence.MissCouldFail,
            StagesLate = silence.StagesLate,
            AtRelease = silence.AtRelease,
            Severity = severity,
            AboutOpening = opening,
            NothingStated = nothing,
        };

    private static readonly bool[] Both = [false, true];

    private static IEnumerable<GateCase> Silences() =>
        from missing in Both
        from outside in Both
        from condition in Both
        from couldFail in Both
        from late in new[] { 0, 1, 2 }
        from release in Both
        select new GateCase
        {
            Outcome = Outcome.Met,
            InputMissing = missing,
            OutOfRange = outside,
            ConditionUnknown = condition,
            MissCouldFail = couldFail,
            StagesLate = late,
            AtRelease = release,
        };

    private static IEnumerable<GateCase> Misses() =>
        from strength in Enum.GetValues<Strength>()
        from evidence in Enum.GetValues<Evidence>()
        from layer in Enum.GetValues<Layer>()
        from quantity in Both
        from weak in Both
        from band in Enum.GetValues<Band>()
        select new GateCase
        {
            Outcome = Outcome.Met,
            Strength = strength,
            Evidence = evidence,
            Layer = layer,
            LimitIsQuantity = quantity,
            WeakAssumption = weak,
            Band = band,
        };
}
