namespace Laygate.Engineering.Supply.Simulation;

/// <summary>A load in the order in which it is fed; times in s after the planned start of laying.</summary>
/// <param name="Mix">Position of its mix.</param>
/// <param name="Buffer">Position of the buffer that it was fed to.</param>
/// <param name="Group">Position of the group of trucks.</param>
/// <param name="Loaded">When it left the plant.</param>
/// <param name="Arrived">When it arrived on site.</param>
/// <param name="Docked">When the truck began to dock, for the last time where it unloaded in parts.</param>
/// <param name="Empty">When the truck was empty.</param>
/// <param name="Position">Length laid at that moment, m.</param>
/// <param name="Mass">Load, kg.</param>
public sealed record FedLoad(
    int Mix, int Buffer, int Group, double Loaded, double Arrived, double Docked, double Empty, double Position, double Mass);
