namespace Laygate.Rules.Definitions;

/// <summary>A word of an earlier version that a file still uses; it is read for one more version.</summary>
/// <param name="At">File, or the plan, with the line.</param>
/// <param name="Old">The word that stands there.</param>
/// <param name="New">What to write.</param>
public sealed record OldWord(string At, string Old, string New);
