using Laygate.Rules.Results;

namespace Laygate.Cli.Files;

/// <summary>One input of a run: bytes, or why there are none.</summary>
/// <param name="Name">Name as given.</param>
/// <param name="Identity">Full path, or <c>-</c> for standard input; the same input twice is checked once.</param>
/// <param name="Read">Reads the bytes.</param>
/// <param name="Problem">Why it cannot be read; null when it can be tried.</param>
internal sealed record PlanInput(string Name, string Identity, Func<byte[]>? Read, Problem? Problem);
