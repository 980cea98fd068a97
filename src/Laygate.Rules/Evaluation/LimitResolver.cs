using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Rules.Evaluation;

/// <summary>A bound whose limit is known for one element.</summary>
/// <param name="Bound">The bound.</param>
/// <param name="Source">Where this limit comes from: the row's source, where the row has one.</param>
/// <param name="Range">Fixed ends; null for other limits.</param>
/// <param name="Other">The quantity that serves as limit; null otherwise.</param>
/// <param name="Notes">Remarks that go with the limit.</param>
internal sealed record ResolvedBound(
    CheckedBound Bound, SourceReference Source, CheckedRange? Range, Answer? Other, IReadOnlyList<Note> Notes);

/// <summary>A bound whose limit is not to be had for one element.</summary>
/// <param name="Bound">The bound.</param>
/// <param name="InForce">False when the limit is not in force on the date.</param>
/// <param name="Answers">Answers without a value that would be needed.</param>
/// <param name="Note">Why, where no answer says it.</param>
internal sealed record UnresolvedBound(CheckedBound Bound, bool InForce, IReadOnlyList<Answer> Answers, Note? Note)
{
    /// <summary>The limits of all rows of its table that may be meant, where all are in force and only what chooses between them is not known.</summary>
    public IReadOnlyList<ResolvedBound> Candidates { get; init; } = [];
}

/// <summary>Finds the limit of a bound for one element on one date.</summary>
internal sealed class LimitResolver(AnswerLog answers, DateOnly date)
{
    /// <summary>Resolves a bound; exactly one of the two is given.</summary>
    public (ResolvedBound? Resolved, UnresolvedBound? Unresolved) Resolve(CheckedBound bound, Element element) => bound.Limit switch
    {
        CheckedTable table => Table(bound, table, element),
        CheckedQuantity other => Other(bound, other, element),
        CheckedConstant constant => InForce(bound, bound.Definition.Source, constant.Range, null),
        _ => InForce(bound, bound.Definition.Source, null, null),
    };

    private (ResolvedBound?, UnresolvedBound?) Other(CheckedBound bound, CheckedQuantity other, Element element)
    {
        var result = InForce(bound, bound.Definition.Source, null, null);
        if (result.Item1 is null)
        {
            return result;
        }

        var answer = answers.Get(other.Quantity.Name, element);
        return answer.Value is null
            ? (null, new UnresolvedBound(bound, InForce: true, [answer], null))
            : (result.Item1 with { Other = answer }, null);
    }

    private (ResolvedBound?, UnresolvedBound?) Table(CheckedBound bound, CheckedTable table, Element element)
    {
        var keys = table.Keys.Select(key => answers.Get(key.Name, element)).ToList();
        var candidates = table.Rows.Where(row => MayMatch(row, keys)).ToList();
        var rows = candidates.Where(row => Validity.Holds(row.Source, date)).ToList();

        // A key that is not known does no harm where every row that may match asks nothing of it.
        var needed = keys.Where((key, index) => key.Value is null && !candidates.TrueForAll(row => row.Matches[index].Any)).ToList();
        if (candidates.Count > 0 && needed.Count > 0)
        {
            return (null, new UnresolvedBound(bound, InForce: true, needed, null) { Candidates = rows.Count == candidates.Count && IsWhole(candidates, keys) ? [.. rows.Select(row => OfRow(bound, row))] : [] });
        }

        if (candidates.Count == 0)
        {
            return OutsideTable(bound, table, keys) is { } outside
                ? (null, new UnresolvedBound(bound, InForce: true, [outside], null))
                : (null, new UnresolvedBound(bound, InForce: true, [], NotListed(bound, table, keys)));
        }

        return rows.Count > 0
            ? InForce(bound, rows[0].Source, rows[0].Range, rows[0].Source.Remark)
            : InForce(bound, candidates[0].Source, candidates[0].Range, candidates[0].Source.Remark);
    }

    // A number that is not known may lie beyond the last row, where the table has no answer.
    private static bool IsWhole(List<CheckedRow> rows, List<Answer> keys) => keys.Index().Where(key => key.Item.Value is null).All(key =>
        rows.Exists(row => row.Matches[key.Index] is { AtLeast: null }) && rows.Exists(row => row.Matches[key.Index] is { Below: null }));

    private static ResolvedBound OfRow(CheckedBound bound, CheckedRow row) =>
        new(bound, row.Source, row.Range, null, [Engineering.Quantities.Note.Of(FindingNotes.HeldByEachRow), .. row.Source.Remark is { } remark ? [Engineering.Quantities.Note.Of(FindingNotes.RowRemark, ("text", remark))] : Array.Empty<Note>()]);

    private static bool MayMatch(CheckedRow row, List<Answer> keys, int besides = -1) =>
        row.Matches.Zip(keys).Index().All(pair => pair.Index == besides || pair.Item.Second.Value is null || Matching.Matches(pair.Item.First, pair.Item.Second.Value));

    private (ResolvedBound?, UnresolvedBound?) InForce(CheckedBound bound, SourceReference source, CheckedRange? range, string? remark)
    {
        var note = Validity.Note(source, date, bound.Definition.Strength);
        if (!Validity.Holds(source, date))
        {
            return (null, new UnresolvedBound(bound, InForce: false, [], note));
        }

        var notes = new List<Note>(2);
        if (note is not null)
        {
            notes.Add(note);
        }

        if (remark is not null)
        {
            notes.Add(Engineering.Quantities.Note.Of(FindingNotes.RowRemark, ("text", remark)));
        }

        return (new ResolvedBound(bound, source, range, null, notes), null);
    }

    // A number beyond the first or last band of the rows that list everything else; between two bands, or with a word that is not listed, the table is silent.
    private Answer? OutsideTable(CheckedBound bound, CheckedTable table, List<Answer> keys)
    {
        for (var index = 0; index < keys.Count; index++)
        {
            var at = index;
            if (keys[at].Value is not NumberValue number)
            {
                continue;
            }

            var bands = table.Rows.Where(row => MayMatch(row, keys, besides: at)).Select(row => row.Matches[at]).ToList();
            var low = bands.TrueForAll(band => band.AtLeast is not null) ? bands.Select(band => band.AtLeast!).MinBy(end => end.Si) : null;
            var high = bands.TrueForAll(band => band.Below is not null) ? bands.Select(band => band.Below!).MaxBy(end => end.Si) : null;
            if (bands.Count > 0 && ((low is not null && number.Si < low.Si) || (high is not null && number.Si >= high.Si)))
            {
                return Answer.None(AbsenceReason.OutsideRange, OutsideNote(bound, table.Keys[at], keys[at], low, high), keys[at].Input);
            }
        }

        return null;
    }

    private Note OutsideNote(CheckedBound bound, QuantityDefinition key, Answer answer, LimitEnd? low, LimitEnd? high)
    {
        var shown = new Display(answers.Context).Value(key, answer);
        var range = string.Join(" ", new[] { low is null ? null : $"from {low.Stated.Text}", high is null ? null : $"to below {high.Stated.Text}" }.OfType<string>());
        return new Note(FindingNotes.OutsideTable,
        [
            new("key", key.Meaning.TrimEnd('.')), new("number", shown.Text, shown.Number, shown.Unit), new("strength", Words.Of(bound.Definition.Strength)), new("range", range),
        ]);
    }

    private Note NotListed(CheckedBound bound, CheckedTable table, List<Answer> keys)
    {
        var arguments = new List<NoteArgument> { new("strength", Words.Of(bound.Definition.Strength)) };
        for (var index = 0; index < keys.Count; index++)
        {
            var shown = keys[index].Value is null ? null : new Display(answers.Context).Value(table.Keys[index], keys[index]);
            arguments.Add(new NoteArgument(table.Keys[index].Name, shown?.Text, shown?.Number, shown?.Unit));
        }

        return new Note(FindingNotes.RowNotListed, arguments);
    }
}

/// <summary>Whether a limit is in force on a date.</summary>
internal static class Validity
{
    /// <summary>Begun, and not ended; one that has ended holds on only where it names what follows it.</summary>
    public static bool Holds(SourceReference source, DateOnly date) =>
        (source.ValidFrom is not { } from || from <= date) && (source.ValidTo is not { } to || date <= to || source.Successor is not null);

    /// <summary>The remark that goes with the limit's validity; null when there is nothing to say.</summary>
    public static Note? Note(SourceReference source, DateOnly date, Strength strength)
    {
        if (source.ValidFrom is { } from && date < from)
        {
            return Of(FindingNotes.LimitNotYetValid, ("date", Dates.Text(date)), ("from", Dates.Text(from)), ("strength", Words.Of(strength)));
        }

        if (source.ValidTo is not { } to)
        {
            return source.Successor is { } next ? Of(FindingNotes.LimitEndAnnounced, ("successor", next)) : null;
        }

        if (date <= to)
        {
            return null;
        }

        return source.Successor is { } successor
            ? Of(FindingNotes.LimitSucceeded, ("date", Dates.Text(date)), ("to", Dates.Text(to)), ("successor", successor))
            : Of(FindingNotes.LimitEnded, ("date", Dates.Text(date)), ("to", Dates.Text(to)), ("strength", Words.Of(strength)));
    }

    private static Note Of(string id, params (string, string)[] arguments) => Engineering.Quantities.Note.Of(id, arguments);
}
