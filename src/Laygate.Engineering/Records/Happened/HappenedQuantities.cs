using System.Collections.Frozen;

namespace Laygate.Engineering.Records.Happened;

/// <summary>All quantities of the catalogue that a record can show as they happened.</summary>
public static class HappenedQuantities
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<HappenedQuantity> All { get; } =
    [
        .. HappenedLoads.All(), .. HappenedWeather.All(), .. HappenedPaving.All(), .. HappenedMat.All(), .. HappenedRolling.All(), .. HappenedCourse.All(), .. HappenedBond.All(),
    ];

    private static readonly FrozenDictionary<string, HappenedQuantity> ByName = All.ToFrozenDictionary(one => one.Quantity, StringComparer.Ordinal);

    /// <summary>The quantity of a name; null where no record can show it.</summary>
    /// <param name="name">Name in the catalogue.</param>
    public static HappenedQuantity? Find(string name) => ByName.GetValueOrDefault(name);
}
