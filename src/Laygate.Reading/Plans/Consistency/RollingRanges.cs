using System.Globalization;
using Laygate.Model.Plans;
using Laygate.Reading.Measures;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>Values of phases and rollers that cannot be.</summary>
internal static class RollingRanges
{
    public static void Check(Plan plan, PlanPart at)
    {
        if (plan.Rolling is not { } rolling)
        {
            return;
        }

        var inside = at.Inside("rolling");
        foreach (var (phase, where) in inside.Each("phases", rolling.Phases))
        {
            Phase(phase, where);
        }

        foreach (var (roller, where) in inside.Each("rollers", rolling.Rollers))
        {
            Roller(roller, where);
            Passes(roller, rolling.Phases.FirstOrDefault(phase => string.Equals(phase.Id, roller.Phase, StringComparison.Ordinal)), where);
        }

        inside.NotNegative("reversal", rolling.Reversal);
        inside.NotNegative("first_strip_from_edge", rolling.FirstStripFromEdge);
    }

    private static void Phase(Phase phase, PlanPart at)
    {
        at.AtLeast("passes", phase.Passes, 1);
        at.NotNegative("zone_from", phase.ZoneFrom);
        at.Less("zone_from", phase.ZoneFrom, "zone_to", phase.ZoneTo);
        at.Positive("done_within", phase.DoneWithin);
    }

    private static void Roller(Roller roller, PlanPart at)
    {
        at.Positive("mass", roller.Mass);
        at.Positive("linear_load", roller.LinearLoad);
        at.Positive("drum_width", roller.DrumWidth);
        at.Positive("drum_diameter", roller.DrumDiameter);
        at.NotNegative("overlap", roller.Overlap);
        at.Positive("frequency", roller.Frequency);
        at.Positive("amplitude", roller.Amplitude);
        at.Positive("speed", roller.Speed);
        at.CanBe("mass", roller.Mass, Possible.RollerMass);
        at.CanBe("frequency", roller.Frequency, Possible.Frequency);
        at.CanBe("amplitude", roller.Amplitude, Possible.Amplitude);
        at.CanBe("speed", roller.Speed, Possible.RollerSpeed);
        at.AtLeast("passes_in_mode", roller.PassesInMode, 0);
        if (roller is { Overlap: { } overlap, DrumWidth: { } width } && !PlanPart.IsLess(overlap, width))
        {
            at.Fail("overlap", $"The strips overlap by {MeasureReader.Write(overlap)}, but the drum is only {MeasureReader.Write(width)} wide.", "Correct `overlap` or `drum_width`.");
        }
    }

    private static void Passes(Roller roller, Phase? phase, PlanPart at)
    {
        if (phase is not null && roller.PassesInMode > phase.Passes)
        {
            at.Fail("passes_in_mode", string.Create(CultureInfo.InvariantCulture, $"`passes_in_mode` is {roller.PassesInMode}, more than the {phase.Passes} passes of the phase `{phase.Id}`."), "Correct one of the two.");
        }
    }
}
