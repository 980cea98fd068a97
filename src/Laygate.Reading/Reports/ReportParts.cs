using Laygate.Engineering.Quantities;
using Laygate.Exchange.Reports;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reading.Reports;

/// <summary>Pieces that several parts of a JSON report share.</summary>
internal static class ReportParts
{
    /// <summary>Each entry of a list; none when it is missing.</summary>
    public static IReadOnlyList<TOut> Each<TIn, TOut>(this IEnumerable<TIn>? shapes, Func<TIn, TOut> of) => shapes is null ? [] : [.. shapes.Select(of)];

    /// <summary>A place in a file, or null.</summary>
    public static Position? MaybePosition(PositionShape? shape) => shape is null ? null : new(shape.Line, shape.Column, shape.EndLine, shape.EndColumn) { File = shape.File };

    /// <summary>Why something could not be read.</summary>
    public static Problem Problem(ProblemShape shape) => new(shape.File, shape.Message, shape.Hint, MaybePosition(shape.Position));

    /// <summary>An input by address and key.</summary>
    public static InputReference Input(MissingShape shape) => new(shape.Address, shape.Key);

    /// <summary>A remark; its sentence is worded anew.</summary>
    public static Note Note(NoteShape shape) =>
        new(shape.Id, shape.Arguments.Each(argument => new NoteArgument(argument.Key, argument.Value.Text, argument.Value.Number, argument.Value.Unit)));

    /// <summary>An assumption that was used. Earlier reports name the input in whose place it stands only in words.</summary>
    public static AssumptionUse Assumption(AssumptionShape shape) => new(
        shape.Id,
        shape.Address,
        shape.Number ?? double.NaN,
        shape.Unit,
        shape.Evidence,
        shape.Source,
        shape.Input ?? (shape.StandsFor is { } words ? new InputReference(words, string.Empty) : null));

    /// <summary>How a value was found, or null.</summary>
    public static Working? MaybeWorking(WorkingShape? shape) => shape is null ? null : new(
        shape.Inputs ?? [],
        shape.Steps.Each(step => new WorkingStep(step.Symbol, step.Expression, step.Number ?? double.NaN, step.Unit)),
        shape.Assumptions.Each(Assumption));

    /// <summary>A limit with its source inside, or null. In earlier reports the limits of remedies and hours come without one; no form shows it there.</summary>
    public static ShownLimit? MaybeLimit(LimitShape? shape) => shape is null ? null : Limit(shape, shape.Source);

    /// <summary>A limit with its source.</summary>
    public static ShownLimit Limit(LimitShape shape, SourceShape? source) => new(
        shape.Strength,
        shape.Basis,
        shape.Low,
        shape.High,
        shape.LowExclusive,
        shape.HighExclusive,
        shape.Stated,
        shape.Quantity,
        shape.Factor,
        source is null ? new SourceReference { Source = string.Empty, Evidence = Evidence.Recalled } : Source(source),
        source is null ? null : Publication(source),
        shape.Layer,
        shape.SetBy)
    {
        SilenceFails = shape.SilenceFails,
    };

    private static SourceReference Source(SourceShape shape) => new()
    {
        Source = shape.Id,
        Clause = shape.Clause,
        Evidence = shape.Evidence,
        ValidFrom = shape.ValidFrom,
        ValidTo = shape.ValidTo,
        Successor = shape.Successor,
        Remark = shape.Remark,
        Confirmation = shape.Confirmation,
    };

    private static Source? Publication(SourceShape shape) => shape.Title is { } title
        ? new Source(shape.Id, title, shape.Issuer ?? string.Empty, shape.Edition, shape.Year, shape.Url, shape.Carrier, Licence: null)
        : null;
}
