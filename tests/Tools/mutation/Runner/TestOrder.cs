namespace Laygate.Mutation;

/// <summary>
/// Which tests are worth running first: those that are likely to notice for what they cost. A test that reaches few places says much about each;
/// which methods notice mutants is learnt on the way. A theory sends a few of its cases, not all.
/// </summary>
internal sealed class TestOrder(IReadOnlyList<TestRecord> tests)
{
    private const int CasesOfAMethod = 8;
    private const double Belief = 5;
    private const double FewPlaces = 50;

    private readonly Dictionary<string, (double Tried, double Noticed)> known = new(StringComparer.Ordinal);

    /// <summary>The tests, the most promising first.</summary>
    public IEnumerable<int> Best(IEnumerable<int> reaching) =>
        reaching.GroupBy(test => Method(test), StringComparer.Ordinal)
            .SelectMany(group => group.OrderBy(test => tests[test].Cost).Take(CasesOfAMethod))
            .OrderByDescending(test => Chance(test) / (tests[test].Cost + 1));

    /// <summary>Takes in what a run has shown; <paramref name="noticed"/> is negative where none failed.</summary>
    public void Learn(List<int> run, int noticed)
    {
        foreach (var test in run)
        {
            var (tried, found) = known.GetValueOrDefault(Method(test));
            known[Method(test)] = (tried + 1, found + (test == noticed ? 1 : 0));
            if (test == noticed)
            {
                return;
            }
        }
    }

    private double Chance(int test)
    {
        var (tried, noticed) = known.GetValueOrDefault(Method(test));
        return (noticed + (Belief / (1 + (tests[test].Hits.Count / FewPlaces)))) / (tried + Belief);
    }

    private string Method(int test) => tests[test].Name.Split('(')[0];
}
