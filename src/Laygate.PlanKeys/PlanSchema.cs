namespace Laygate.PlanKeys;

/// <summary>What a plan may hold, as the schema states it.</summary>
/// <param name="Groups">The groups of keys, the whole plan first.</param>
/// <param name="Lists">The closed lists of words.</param>
internal sealed record PlanSchema(IReadOnlyList<Group> Groups, IReadOnlyList<WordList> Lists);

/// <summary>A group of keys; a record of the model.</summary>
/// <param name="Type">Name of the record.</param>
/// <param name="Meaning">What the schema says of it.</param>
/// <param name="Keys">Its keys, in the order of the schema.</param>
internal sealed record Group(string Type, string Meaning, IReadOnlyList<Key> Keys);

/// <summary>A key; a property of a record.</summary>
/// <param name="Name">The key as plans write it.</param>
/// <param name="Property">Name of the property.</param>
/// <param name="Value">What stands behind it.</param>
/// <param name="IsList">Whether a list of such values stands behind it.</param>
/// <param name="IsRequired">Whether it must be there.</param>
/// <param name="Meaning">What the schema says of it.</param>
internal sealed record Key(string Name, string Property, KeyValue Value, bool IsList, bool IsRequired, string Meaning);

/// <summary>What may stand behind a key.</summary>
/// <param name="Form">How it is read: the name of the reading method.</param>
/// <param name="Type">Its type in the model.</param>
/// <param name="Argument">What the reading method is told besides the key: the type of a measure or word; empty for others.</param>
internal sealed record KeyValue(string Form, string Type, string Argument = "");

/// <summary>A closed list of words; an enumeration of the model.</summary>
/// <param name="Type">Name of the enumeration.</param>
/// <param name="Meaning">What the schema says of it.</param>
/// <param name="Words">Each word with its meaning.</param>
internal sealed record WordList(string Type, string Meaning, IReadOnlyList<(string Word, string Meaning)> Words);
