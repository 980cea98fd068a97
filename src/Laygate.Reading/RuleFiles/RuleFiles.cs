using Laygate.Reading.Yaml;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reading.RuleFiles;

/// <summary>Definitions read from files, with their places and whatever kept them from being read.</summary>
/// <param name="General">The general book; null where only specifications were read, or where it could not be read.</param>
/// <param name="Specifications">Specifications.</param>
/// <param name="Positions">Where everything stands.</param>
/// <param name="Problems">Problems, by file.</param>
public sealed record RuleFilesResult(
    BookDefinition? General, IReadOnlyList<Specification> Specifications, DefinitionPositions Positions, IReadOnlyList<Problem> Problems);

/// <summary>Reads rule books and specifications from folders of text files.</summary>
/// <param name="schemas">Schemas of the files.</param>
public sealed class RuleFileReader(RuleSchemas schemas)
{
    private const string SpecificationFolder = "specifications/";

    /// <summary>File of a rule book that lists the ids of rules that are gone, so that none is used again.</summary>
    private const string RetiredFile = "retired.yaml";

    /// <summary>The families of rules, which are the folders of a rule book.</summary>
    public static IReadOnlyList<string> Families { get; } =
    [
        "layers", "mixes", "weather", "supply", "paving", "rolling", "bond-and-joints", "friction-and-opening", "quality", "safety", "consistency", "job",
    ];

    /// <summary>Reads a whole rule book: the rules by family, <c>sources.yaml</c>, and the specifications under <c>specifications/</c>.</summary>
    /// <param name="folder">The folder <c>rules</c>.</param>
    /// <param name="edition">Edition of the general layer: the version of the program.</param>
    public RuleFilesResult ReadBook(IRuleFolder folder, string edition)
    {
        var reading = new BookReading(folder, schemas);
        var rules = reading.Rules(string.Empty, specification: null);
        var sources = reading.Sources("sources.yaml");
        var names = folder.Files.Where(file => file.StartsWith(SpecificationFolder, StringComparison.Ordinal) && file.Split('/').Length > 2)
            .Select(file => file.Split('/')[1]).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);
        var specifications = names.Select(name => reading.Specification($"{SpecificationFolder}{name}/", name)).OfType<Specification>().ToList();
        reading.ReportUnread();
        return reading.Result(new BookDefinition { Edition = edition, Rules = rules, Sources = sources }, specifications);
    }

    /// <summary>Reads a folder with one specification: <c>specification.yaml</c> and its own rules under <c>rules/</c>.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="name">Name of the specification: that of the folder.</param>
    public RuleFilesResult ReadSpecification(IRuleFolder folder, string name)
    {
        var reading = new BookReading(folder, schemas);
        var specification = reading.Specification(string.Empty, name);
        reading.ReportUnread();
        return reading.Result(null, specification is null ? [] : [specification]);
    }

    /// <summary>Reads a specification from a single file of one's own.</summary>
    /// <param name="file">Name of the file as given.</param>
    /// <param name="bytes">The file.</param>
    public RuleFilesResult ReadSpecificationFile(string file, byte[] bytes)
    {
        var folder = new RuleFolderInMemory(string.Empty, new Dictionary<string, byte[]>(StringComparer.Ordinal) { [file] = bytes });
        var reading = new BookReading(folder, schemas);
        var specification = reading.SingleFile(file);
        return reading.Result(null, specification is null ? [] : [specification]);
    }

    /// <summary>One reading of a folder.</summary>
    private sealed class BookReading(IRuleFolder folder, RuleSchemas schemas)
    {
        private readonly DocumentReader documents = new(folder);
        private readonly DefinitionPositions positions = new();

        public RuleFilesResult Result(BookDefinition? general, IReadOnlyList<Specification> specifications) =>
            new(documents.Problems.Count > 0 ? null : general, specifications, positions, [.. documents.Problems]);

        public void ReportUnread()
        {
            foreach (var file in folder.Files.Where(IsYaml).Where(file => !documents.Asked.Contains(file) && !IsForCases(file)).Order(StringComparer.Ordinal))
            {
                documents.Report(file, null, "This file is not part of the rule book.", "Rules stand in `<family>/<rule>/rule.yaml`, specifications in `specifications/<name>/specification.yaml`.");
            }
        }

        public IReadOnlyList<Source> Sources(string file) => documents.Read(file, "bibliography", schemas.Sources) is { } root
            ? Remember(null, null, file, new MapToken([new MapEntry(new ScalarToken("sources", ScalarStyle.Plain, root.Span), root)], root.Span), () => DefinitionReader.Sources(root))
            : [];

        public List<RuleDefinition> Rules(string prefix, string? specification)
        {
            var rules = new List<RuleDefinition>();
            List<string> files = [.. folder.Files.Where(file => IsRule(file, prefix)).Order(StringComparer.Ordinal)];
            documents.Prepare(files.FindAll(file => Families.Contains(file[prefix.Length..].Split('/')[0], StringComparer.Ordinal)), "rule", schemas.Rule);
            foreach (var file in files)
            {
                var parts = file[prefix.Length..].Split('/');
                if (!Families.Contains(parts[0], StringComparer.Ordinal))
                {
                    documents.Skip(file);
                    documents.Report(file, null, $"There is no family `{parts[0]}`.", $"The families are {string.Join(", ", Families)}.");
                }
                else if (documents.Read(file, "rule", schemas.Rule) is MapToken map)
                {
                    rules.Add(Remember(specification, $"{parts[0]}/{parts[1]}", file, map, () => documents.Convert(file, reader => reader.Rule(map, parts[0], parts[1]))));
                }
            }

            return rules;
        }

        public Specification? Specification(string prefix, string name)
        {
            var file = $"{prefix}specification.yaml";
            var before = documents.Old.Count;
            var rules = Rules($"{prefix}rules/", name);
            if (documents.Read(file, "specification", schemas.Specification) is not MapToken map)
            {
                return null;
            }

            if (map["name"] is ScalarToken stated && !string.Equals(stated.Text, name, StringComparison.Ordinal))
            {
                documents.Report(file, stated.Span, $"The name differs from its folder `{name}`.", $"Write `name: {name}`.");
            }

            return Remember(name, null, file, map, () => documents.Convert(file, reader => reader.Specification(map, name, rules) with { OldWords = [.. documents.Old.Skip(before)] }));
        }

        public Specification? SingleFile(string file)
        {
            if (documents.Read(file, "specification", schemas.Specification) is not MapToken map)
            {
                return null;
            }

            var name = map.Text("name") ?? Stem(file);
            return Remember(name, null, file, map, () => documents.Convert(file, reader => reader.Specification(map, name, []) with { OldWords = [.. documents.Old] }));
        }

        private T Remember<T>(string? specification, string? rule, string file, YamlToken root, Func<T> convert)
        {
            positions.Add(specification, rule, documents.NameOf(file), root);
            return convert();
        }

        private static bool IsRule(string file, string prefix) =>
            file.StartsWith(prefix, StringComparison.Ordinal) && file.EndsWith("/rule.yaml", StringComparison.Ordinal) && file[prefix.Length..].Split('/').Length == 3;

        private static bool IsYaml(string file) => file.EndsWith(".yaml", StringComparison.Ordinal) || file.EndsWith(".yml", StringComparison.Ordinal);

        // Cases and base plans are read by those who run cases, acceptance schemes by those who judge lots.
        private static bool IsForCases(string file) =>
            file.EndsWith("/cases.yaml", StringComparison.Ordinal) || file.StartsWith("bases/", StringComparison.Ordinal)
            || file.Contains("/bases/", StringComparison.Ordinal) || IsForSetLimits(file) || file.StartsWith("acceptance/", StringComparison.Ordinal) || string.Equals(file, RetiredFile, StringComparison.Ordinal);

        // cases/ID.yaml of a specification: cases of the limits that it sets.
        private static bool IsForSetLimits(string file) => file.Split('/') is ["cases", _] or [_, _, "cases", _];

        private static string Stem(string file)
        {
            var name = file[(file.LastIndexOfAny(['/', '\\']) + 1)..];
            var point = name.LastIndexOf('.');
            return point > 0 ? name[..point] : name;
        }
    }
}
