using System.Runtime.InteropServices;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>A buffer while the shift runs; kg, kg/m and kg/s.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct HeldMix
{
    public double Level;
    public double Capacity;
    public double Lowest;
    public double Restart;
    public double Call;
    public double PerMetre;
    public double Taken;
    public double Inflow;
    public double Laid;
    public double Total;
    public int Mix;
    public int Dock;
    public bool IsActive;

    /// <summary>Whether loads of this mix are called by level.</summary>
    public readonly bool IsCalled => !double.IsNaN(Call);

    /// <summary>Change of the level, kg/s.</summary>
    public readonly double Net => Inflow - Taken;
}

/// <summary>A feeder or tipping place while the shift runs.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct Dock
{
    public UnloadingStep State;
    public int First;
    public int Last;
    public int Buffer;
    public int Truck;
    public double Until;
    public double Docked;
    public double Busy;

    /// <summary>Whether it serves one buffer only.</summary>
    public readonly bool IsDirect => First == Last;

    /// <summary>Time of turning or docking that still lies ahead, s.</summary>
    public readonly double Ahead(double now) => State is UnloadingStep.Turning or UnloadingStep.Docking ? Math.Max(0, Until - now) : 0;
}

/// <summary>One mix while the shift runs, kg.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct MixFlow
{
    public double Needed;
    public double Lowest;
    public double Loaded;
    public double Arrived;
    public double Fed;
    public int OpenGroups;

    /// <summary>Whether no more loads are sent and all that were sent are fed.</summary>
    public readonly bool NothingComes => OpenGroups == 0 && Loaded - Fed <= PavingSite.Tiny;
}
