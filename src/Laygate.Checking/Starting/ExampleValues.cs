using Laygate.Reading.Schema;

namespace Laygate.Checking.Starting;

/// <summary>What is written into blanks to learn what else is asked for: an example of the schema; never shown as an answer. Conditions of the site are taken as no: what they ask for depends on what they are.</summary>
/// <param name="plan">The draft, whose elements blanks may name.</param>
/// <param name="turn">Which of the words of a blank is taken, counted from 0; yes at even turns.</param>
internal sealed class ExampleValues(DraftMap plan, int turn)
{
    private const string NoTraffic = "none";

    /// <summary>A value for a blank.</summary>
    /// <param name="node">What stands behind its key.</param>
    /// <param name="path">The key from the top of the plan.</param>
    public string Of(SchemaNode node, string path)
    {
        var words = Possible(Needs.Words(node), path);
        var first = Needs.Examples(node) is [var shown, ..] ? shown : null;
        if (path.StartsWith("site.conditions.", StringComparison.Ordinal))
        {
            return "no";
        }

        return words.Count > 0 ? words[((first is null ? 0 : Math.Max(0, words.ToList().IndexOf(first))) + turn) % words.Count]
            : DraftReferences.Ids(plan, path) is { Count: > 0 } ids ? ids[turn % ids.Count]
            : path switch
            {
                "shift.date" => "2031-06-12",
                "shift.start" => "08:00",
                "shift.end" => "16:00",
                "weather.hours.at" => "2031-06-12T08:00",
                _ => first ?? "said",
            };
    }

    // A closure that leaves traffic beside the works contradicts the answer that there is none: nothing is asked for it.
    private IReadOnlyList<string> Possible(IReadOnlyList<string> words, string path) =>
        path is "site.closure.kind" && plan.At(["site", "traffic"]) is DraftText { Text: NoTraffic } ? [.. words.Where(word => word is "full" or "none")] : words;
}
