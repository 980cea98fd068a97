namespace Laygate.Service.Pages;

/// <summary>A decision that was not recorded, so that its form can be shown again with nothing lost.</summary>
/// <param name="Error">Why not, and what to do; null: it was not sent.</param>
/// <param name="Comment">The comment as it was written.</param>
public sealed record DecisionDraft(string? Error, string Comment);

/// <summary>What somebody wrote on a page and what was not taken.</summary>
/// <param name="Decision">A decision; null: none.</param>
/// <param name="Comments">Comments on findings.</param>
/// <param name="Name">Name of the plan in a set of files.</param>
/// <param name="IsKept">Whether it comes from before: from another form of the page, or from a session that has ended.</param>
public sealed record Drafts(DecisionDraft? Decision, IReadOnlyList<CommentDraft> Comments, string Name = "", bool IsKept = false);
