using System.Globalization;
using YamlDotNet.Core;

namespace Laygate.Reading.Yaml;

/// <summary>
/// Reads YAML into positioned tokens, strictly and within limits. Works on parser events only: the library's node reader
/// overflows the stack on deep input and its typed reads follow YAML 1.1.
/// </summary>
public static class YamlReader
{
    /// <summary>Reads all documents of a file.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="what">What a document of it should be, for messages: <c>plan</c>, <c>rule</c>.</param>
    /// <returns>The documents, and every problem that can be found; a syntax error hides what follows it. Never throws for bad input.</returns>
    public static ReadingResult Read(ReadOnlySpan<byte> bytes, string what = "plan")
    {
        if (bytes.Length > ReadingLimits.Bytes)
        {
            return Refused(TooLarge(bytes.Length));
        }

        var problems = new List<ReadingProblem>();
        var source = SourceText.Decode(bytes, problems);
        if (source is null)
        {
            return new ReadingResult([], problems);
        }

        var documents = Parse(source, problems);
        if (problems.Count == 0)
        {
            AddEmptyDocuments(source, documents, what, problems);
        }

        return new ReadingResult(documents, ReadingProblems.InOrder(problems));
    }

    private static ReadingResult Refused(ReadingProblem problem) => new([], [problem]);

    private static ReadingProblem TooLarge(int length) => new(
        string.Create(CultureInfo.InvariantCulture, $"The file has {length:N0} bytes; at most {ReadingLimits.Bytes:N0} (1 MiB) are read."),
        TextSpan.FileStart,
        "Split it, or remove what does not belong in it.");

    private static List<YamlDocument> Parse(SourceText source, List<ReadingProblem> problems)
    {
        var builder = new TreeBuilder(source, problems);
        var scanner = new Scanner(new StringReader(source.Text));
        var parser = new Parser(scanner);
        while (!builder.IsStopped && MoveNext(parser, scanner, () => new SyntaxMessages(source, builder.OpenBracket), problems))
        {
            builder.Take(parser.Current!);
        }

        return builder.Documents;
    }

    private static bool MoveNext(Parser parser, Scanner scanner, Func<SyntaxMessages> messages, List<ReadingProblem> problems)
    {
        try
        {
            return parser.MoveNext();
        }
        catch (YamlException error)
        {
            problems.Add(messages().Explain(error));
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            // The scanner throws general exceptions on some broken input (seen: a colon in a flow list that is never closed).
            problems.Add(messages().Unexplained(scanner.CurrentPosition));
        }

        return false;
    }

    private static void AddEmptyDocuments(SourceText source, List<YamlDocument> documents, string what, List<ReadingProblem> problems)
    {
        if (documents.Count == 0)
        {
            var holds = string.IsNullOrWhiteSpace(source.Text) ? "the file is empty" : "the file holds only comments";
            problems.Add(new ReadingProblem($"There is no {what} here: {holds}.", TextSpan.FileStart));
        }

        problems.AddRange(documents
            .Where(document => document.Root is ScalarToken { IsNull: true })
            .Select(document => new ReadingProblem(
                string.Create(CultureInfo.InvariantCulture, $"There is no {what} here: document {document.Number} of the file is empty."),
                document.Root.Span,
                "Remove a `---` line that nothing follows.")));
    }
}
