using Laygate.Model.Records;

namespace Laygate.Reading.Records;

/// <summary>One row with its values by the places of the quantities of its kind, in SI units.</summary>
internal sealed class RecordRow(RecordKind kind, RowPlace place, int column)
{
    private readonly object?[] values = new object?[kind.Quantities.Count];

    /// <summary>Where it stands.</summary>
    public RowPlace Place => place;

    /// <summary>Column of the file at which it begins, for problems of the whole row.</summary>
    public int Column => column;

    /// <summary>Its kind.</summary>
    public RecordKind Kind => kind;

    /// <summary>Local times that were not yet placed, by the place of their quantity.</summary>
    public List<(int Index, DateTime Local)> Open { get; } = [];

    /// <summary>Places of the moments that were read, in the order of the quantities; the first leads the row.</summary>
    public int Leading { get; set; } = -1;

    /// <summary>A value by the place of its quantity.</summary>
    public object? this[int index]
    {
        get => values[index];
        set => values[index] = value;
    }

    /// <summary>A text.</summary>
    public string? Text(string quantity) => values[kind.Of(quantity)] as string;

    /// <summary>A number in SI units.</summary>
    public double? Number(string quantity) => values[kind.Of(quantity)] as double?;

    /// <summary>A whole number.</summary>
    public int? Count(string quantity) => values[kind.Of(quantity)] as int?;

    /// <summary>A moment.</summary>
    public DateTimeOffset? When(string quantity) => values[kind.Of(quantity)] as DateTimeOffset?;

    /// <summary>Readings across the mat with their offsets.</summary>
    public (IReadOnlyList<double> Offsets, IReadOnlyList<double> Values) Grid(string quantity) =>
        values[kind.Of(quantity)] is ValueTuple<IReadOnlyList<double>, IReadOnlyList<double>> grid ? grid : ([], []);

    /// <summary>Whether two rows hold the same.</summary>
    public bool Same(RecordRow other, params IReadOnlyList<string> but)
    {
        for (var i = 0; i < values.Length; i++)
        {
            if (!Equal(values[i], other.values[i]) && !but.Contains(kind.Quantities[i].Name, StringComparer.Ordinal))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Takes rows of one kind for equal when they hold the same, wherever they stand.</summary>
    public static IEqualityComparer<RecordRow> SameContent { get; } = EqualityComparer<RecordRow>.Create((one, other) => one!.Same(other!), row => row.Content());

    private static bool Equal(object? one, object? other) =>
        one is ValueTuple<IReadOnlyList<double>, IReadOnlyList<double>> grid && other is ValueTuple<IReadOnlyList<double>, IReadOnlyList<double>> second
            ? grid.Item1.SequenceEqual(second.Item1) && grid.Item2.SequenceEqual(second.Item2)
            : Equals(one, other);

    private int Content()
    {
        var hash = default(HashCode);
        foreach (var value in values)
        {
            hash.Add(value is ValueTuple<IReadOnlyList<double>, IReadOnlyList<double>> grid ? grid.Item2.Count : value);
        }

        return hash.ToHashCode();
    }
}
