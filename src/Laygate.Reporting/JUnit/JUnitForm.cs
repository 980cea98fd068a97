using Laygate.Reporting.Language;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;

namespace Laygate.Reporting.JUnit;

/// <summary>
/// JUnit XML suite by suite, for each plan one with the caution and a case for each finding; one that passes is named after what holds. What
/// counts as failed at the gate is a failure; a warning that does not is a pass with its text as output; what was not decided is skipped; a file
/// that cannot be read is an error. Names of cases are unique in the whole file. Totals stand before the suites, which are put aside as text.
/// </summary>
public sealed class JUnitForm : IRunForm
{
    private readonly RunHead head;
    private readonly Stream output;
    private readonly Stream aside;
    private readonly Listing listing;
    private readonly CaseNames names;
    private readonly List<Problem> problems;
    private readonly SuiteXml suites;
    private (int Tests, int Failures, int Errors) totals;

    /// <summary>Begins.</summary>
    /// <param name="head">The run.</param>
    /// <param name="output">Where to write; stays open.</param>
    /// <param name="aside">An empty place to write to and read from; closed with the form.</param>
    public JUnitForm(RunHead head, Stream output, Stream aside)
    {
        (this.head, this.output, this.aside) = (head, output, aside);
        listing = new Listing(head);
        names = new CaseNames(head);
        problems = [.. head.Problems];
        suites = new SuiteXml(aside);
    }

    /// <inheritdoc/>
    public void Add(FileResult result, ComparisonResult? changes)
    {
        problems.AddRange(result.Problems);
        names.Begin(result.File);
        var items = listing.Everything(result).ToLookup(item => item.Report, ReferenceEqualityComparer.Instance);
        foreach (var report in result.Reports)
        {
            Put(new Suite($"{report.File}: plan {report.PlanId}", report.File, [.. items[report].Select(CaseOf)]));
        }
    }

    /// <inheritdoc/>
    public void End()
    {
        foreach (var file in problems.GroupBy(problem => problem.File, StringComparer.Ordinal))
        {
            Put(new Suite($"{file.Key}: cannot be read", file.Key, [.. file.Select(CaseOf)]));
        }

        suites.WriteBehind(xml =>
        {
            SuiteXml.Attribute(xml, "name", "laygate");
            SuiteXml.Attribute(xml, "tests", SuiteXml.Number(totals.Tests));
            SuiteXml.Attribute(xml, "failures", SuiteXml.Number(totals.Failures));
            SuiteXml.Attribute(xml, "errors", SuiteXml.Number(totals.Errors));
        }, output);
        output.WriteByte((byte)'\n');
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        suites.Dispose();
        aside.Dispose();
    }

    private void Put(Suite suite)
    {
        totals = (totals.Tests + suite.Cases.Count, totals.Failures + suite.Count(CaseResult.Failure), totals.Errors + suite.Count(CaseResult.Error));
        suites.Write(suite);
    }

    private Case CaseOf(ListedItem item)
    {
        var name = names.Unique(item, $"{item.Rule} at {item.Address}: {Title(item)} ({item.File}, plan {item.Report.PlanId})");
        var at = Places.Full(item.File, item.Position);
        return new Case(item.Rule, name, Result(item), Names.Of(item.Group), $"{at}: {Names.Of(item.Group)}{(item.Known ? " (known earlier)" : string.Empty)}: {item.Text}");
    }

    // A list of green cases that each name something bad would read upside down.
    private static string Title(ListedItem item) => item is { Group: FindingGroup.Passed, Finding: { } finding } ? PositiveForm.Of(finding) : item.Title;

    private Case CaseOf(Problem problem)
    {
        var at = Places.Full(problem.File, problem.Position);
        return new Case("unreadable", names.Unique($"{at}: {problem.Message}"), CaseResult.Error, "unreadable", $"{at}: {problem.Message} {problem.Hint}".TrimEnd());
    }

    // What a baseline knows of old does not count at the gate.
    private CaseResult Result(ListedItem item) => item.Group switch
    {
        FindingGroup.Failed => item.Known ? CaseResult.Skipped : CaseResult.Failure,
        FindingGroup.Warned => !item.Known && head.WarningsFail.Contains(item.Report.File) ? CaseResult.Failure : CaseResult.Remark,
        FindingGroup.NotAssessed => !item.Known && (head.WarningsFail.Contains(item.Report.File) || head.NotAssessedFail.Contains(item.Report.File)) ? CaseResult.Failure : CaseResult.Skipped,
        FindingGroup.Passed => CaseResult.Pass,
        _ => CaseResult.Skipped,
    };
}
