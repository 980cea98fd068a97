namespace Laygate.Service.Pages;

/// <summary>A decision that was not recorded, so that its form can be shown again with nothing lost.</summary>
/// <param name="Error">Why not, and what to do.</param>
/// <param name="Comment">The comment as it was written.</param>
public sealed record DecisionDraft(string Error, string Comment);

/// <summary>What somebody wrote on a page and what was not taken.</summary>
/// <param name="Decision">A decision; null: none.</param>
/// <param name="Comment">A comment on a finding; null: none.</param>
public sealed record Drafts(DecisionDraft? Decision, CommentDraft? Comment);
