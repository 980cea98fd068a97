namespace Laygate.Engineering.Quantities;

/// <summary>How quantities of a cooling mat are found.</summary>
internal static class CoolingMethods
{
    private const string Source = "transient heat conduction, solved here by conservative finite volumes; convection EN ISO 6946 with long-wave apart";

    private const string Spread =
        "low and high: 5 % and 95 % points of stratified samples (64 in a check) over properties, convection and sky forms, wind, sun, air and base temperature, temperatures below the base's surface, laying temperature and looseness of the mat. " +
        "Temperatures below the surface: as stated; else what the five days before leave, solved with the same conduction solver, with the share of a clear sky's sun that gives the stated surface temperature; else as at the surface, within a range. " +
        "A base colder at depth, as on a sunny afternoon, shortens a window, one warmer at depth lengthens it. Water on a damp, wet or frozen base is in the value, rain is not";

    /// <summary>Signs of the biases where fast cooling is unfavourable.</summary>
    private const string Range = Spread
        + ". Unfavourable end: low. Bias: compacted from the first moment, perfect contact and no shelter from the wind cool too fast; no loss through free edges and no evaporation from the mix too slowly";

    /// <summary>Signs of the biases where slow cooling is unfavourable.</summary>
    private const string SlowRange = Spread
        + ". Unfavourable end: high. Bias: no loss through free edges and no water sprayed cool too slowly; wind held after the last stated hour either way";

    public static Method OfLower { get; } = new(
        "T(Δt) of the course below", Source, "moment of laying at which it is coldest; " + Range);

    public static Method Marking { get; } = new("T(skin) = Tm", Source, "moment of laying at which the band opens latest, or closes earliest; " + Range);

    public static Method Edge { get; } = new(
        "mean T(Δt) of the course", Source,
        "moment of laying at which it is coldest; conduction in one dimension: the loss through the free side is left out, so within about one thickness of the edge the mat is colder than the value; " + Range);

    public static Method OverlaidFrom { get; } = new(
        "T(core) = To", Source, "uppermost hot body, from the end of laying, the metre that is cold last; warm end of an envelope; the weather is held after the last stated hour; " + SlowRange);

    public static Method Window { get; } = new("mean T(t) of the course = Tc", Source, "moment of laying at which the expected window is shortest; " + Range);

    public static Method CoreSkin { get; } = new("largest T(core) − T(skin) from the first to the last pass", Source, "moment of laying at which the difference is largest; " + Range);

    public static Method UnderVibration { get; } = new(
        "largest T(core) − T(skin) while the roller vibrates and T(skin) < Tt; 0 while the skin is hotter", Source,
        "moment of laying at which the difference is largest; vibrated passes are taken as the first ones of the phase, evenly spread over its zone; " + Range);

    public static Method AtPass { get; } = new(
        "T(t) at the pass", Source,
        "uppermost hot body, or that of the course; moment of laying at which it is coldest, before the first pass hottest; the passes of a phase share the time of its zone evenly; no value where that time lies more than six hours after the screed; " + Range);

    public static Method Bears { get; } = new("T(t) = Ts, at the place for which Ts is stated", Source, "moment of laying at which it bears the roller latest; " + Range);

    public static Method GritWindow { get; } = new("T(skin) = Tg", Source, "moment of laying at which it is shortest; " + Range);

    public static Method SoftUntil { get; } = new(
        "T(core) = To", Source, "from the end of laying, the metre that is cold last; warm end of an envelope; the weather is held after the last stated hour; " + SlowRange);
}
