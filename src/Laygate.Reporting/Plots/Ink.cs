using OxyPlot;

namespace Laygate.Reporting.Plots;

/// <summary>
/// Tones of a plot. Mixes and courses differ by label, dash and hatching in neutral tones; green, amber and red are left to status. Hatchings
/// are marked by colours that nothing else has and become patterns when the drawing is finished.
/// </summary>
internal static class Ink
{
    /// <summary>Marks of hatchings in their order: as written in the drawing, and the pattern that takes their place.</summary>
    public static IReadOnlyList<(string Mark, string Pattern)> Hatchings { get; } = [("rgb(1,1,1)", "h0"), ("rgb(2,2,2)", "h1"), ("rgb(3,3,3)", "h2"), ("rgb(4,4,4)", "h3")];

    /// <summary>Text, axes and strong lines.</summary>
    public static OxyColor Dark { get; } = OxyColor.FromRgb(0x22, 0x26, 0x2a);

    /// <summary>Second lines.</summary>
    public static OxyColor Mid { get; } = OxyColor.FromRgb(0x5b, 0x63, 0x6a);

    /// <summary>Grid.</summary>
    public static OxyColor Faint { get; } = OxyColor.FromRgb(0xd5, 0xd9, 0xdc);

    /// <summary>Background of a stretch of time.</summary>
    public static OxyColor Stretch { get; } = OxyColor.FromRgb(0xee, 0xf0, 0xf1);

    /// <summary>Hatching of a course or mix by its place in the plan.</summary>
    public static OxyColor Hatch(int place)
    {
        var tone = (byte)((place % Hatchings.Count) + 1);
        return OxyColor.FromRgb(tone, tone, tone);
    }

    /// <summary>Dash of a course by its place in the plan.</summary>
    public static LineStyle Dash(int place) => (place % 4) switch
    {
        0 => LineStyle.Solid,
        1 => LineStyle.LongDash,
        2 => LineStyle.DashDot,
        _ => LineStyle.Dot,
    };
}
