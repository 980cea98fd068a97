using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reading.RuleFiles;

/// <summary>Reads single documents of a folder and collects what is wrong with them.</summary>
internal sealed class DocumentReader(IRuleFolder folder)
{
    private readonly HashSet<string> files = new(folder.Files, StringComparer.Ordinal);
    private readonly Dictionary<string, Parsed> parsed = new(StringComparer.Ordinal);

    public List<Problem> Problems { get; } = [];

    /// <summary>Words of the last version that were read.</summary>
    public List<OldWord> Old { get; } = [];

    public HashSet<string> Asked { get; } = new(StringComparer.Ordinal);

    /// <summary>The root of the only document of a file; null, with problems, when it cannot be used.</summary>
    public YamlToken? Read(string file, string what, LoadedSchema schema)
    {
        Asked.Add(file);
        if (!files.Contains(file))
        {
            Report(file, null, $"There is no {what} here: the file is missing.", null);
            return null;
        }

        var (read, shape, old) = parsed.TryGetValue(file, out var known) ? known : Parse(folder.Read(file), what, schema);
        Report(file, read.Problems);
        if (!read.IsSound)
        {
            return null;
        }

        if (read.Documents.Count > 1)
        {
            Report(file, read.Documents[1].Root.Span, $"A file holds one {what}.", "Remove what follows the `---` line.");
            return null;
        }

        Old.AddRange(old.Select(word => new OldWord(FormattableString.Invariant($"{NameOf(file)}:{word.Span.Line}"), word.Old, word.New)));
        Report(file, shape);
        return shape.Count > 0 ? null : read.Documents[0].Root;
    }

    /// <summary>Reads files side by side that will be asked for one by one: thousands of rules are mostly time for reading.</summary>
    public void Prepare(IReadOnlyList<string> names, string what, LoadedSchema schema)
    {
        var found = new Parsed[names.Count];
        var texts = names.Select(folder.Read).ToArray();
        Parallel.For(0, names.Count, number => found[number] = Parse(texts[number], what, schema));
        for (var number = 0; number < names.Count; number++)
        {
            parsed[names[number]] = found[number];
        }
    }

    private static Parsed Parse(byte[] text, string what, LoadedSchema schema)
    {
        var read = YamlReader.Read(text, what);
        if (read is not { IsSound: true, Documents: [var document] })
        {
            return new Parsed(read, [], []);
        }

        var (root, old) = OldWords.OfRules.Renew(document.Root);
        var renewed = document with { Root = root };
        return new Parsed(read with { Documents = [renewed] }, SchemaChecker.Check(renewed, schema), old);
    }

    private sealed record Parsed(ReadingResult Read, IReadOnlyList<ReadingProblem> Shape, IReadOnlyList<FoundOldWord> Old);

    /// <summary>Turns a document into a definition, and reports what cannot be turned.</summary>
    public T Convert<T>(string file, Func<DefinitionReader, T> convert)
    {
        var problems = new List<ReadingProblem>();
        var result = convert(new DefinitionReader(problems));
        Report(file, problems);
        return result;
    }

    public void Skip(string file) => Asked.Add(file);

    public void Report(string file, TextSpan? span, string message, string? hint) =>
        Problems.Add(new Problem(NameOf(file), message, hint, span is { } at ? Spans.Of(at) : null));

    public string NameOf(string file) => folder.Shown(file);

    private void Report(string file, IEnumerable<ReadingProblem> found)
    {
        Problems.AddRange(ShownProblems.Of(NameOf(file), found));
    }
}
