namespace Laygate.Rules.Results;

/// <summary>A case of a rule, for lists and pages.</summary>
/// <param name="Case">What it shows, as a sentence.</param>
/// <param name="Outcome">The outcome that must come out, as a word.</param>
/// <param name="Status">The status that must come out, as a word; null where it names none.</param>
/// <param name="With">Specifications with which it is run.</param>
public sealed record CaseSummary(string Case, string Outcome, string? Status, IReadOnlyList<string> With);
