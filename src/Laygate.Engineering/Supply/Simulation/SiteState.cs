using System.Runtime.InteropServices;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>What the paver does.</summary>
internal enum Motion
{
    /// <summary>It has not started.</summary>
    Waiting,

    /// <summary>It lays.</summary>
    Moving,

    /// <summary>It stands for want of mix.</summary>
    Wanting,

    /// <summary>It stands as planned.</summary>
    Pausing,

    /// <summary>It goes to the next run and is set up there, or waits there for its first mix.</summary>
    Shifting,

    /// <summary>Laying has ended.</summary>
    Over,
}

/// <summary>What a feeder, or a place where trucks tip, does.</summary>
internal enum DockState
{
    /// <summary>Free.</summary>
    Idle,

    /// <summary>It turns to another buffer.</summary>
    Turning,

    /// <summary>A truck docks and raises its body.</summary>
    Docking,

    /// <summary>It passes mix on, or holds the truck in front of a full buffer.</summary>
    Feeding,
}

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
    public DockState State;
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
    public readonly double Ahead(double now) => State is DockState.Turning or DockState.Docking ? Math.Max(0, Until - now) : 0;
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
