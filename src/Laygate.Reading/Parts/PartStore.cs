using System.Globalization;
using System.Security.Cryptography;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Parts;

/// <summary>A part as it is written.</summary>
/// <param name="Kind">Its kind.</param>
/// <param name="Id">Its id.</param>
/// <param name="Entry">Its keys, each knowing its file.</param>
/// <param name="File">The file that holds it.</param>
internal sealed record Part(PartKind Kind, string Id, MapToken Entry, string File);

/// <summary>The files that one plan uses, read once each, and their parts. One instance for each plan.</summary>
internal sealed class PartStore(IPartFiles files, Lazy<LoadedSchema> schema, List<ReadingProblem> problems)
{
    /// <summary>Most files for one plan: judgement, a firm has a handful.</summary>
    public const int MostFiles = 30;

    private readonly Dictionary<(string List, string Id), Part> parts = [];
    private readonly Dictionary<string, string> hashes = new(StringComparer.Ordinal);
    private int nodes;

    /// <summary>The files that were read with the hash of their bytes, in the order of reading.</summary>
    public IEnumerable<(string File, string Hash)> Files => hashes.Select(file => (file.Key, file.Value));

    /// <summary>Ids of all parts of a kind.</summary>
    public IReadOnlyList<string> IdsOf(PartKind kind) => [.. parts.Keys.Where(key => string.Equals(key.List, kind.List, StringComparison.Ordinal)).Select(key => key.Id)];

    /// <summary>All parts of a kind, in the order of files and lists.</summary>
    public IEnumerable<Part> All(PartKind kind) => parts.Values.Where(part => ReferenceEquals(part.Kind, kind));

    /// <summary>A part; null when no file holds it.</summary>
    public Part? Find(PartKind kind, string id) => parts.GetValueOrDefault((kind.List, id));

    /// <summary>Reads a file and the files that it uses in turn; a file that was read is not read again.</summary>
    /// <param name="from">The file that names it.</param>
    /// <param name="name">Where its name stands.</param>
    public void Add(string from, ScalarToken name)
    {
        var open = new Queue<(string From, ScalarToken Name)>([(from, name)]);
        while (open.TryDequeue(out var next))
        {
            if (Read(next.From, next.Name) is var (file, root))
            {
                Collect(root, file);
                foreach (var further in Names(root))
                {
                    open.Enqueue((file, further));
                }
            }
        }
    }

    /// <summary>Reads a file that settings name, and the files that it uses in turn.</summary>
    /// <param name="from">The file of the settings.</param>
    /// <param name="named">The name and where it stands.</param>
    public void Add(string from, NamedFile named) => Add(from, new ScalarToken(
        named.Name, ScalarStyle.Plain, new TextSpan(named.At.Line, named.At.Column, named.At.EndLine, named.At.EndColumn) { File = from }));

    /// <summary>The names under <c>uses</c>.</summary>
    public static IEnumerable<ScalarToken> Names(MapToken map) => (map[PartKinds.Uses] as ListToken)?.Items.OfType<ScalarToken>() ?? [];

    private (string File, MapToken Root)? Read(string from, ScalarToken name)
    {
        var text = files.Read(from, name.Text);
        if (hashes.ContainsKey(text.File))
        {
            return null;
        }

        if (text.Bytes is not { } bytes)
        {
            problems.Add(new ReadingProblem($"The file {TokenNames.Quote(name.Text)} cannot be used. {text.Refusal}", name.Span, "Name a file by its path from the folder of this one."));
            return null;
        }

        if (hashes.Count == MostFiles)
        {
            problems.Add(new ReadingProblem(string.Create(CultureInfo.InvariantCulture, $"A plan uses at most {MostFiles} files."), name.Span, "Put parts together into fewer files."));
            return null;
        }

        hashes.Add(text.File, Convert.ToHexStringLower(SHA256.HashData(bytes)));
        return Sound(text.File, bytes, name) is { } root ? (text.File, root) : null;
    }

    private MapToken? Sound(string file, byte[] bytes, ScalarToken name)
    {
        var read = YamlReader.Read(bytes, "file of parts");
        List<ReadingProblem> found = [.. read.Problems];
        if (found.Count == 0 && read.Documents.Count > 1)
        {
            found.Add(new ReadingProblem("A file of parts holds one document.", read.Documents[1].Root.Span, "Remove what follows the `---` line."));
        }

        if (found.Count == 0)
        {
            found.AddRange(SchemaChecker.Check(read.Documents[0], schema.Value));
        }

        problems.AddRange(found.Select(problem => problem with { Position = problem.Position with { File = file } }));
        if (found.Count > 0)
        {
            return null;
        }

        nodes += read.Documents[0].Root.NodeCount;
        if (nodes > ReadingLimits.Nodes)
        {
            problems.Add(ReadingProblems.TooManyNodes(name.Span));
            return null;
        }

        return (MapToken)InFile(read.Documents[0].Root, file);
    }

    private void Collect(MapToken root, string file)
    {
        foreach (var kind in PartKinds.All)
        {
            foreach (var entry in (root[kind.List] as ListToken)?.Items.OfType<MapToken>() ?? [])
            {
                var id = (ScalarToken)entry["id"]!;
                if (!parts.TryAdd((kind.List, id.Text), new Part(kind, id.Text, entry, file)))
                {
                    var first = parts[(kind.List, id.Text)].Entry["id"]!.Span;
                    problems.Add(new ReadingProblem(
                        string.Create(CultureInfo.InvariantCulture, $"There is another part {TokenNames.Quote(id.Text)} among {kind.List}: {first.File}, line {first.Line}."),
                        id.Span,
                        "Give one of the two another id."));
                }
            }
        }
    }

    private static YamlToken InFile(YamlToken token, string file) => token switch
    {
        ScalarToken scalar => InFile(scalar, file),
        MapToken map => new MapToken([.. map.Entries.Select(entry => new MapEntry(InFile(entry.Key, file), InFile(entry.Value, file)))], map.Span with { File = file }),
        ListToken list => new ListToken([.. list.Items.Select(item => InFile(item, file))], list.Span with { File = file }),
        _ => token,
    };

    private static ScalarToken InFile(ScalarToken scalar, string file) => scalar with { Span = scalar.Span with { File = file } };
}
