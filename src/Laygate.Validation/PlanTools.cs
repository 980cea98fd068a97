using Laygate.Engineering.Quantities;
using Laygate.Validation.Plans.Consistency;
using Laygate.Validation.Schema;

namespace Laygate.Validation;

/// <summary>What every check of a plan uses and none changes: schema, catalogue and consistency checks. Costly to make; one serves any number of checks, also at once.</summary>
public sealed class PlanTools
{
    /// <summary>The schema of plans.</summary>
    internal LoadedSchema Schema { get; } = EmbeddedSchemas.Plan();

    /// <summary>The quantities.</summary>
    internal QuantityCatalogue Catalogue { get; } = LaygateQuantities.Catalogue();

    /// <summary>Which stated values cannot be true together.</summary>
    internal PlanValidator Validator { get; } = new();
}
