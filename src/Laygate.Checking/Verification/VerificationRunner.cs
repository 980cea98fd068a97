using Laygate.Engineering.Cooling;
using Laygate.Reading;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Checking.Verification;

/// <summary>A case file.</summary>
/// <param name="Name">Name as given, for results and problems.</param>
/// <param name="Content">The bytes.</param>
public sealed record VerificationFile(string Name, ReadOnlyMemory<byte> Content);

/// <summary>
/// Runs case files against the model. It has no settings of its own: the solver runs with <see cref="CoolingSettings.Default"/>,
/// as in every check of a plan.
/// </summary>
public sealed class VerificationRunner
{
    private readonly LoadedSchema schema = EmbeddedSchemas.VerificationCase();

    /// <summary>Names of the formulas that cases may call, in ordinal order.</summary>
    public static IReadOnlyList<string> FormulaNames { get; } = [.. CaseFormulas.Names.Order(StringComparer.Ordinal)];

    /// <summary>Formulas that cases may call with their inputs, in the order of the program.</summary>
    public static IReadOnlyList<VerifiedFormula> Formulas { get; } =
    [
        .. CaseFormulas.All.Select(formula => new VerifiedFormula(formula.Name, formula.Result.Noun, [.. formula.Result.Units.Select(unit => unit.Spelling)],
            [.. formula.Inputs.Select(input => new VerifiedFormulaInput(input.Name, input.Dimension?.Noun, input.Words ?? [.. input.Dimension!.Units.Select(unit => unit.Spelling)], input.IsRequired, input.IsList))])),
    ];

    /// <summary>Runs all cases of all files.</summary>
    /// <param name="files">Files in the order in which they are reported.</param>
    /// <returns>Cases, problems of files that cannot be used, and counts. Never throws for a bad file.</returns>
    public VerificationResult Run(IReadOnlyList<VerificationFile> files)
    {
        var solver = new CoolingSolver();
        return VerificationSummary.Of([.. files.Select(file => RunFile(file, solver))]);
    }

    private VerificationFileResult RunFile(VerificationFile file, CoolingSolver solver)
    {
        var problems = new List<ReadingProblem>();
        var definitions = CaseReader.Read(file.Content.Span, schema, problems);
        var cases = problems.Count > 0 ? [] : definitions.Select((definition, at) => RunCase(file.Name, at + 1, definition, solver, problems)).ToList();
        return problems.Count == 0
            ? new VerificationFileResult(file.Name, cases, [])
            : new VerificationFileResult(file.Name, [], ShownProblems.Of(file.Name, problems));
    }

    private static VerificationCase RunCase(string file, int number, CaseDefinition definition, CoolingSolver solver, List<ReadingProblem> problems)
    {
        CoolingCurve? curve = null;
        string? reason = null;
        if (definition.Conduction is { } question)
        {
            var solved = solver.Solve(question.Problem);
            curve = solved.Curve;
            reason = solved.Failure?.Reason;
            if (solved.Failure is { } failure && IsOfInput(failure))
            {
                problems.Add(Problem(question, failure));
            }
        }

        return new VerificationCase(
            file, number, definition.Topic, definition.Title, definition.Source, definition.Evidence, definition.Remark,
            [.. definition.Expected.Select(expected => Judge(expected, reason is null ? expected.Compute(curve) : null, reason))]);
    }

    private static VerificationCheck Judge(ExpectedValue expected, double? computedSi, string? reason)
    {
        var computed = computedSi is { } si && double.IsFinite(si) ? expected.Unit?.FromSi(si) ?? si : (double?)null;
        var difference = computed - expected.Expected;
        var allowed = expected.Tolerance.In(expected.Unit, expected.Expected);
        var verdict = difference is not { } gap ? VerificationVerdict.NotComputed
            : Math.Abs(gap) <= allowed ? VerificationVerdict.Within
            : VerificationVerdict.Off;
        return new VerificationCheck(
            expected.Quantity, expected.Unit?.Spelling ?? string.Empty, expected.Expected, computed, difference, expected.Tolerance.Written, allowed, verdict,
            computed is null ? reason ?? Silence(expected.Quantity.Kind) : null, Spans.Of(expected.Span));
    }

    private static string Silence(VerifiedKind kind) => kind switch
    {
        VerifiedKind.CrossingTime => "The place stays at or above this temperature for the whole duration.",
        VerifiedKind.Formula => "The inputs are outside the range of the formula.",
        _ => "There is nothing at this place at this time: the layer is not laid yet, or the depth is outside the stack.",
    };

    private static bool IsOfInput(CoolingFailure failure) =>
        failure.Kind is CoolingFailureKind.NoLayers or CoolingFailureKind.UnusableValue or CoolingFailureKind.OrderOfLaying;

    private static ReadingProblem Problem(ConductionQuestion question, CoolingFailure failure)
    {
        var layer = question.Layers.Where(one => string.Equals(one.Id, failure.Subject, StringComparison.Ordinal)).Select(one => (TextSpan?)one.Span).FirstOrDefault();
        return new ReadingProblem(failure.Reason, layer ?? question.Span);
    }
}
