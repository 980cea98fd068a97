namespace Laygate.Mutation;

/// <summary>Takes tests in their order for as long as their cost allows, but at least three that are not very dear.</summary>
internal static class Budget
{
    private const int LeastTests = 3;
    private const double DearestTest = 10_000;

    /// <summary>The tests taken; <paramref name="most"/> in ms of processor time.</summary>
    public static List<int> Fill(IReadOnlyList<TestRecord> tests, IEnumerable<int> ordered, double most)
    {
        var spent = 0.0;
        var chosen = new List<int>();
        foreach (var test in ordered)
        {
            var cost = tests[test].Cost + 0.5;
            if (spent + cost <= most || (chosen.Count < LeastTests && cost < DearestTest))
            {
                spent += cost;
                chosen.Add(test);
            }
        }

        return chosen;
    }
}
