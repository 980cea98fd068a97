namespace Laygate.Cli;

/// <summary>
/// Room for what a run allocates first. Nearly all of it stays: rules, schema and plan. Collected bit by bit, it is copied several
/// times, which takes a quarter of a quick check.
/// </summary>
internal static class StartMemory
{
    // All that a quick check of an example allocates; where a run needs more, the runtime collects as usual from there on.
    private const long Room = 32_000_000;

    /// <summary>Puts collecting off until the room is used up, where the machine gives it. For runs that end soon: a long one would keep the room as memory.</summary>
    public static void Begin()
    {
        try
        {
            GC.TryStartNoGCRegion(Room);
        }
        catch (ArgumentOutOfRangeException)
        {
            // A limit of the heap below the room: nothing is put off.
        }
    }
}
