using System.Text.Json;
using Laygate.Exchange.Reports;
using Laygate.Exchange.Verification;
using Laygate.Model.Plans;
using Laygate.Reporting.Json;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Verification;

/// <summary>A verification run for programs, with full digits. The same input gives the same bytes.</summary>
public static class VerificationJson
{
    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n" };

    /// <summary>Writes a run as UTF-8 with a line feed at the end.</summary>
    /// <param name="output">Where to write.</param>
    /// <param name="programVersion">Version of the program.</param>
    /// <param name="result">The run.</param>
    public static void Write(Stream output, string programVersion, VerificationResult result) => JsonOutput.Write(
        output, new ManualShape(ManualShape.Version, RunShape.Name, programVersion, Of(result.Tally), result.Files.Select(Of)), ManualShapes.Default.ManualShape, Options);

    private static TallyShape Of(VerificationTally tally) =>
        new(tally.Files, tally.Unreadable, tally.Cases, tally.Checks, tally.Within, tally.Off, tally.NotComputed);

    private static ManualFileShape Of(VerificationFileResult file) => new(
        file.File,
        file.Cases.Select(Of),
        file.Problems.Select(problem => new ManualProblemShape(problem.Message, problem.Hint, problem.Position?.Line, problem.Position?.Column)));

    private static ManualCaseShape Of(VerificationCase one) => new(
        one.Document,
        one.Topic,
        one.Title,
        new ManualSourceShape(one.Source.Document, one.Source.Edition, one.Source.Place),
        VerificationWords.Of(one.Evidence),
        one.Remark,
        one.Checks.Select(Of));

    private static ManualCheckShape Of(VerificationCheck check) => new(
        VerificationWords.Of(check.Quantity),
        check.Unit,
        check.Expected,
        check.Computed,
        check.Difference,
        check.Tolerance,
        check.Allowed,
        Words.Of(check.Verdict),
        check.Reason,
        check.Position.Line,
        check.Position.Column);
}
