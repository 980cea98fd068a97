using Laygate.Engineering.Quantities;
using Laygate.Reading.Plans;

namespace Laygate.Checking;

/// <summary>What every check of a plan uses and none changes: the reader of plans and the catalogue. Costly to make; one serves any number of checks, also at once.</summary>
public sealed class PlanTools
{
    /// <summary>Reads plans.</summary>
    public PlanReader Reader { get; } = new();

    /// <summary>The quantities.</summary>
    internal QuantityCatalogue Catalogue { get; } = LaygateQuantities.Catalogue();
}
