using Laygate.Engineering.Quantities;

namespace Laygate.Rules.Evaluation;

/// <summary>Samples that a context has drawn together.</summary>
/// <param name="context">The context.</param>
public sealed class ContextSamples(QuantityContext context) : IJointSamples
{
    /// <inheritdoc/>
    public IReadOnlyList<(double Value, double Limit)>? Find(string quantity, string limit, string address) => context.JointSamples(quantity, limit, address);
}
