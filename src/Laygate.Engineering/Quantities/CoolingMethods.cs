namespace Laygate.Engineering.Quantities;

/// <summary>How quantities of a cooling mat are found.</summary>
internal static class CoolingMethods
{
    private const string Source = "transient heat conduction, solved here by conservative finite volumes; convection EN ISO 6946 with long-wave apart";

    private const string Range =
        "low and high: 5 % and 95 % points of 64 stratified samples over properties, convection form, wind and laying temperature. Water on the base, rain and free edges are not in the value";

    public static Method Window { get; } = new("mean T(t) of the course = Tc", Source, "worst hour of laying by expected value; " + Range);

    public static Method CoreSkin { get; } = new("largest T(core) − T(skin) from the first to the last pass", Source, "worst hour of laying; " + Range);

    public static Method UnderVibration { get; } = new(
        "largest T(core) − T(skin) while the roller vibrates and T(skin) < Tt; 0 while the skin is hotter", Source,
        "worst hour of laying; vibrated passes are taken as the first ones of the phase, evenly spread over its zone; " + Range);

    public static Method AtPass { get; } = new(
        "T(t) at the pass", Source,
        "uppermost hot body, or that of the course; worst hour of laying; the passes of a phase share the time of its zone evenly; no value where that time lies more than six hours after the screed; " + Range);

    public static Method Bears { get; } = new("T(t) = Ts, at the place for which Ts is stated", Source, "worst hour of laying, in which it cools fastest; " + Range);

    public static Method GritWindow { get; } = new("T(skin) = Tg", Source, "worst hour of laying; " + Range);

    public static Method SoftUntil { get; } = new(
        "T(core) = To", Source, "from the end of laying; warm end of an envelope; the weather is held after the last stated hour; " + Range);
}
