using System.Globalization;
using System.Text;
using System.Xml;
using Laygate.Reporting.Language;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.JUnit;

/// <summary>
/// JUnit XML: a suite for each plan with the caution, a case for each finding; one that passes is named after what holds. What counts as failed at the gate is a failure; a warning that does not is a pass
/// with its text as output; what was not decided is skipped; a file that cannot be read is an error. Names of cases are unique in the whole file.
/// </summary>
public static class JUnitWriter
{
    private static readonly XmlWriterSettings Settings = new()
    {
        Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
        Indent = true,
        NewLineChars = "\n",
        NewLineHandling = NewLineHandling.None,
        CloseOutput = false,
    };

    /// <summary>Writes a run as UTF-8.</summary>
    public static void Write(ReportedRun run, Stream output)
    {
        var suites = Suites(run);
        using (var xml = XmlWriter.Create(output, Settings))
        {
            xml.WriteStartDocument();
            xml.WriteStartElement("testsuites");
            Attribute(xml, "name", "laygate");
            Attribute(xml, "tests", Number(suites.Sum(suite => suite.Cases.Count)));
            Attribute(xml, "failures", Number(suites.Sum(suite => suite.Count(CaseResult.Failure))));
            Attribute(xml, "errors", Number(suites.Sum(suite => suite.Count(CaseResult.Error))));
            suites.ForEach(suite => Write(xml, suite));
            xml.WriteEndElement();
        }

        output.WriteByte((byte)'\n');
    }

    private static List<Suite> Suites(ReportedRun run)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        var items = Listing.Everything(run).ToLookup(item => item.Report, ReferenceEqualityComparer.Instance);
        var suites = run.Reports.Select(report => new Suite(
            $"{report.File}: plan {report.PlanId}", report.File, [.. items[report].Select(item => CaseOf(item, run, names))])).ToList();
        suites.AddRange(run.AllProblems.GroupBy(problem => problem.File, StringComparer.Ordinal).Select(file => new Suite(
            $"{file.Key}: cannot be read", file.Key, [.. file.Select(problem => CaseOf(problem, names))])));
        return suites;
    }

    private static Case CaseOf(ListedItem item, ReportedRun run, HashSet<string> names)
    {
        var name = Unique($"{item.Rule} at {item.Address}: {Title(item)} ({item.File}, plan {item.Report.PlanId})", names);
        var at = string.Create(CultureInfo.InvariantCulture, $"{item.File}:{item.Position.Line}:{item.Position.Column}");
        return new Case(item.Rule, name, Result(item, run), Names.Of(item.Group), $"{at}: {Names.Of(item.Group)}{(item.Known ? " (known of old)" : string.Empty)}: {item.Text}");
    }

    // A list of green cases that each name something bad would read upside down.
    private static string Title(ListedItem item) => item is { Group: FindingGroup.Passed, Finding: { } finding } ? HoldsTable.Of(finding) : item.Title;

    private static Case CaseOf(Problem problem, HashSet<string> names)
    {
        var at = problem.Position is { } position
            ? string.Create(CultureInfo.InvariantCulture, $"{problem.File}:{position.Line}:{position.Column}")
            : problem.File;
        return new Case("unreadable", Unique($"{at}: {problem.Message}", names), CaseResult.Error, "unreadable", $"{at}: {problem.Message} {problem.Hint}".TrimEnd());
    }

    // What a baseline knows of old does not count at the gate.
    private static CaseResult Result(ListedItem item, ReportedRun run) => item.Group switch
    {
        FindingGroup.Failed => item.Known ? CaseResult.Skipped : CaseResult.Failure,
        FindingGroup.Warned => !item.Known && run.WarningsFail.Contains(item.Report.File) ? CaseResult.Failure : CaseResult.Remark,
        FindingGroup.NotAssessed => !item.Known && (run.WarningsFail.Contains(item.Report.File) || run.NotAssessedFail.Contains(item.Report.File)) ? CaseResult.Failure : CaseResult.Skipped,
        FindingGroup.Passed => CaseResult.Pass,
        _ => CaseResult.Skipped,
    };

    private static string Unique(string name, HashSet<string> names)
    {
        var unique = name;
        for (var number = 2; !names.Add(unique); number++)
        {
            unique = string.Create(CultureInfo.InvariantCulture, $"{name} ({number})");
        }

        return unique;
    }

    private static void Write(XmlWriter xml, Suite suite)
    {
        xml.WriteStartElement("testsuite");
        Attribute(xml, "name", suite.Name);
        Attribute(xml, "tests", Number(suite.Cases.Count));
        Attribute(xml, "failures", Number(suite.Count(CaseResult.Failure)));
        Attribute(xml, "errors", Number(suite.Count(CaseResult.Error)));
        Attribute(xml, "skipped", Number(suite.Count(CaseResult.Skipped)));
        Attribute(xml, "file", suite.File);
        foreach (var one in suite.Cases)
        {
            Write(xml, one);
        }

        // In full for the suite; hosts that show single cases only find the short one there.
        xml.WriteElementString("system-out", string.Join('\n', Caution.Sentences));
        xml.WriteEndElement();
    }

    private static void Write(XmlWriter xml, Case one)
    {
        xml.WriteStartElement("testcase");
        Attribute(xml, "classname", one.Class);
        Attribute(xml, "name", one.Name);
        var element = one.Result switch
        {
            CaseResult.Failure => "failure",
            CaseResult.Error => "error",
            CaseResult.Skipped => "skipped",
            CaseResult.Remark => "system-out",
            _ => null,
        };
        if (element is not null)
        {
            xml.WriteStartElement(element);
            if (one.Result != CaseResult.Remark)
            {
                Attribute(xml, "type", one.Type);
                Attribute(xml, "message", one.Text);
            }

            // A host that ignores the attributes still shows the text.
            xml.WriteString(PlainText.Show(one.Text).Replace(PlainText.Glue, ' ') + (one.Result == CaseResult.Error ? string.Empty : "\n" + string.Join(' ', Caution.Short)));
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }

    // What XML forbids is shown as its code, like everything that hides.
    private static void Attribute(XmlWriter xml, string name, string value) => xml.WriteAttributeString(name, PlainText.Show(value).Replace(PlainText.Glue, ' '));

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private enum CaseResult
    {
        Pass,
        Remark,
        Failure,
        Skipped,
        Error,
    }

    private sealed record Case(string Class, string Name, CaseResult Result, string Type, string Text);

    private sealed record Suite(string Name, string File, IReadOnlyList<Case> Cases)
    {
        public int Count(CaseResult result) => Cases.Count(one => one.Result == result);
    }
}
