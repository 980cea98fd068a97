using Laygate.Model.Measures;

namespace Laygate.Model.Plans;

/// <summary>A value at a station.</summary>
/// <param name="At">Station; null when the value holds along the whole run.</param>
/// <param name="Value">Value.</param>
/// <typeparam name="T">Type of the value's dimension.</typeparam>
public sealed record AtStation<T>(Measure<Length>? At, Measure<T> Value)
    where T : IDimension;

/// <content>One value that holds everywhere, or a list from station to station; both together are caught by the consistency check.</content>
public sealed partial record Run
{
    /// <summary>Width along the run; one entry without a station holds everywhere.</summary>
    public IReadOnlyList<AtStation<Length>> WidthAlong => [.. Everywhere(Width), .. Widths.Select(width => new AtStation<Length>(width.At, width.Value))];

    /// <summary>Crossfall along the run; one entry without a station holds everywhere.</summary>
    public IReadOnlyList<AtStation<Ratio>> CrossfallAlong => [.. Everywhere(Crossfall), .. Crossfalls.Select(fall => new AtStation<Ratio>(fall.At, fall.Value))];

    private static AtStation<T>[] Everywhere<T>(Measure<T>? value)
        where T : IDimension => value is null ? [] : [new AtStation<T>(null, value)];
}
