using System.Runtime.CompilerServices;

namespace Laygate.HostTests;

/// <summary>A missing approved output fails instead of approving itself. To approve anew: delete the file, set <c>LAYGATE_APPROVE=1</c>, run, and read the diff.</summary>
internal static class StrictSnapshots
{
#pragma warning disable CA2255 // The switch must be set before the first test of the assembly.
    [ModuleInitializer]
#pragma warning restore CA2255
    internal static void Set() => Environment.SetEnvironmentVariable(
        "SNAPSHOOTER_STRICT_MODE", Environment.GetEnvironmentVariable("LAYGATE_APPROVE") is { Length: > 0 } ? "off" : "on");
}
