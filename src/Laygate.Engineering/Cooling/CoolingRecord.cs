namespace Laygate.Engineering.Cooling;

/// <summary>Every accepted step of a solve: heat contents, their rates, and the heat that has passed the faces.</summary>
internal sealed class CoolingRecord
{
    private const int MostValues = 1 << 24;

    private int capacity;

    public int Count { get; private set; }

    public int Cells { get; private set; }

    public double[] Time { get; private set; } = [];

    /// <summary>First cell that is laid.</summary>
    public int[] First { get; private set; } = [];

    /// <summary>Heat content u of the cells (<see cref="HeatScale"/>; their temperature in °C where c is constant), one row per record.</summary>
    public double[] Content { get; private set; } = [];

    /// <summary>Rates of the heat contents, K/s; zero where the solve starts or a course joins.</summary>
    public double[] Rate { get; private set; } = [];

    /// <summary>1 where the step that ends here used the curvature of the profile, 0 where it used plain differences.</summary>
    public double[] Curved { get; private set; } = [];

    public double[] HeatIn { get; private set; } = [];

    public double[] HeatOutBelow { get; private set; } = [];

    public double[] HeatBrought { get; private set; } = [];

    /// <summary>Whether another record would exceed the memory that a solve may take (128 MiB for contents, as much for rates).</summary>
    public bool IsFull => (long)(Count + 2) * Cells > MostValues;

    public void Clear(int cells)
    {
        Count = 0;
        if (cells != Cells)
        {
            Cells = cells;
            Grow(Math.Max(capacity, 128));
        }
    }

    public void Add(double time, int first, double[] content, ReadOnlySpan<double> rate, double curved)
    {
        if (Count == capacity)
        {
            Grow(Math.Max(Count + 1, Math.Min(2 * capacity, MostValues / Cells)));
        }

        Time[Count] = time;
        First[Count] = first;
        Curved[Count] = curved;
        content.AsSpan(0, Cells).CopyTo(Content.AsSpan(Count * Cells));
        var target = Rate.AsSpan(Count * Cells, Cells);
        if (rate.IsEmpty)
        {
            target.Clear();
        }
        else
        {
            rate.CopyTo(target);
        }

        Count++;
    }

    public void AddHeat(double throughSkin, double throughBottom, double brought) =>
        (HeatIn[Count - 1], HeatOutBelow[Count - 1], HeatBrought[Count - 1]) = (throughSkin, throughBottom, brought);

    public CoolingRecord Trimmed() => new()
    {
        capacity = Count,
        Count = Count,
        Cells = Cells,
        Time = Time[..Count],
        First = First[..Count],
        Curved = Curved[..Count],
        Content = Content[..(Count * Cells)],
        Rate = Rate[..(Count * Cells)],
        HeatIn = HeatIn[..Count],
        HeatOutBelow = HeatOutBelow[..Count],
        HeatBrought = HeatBrought[..Count],
    };

    /// <summary>Last record that is not later than a time, and has a successor where there is one.</summary>
    public int Before(double time)
    {
        var (low, high) = (0, Count);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = Time[middle] <= time ? (middle, high) : (low, middle);
        }

        return low;
    }

    private void Grow(int rows)
    {
        capacity = rows;
        Time = Longer(Time, rows);
        First = Longer(First, rows);
        Curved = Longer(Curved, rows);
        Content = Longer(Content, rows * Cells);
        Rate = Longer(Rate, rows * Cells);
        HeatIn = Longer(HeatIn, rows);
        HeatOutBelow = Longer(HeatOutBelow, rows);
        HeatBrought = Longer(HeatBrought, rows);
    }

    private static T[] Longer<T>(T[] array, int length)
    {
        if (array.Length >= length)
        {
            return array;
        }

        Array.Resize(ref array, length);
        return array;
    }
}
