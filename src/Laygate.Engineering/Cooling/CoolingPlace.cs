using System.Runtime.InteropServices;

namespace Laygate.Engineering.Cooling;

/// <summary>Kinds of place at which a temperature is taken.</summary>
public enum CoolingPlaceKind
{
    /// <summary>Mean over the thickness of one layer.</summary>
    LayerMean,

    /// <summary>The middle of one layer.</summary>
    MidDepth,

    /// <summary>The top face of one layer; the skin while nothing lies on it.</summary>
    TopFace,

    /// <summary>The lower face of one layer.</summary>
    BottomFace,

    /// <summary>The surface of what is laid at the time.</summary>
    Skin,

    /// <summary>The hottest point of the hot body: of all courses laid at the time.</summary>
    Core,

    /// <summary>Core minus skin, in K.</summary>
    CoreSkinDifference,

    /// <summary>Mean over the thickness of all courses laid at the time.</summary>
    HotBodyMean,

    /// <summary>A point at a depth below the finished surface.</summary>
    Depth,
}

/// <summary>A place at which a temperature is taken.</summary>
/// <param name="Kind">Kind of place.</param>
/// <param name="Layer">Index of the layer from the top, where the kind needs one.</param>
/// <param name="AtDepth">Depth below the finished surface in m, where the kind needs one.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct CoolingPlace(CoolingPlaceKind Kind, int Layer = 0, double AtDepth = 0)
{
    /// <summary>The surface of what is laid at the time.</summary>
    public static CoolingPlace Skin => new(CoolingPlaceKind.Skin);

    /// <summary>The hottest point of the hot body.</summary>
    public static CoolingPlace Core => new(CoolingPlaceKind.Core);

    /// <summary>Core minus skin, in K.</summary>
    public static CoolingPlace CoreSkinDifference => new(CoolingPlaceKind.CoreSkinDifference);

    /// <summary>Mean of all courses laid at the time, by thickness.</summary>
    public static CoolingPlace HotBodyMean => new(CoolingPlaceKind.HotBodyMean);

    /// <summary>Mean of a layer.</summary>
    public static CoolingPlace Mean(int layer) => new(CoolingPlaceKind.LayerMean, layer);

    /// <summary>Middle of a layer.</summary>
    public static CoolingPlace MidDepth(int layer) => new(CoolingPlaceKind.MidDepth, layer);

    /// <summary>Top face of a layer.</summary>
    public static CoolingPlace TopFace(int layer) => new(CoolingPlaceKind.TopFace, layer);

    /// <summary>Lower face of a layer.</summary>
    public static CoolingPlace BottomFace(int layer) => new(CoolingPlaceKind.BottomFace, layer);

    /// <summary>A point at a depth in m below the finished surface.</summary>
    public static CoolingPlace Depth(double metres) => new(CoolingPlaceKind.Depth, 0, metres);
}

/// <summary>Heat per area over a solve, in J/m², relative to 0 °C.</summary>
/// <param name="Content">Heat content at the end.</param>
/// <param name="Brought">Heat of all layers when they were laid.</param>
/// <param name="ThroughSkin">Heat that came in through the skin (negative: lost).</param>
/// <param name="ThroughBottom">Heat that went out through the bottom face.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct HeatBalance(double Content, double Brought, double ThroughSkin, double ThroughBottom)
{
    /// <summary>What the balance fails to account for, in J/m².</summary>
    public double Gap => Content - Brought - ThroughSkin + ThroughBottom;
}
