using System.Globalization;
using System.Text;
using System.Xml;
using Laygate.Reporting.Language;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Text;

namespace Laygate.Reporting.JUnit;

/// <summary>Suites as XML. They are put aside inside a root of their own, so that line breaks and indentation are those of the whole.</summary>
internal sealed class SuiteXml : IDisposable
{
    private const string Root = "testsuites";

    private static readonly XmlWriterSettings Settings = new()
    {
        Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
        Indent = true,
        NewLineChars = "\n",
        NewLineHandling = NewLineHandling.None,
        CloseOutput = false,
        WriteEndDocumentOnClose = false,
    };

    private readonly Stream aside;
    private readonly XmlWriter xml;
    private readonly long start;
    private bool isEmpty = true;

    /// <summary>Begins.</summary>
    /// <param name="aside">An empty place; stays open.</param>
    public SuiteXml(Stream aside)
    {
        this.aside = aside;
        xml = Begin(aside);
        xml.Flush();
        start = aside.Position;
    }

    /// <summary>Puts a suite aside.</summary>
    public void Write(Suite suite)
    {
        isEmpty = false;
        xml.WriteStartElement("testsuite");
        Attribute(xml, "name", suite.Name);
        Attribute(xml, "tests", Number(suite.Cases.Count));
        Attribute(xml, "failures", Number(suite.Count(CaseResult.Failure)));
        Attribute(xml, "errors", Number(suite.Count(CaseResult.Error)));
        Attribute(xml, "skipped", Number(suite.Count(CaseResult.Skipped)));
        Attribute(xml, "file", suite.File);
        foreach (var one in suite.Cases)
        {
            Write(one);
        }

        // In full for the suite; hosts that show single cases only find the short one there.
        xml.WriteElementString("system-out", string.Join('\n', Caution.Sentences));
        xml.WriteEndElement();
        xml.Flush();
    }

    /// <summary>Writes the whole document: the root with its attributes, then the suites.</summary>
    public void WriteBehind(Action<XmlWriter> attributes, Stream output)
    {
        using (var root = Begin(output))
        {
            attributes(root);
            if (isEmpty)
            {
                root.WriteEndElement();
            }
        }

        if (!isEmpty)
        {
            xml.WriteEndElement();
            xml.Flush();

            // Closing an open root has written its `>`, which the first suite wrote aside too.
            aside.CopyFrom(start + 1, output);
        }
    }

    /// <summary>Writes an attribute. What XML forbids is shown as its code, like everything that hides.</summary>
    public static void Attribute(XmlWriter xml, string name, string value) => xml.WriteAttributeString(name, PlainText.Show(value).Replace(PlainText.Glue, ' '));

    /// <summary>A number as text.</summary>
    public static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <inheritdoc/>
    public void Dispose() => xml.Dispose();

    private static XmlWriter Begin(Stream stream)
    {
        var begun = XmlWriter.Create(stream, Settings);
        begun.WriteStartDocument();
        begun.WriteStartElement(Root);
        return begun;
    }

    private void Write(Case one)
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
            xml.WriteString(PlainText.Show(one.Text).Replace(PlainText.Glue, ' ') + (one.Result == CaseResult.Error ? string.Empty : "\n" + string.Join(' ', Caution.Brief)));
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }
}
