using System.Text;
using Laygate.Model.Plans;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Faults;

/// <summary>Writes the lists of answers, open faults and removals anew. What stood above the first entry stays.</summary>
internal static class FaultAnswersWriter
{
    public static void WriteAnew(IReadOnlyList<FaultAnswer> answers, IReadOnlyList<OpenFault> open, IReadOnlyList<FaultRemoval> removals)
    {
        var held = answers.Select(answer => (answer.Id, Now: Again(answer))).Where(pair => pair.Now is not null).Select(pair => pair.Now!).ToList();
        var lost = answers.Where(answer => held.TrueForAll(other => other.Id != answer.Id)).DistinctBy(answer => answer.Id, StringComparer.Ordinal)
            .Select(answer => new OpenFault(answer.Id, string.Empty, [], OpenFault.AddsNow(FaultOf(answer.Id))));
        Write("answers.yaml", InOrder(held, answer => answer.Id).Select(Line));
        Write("open.yaml", InOrder([.. open.Select(Again), .. lost], fault => fault.Id).Select(Line));
        Write("removals.yaml", RemovalsNow([.. held.Where(answer => answer.Whole).Select(answer => answer.Id)]).Select(now =>
            Line(now with { Why = removals.FirstOrDefault(old => old with { Why = string.Empty } == now)?.Why ?? string.Empty })));
    }

    /// <summary>What faults take away today, without reasons.</summary>
    public static IEnumerable<FaultRemoval> RemovalsNow(IReadOnlyList<string> whole) => FaultLists.Faults.SelectMany(fault =>
        FaultCheck.Of(fault, whole.Contains(fault.Id, StringComparer.Ordinal)).Removed.Select(said => new FaultRemoval(fault.Id, said.Rule, said.Address, string.Empty)));

    private static FaultAnswer? Again(FaultAnswer answer)
    {
        var fault = FaultOf(answer.Id);
        if (answer.Difference(fault) is null || answer.Rule is null)
        {
            return answer.Difference(fault) is null ? answer : null;
        }

        return answer.Find(FaultCheck.Of(fault, answer.Whole)) is { Status: Status.Warn or Status.Fail } said
            ? answer with { Status = Words.Of(said.Status), Says = said.Text.Contains(answer.Says, StringComparison.Ordinal) ? answer.Says : Clause(said.Text), Short = said.Status == Status.Fail ? null : answer.Short }
            : null;
    }

    // "Title: Thickness to size: 1.31, but at least …" gives "Thickness to size: 1.31".
    private static string Clause(string text)
    {
        var sentence = text[(text.IndexOf(": ", StringComparison.Ordinal) + 2)..];
        return sentence[..sentence.IndexOfAny([',', ';', '|'])].Trim();
    }

    private static OpenFault Again(OpenFault fault) => fault with { New = [.. OpenFault.AddsNow(FaultOf(fault.Id)).Except(fault.Adds, StringComparer.Ordinal)], Adds = [.. fault.Adds.Intersect(OpenFault.AddsNow(FaultOf(fault.Id)), StringComparer.Ordinal)] };

    private static Fault FaultOf(string id) => FaultLists.Faults.Single(fault => fault.Id == id);

    private static IEnumerable<T> InOrder<T>(IReadOnlyList<T> these, Func<T, string> idOf) => FaultLists.Faults.SelectMany(fault => these.Where(one => idOf(one) == fault.Id));

    private static string Line(FaultAnswer answer) => Entry(("id", answer.Id), ("rule", answer.Rule), ("at", answer.At), ("status", answer.Status), ("says", answer.Says), ("short", answer.Short), ("whole", answer.Whole ? "yes" : null));

    private static string Line(OpenFault fault) => Entry(("id", fault.Id), ("why", fault.Why), ("adds", Listed(fault.Adds)), ("new", Listed(fault.New)));

    private static string Line(FaultRemoval removal) => Entry(("id", removal.Id), ("rule", removal.Rule), ("at", removal.At), ("why", removal.Why));

    private static string? Listed(IReadOnlyList<string> words) => words.Count == 0 ? null : $"[{string.Join(", ", words)}]";

    private static string Entry(params (string Key, string? Text)[] parts) =>
        $"- {{ {string.Join(", ", parts.Where(part => part.Text is not null).Select(part => $"{part.Key}: {(part.Key is "adds" or "new" or "id" or "rule" or "status" or "whole" ? part.Text : $"\"{part.Text!.Replace("\\", @"\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"")}"))} }}";

    private static void Write(string file, IEnumerable<string> lines)
    {
        var path = Path.Combine(Repository.Root, FaultLists.PathOf(file));
        var text = new StringBuilder();
        foreach (var line in File.ReadLines(path).TakeWhile(line => line.StartsWith('#')).Concat(lines))
        {
            text.Append(line).Append('\n');
        }

        File.WriteAllText(path, text.ToString());
    }
}
