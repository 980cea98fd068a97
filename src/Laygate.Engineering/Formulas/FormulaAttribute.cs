namespace Laygate.Engineering.Formulas;

/// <summary>Marks a formula: what a reader needs to check it. A test holds every formula to it, and to documented symbols and units.</summary>
/// <param name="symbol">Symbol of the result.</param>
/// <param name="expression">The formula in symbols.</param>
/// <param name="source">Where it comes from: document, edition, clause.</param>
/// <param name="range">Range in which it holds, and what happens outside.</param>
[AttributeUsage(AttributeTargets.Method)]
public sealed class FormulaAttribute(string symbol, string expression, string source, string range) : Attribute
{
    /// <summary>Symbol of the result.</summary>
    public string Symbol { get; } = symbol;

    /// <summary>The formula in symbols.</summary>
    public string Expression { get; } = expression;

    /// <summary>Where it comes from: document, edition, clause.</summary>
    public string Source { get; } = source;

    /// <summary>Range in which it holds, and what happens outside.</summary>
    public string Range { get; } = range;
}
