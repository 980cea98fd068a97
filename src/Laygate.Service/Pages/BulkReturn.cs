namespace Laygate.Service.Pages;

/// <summary>What became of submissions that were to be returned together.</summary>
/// <param name="Done">How many were returned.</param>
/// <param name="Refused">Name of each other one, and why not.</param>
/// <param name="Chosen">Ids of those that stay chosen.</param>
/// <param name="Comment">The comment as it was written, where some stay chosen.</param>
/// <param name="IsKept">Whether nothing was sent: it comes from before.</param>
public sealed record BulkReturn(int Done, IReadOnlyList<(string Name, string Why)> Refused, IReadOnlyList<string> Chosen, string Comment, bool IsKept = false);
