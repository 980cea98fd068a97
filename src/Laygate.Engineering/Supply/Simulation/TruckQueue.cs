namespace Laygate.Engineering.Supply.Simulation;

/// <summary>Trucks of one mix that wait on site, in order of arrival.</summary>
internal sealed class TruckQueue(int most)
{
    private readonly int[] trucks = new int[most + 1];
    private int head;

    /// <summary>Number of trucks.</summary>
    public int Count { get; private set; }

    /// <summary>The truck that is next.</summary>
    public int Head => trucks[head];

    public void Clear() => (head, Count) = (0, 0);

    /// <summary>The trucks in order.</summary>
    public IReadOnlyList<int> Save() => [.. Enumerable.Range(0, Count).Select(i => trucks[Wrap(head + i)])];

    /// <summary>Takes up what was saved.</summary>
    public void Restore(IReadOnlyList<int> queue)
    {
        Clear();
        foreach (var truck in queue)
        {
            Add(truck);
        }
    }

    /// <summary>A truck arrives.</summary>
    public void Add(int truck) => trucks[Wrap(head + Count++)] = truck;

    /// <summary>A truck with a rest goes back to the front.</summary>
    public void PutFirst(int truck)
    {
        head = head == 0 ? trucks.Length - 1 : head - 1;
        trucks[head] = truck;
        Count++;
    }

    /// <summary>Takes the truck that is next.</summary>
    public int Take()
    {
        var truck = trucks[head];
        head = Wrap(head + 1);
        Count--;
        return truck;
    }

    private int Wrap(int place) => place >= trucks.Length ? place - trucks.Length : place;
}
