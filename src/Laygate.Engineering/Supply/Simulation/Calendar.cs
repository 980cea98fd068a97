namespace Laygate.Engineering.Supply.Simulation;

/// <summary>The next moment of each truck, and who is first: a tournament tree. Of two at the same moment the one with the lower number is first.</summary>
internal sealed class Calendar
{
    private readonly int size;
    private readonly double[] times;
    private readonly int[] who;

    public Calendar(int count)
    {
        size = 1;
        while (size < count)
        {
            size *= 2;
        }

        times = new double[2 * size];
        who = new int[2 * size];
        Clear();
    }

    /// <summary>Who is first.</summary>
    public int First => who[1];

    /// <summary>When the first is due; infinite where nobody is.</summary>
    public double FirstTime => times[1];

    /// <summary>When one is due; infinite where that one is not.</summary>
    public double TimeOf(int one) => times[size + one];

    /// <summary>Takes everybody out.</summary>
    public void Clear()
    {
        Array.Fill(times, double.PositiveInfinity);
        for (var i = 0; i < size; i++)
        {
            who[size + i] = i;
        }

        for (var node = size - 1; node > 0; node--)
        {
            who[node] = who[2 * node];
        }
    }

    /// <summary>Sets when one is due.</summary>
    public void Set(int one, double time)
    {
        var keys = times;
        var node = one + size;
        keys[node] = time;
        if (size == 1)
        {
            return;
        }

        while ((node >>= 1) > 0)
        {
            var child = 2 * node;
            child += keys[child + 1] < keys[child] ? 1 : 0;
            keys[node] = keys[child];
            who[node] = who[child];
        }
    }
}
