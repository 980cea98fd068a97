using System.Collections.Frozen;
using Laygate.Engineering.Quantities;

namespace Laygate.Engineering.Outlook;

/// <summary>
/// Which quantities move with the weather. A rule that was judged shows it by what it says in other weather; one that could not
/// be judged says the same in every weather, and only its quantities tell that it belongs to the question. A test holds the list
/// against what really moves.
/// </summary>
public static class WeatherDependence
{
    private static readonly FrozenSet<string> Envelope = FrozenSet.Create(
        StringComparer.Ordinal,
        "weather.air_lowest", "weather.base_lowest", "weather.wind_highest_at_mat", "weather.dew_margin_lowest",
        "course.air_lowest", "course.base_lowest", "course.densification_window", "course.temperature_of_lower_at_laying", "course.marking_from", "course.marking_to",
        "course.bears_from", "course.bears_first_pass", "course.temperature_at_first_pass", "course.passes_in_window",
        "pair.core_skin_difference", "phase.window_length", "phase.skin_at_first_pass", "phase.skin_at_last_pass",
        "roller.mid_depth_while_vibrating", "roller.core_skin_difference", "roller.vibration_while_tender", "joint.edge_temperature", "early-friction.grit_window");

    private static readonly FrozenSet<string> Others = FrozenSet.Create(
        StringComparer.Ordinal,
        "weather.rain_chance_highest", "weather.heat_index", "site.bad_weather", "condition.shown", "opening.soft_until", "opening.air_lowest_before", "existing.cooled_for_overlay");

    /// <summary>Whether a quantity moves with the weather.</summary>
    public static bool IsOf(QuantityDefinition quantity) => LimitsEnvelope(quantity) || Others.Contains(quantity.Name);

    /// <summary>Whether a quantity moves with cold air, a cold base or wind, so that how far those may go rests on it.</summary>
    public static bool LimitsEnvelope(QuantityDefinition quantity) => Envelope.Contains(quantity.Name);
}
