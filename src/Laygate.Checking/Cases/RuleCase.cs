using Laygate.Model.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Checking.Cases;

/// <summary>A case of a rule: a small change to a base plan and the finding that it must give.</summary>
/// <param name="Name">What it shows, as a sentence.</param>
/// <param name="Base">Name of the base plan.</param>
/// <param name="Stage">Stage to judge at; null: the plan's own.</param>
/// <param name="Date">Date of checking; null: that of the run.</param>
/// <param name="With">Names of specifications.</param>
/// <param name="Set">Paths and the values they get.</param>
/// <param name="Remove">Paths that are removed.</param>
/// <param name="Give">Quantities that are stated directly: address, name, value.</param>
/// <param name="Finding">The finding that must come out, as written.</param>
/// <param name="Span">Where the case stands.</param>
internal sealed record RuleCase(
    string Name,
    string Base,
    Stage? Stage,
    DateOnly? Date,
    IReadOnlyList<string> With,
    IReadOnlyList<(string Path, YamlToken Value)> Set,
    IReadOnlyList<string> Remove,
    IReadOnlyList<(string Address, string Quantity, YamlToken Value)> Give,
    MapToken Finding,
    TextSpan Span);

/// <summary>What came of a case.</summary>
/// <param name="Rule">Id of the rule.</param>
/// <param name="File">File of the case.</param>
/// <param name="Case">What the case shows; empty where the file itself is meant.</param>
/// <param name="Position">Where it stands.</param>
/// <param name="Differences">How the finding differs from what the case says, one sentence each; empty when the case holds.</param>
public sealed record CaseResult(string Rule, string File, string Case, Position? Position, IReadOnlyList<string> Differences)
{
    /// <summary>Whether the case holds.</summary>
    public bool Holds => Differences.Count == 0;
}
