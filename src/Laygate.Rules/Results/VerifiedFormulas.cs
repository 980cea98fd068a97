namespace Laygate.Rules.Results;

/// <summary>A formula that cases of the verification manual may call.</summary>
/// <param name="Name">Name in case files.</param>
/// <param name="Result">What the result is, with its article.</param>
/// <param name="Units">Units of the result; none for a plain number.</param>
/// <param name="Inputs">Inputs in their order.</param>
public sealed record VerifiedFormula(string Name, string Result, IReadOnlyList<string> Units, IReadOnlyList<VerifiedFormulaInput> Inputs);

/// <summary>An input of such a formula.</summary>
/// <param name="Name">Key in case files.</param>
/// <param name="What">What it is, with its article; null for a word.</param>
/// <param name="Allowed">Units, or the words of a closed list; none for a plain number.</param>
/// <param name="IsRequired">Whether it must be given.</param>
/// <param name="IsList">Whether it is a list.</param>
public sealed record VerifiedFormulaInput(string Name, string? What, IReadOnlyList<string> Allowed, bool IsRequired, bool IsList);
