namespace Laygate.PlanKeys;

/// <summary>What a plan may hold, as the schema states it.</summary>
/// <param name="Groups">The groups of keys, the whole plan first.</param>
/// <param name="Lists">The closed lists of words.</param>
/// <param name="Sorts">The sorts of numbers, each once.</param>
internal sealed record PlanSchema(IReadOnlyList<Group> Groups, IReadOnlyList<WordList> Lists, IReadOnlyList<string> Sorts)
{
    /// <summary>The group that stands behind a key; null for a single value.</summary>
    public Group? Find(KeyValue value) => value.Form is "Block" ? Groups.First(group => IsOf(group, value)) : null;

    /// <summary>Whether a group, or one inside it that has no address of its own, states a number of a sort.</summary>
    public bool HasNumbers(Group group) =>
        group.Keys.Any(key => key.Sort.Length > 0 || (Find(key.Value) is { HasAddress: false } inner && HasNumbers(inner)));

    /// <summary>Whether keys name a sort for all measures of a group.</summary>
    public bool IsSorted(Group group) => Groups.Any(outer => outer.Keys.Any(key => key.Sort.Length > 0 && key.Value.Form is "Block" && IsOf(group, key.Value)));

    private static bool IsOf(Group group, KeyValue value) => string.Equals(group.Type, value.Type, StringComparison.Ordinal);
}

/// <summary>A group of keys; a record of the model.</summary>
/// <param name="Type">Name of the record.</param>
/// <param name="Meaning">What the schema says of it.</param>
/// <param name="Keys">Its keys, in the order of the schema.</param>
/// <param name="HasAddress">Whether findings name it by an address of its own.</param>
internal sealed record Group(string Type, string Meaning, IReadOnlyList<Key> Keys, bool HasAddress);

/// <summary>A key; a property of a record.</summary>
/// <param name="Name">The key as plans write it.</param>
/// <param name="Property">Name of the property.</param>
/// <param name="Value">What stands behind it.</param>
/// <param name="IsList">Whether a list of such values stands behind it.</param>
/// <param name="IsRequired">Whether it must be there.</param>
/// <param name="Meaning">What the schema says of it.</param>
/// <param name="Sort">What its numbers measure, as rules name it; empty where nothing is named.</param>
internal sealed record Key(string Name, string Property, KeyValue Value, bool IsList, bool IsRequired, string Meaning, string Sort);

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
