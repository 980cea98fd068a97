using Laygate.Engineering.Records;
using Laygate.Exchange.Records;
using Laygate.Model.Records;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>What the JSON texts of a record share.</summary>
internal static class RecordShapes
{
    public static RecordShape Of(ShiftRecord record) => new(record.About, [.. record.Files.Select(file => new RawFileShape(file.File, file.Holds, file.Hash, file.Rows, file.Refused))]);

    public static IReadOnlyList<RowProblemShape> Of(IReadOnlyList<Problem> problems) =>
        [.. problems.Select(problem => new RowProblemShape(problem.File, problem.Position?.Line, problem.Position?.Column, problem.Message, problem.Hint))];

    public static LedgerFigureShape Figure(LedgerFigure figure) => new(
        figure.Number, figure.Unit.Spelling, figure.Of(figure.PlanSi), figure.UncertaintySi is { } u ? u / figure.Unit.Factor : null, figure.Of(figure.LowSi), figure.Of(figure.HighSi));

    public static LedgerFigureShape? Maybe(LedgerFigure? figure) => figure is null ? null : Figure(figure);

    public static IReadOnlyList<LedgerStepShape> Steps(IReadOnlyList<LedgerStep> steps) => [.. steps.Select(step => new LedgerStepShape(step.Expression, step.Result.Number, step.Result.Unit.Spelling))];
}
