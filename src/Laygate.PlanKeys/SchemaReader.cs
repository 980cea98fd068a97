using System.Runtime.Serialization.Json;
using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace Laygate.PlanKeys;

/// <summary>
/// Reads the plan schema. A definition with keys is a record, one with words an enumeration, named like the definition; the
/// names of all other definitions are those of values that the reader of plans knows. <c>length.mat_width</c> is a length of the sort
/// <c>mat-width</c>; a record whose <c>$comment</c> is <c>address plant:ID</c> is named so by findings.
/// </summary>
internal sealed class SchemaReader
{
    private readonly XElement root;
    private readonly Dictionary<string, XElement> definitions;

    private SchemaReader(string json)
    {
        using var reader = JsonReaderWriterFactory.CreateJsonReader(Encoding.UTF8.GetBytes(json), XmlDictionaryReaderQuotas.Max);
        root = XElement.Load(reader);
        definitions = Members(Child(root, "definitions")).ToDictionary(Name, StringComparer.Ordinal);
    }

    /// <summary>Reads the text of the schema.</summary>
    /// <exception cref="FormatException">It uses a definition that does not exist or a value that nothing reads.</exception>
    public static PlanSchema Read(string json)
    {
        var reader = new SchemaReader(json);
        return new PlanSchema(
            [reader.Group(Text(reader.root, "title"), reader.root), .. reader.definitions.Where(one => Child(one.Value, "properties") is not null).Select(one => reader.Group(one.Key, one.Value))],
            [.. reader.definitions.Where(one => IsWordList(one.Key, one.Value)).Select(one => List(one.Key, one.Value))],
            [.. reader.definitions.Keys.Select(Sort).Where(sort => sort.Length > 0).Distinct(StringComparer.Ordinal)]);
    }

    private Group Group(string name, XElement node)
    {
        var type = Names.Pascal(name);
        var required = new HashSet<string>(Members(Child(node, "required")).Select(key => key.Value), StringComparer.Ordinal);
        return new Group(type, Text(node, "description"), [.. Members(Child(node, "properties")).Select(key => Key(type, key, required.Contains(Name(key))))], Text(node, "$comment").StartsWith("address ", StringComparison.Ordinal));
    }

    private Key Key(string owner, XElement node, bool isRequired)
    {
        var isList = Text(node, "type") is "array";
        var value = Value(isList ? Child(node, "items")! : node);
        // A member cannot be named like its type: the plan's own `plan` is its identity.
        var property = Names.Pascal(Name(node)) is var name && string.Equals(name, owner, StringComparison.Ordinal) ? value.Type : name;
        return new Key(Name(node), property, value, isList, isRequired, Meaning(node), Sort(Reference(node) ?? string.Empty));
    }

    private KeyValue Value(XElement node)
    {
        if (Reference(node) is not { } name)
        {
            return Text(node, "type") is "integer" ? Values.Count : Values.Text;
        }

        var target = Definition(name);
        if (Child(target, "properties") is not null)
        {
            return new KeyValue("Block", Names.Pascal(name));
        }

        if (IsWordList(name, target))
        {
            return new KeyValue("Word", Names.Pascal(name), Names.Pascal(name));
        }

        return Values.Find(name) ?? Value(target);
    }

    private string Meaning(XElement node) =>
        Text(node, "description") is { Length: > 0 } own ? own : Reference(node) is { } name ? Meaning(Definition(name)) : string.Empty;

    private XElement Definition(string name) =>
        definitions.TryGetValue(name, out var found) ? found : throw new FormatException($"The plan schema has no definition `{name}`.");

    private static WordList List(string name, XElement node) =>
        new(Names.Pascal(name), Text(node, "description"), [.. Members(Child(node, "enum")).Zip(Members(Child(node, "enumDescriptions")), (word, meaning) => (word.Value, meaning.Value))]);

    private static bool IsWordList(string name, XElement node) => Child(node, "enum") is not null && Values.Find(name) is null;

    private static string Sort(string definition) => definition.Split('.') is [_, var sort] ? sort.Replace('_', '-') : string.Empty;

    private static string? Reference(XElement node) =>
        (Child(node, "$ref") ?? (Child(node, "allOf") is { } all ? Child(Members(all).First(), "$ref") : null))?.Value.Split('/').Last();

    private static IEnumerable<XElement> Members(XElement? node) => node?.Elements() ?? [];

    private static XElement? Child(XElement? node, string name) => Members(node).FirstOrDefault(child => string.Equals(Name(child), name, StringComparison.Ordinal));

    private static string Text(XElement node, string name) => Child(node, name)?.Value ?? string.Empty;

    // A name that XML does not know, such as `$ref`, stands in an attribute.
    private static string Name(XElement node) => (string?)node.Attribute("item") ?? node.Name.LocalName;
}
