using Laygate.Engineering.Quantities;
using Laygate.Exchange.Reports;
using Laygate.Reporting.Language;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Json;

/// <summary>Pieces that several parts of a JSON report share.</summary>
internal static class PartShapes
{
    /// <summary>A status; null for none.</summary>
    public static Status? Of(Status status) => status == Status.None ? null : status;

    /// <summary>Why something could not be read.</summary>
    public static IReadOnlyList<ProblemShape> Of(IReadOnlyList<Problem> problems) =>
        [.. problems.Select(problem => new ProblemShape(problem.File, problem.Message, problem.Hint, Of(problem.Position)))];

    /// <summary>A place in a file.</summary>
    public static PositionShape? Of(Position? position) => position is null ? null : new(position.Line, position.Column, position.EndLine, position.EndColumn, position.File);

    /// <summary>Places in the plan where something would be stated.</summary>
    public static IReadOnlyList<MissingShape> Of(IReadOnlyList<InputReference> inputs) =>
        [.. inputs.Select(input => new MissingShape(input.Address, input.Key, Names.Of(input)))];

    /// <summary>Remarks: id and arguments for programs, the sentence for people.</summary>
    public static IReadOnlyList<NoteShape> Of(IReadOnlyList<Note> notes) => [.. notes.Select(note => new NoteShape(note.Id, NoteWords.Of(note), Arguments(note)))];

    /// <summary>Assumptions that were used.</summary>
    public static IReadOnlyList<AssumptionShape> Of(IReadOnlyList<AssumptionUse> uses) =>
    [
        .. uses.Select(use => new AssumptionShape(
            use.Id, use.Address, use.Number, use.Unit, use.Evidence, use.Source, use.StandsFor is { } input ? Names.Of(input) : null, use.StandsFor)),
    ];

    /// <summary>How a value was found.</summary>
    public static WorkingShape Of(Working working) =>
        new(working.Inputs, [.. working.Steps.Select(step => new WorkingStepShape(step.Symbol, step.Expression, step.Number, step.Unit))], Of(working.Assumptions));

    /// <summary>A limit with its source inside.</summary>
    public static LimitShape? Of(ShownLimit? limit) => limit is null ? null : Limit(limit, Source(limit));

    /// <summary>A limit whose source stands elsewhere.</summary>
    public static LimitShape? Bare(ShownLimit? limit) => limit is null ? null : Limit(limit, source: null);

    private static LimitShape Limit(ShownLimit limit, SourceShape? source) => new(
        limit.Strength,
        limit.Basis,
        limit.Low,
        limit.High,
        limit.LowExclusive,
        limit.HighExclusive,
        limit.Stated,
        limit.Quantity,
        limit.Factor,
        limit.Layer,
        limit.SetBy,
        limit.SilenceFails,
        source);

    /// <summary>Where a limit comes from.</summary>
    public static SourceShape Source(ShownLimit limit) => new(
        limit.Source.Source,
        limit.Publication?.Issuer,
        limit.Publication?.Title,
        limit.Publication?.Edition,
        limit.Publication?.Year,
        limit.Publication?.Carrier,
        limit.Publication?.Address,
        limit.Source.Clause,
        limit.Source.Evidence,
        limit.Source.ValidFrom,
        limit.Source.ValidTo,
        limit.Source.Successor,
        limit.Source.Remark,
        limit.Source.Confirmation);

    // The first of several arguments of one name.
    private static OrderedDictionary<string, ShownValue> Arguments(Note note)
    {
        var values = new OrderedDictionary<string, ShownValue>(note.Arguments.Count, StringComparer.Ordinal);
        foreach (var argument in note.Arguments)
        {
            values.TryAdd(argument.Name, new ShownValue(argument.Number, argument.Unit ?? string.Empty, Text: argument.Text));
        }

        return values;
    }
}
