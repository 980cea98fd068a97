using Laygate.Reporting.Rules;
using Laygate.Reporting.Text;
using Laygate.Rules.Merging;

namespace Laygate.Reporting.Runs;

/// <summary>A rule of the merged book as a list of rules shows it, whether or not a plan gave it anything to judge.</summary>
/// <param name="Id">Id.</param>
/// <param name="Name">Family and name.</param>
/// <param name="Title">What goes wrong, in a few words.</param>
/// <param name="Why">Why it matters.</param>
/// <param name="Remedy">What to do.</param>
/// <param name="Local">Whom to ask; empty where nobody in particular.</param>
/// <param name="Sources">Where its limits come from and how they are known, each once.</param>
public sealed record RuleInForce(string Id, string Name, string Title, string Why, string Remedy, string Local, IReadOnlyList<string> Sources)
{
    /// <summary>The rules in force of a merged book, by id.</summary>
    public static IReadOnlyList<RuleInForce> Of(RuleBook book) => [.. book.InForce.Select(rule => new RuleInForce(
        rule.Definition.Id,
        $"{rule.Definition.Family}/{rule.Definition.Name}",
        rule.Definition.Title,
        rule.Definition.Why,
        rule.Definition.Remedy,
        rule.Definition.Local,
        [.. RuleWords.Limits(rule, book.Sources).Select(line => $"{PlainText.Show(line.Source)} ({line.Known})").Distinct(StringComparer.Ordinal)]))];
}
