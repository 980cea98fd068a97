namespace Laygate.Exchange;

/// <summary>What the schema says of a key beside its type and its description. Only the test that writes the schemas reads it.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class SchemaAttribute : Attribute
{
    /// <summary>Whether texts of the same version were written without the key, so that the schema may not ask for it.</summary>
    public bool Later { get; set; }

    /// <summary>Whether the key is only read, so that the schema does not name it.</summary>
    public bool OnlyRead { get; set; }

    /// <summary>The words that are written, apart by spaces; null for all of the list.</summary>
    public string? Words { get; set; }

    /// <summary>Least number; 0 where nothing is said.</summary>
    public int Least { get; set; }

    /// <summary>Only number; 0 for any.</summary>
    public int Only { get; set; }

    /// <summary>Most entries of a list that has at least one; 0 for any number.</summary>
    public int MostEntries { get; set; }

    /// <summary>Whether a text, or each text of a list, has at least one character.</summary>
    public bool NotEmpty { get; set; }

    /// <summary>Pattern of a text.</summary>
    public string? Pattern { get; set; }

    /// <summary>Key that must stand inside, although its own type does not ask for it.</summary>
    public string? Inside { get; set; }
}
